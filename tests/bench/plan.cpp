// Days of 10, 40, 60 and 200 activities, planned here and by Gecode and z3 in the same run:
// build/tests/bench_plan [days] [nodes] [seconds]
// Two objectives, one after the other: the hot dishes ready as late as can be, then everything begun as late as can be. The
// first days of a row are asked of both outsiders, each question within `seconds` (20; 0: they are not asked): Gecode for
// the best plan of the first objective, and of both; z3 whether the value found here can be, and one tick more.
#include <fmt/format.h>

#include <chrono>
#include <cstdlib>
#include <ctime>
#include <sstream>

#include "plan/kitchens.hpp"
#include "plan/oracles.hpp"

using namespace qtn;
using namespace qtn::tests;

namespace {

struct Row {
  const char* name;
  int activities, dishes, cooks, oven_last;
  bool two_ovens = false;  // of two shelves and one; each dish heats one and keeps to it
};

constexpr Row kRows[] = {
    {"10 activities, 3 dishes, 1 cook", 10, 3, 1, 40},     {"40 activities, 8 dishes, 2 cooks", 40, 8, 2, 40},
    {"40 activities, 8 dishes, 1 cook", 40, 8, 1, 40},     {"40 activities, 8 dishes, 2 ovens", 40, 8, 2, 80, true}, {"60 activities, 12 dishes, 1 oven", 60, 12, 1, 100},
    {"200 activities, 5 dishes, 1 cook", 200, 5, 1, 40},  {"200 activities, 5 dishes, 2 cooks", 200, 5, 2, 40},
};

constexpr int kAsked = 3;  // days of a row that Gecode and z3 are asked about, too

double seconds_of(auto&& work) {
  const auto from = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
}

// Of this one thread: what else the machine does is left out.
double processor_seconds_of(auto&& work) {
  const std::clock_t from = std::clock();
  work();
  return static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC;
}

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

// One outsider about one set of objectives.
struct Asked {
  std::vector<double> seconds;
  int proven = 0, behind = 0;
};

struct Tally {
  std::vector<double> first, all;
  int first_proven = 0, all_proven = 0, unsound = 0, quick = 0;
  plan::Ticks waiting = 0, gap = 0;
  Asked gecode[2], z3[2];
};

// The values of the last plan that MiniZinc printed.
std::vector<plan::Ticks> last_values(const std::string& answer) {
  std::vector<plan::Ticks> out;
  std::istringstream lines(answer);
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line.rfind("--", 0) == 0 || (line[0] != '-' && (line[0] < '0' || line[0] > '9'))) continue;
    std::istringstream words(line);
    out.clear();
    for (plan::Ticks value = 0; words >> value;) out.push_back(value);
  }
  return out;
}

void ask_gecode(const plan::Problem& problem, const plan::Plan& plan, int seconds, Asked& asked, int& unsound) {
  std::string answer;
  asked.seconds.push_back(seconds_of([&] {
    answer = answer_of(fmt::format("minizinc --solver gecode --time-limit {}", 1000 * seconds), minizinc_model(problem, -3 * kDay, kServed), ".mzn");
  }));
  const bool done = answer.find("==========") != std::string::npos;
  const std::vector<plan::Ticks> best = last_values(answer);
  asked.proven += done;
  asked.behind += best < plan.values;
  for (std::size_t i = 0; i < best.size() && i < plan.values.size(); ++i) {
    if (best[i] > plan.bounds[i]) ++unsound;
    if (best[i] != plan.values[i]) break;
  }
  if (done && best < plan.values) ++unsound;
}

// Can the last objective be so good with those before as they are, and better?
void ask_z3(const plan::Problem& problem, const plan::Plan& plan, int seconds, Asked& asked, int& unsound) {
  std::string text = fmt::format("(set-option :timeout {})\n", 1000 * seconds) + smt_rules(problem);
  const std::size_t last = problem.objectives.size() - 1;
  for (std::size_t i = 0; i <= last; ++i) text += smt_reaches(problem, i, plan.values[i]);
  text += "(check-sat)\n" + smt_reaches(problem, last, plan.values[last] + 1) + "(check-sat)\n";
  std::string answer;
  asked.seconds.push_back(seconds_of([&] { answer = answer_of(fmt::format("z3 -T:{}", 2 * seconds + 2), text, ".smt2"); }));
  asked.proven += answer.rfind("sat\nunsat", 0) == 0;
  if (answer.rfind("unsat", 0) == 0 || (plan.proven() && answer.rfind("sat\nsat", 0) == 0)) ++unsound;
}

