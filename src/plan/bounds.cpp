#include "plan/bounds.hpp"

#include <algorithm>
#include <queue>

namespace qtn::plan {
namespace {

// The longest way to each point from any other, along the distances of the problem; nothing more than 0.
std::vector<Ticks> heads_of(const Problem& problem) {
  std::vector<Ticks> heads(problem.points, 0);
  for (Number round = 0; round <= problem.points; ++round) {
    bool moved = false;
    for (const Lag& lag : problem.lags)
      if (heads[lag.before] + lag.least > heads[lag.after]) heads[lag.after] = heads[lag.before] + lag.least, moved = true;
    if (!moved) break;
  }
  return heads;
}

Ticks length_of(const Problem& problem, const Job& job) {
  if (job.begin.point == job.end.point) return job.end.shift - job.begin.shift;
  Ticks least = 0;
  for (const Lag& lag : problem.lags)
    if (lag.before == job.begin.point && lag.after == job.end.point) least = std::max(least, lag.least + job.end.shift - job.begin.shift);
  return least;
}

}  // namespace

Ticks value_of(const Objective& objective, const std::vector<Ticks>& times) {
  Ticks sum = 0, least = kNever;
  for (const Point point : objective.points) sum += times[point], least = std::min(least, times[point]);
  return objective.kind == Objective::Kind::sum ? sum : least;
}

Limits::Limits(const Problem& problem) : problem_(problem) {
  const std::vector<Ticks> heads = heads_of(problem);
  Server hands, oven;
  hands.capacity = problem.cooks;
  for (Number j = 0; j < problem.jobs.size(); ++j) {
    const Job& job = problem.jobs[j];
    const Work work{j, length_of(problem, job), std::max<Ticks>(0, heads[job.begin.point] + job.begin.shift)};
    if (work.length <= 0) continue;
    // Uncertain ends of one run lie over one another; the bound counts each run's jobs by their surest lengths only.
    if (job.hands) hands.works.push_back(work);
    if (job.oven) oven.works.push_back(work);
  }
  bool apart = problem.ovens.count == 1;
  for (std::size_t a = 0; apart && problem.ovens.shelves > 1 && a < oven.works.size(); ++a)
    for (std::size_t b = a + 1; apart && b < oven.works.size(); ++b) {
      const int one = problem.jobs[oven.works[a].job].heat, other = problem.jobs[oven.works[b].job].heat;
      apart = one < 0 || other < 0 || std::abs(one - other) > problem.ovens.tolerance ||
              problem.jobs[oven.works[a].job].run == problem.jobs[oven.works[b].job].run;
    }
  if (hands.works.size() > 1) servers_.push_back(std::move(hands));
  if (apart && oven.works.size() > 1) servers_.push_back(std::move(oven));
}

Ticks Limits::of(const Objective& objective, const State& state) {
  Ticks bound = value_of(objective, state.times());
  for (const Server& server : servers_) {
    if (objective.kind == Objective::Kind::earliest) bound = std::min(bound, longest_way(server, state));
    else bound = std::min(bound, sum(objective, server, state));
  }
  return bound;
}

// The earliest moment: on the turned axis each work is released when its latest end is reached, takes its length, and
// is followed by its way to the beginning of the day. The one with the longest way goes first, and gives way to a
// longer; several cooks share the work out evenly, which no real sharing beats.
Ticks Limits::longest_way(const Server& server, const State& state) {
  items_.clear();
  Ticks last = -kNever;
  for (const Work& work : server.works) last = std::max(last, state.time(problem_.jobs[work.job].end));
  for (const Work& work : server.works) items_.push_back({last - state.time(problem_.jobs[work.job].end), work.length, work.head});
  std::sort(items_.begin(), items_.end(), [](const Item& a, const Item& b) { return a.release < b.release; });
  Ticks longest = 0;
  if (server.capacity == 1) {
    std::priority_queue<std::pair<Ticks, Ticks>> open;  // way, what is left
    Ticks now = 0;
    for (std::size_t next = 0; next < items_.size() || !open.empty();) {
      if (open.empty()) now = std::max(now, items_[next].release);
      while (next < items_.size() && items_[next].release <= now) open.push({items_[next].tail, items_[next].length}), ++next;
      auto [tail, left] = open.top();
      open.pop();
      const Ticks until = next < items_.size() ? items_[next].release : kNever;
      const Ticks done = std::min(left, until - now);
      now += done;
      longest = std::max(longest, now + tail);
      if (left > done) open.push({tail, left - done});
    }
    return last - longest;
  }
  // Of all that is released from some moment on with a way of some length at least: its work shared by all hands.
  std::vector<Ticks> tails;
  for (const Item& item : items_) tails.push_back(item.tail);
  std::sort(tails.begin(), tails.end());
  tails.erase(std::unique(tails.begin(), tails.end()), tails.end());
  for (const Ticks tail : tails) {
    Ticks work = 0;
    for (std::size_t i = items_.size(); i-- > 0;) {
      if (items_[i].tail < tail) continue;
      work += items_[i].length;
      longest = std::max(longest, items_[i].release + (work + server.capacity - 1) / server.capacity + tail);
    }
  }
  return last - longest;
}

// The sum of the ends of what each dish wants of one server at the last: the shortest left goes first.
Ticks Limits::sum(const Objective& objective, const Server& server, const State& state) {
  if (server.capacity != 1) return kNever;
  Ticks rest = 0;
  Ticks last = -kNever;
  items_.clear();
  std::vector<Ticks> shifts;
  for (const Point point : objective.points) {
    const Work* found = nullptr;
    for (const Work& work : server.works) {
      const Job& job = problem_.jobs[work.job];
      if (job.end.point != point || job.begin.point != point) continue;
      if (found == nullptr || job.end.shift > problem_.jobs[found->job].end.shift) found = &work;
    }
    if (found == nullptr) {
      rest += state.time(point);
      continue;
    }
    const Job& job = problem_.jobs[found->job];
    items_.push_back({state.time(job.end), found->length, job.end.shift});
    last = std::max(last, items_.back().release);
  }
  if (items_.size() < 2) return kNever;
  for (Item& item : items_) item.release = last - item.release;
  std::sort(items_.begin(), items_.end(), [](const Item& a, const Item& b) { return a.release < b.release; });
  Ticks all = rest;
  std::priority_queue<std::pair<Ticks, std::size_t>, std::vector<std::pair<Ticks, std::size_t>>, std::greater<>> open;
  Ticks now = 0;
  for (std::size_t next = 0; next < items_.size() || !open.empty();) {
    if (open.empty()) now = std::max(now, items_[next].release);
    while (next < items_.size() && items_[next].release <= now) open.push({items_[next].length, next}), ++next;
    const auto [left, which] = open.top();
    open.pop();
    const Ticks until = next < items_.size() ? items_[next].release : kNever;
    const Ticks done = std::min(left, until - now);
    now += done;
    if (left > done) open.push({left - done, which});
    // Done at `now` on the turned axis: it began there `length` before, which is its end in the day.
    else all += last - (now - items_[which].length) - items_[which].tail;
  }
  return all;
}

}  // namespace qtn::plan
