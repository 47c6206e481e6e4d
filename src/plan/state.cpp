#include "plan/state.hpp"

#include <algorithm>

namespace qtn::plan {
namespace {

// After so many falls of one time in one go, a circle is looked for outright.
constexpr int kSuspicious = 64;

}  // namespace

State::State(const Problem& problem)
    : problem_(problem), times_(problem.points, kNever), floors_(problem.points, -kNever), by_after_(problem.points),
      awake_(problem.points), across_(problem.points), queued_(problem.points, 0) {
  for (const Lag& lag : problem.lags) by_after_[lag.after].push_back(lag);
  for (Number j = 0; j < problem.jobs.size(); ++j) {
    const Job& job = problem.jobs[j];
    if (!job.awake || problem.closed.empty()) continue;
    awake_[job.begin.point].push_back(j);
    if (job.end.point != job.begin.point) awake_[job.end.point].push_back(j);
  }
  for (Number a = 0; a < problem.across.size(); ++a) {
    across_[problem.across[a].begin.point].push_back(a);
    if (problem.across[a].end.point != problem.across[a].begin.point) across_[problem.across[a].end.point].push_back(a);
  }
}

bool State::lower(Point point, Ticks time) {
  if (time >= times_[point]) return true;
  trail_.push_back({point, times_[point]});
  times_[point] = time;
  if (time < floors_[point]) return false;
  if (queued_[point] == 0) queued_[point] = 1, queue_.push_back(point);
  return true;
}

bool State::start() {
  for (const Lag& lag : problem_.lags)
    if (lag.before == lag.after && lag.least > 0) return false;
  for (const Bounds& bounds : problem_.bounds) floors_[bounds.point] = std::max(floors_[bounds.point], bounds.not_before);
  // Distances alone first, so that a circle among them is found before anything spreads along it.
  if (turns_in_circles()) return false;
  for (const Bounds& bounds : problem_.bounds)
    if (bounds.not_after < kNever && !lower(bounds.point, bounds.not_after)) return false;
  snapped_ = true;
  const bool fine = spread(kNothing);
  trail_.clear();
  return fine;
}

bool State::add(const Lag& lag) {
  if (lag.before == lag.after) return lag.least <= 0;
  by_after_[lag.after].push_back(lag);
  added_.push_back(lag);
  snapped_ = false;
  if (!lower(lag.before, times_[lag.after] - lag.least)) {
    for (const Point point : queue_) queued_[point] = 0;
    queue_.clear();
    return false;
  }
  return spread(lag.after);
}

void State::take_back(const Mark& mark) {
  while (trail_.size() > mark.times) {
    times_[trail_.back().first] = trail_.back().second;
    trail_.pop_back();
  }
  while (added_.size() > mark.lags) {
    by_after_[added_.back().after].pop_back();
    added_.pop_back();
  }
}

// `watch`: the later end of the distance just added. Where nothing but distances moved, its own fall means a circle.
bool State::spread(Point watch) {
  bool fine = true;
  int falls = 0;
  for (std::size_t head = 0; fine && head < queue_.size(); ++head) {
    const Point point = queue_[head];
    queued_[point] = 0;
    if (point == watch) {
      ++falls;
      if (!snapped_ || falls % kSuspicious == 0) fine = !(snapped_ ? turns_in_circles() : true);
    }
    for (std::size_t i = 0; fine && i < by_after_[point].size(); ++i) {
      const Lag& lag = by_after_[point][i];
      if (lag.before != lag.after) fine = lower(lag.before, times_[point] - lag.least);
    }
    for (std::size_t i = 0; fine && i < awake_[point].size(); ++i) fine = wake(problem_.jobs[awake_[point][i]]);
    for (std::size_t i = 0; fine && i < across_[point].size(); ++i) fine = cross(problem_.across[across_[point][i]]);
  }
  for (const Point point : queue_) queued_[point] = 0;
  queue_.clear();
  return fine;
}

// All of it in one open stretch, the latest that fits.
bool State::wake(const Job& job) {
  if (times_[job.begin.point] >= kNever || times_[job.end.point] >= kNever) return true;
  Ticks begin = time(job.begin), end = time(job.end);
  const auto& closed = problem_.closed;
  // The last closed stretch that begins before `end`: what ends within it must end before it.
  while (true) {
    auto after = std::lower_bound(closed.begin(), closed.end(), std::max(begin, end),
                                  [](const Stretch& one, Ticks at) { return one.from < at; });
    if (after == closed.begin()) break;
    const Stretch& night = *(after - 1);
    const bool same = job.begin.point == job.end.point;
    if (begin >= night.to) break;  // both behind it
    // A moment that ends just as the night ends, or begins as it ends, is awake; one inside is not.
    if (begin <= night.from && end <= night.from) break;
    if (same) {
      const Ticks length = end - begin;
      end = night.from, begin = end - length;
    } else {
      end = std::min(end, night.from), begin = std::min(begin, night.from);
    }
  }
  if (begin == time(job.begin) && end == time(job.end)) return true;
  snapped_ = true;
  return lower(job.begin.point, begin - job.begin.shift) && lower(job.end.point, end - job.end.shift);
}

bool State::cross(const Across& across) {
  if (times_[across.begin.point] >= kNever || times_[across.end.point] >= kNever) return true;
  const auto& midnights = problem_.midnights;
  const auto after = std::upper_bound(midnights.begin(), midnights.end(), time(across.end));
  if (after == midnights.begin()) return false;
  const Ticks midnight = *(after - 1);
  if (time(across.begin) <= midnight) return true;
  snapped_ = true;
  return lower(across.begin.point, midnight - across.begin.shift);
}

// Is there a circle of distances that adds up to more than nothing?
bool State::turns_in_circles() const {
  std::vector<Ticks> least(problem_.points, 0);
  for (Number round = 0; round <= problem_.points; ++round) {
    bool moved = false;
    for (const auto& lags : by_after_)
      for (const Lag& lag : lags)
        if (least[lag.before] + lag.least > least[lag.after]) least[lag.after] = least[lag.before] + lag.least, moved = true;
    if (!moved) return false;
  }
  return true;
}

}  // namespace qtn::plan
