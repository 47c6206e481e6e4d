#include <algorithm>
#include <cassert>

#include "plan/search.hpp"

namespace qtn::plan {
namespace {

// A lane for each job that asks for hands, the lowest that is free; jobs of one run that overlap share theirs.
std::vector<Number> lanes(const Problem& problem, const std::vector<Ticks>& times) {
  struct Block {
    Ticks begin, end;
    std::vector<Number> jobs;
  };
  std::vector<Block> blocks;
  for (Number i = 0; i < problem.jobs.size(); ++i)
    if (const Job& job = problem.jobs[i]; job.hands)
      blocks.push_back({times[job.begin.point] + job.begin.shift, times[job.end.point] + job.end.shift, {i}});
  const auto by_begin = [](const Block& a, const Block& b) {
    return a.begin != b.begin ? a.begin < b.begin : a.end != b.end ? a.end < b.end : a.jobs < b.jobs;
  };
  std::sort(blocks.begin(), blocks.end(), by_begin);
  std::vector<Block> merged;
  for (const Block& block : blocks) {
    const Number run = problem.jobs[block.jobs[0]].run;
    const auto mate = std::find_if(merged.begin(), merged.end(), [&](const Block& other) {
      return run != kNothing && problem.jobs[other.jobs[0]].run == run && other.end > block.begin && block.end > other.begin;
    });
    if (mate == merged.end()) {
      merged.push_back(block);
      continue;
    }
    mate->end = std::max(mate->end, block.end);
    mate->jobs.push_back(block.jobs[0]);
  }
  std::vector<Number> out(problem.jobs.size(), kNothing);
  std::vector<Ticks> free_from;
  for (const Block& block : merged) {
    std::size_t lane = 0;
    while (lane < free_from.size() && free_from[lane] > block.begin) ++lane;
    if (lane == free_from.size()) free_from.push_back(-kNever);
    free_from[lane] = block.end;
    for (const Number job : block.jobs) out[job] = static_cast<Number>(lane);
  }
  return out;
}

}  // namespace

std::optional<std::vector<Ticks>> latest(const Problem& problem) {
  Windows windows(problem);
  if (!windows.open()) return std::nullopt;
  return windows.late();
}

Plan solve(const Problem& problem, const Budget& budget) {
  Plan plan;
  const Rivals rivals(problem);
  Search search(problem, rivals);
  if (!search.open()) {
    plan.outcome = Plan::Outcome::impossible;
    return plan;
  }
  const std::vector<Ticks> relaxed = search.relaxed();
  const bool bounded = std::all_of(relaxed.begin(), relaxed.end(), [](Ticks time) { return time < kNever / 2; });
  assert(bounded && "a moment has no latest time");
  if (!bounded) return plan;

  const auto goals = static_cast<Number>(problem.objectives.size());
  for (Number goal = 0; goal < std::max<Number>(goals, 1); ++goal) {
    // Half of what is left, but for the last: one that cannot be proven leaves something to the others.
    const std::uint64_t left = budget.nodes - std::min(budget.nodes, plan.nodes);
    const std::uint64_t share = goal + 1 < goals && search.best() ? left / 2 : left;
    const Ticks bound = search.climb(goal, plan.nodes, plan.nodes + share);
    if (!search.best()) {
      plan.outcome = bound == -kNever ? Plan::Outcome::impossible : Plan::Outcome::given_up;
      return plan;
    }
    if (goal < goals) plan.bounds.push_back(std::min(bound, value(problem.objectives[goal], relaxed)));
  }
  plan.outcome = Plan::Outcome::planned;
  Settled settled = settle(problem, rivals, *search.best());
  plan.times = std::move(settled.times);
  plan.why = std::move(settled.why);
  plan.orders = std::move(settled.orders);
  for (const Objective& objective : problem.objectives) plan.values.push_back(value(objective, plan.times));
  plan.cook_of = lanes(problem, plan.times);
  plan.oven_of = rivals.assign(plan.times);
  if (plan.oven_of.empty()) plan.oven_of.assign(problem.jobs.size(), kNothing);
  return plan;
}

}  // namespace qtn::plan
