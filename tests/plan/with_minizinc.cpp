// 200 random kitchens of 6 to 30 activities: the same best values as MiniZinc with Gecode finds.
#include <doctest/doctest.h>

#include "plan/kitchens.hpp"
#include "plan/oracles.hpp"

namespace qtn::tests {
namespace {

using namespace plan;

// The outside program takes the time: under the sanitizers it is asked less.
constexpr int kKitchens = QTN_SANITIZED ? 30 : 200;

// Every feature in part of the kitchens.
Mix mix_of(std::uint64_t seed) {
  Dice dice(seed + 1000);
  Mix mix;
  mix.activities = dice.from(6, 30);
  mix.dishes = std::max(1, mix.activities / dice.from(3, 8));
  mix.cooks = dice.from(1, 3);
  mix.rings = dice.from(1, 4);
  mix.ovens = ovens_of(dice);
  mix.keeps_oven = dice.chance(60);
  if (dice.chance(60)) mix.heats = {1600, 1700, 1800, 2200};
  mix.nights = dice.chance(40);
  mix.stretches = dice.chance(40);
  mix.runs = dice.chance(30);
  mix.pins = dice.chance(30);
  mix.all_late = false;
  return mix;
}

TEST_CASE("random kitchens have the best plans that MiniZinc with Gecode finds") {
  if (!program_there("minizinc")) {
    MESSAGE("minizinc is not installed: the plans were not compared. See tests/tools/setup.sh.");
    return;
  }
  int planned = 0, impossible = 0, slow = 0;
  for (std::uint64_t seed = 1; planned + impossible < kKitchens && seed <= static_cast<std::uint64_t>(kKitchens + kKitchens / 4); ++seed) {
    CAPTURE(seed);
    Problem problem = day(seed, mix_of(seed));
    for (Point point = 0; point < problem.points; ++point) problem.bounds.push_back({point, -3 * kDay, kServed});
    const Plan plan = solve(problem);
    // Counted in nodes, so that a slow machine gets the same answers; the minute is for a machine that hangs.
    const std::string answer = answer_of("minizinc --solver gecode --time-limit 60000 --fzn-flags \"-node 100000\"",
                                         minizinc_model(problem, -3 * kDay, kServed), ".mzn");
    if (plan.outcome == Plan::Outcome::impossible) {
      const bool agrees = answer.find("=====UNSATISFIABLE=====") != std::string::npos;
      CHECK((agrees || answer.find("=====UNKNOWN=====") != std::string::npos));
      ++(agrees ? impossible : slow);
      continue;
    }
    REQUIRE(plan.outcome == Plan::Outcome::planned);
    CHECK(faults(problem, plan.times, plan.oven_of).empty());
    std::string ours;
    for (std::size_t i = 0; i < 2; ++i) ours += std::to_string(plan.values[i]) + " ";
    if (answer.find("==========") == std::string::npos) {
      ++slow;
      continue;
    }
    const std::size_t end = answer.find("==========");
    const std::size_t before = answer.rfind("----------", end);
    const std::size_t line = before < 2 ? 0 : answer.rfind('\n', before - 2) + 1;
    CHECK(plan.proven());
    CHECK(answer.substr(line, before - 1 - line) == ours);
    ++planned;
  }
  MESSAGE(planned << " alike, " << impossible << " impossible, " << slow << " not proven by MiniZinc in 100,000 nodes");
  CHECK(planned + impossible == kKitchens);
}

}  // namespace
}  // namespace qtn::tests
