// 40 random kitchens of up to 60 activities: what z3 says of each objective's best value, and of one tick more. Decisions
// only: its own `minimize` has been seen to err.
#include <doctest/doctest.h>

#include <sstream>

#include "plan/kitchens.hpp"
#include "plan/oracles.hpp"

namespace qtn::tests {
namespace {

using namespace plan;

Mix mix_of(std::uint64_t seed) {
  Dice dice(seed + 5000);
  Mix mix;
  mix.activities = seed % 2 ? dice.from(30, 60) : dice.from(12, 30);
  mix.dishes = std::max(2, mix.activities / dice.from(9, 15));
  mix.cooks = dice.from(1, 2);
  mix.rings = dice.from(1, 4);
  mix.ovens = ovens_of(dice);
  mix.keeps_oven = dice.chance(60);
  if (dice.chance(50)) mix.heats = {1600, 1700, 2200};
  mix.nights = dice.chance(40);
  mix.stretches = dice.chance(30);
  mix.runs = dice.chance(30);
  mix.oven_last = 100;
  return mix;
}

// The outside program takes the time: under the sanitizers it is asked less.
constexpr std::uint64_t kDays = QTN_SANITIZED ? 8 : 40;

TEST_CASE("z3 finds the best values possible, and no better ones") {
  if (!program_there("z3")) {
    MESSAGE("z3 is not installed: the plans were not compared. See tests/tools/setup.sh.");
    return;
  }
  int asked = 0, answered = 0;
  for (std::uint64_t seed = 1; seed <= kDays; ++seed) {
    CAPTURE(seed);
    const Problem problem = day(seed, mix_of(seed));
    const Plan plan = solve(problem);
    REQUIRE(plan.outcome == Plan::Outcome::planned);
    CHECK(faults(problem, plan.times, plan.oven_of).empty());
    // Counted in z3's own steps, so that a slow machine gets the same answers.
    std::string text = "(set-option :rlimit 6000000)\n" + smt_rules(problem);
    std::vector<std::string> expected;
    const std::size_t objectives = problem.jobs.size() <= 20 ? 3 : 2;
    for (std::size_t i = 0; i < objectives; ++i) {
      if (plan.values[i] != plan.bounds[i]) break;
      text += smt_reaches(problem, i, plan.values[i]) + "(check-sat)\n";
      text += "(push)\n" + smt_reaches(problem, i, plan.values[i] + 1) + "(check-sat)\n(pop)\n";
      expected.insert(expected.end(), {"sat", "unsat"});
    }
    std::istringstream answers(answer_of("z3 -T:120", text, ".smt2"));
    for (const std::string& should : expected) {
      std::string is;
      answers >> is;
      ++asked;
      if (is != "sat" && is != "unsat") continue;
      ++answered;
      CHECK(is == should);
    }
  }
  MESSAGE(answered << " of " << asked << " questions answered by z3 within 6 million steps");
  CHECK(asked >= static_cast<int>(3 * kDays));
  CHECK(answered * 10 >= asked * 9);
}

}  // namespace
}  // namespace qtn::tests
