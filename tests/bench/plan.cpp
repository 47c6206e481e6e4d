// Days of 10, 40, 60 and 200 activities, planned here and by Gecode and z3 in the same run: build/tests/bench_plan [days]
// [nodes]. Two objectives, one after the other: the hot dishes ready as late as can be, then everything begun as late as
// can be. z3 is asked of the first alone: can the value be, and one tick more? Run it alone.
#include <fmt/format.h>

#include <chrono>
#include <cstdlib>
#include <sstream>

#include "plan/kitchens.hpp"
#include "plan/oracles.hpp"

using namespace qtn;
using namespace qtn::tests;

namespace {

struct Row {
  const char* name;
  int activities, dishes, cooks, oven_last;
  bool outside;  // asked of Gecode and z3, too
};

constexpr Row kRows[] = {
    {"10 activities, 3 dishes, 1 cook", 10, 3, 1, 40, true},     {"40 activities, 8 dishes, 2 cooks", 40, 8, 2, 40, true},
    {"40 activities, 8 dishes, 1 cook", 40, 8, 1, 40, true},     {"60 activities, 12 dishes, 1 oven", 60, 12, 1, 100, true},
    {"200 activities, 5 dishes, 1 cook", 200, 5, 1, 40, false},  {"200 activities, 5 dishes, 2 cooks", 200, 5, 2, 40, false},
};

constexpr int kAsked = 5;  // days of a row that Gecode and z3 are asked about, too

double seconds_of(auto&& work) {
  const auto from = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
}

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

struct Tally {
  std::vector<double> first, all, gecode, z3;
  int first_proven = 0, all_proven = 0, gecode_proven = 0, gecode_behind = 0, z3_proven = 0, unsound = 0;
  plan::Ticks waiting = 0, gap = 0;
};

void outside(const plan::Problem& problem, const plan::Plan& plan, Tally& tally) {
  plan::Problem first = problem;
  first.objectives.resize(1);
  std::string answer;
  tally.gecode.push_back(seconds_of([&] {
    answer = answer_of("minizinc --solver gecode --time-limit 5000", minizinc_model(first, -3 * kDay, kServed), ".mzn");
  }));
  const bool done = answer.find("==========") != std::string::npos;
  tally.gecode_proven += done;
  std::istringstream lines(answer);
  plan::Ticks best = -plan::kNever;
  for (std::string line; std::getline(lines, line);)
    if (!line.empty() && (line[0] == '-' || (line[0] >= '0' && line[0] <= '9')) && line.rfind("--", 0) != 0) best = std::atoll(line.c_str());
  tally.gecode_behind += best < plan.values[0];
  if (done && best > plan.values[0]) ++tally.unsound;
  std::string text = "(set-option :timeout 5000)\n" + smt_rules(first) + smt_reaches(first, 0, plan.values[0]) + "(check-sat)\n" +
                     smt_reaches(first, 0, plan.values[0] + 1) + "(check-sat)\n";
  tally.z3.push_back(seconds_of([&] { answer = answer_of("z3 -T:12", text, ".smt2"); }));
  tally.z3_proven += answer.rfind("sat\nunsat", 0) == 0;
  if (answer.rfind("unsat", 0) == 0 || (plan.values[0] == plan.bounds[0] && answer.rfind("sat\nsat", 0) == 0)) ++tally.unsound;
}

}  // namespace

int main(int count, char** words) {
  const int days = count > 1 ? std::atoi(words[1]) : 20;
  const plan::Budget budget{count > 2 ? std::strtoull(words[2], nullptr, 10) : plan::Budget{}.nodes};
  const bool gecode = program_there("minizinc"), z3 = program_there("z3");
  if (!gecode || !z3) fmt::print("minizinc or z3 is not installed: nothing to compare with. See tests/tools/setup.sh.\n");
  fmt::print("{} days a row, {} nodes at most; times in ms; waiting and gap in ticks of the first objective, mean\n\n", days, budget.nodes);
  fmt::print("{:34}|{:^32}|{:^32}|{:>8} {:>6} |{:^28}|{:^18}\n", "", "first objective", "both objectives", "", "", "Gecode, first, 5 s", "z3, first, 5 s each");
  fmt::print("{:34}|{:>8} {:>9} {:>9}     |{:>8} {:>9} {:>9}     |{:>8} {:>6} |{:>8} {:>9} {:>8} |{:>8} {:>9}\n", "", "proven", "median", "worst",
             "proven", "median", "worst", "waiting", "gap", "proven", "median", "behind", "proven", "median");
  int unsound = 0;
  for (const Row& row : kRows) {
    Tally tally;
    for (int seed = 1; seed <= days; ++seed) {
      Mix mix;
      mix.activities = row.activities;
      mix.dishes = row.dishes;
      mix.cooks = row.cooks;
      mix.oven_last = row.oven_last;
      mix.all_late = false;
      const plan::Problem problem = day(static_cast<std::uint64_t>(seed), mix);
      plan::Problem one = problem;
      one.objectives.resize(1);
      plan::Plan first, all;
      tally.first.push_back(1000 * seconds_of([&] { first = solve(one, budget); }));
      tally.all.push_back(1000 * seconds_of([&] { all = solve(problem, budget); }));
      if (all.outcome != plan::Plan::Outcome::planned || first.outcome != plan::Plan::Outcome::planned) continue;
      if (!faults(problem, all.times).empty()) ++tally.unsound;
      tally.first_proven += first.proven();
      tally.all_proven += all.proven();
      tally.waiting += kServed * row.dishes - first.values[0];
      tally.gap += first.bounds[0] - first.values[0];
      if (row.outside && seed <= kAsked && gecode && z3) outside(problem, first, tally);
    }
    fmt::print("{:34}|{:>5}/{:<3}{:>9.2f} {:>9.2f}     |{:>5}/{:<3}{:>9.2f} {:>9.2f}     |{:>8.1f} {:>6.1f} |", row.name, tally.first_proven, days,
               median(tally.first), *std::max_element(tally.first.begin(), tally.first.end()), tally.all_proven, days, median(tally.all),
               *std::max_element(tally.all.begin(), tally.all.end()), static_cast<double>(tally.waiting) / days,
               static_cast<double>(tally.gap) / days);
    if (!tally.z3.empty())
      fmt::print("{:>5}/{:<3}{:>8.0f} {:>8} |{:>5}/{:<3}{:>8.0f}", tally.gecode_proven, tally.gecode.size(), 1000 * median(tally.gecode), tally.gecode_behind,
                 tally.z3_proven, tally.z3.size(), 1000 * median(tally.z3));
    fmt::print("\n");
    std::fflush(stdout);
    unsound += tally.unsound;
  }
  if (unsound > 0) fmt::print("\n{} answers do not agree.\n", unsound);
  return unsound > 0;
}
