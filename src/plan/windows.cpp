#include "plan/windows.hpp"

#include <algorithm>

namespace qtn::plan {
namespace {

bool unbounded(Ticks time) { return time >= kNever / 2 || time <= -kNever / 2; }

}  // namespace

Windows::Windows(const Problem& problem)
    : problem_(problem),
      late_(problem.points, kNever),
      early_(problem.points, -kNever),
      before_(problem.points, -1),
      after_(problem.points, -1),
      watched_by_(problem.points),
      is_sinking_(problem.points, 0),
      is_rising_(problem.points, 0),
      cause_(problem.points, kNothing),
      round_of_(problem.points, 0),
      why_(problem.points) {
  const auto number = [](std::size_t at) { return static_cast<Number>(at); };
  for (std::size_t i = 0; i < problem.lags.size(); ++i) link(problem.lags[i], Why::Kind::lag, number(i));
  for (std::size_t i = 0; i < problem.jobs.size(); ++i) {
    const Job& job = problem.jobs[i];
    link({job.begin.point, job.end.point, job.begin.shift - job.end.shift}, Why::Kind::job, number(i));
    if (job.awake && !problem.closed.empty()) watches_.push_back({Why::Kind::closed, number(i), job.begin, job.end});
  }
  for (std::size_t i = 0; i < problem.across.size(); ++i)
    watches_.push_back({Why::Kind::midnight, number(i), problem.across[i].begin, problem.across[i].end});
  for (std::size_t i = 0; i < watches_.size(); ++i) {
    watched_by_[watches_[i].begin.point].push_back(number(i));
    if (watches_[i].end.point != watches_[i].begin.point) watched_by_[watches_[i].end.point].push_back(number(i));
  }
}

void Windows::link(const Lag& lag, Why::Kind kind, Number index) {
  const auto at = static_cast<std::int32_t>(arcs_.size());
  arcs_.push_back({lag.before, index, kind, before_[lag.after], lag.least});
  arcs_.push_back({lag.after, index, kind, after_[lag.before], lag.least});
  before_[lag.after] = at;
  after_[lag.before] = at + 1;
}

// Bellman and Ford over the lags alone: does a round trip ask for more time than it takes?
bool Windows::cyclic() const {
  std::vector<Ticks> time(late_.size(), 0);
  for (std::size_t round = 0; round <= late_.size(); ++round) {
    bool moved = false;
    for (Point after = static_cast<Point>(late_.size()); after-- > 0;)
      for (std::int32_t at = before_[after]; at >= 0; at = arcs_[static_cast<std::size_t>(at)].next) {
        const Arc& arc = arcs_[static_cast<std::size_t>(at)];
        if (time[after] - arc.least >= time[arc.other]) continue;
        time[arc.other] = time[after] - arc.least;
        moved = true;
      }
    if (!moved) return false;
  }
  return true;
}

bool Windows::open() {
  if (cyclic()) return false;
  ++round_;
  for (std::size_t i = 0; i < problem_.bounds.size(); ++i) {
    const Bounds& bounds = problem_.bounds[i];
    if (!lower(bounds.point, bounds.not_after, kNothing, {Why::Kind::bound, static_cast<Number>(i)})) return false;
    if (!raise(bounds.point, bounds.not_before)) return false;
  }
  if (!sink()) return false;
  for (const Watch& watch : watches_)
    if (!watch_late(watch)) return false;
  if (!sink()) return false;
  for (const Watch& watch : watches_)
    if (!watch_early(watch)) return false;
  return rise();
}

bool Windows::add(const Lag& lag, Number index) {
  if (!unbounded(early_[lag.before]) && early_[lag.before] + lag.least > late_[lag.after]) return false;
  link(lag, Why::Kind::order, index);
  if (lag.before == lag.after) return lag.least <= 0;
  ++round_;
  newest_ = lag;
  adding_ = true;
  const bool held = unbounded(late_[lag.after]) ||
                    lower(lag.before, late_[lag.after] - lag.least, lag.after, {Why::Kind::order, index});
  const bool settled = held && sink();
  adding_ = false;
  if (!settled) return false;
  if (!unbounded(early_[lag.before]) && !raise(lag.after, early_[lag.before] + lag.least)) return false;
  return settle();
}

bool Windows::raise(Point point, Ticks time) {
  if (time <= early_[point]) return true;
  early_[point] = time;
  if (!is_rising_[point]) {
    is_rising_[point] = 1;
    rising_.push_back(point);
  }
  return time <= late_[point];
}

bool Windows::settle() {
  return sink() && rise();
}

bool Windows::lower(Point point, Ticks time, Point cause, Why why) {
  if (time >= late_[point]) return true;
  late_[point] = time;
  why_[point] = why;
  cause_[point] = cause;
  round_of_[point] = round_;
  if (time < early_[point]) return false;
  if (adding_ && point == newest_.after && closes_cycle(point)) return false;
  if (!is_sinking_[point]) {
    is_sinking_[point] = 1;
    sinking_.push_back(point);
  }
  return true;
}

// All that moves in a round moves because of the newest lag. If its own end was moved by lags alone, they are a cycle.
bool Windows::closes_cycle(Point point) const {
  for (Point at = cause_[point];; at = cause_[at]) {
    if (at == kNothing || round_of_[at] != round_) return false;
    if (at == newest_.before) return true;
  }
}

bool Windows::sink() {
  for (std::size_t next = 0; next < sinking_.size(); ++next) {
    const Point after = sinking_[next];
    is_sinking_[after] = 0;
    for (std::int32_t at = before_[after]; at >= 0; at = arcs_[static_cast<std::size_t>(at)].next) {
      const Arc& arc = arcs_[static_cast<std::size_t>(at)];
      if (late_[after] - arc.least < late_[arc.other] && !lower(arc.other, late_[after] - arc.least, after, {arc.kind, arc.index}))
        return false;
    }
    for (const Number watch : watched_by_[after])
      if (!watch_late(watches_[watch])) return false;
  }
  sinking_.clear();
  return true;
}

bool Windows::rise() {
  for (std::size_t next = 0; next < rising_.size(); ++next) {
    const Point before = rising_[next];
    is_rising_[before] = 0;
    for (std::int32_t at = after_[before]; at >= 0; at = arcs_[static_cast<std::size_t>(at)].next) {
      const Arc& arc = arcs_[static_cast<std::size_t>(at)];
      if (!raise(arc.other, early_[before] + arc.least)) return false;
    }
    for (const Number watch : watched_by_[before])
      if (!watch_early(watches_[watch])) return false;
  }
  rising_.clear();
  return true;
}

bool Windows::watch_late(const Watch& watch) {
  const Ticks begin = late(watch.begin), end = late(watch.end);
  if (watch.kind == Why::Kind::midnight) {
    if (unbounded(end)) return true;
    const auto after = std::upper_bound(problem_.midnights.begin(), problem_.midnights.end(), end);
    if (after == problem_.midnights.begin()) return false;
    return begin <= *(after - 1) || lower(watch.begin.point, *(after - 1) - watch.begin.shift, kNothing, {watch.kind, watch.index});
  }
  const Ticks both = std::min(begin, end);
  if (unbounded(both)) return true;
  // The last closed stretch that is over by then; the job lies before the next one.
  const auto next = std::upper_bound(problem_.closed.begin(), problem_.closed.end(), both,
                                     [](Ticks time, const Stretch& stretch) { return time < stretch.to; });
  if (next == problem_.closed.end()) return true;
  const Why why{watch.kind, watch.index};
  return (begin <= next->from || lower(watch.begin.point, next->from - watch.begin.shift, kNothing, why)) &&
         (end <= next->from || lower(watch.end.point, next->from - watch.end.shift, kNothing, why));
}

bool Windows::watch_early(const Watch& watch) {
  const Ticks begin = early(watch.begin), end = early(watch.end);
  if (watch.kind == Why::Kind::midnight) {
    if (unbounded(begin)) return true;
    const auto at = std::lower_bound(problem_.midnights.begin(), problem_.midnights.end(), begin);
    if (at == problem_.midnights.end()) return false;
    return raise(watch.end.point, *at - watch.end.shift);
  }
  const Ticks both = std::max(begin, end);
  if (unbounded(both)) return true;
  // The first closed stretch that begins at that time or after it; the job lies after the one before that.
  const auto next = std::lower_bound(problem_.closed.begin(), problem_.closed.end(), both,
                                     [](const Stretch& stretch, Ticks time) { return stretch.from < time; });
  if (next == problem_.closed.begin()) return true;
  return raise(watch.begin.point, (next - 1)->to - watch.begin.shift) && raise(watch.end.point, (next - 1)->to - watch.end.shift);
}

}  // namespace qtn::plan