void print(const Asked& asked) {
  if (asked.seconds.empty()) return fmt::print("{:>6} {:>7} |", "-", "");
  fmt::print("{:>3}/{:<2}{:>8.0f} |", asked.proven, asked.seconds.size(), 1000 * median(asked.seconds));
}

}  // namespace

int main(int count, char** words) {
  const auto word = [&](int at, std::uint64_t otherwise) { return count > at ? std::strtoull(words[at], nullptr, 10) : otherwise; };
  const int days = static_cast<int>(std::max<std::uint64_t>(1, word(1, 20)));
  const plan::Budget budget{word(2, plan::Budget{}.nodes)};
  const int seconds = static_cast<int>(word(3, 20));
  const bool gecode = program_there("minizinc"), z3 = program_there("z3");
  if (!gecode || !z3) fmt::print("minizinc or z3 is not installed: nothing to compare with. See tests/tools/setup.sh.\n");
  fmt::print("{} days a row, {} nodes at most; ms of the processor, of Gecode and z3 ms by the clock and {} s a question; waiting and gap in ticks, mean\n\n",
             days, budget.nodes, seconds);
  fmt::print("{:34}|{:^29}|{:^40}|{:^16}|{:^33}|{:^33}\n", "", "first objective", "both objectives", "", "Gecode: first, both", "z3: first, both");
  fmt::print("{:34}|{:>8} {:>9} {:>9} |{:>8} {:>9} {:>9} {:>10} |{:>8} {:>6} |\n", "", "proven", "median", "worst", "proven", "median", "worst", "< 100 ms",
             "waiting", "gap");
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
      if (row.two_ovens) mix.ovens = {{2, 1}, 50, 3}, mix.heats = {1600, 1800, 2200}, mix.keeps_oven = true;
      const plan::Problem problem = day(static_cast<std::uint64_t>(seed), mix);
      plan::Problem one = problem;
      one.objectives.resize(1);
      plan::Plan first, all;
      tally.first.push_back(1000 * processor_seconds_of([&] { first = solve(one, budget); }));
      tally.all.push_back(1000 * processor_seconds_of([&] { all = solve(problem, budget); }));
      if (all.outcome != plan::Plan::Outcome::planned || first.outcome != plan::Plan::Outcome::planned) continue;
      if (!faults(problem, all.times, all.oven_of).empty()) ++tally.unsound;
      tally.first_proven += first.proven();
      tally.all_proven += all.proven();
      tally.quick += all.proven() && tally.all.back() < 100;
      tally.waiting += kServed * row.dishes - first.values[0];
      tally.gap += first.bounds[0] - first.values[0];
      if (seed > kAsked || seconds == 0 || !gecode || !z3) continue;
      ask_gecode(one, first, seconds, tally.gecode[0], tally.unsound);
      ask_gecode(problem, all, seconds, tally.gecode[1], tally.unsound);
      ask_z3(one, first, seconds, tally.z3[0], tally.unsound);
      if (all.values[0] == all.bounds[0]) ask_z3(problem, all, seconds, tally.z3[1], tally.unsound);
    }
    fmt::print("{:34}|{:>5}/{:<3}{:>9.2f} {:>9.2f} |{:>5}/{:<3}{:>9.2f} {:>9.2f} {:>10} |{:>8.1f} {:>6.1f} |", row.name, tally.first_proven, days,
               median(tally.first), *std::max_element(tally.first.begin(), tally.first.end()), tally.all_proven, days, median(tally.all),
               *std::max_element(tally.all.begin(), tally.all.end()), tally.quick, static_cast<double>(tally.waiting) / days,
               static_cast<double>(tally.gap) / days);
    for (const Asked& asked : {tally.gecode[0], tally.gecode[1], tally.z3[0], tally.z3[1]}) print(asked);
    fmt::print("\n");
    std::fflush(stdout);
    unsound += tally.unsound;
  }
  if (unsound > 0) fmt::print("\n{} answers do not agree.\n", unsound);
  return unsound > 0;
}
