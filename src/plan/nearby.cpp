// A better plan near a good one: part of the jobs are free to move, the rest keep the order they have in it.
#include <algorithm>
#include <numeric>

#include "plan/search.hpp"

namespace qtn::plan {
namespace {

// Fibonacci hashing, as good as dice here: the same problem is always planned alike.
std::uint64_t roll(std::uint64_t number) {
  number *= 0x9E3779B97F4A7C15u;
  return (number ^ (number >> 29)) * 0xBF58476D1CE4E5B9u >> 20;
}

}  // namespace

// Moments that lags tie together: a dish, as a rule.
std::vector<Number> tied(const Problem& problem) {
  std::vector<Number> head(problem.points);
  std::iota(head.begin(), head.end(), 0u);
  const auto find = [&](Number at) {
    while (head[at] != at) at = head[at] = head[head[at]];
    return at;
  };
  const auto tie = [&](Number a, Number b) { head[find(a)] = find(b); };
  for (const Lag& lag : problem.lags) tie(lag.before, lag.after);
  for (const Job& job : problem.jobs) tie(job.begin.point, job.end.point);
  for (Number at = 0; at < head.size(); ++at) head[at] = find(at);
  return head;
}

// Which jobs may move in this turn: those of some dishes, or those in some hours.
std::vector<char> Search::movable(std::uint64_t turn) const {
  const std::vector<Ticks>& times = *best_;
  std::vector<char> out(problem_.jobs.size(), 0);
  if (tied_.empty() || problem_.jobs.empty()) return out;
  const auto begin = [&](const Job& job) { return times[job.begin.point] + job.begin.shift; };
  if (turn % 2 == 0) {
    std::vector<Number> dishes = tied_;
    std::sort(dishes.begin(), dishes.end());
    dishes.erase(std::unique(dishes.begin(), dishes.end()), dishes.end());
    const std::size_t many = std::min<std::size_t>(dishes.size(), 2 + roll(turn) % 4);
    for (std::size_t i = 0; i < many; ++i) std::swap(dishes[i], dishes[i + roll(turn * 8 + i) % (dishes.size() - i)]);
    for (std::size_t i = 0; i < out.size(); ++i)
      out[i] = std::find(dishes.begin(), dishes.begin() + static_cast<std::ptrdiff_t>(many), tied_[problem_.jobs[i].begin.point]) !=
               dishes.begin() + static_cast<std::ptrdiff_t>(many);
    return out;
  }
  const Job& centre = problem_.jobs[roll(turn) % problem_.jobs.size()];
  std::vector<std::pair<Ticks, std::size_t>> nearest;
  for (std::size_t i = 0; i < out.size(); ++i) nearest.push_back({std::abs(begin(problem_.jobs[i]) - begin(centre)), i});
  std::sort(nearest.begin(), nearest.end());
  nearest.resize(std::min<std::size_t>(nearest.size(), 10 + roll(turn + 7) % 12));
  for (const auto& each : nearest) out[each.second] = 1;
  return out;
}

void Search::look_nearby(Number goal, std::uint64_t& nodes, std::uint64_t most, std::uint64_t turns) {
  for (std::uint64_t turn = 0; turn < turns && nodes < most; ++turn) {
    const std::vector<char> moves = movable(turn_++);
    const std::size_t root = windows_.mark(), pairs = open_pairs_;
    bool held = true;
    for (const Order& order : rivals_.pairs(true))
      for (const Order& way : {order, Order{order.what, order.second, order.first}})
        if (held && !moves[way.first] && !moves[way.second] && rivals_.holds(way, *best_)) held = windows_.add(rivals_.lag(way));
    if (held) run(goal, reached(*best_) + 1, nodes, std::min(most, nodes + kNearby));
    windows_.undo(root);
    open_pairs_ = pairs;
  }
}

}  // namespace qtn::plan
