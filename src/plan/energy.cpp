#include "plan/energy.hpp"

#include <algorithm>

namespace qtn::plan {

Energy::Energy(const Problem& problem, const std::vector<Ticks>& lengths) : problem_(problem) {
  Ticks closed = 0;
  for (const Stretch& stretch : problem.closed) {
    closed_before_.push_back(closed);
    closed += stretch.to - stretch.from;
  }
  const auto place = [&](Ticks count, bool Job::* wants) {
    Place out{count, true, {}};
    for (std::size_t i = 0; i < problem.jobs.size(); ++i) {
      const Job& job = problem.jobs[i];
      if (!(job.*wants) || lengths[i] == 0) continue;
      out.works.push_back({job.begin, job.end, lengths[i]});
      out.by_day = out.by_day && job.awake;
    }
    if (out.works.size() > static_cast<std::size_t>(std::max<Ticks>(count, 1))) places_.push_back(std::move(out));
  };
  place(problem.cooks, &Job::hands);
  place(problem.rings, &Job::ring);
  place(Ticks{problem.ovens.count} * problem.ovens.shelves, &Job::oven);
}

Ticks Energy::awake(Ticks time) const {
  const auto next = std::upper_bound(problem_.closed.begin(), problem_.closed.end(), time, [](Ticks t, const Stretch& s) { return t < s.from; });
  if (next == problem_.closed.begin()) return time;
  const auto last = static_cast<std::size_t>(next - problem_.closed.begin()) - 1;
  return time - closed_before_[last] - (std::min(time, problem_.closed[last].to) - problem_.closed[last].from);
}

Ticks Energy::asleep(Ticks awake, bool earliest) const {
  Ticks time = awake;
  for (std::size_t i = 0; i < problem_.closed.size(); ++i) {
    const Ticks from = problem_.closed[i].from - closed_before_[i];  // in waking ticks
    if (earliest ? awake <= from : awake < from) break;
    time = awake + closed_before_[i] + problem_.closed[i].to - problem_.closed[i].from;
  }
  return time;
}

bool Energy::narrow(Windows& windows) const {
  for (const Place& place : places_)
    if (!narrow(place, windows)) return false;
  return true;
}

// For every deadline: the jobs due by it, the latest released first. `windows` is ordered by release.
bool Energy::push(std::vector<Window>& windows, Ticks places) {
  struct Set {
    Ticks from, work, done;  // `done`: when all but one place of it can be free for another job
  };
  static thread_local std::vector<Set> sets;
  for (const Window& deadline : windows) {
    const Ticks to = deadline.to;
    Ticks work = 0, done = -kNever;
    sets.clear();
    for (std::size_t i = windows.size(); i-- > 0;) {
      if (windows[i].to > to) continue;
      work += windows[i].length;
      const Ticks from = windows[i].from;
      if (places * from + work > places * to) return false;
      const Ticks rest = work - (places - 1) * (to - from);
      if (rest > 0) done = std::max(done, from + rest);
      sets.push_back({from, work, done});
    }
    if (done == -kNever) continue;
    // Releases go down along `sets`; jobs are taken from the first released on, so from the back.
    Ticks most = -kNever, after = -kNever;  // over the sets released no later than the job
    std::size_t later = sets.size();
    for (Window& job : windows) {
      while (later > 0 && sets[later - 1].from <= job.from) {
        --later;
        if (places * sets[later].from + sets[later].work > most) {
          most = places * sets[later].from + sets[later].work;
          after = sets[later].done;
        }
      }
      if (job.to <= to) continue;
      if (most + job.length > places * to) job.least = std::max(job.least, after);
      if (later > 0 && places * job.from + sets[later - 1].work + job.length > places * to)
        job.least = std::max(job.least, sets[later - 1].done);
    }
  }
  return true;
}

bool Energy::narrow(const Place& place, Windows& windows) const {
  const bool by_day = place.by_day && !problem_.closed.empty();
  const auto there = [&](Ticks time) { return by_day ? awake(time) : time; };
  for (const bool turned : {false, true}) {
    spans_.clear();
    for (std::size_t i = 0; i < place.works.size(); ++i) {
      const Work& work = place.works[i];
      const Ticks from = windows.early(work.begin), to = windows.late(work.end);
      if (from <= -kNever / 2) continue;
      Window window{there(from), there(to), work.length, 0, i};
      if (turned) window = {-window.to, -window.from, work.length, 0, i};
      window.least = window.from;
      spans_.push_back(window);
    }
    if (spans_.size() <= static_cast<std::size_t>(place.count)) return true;
    std::sort(spans_.begin(), spans_.end(), [](const Window& a, const Window& b) { return a.from != b.from ? a.from < b.from : a.work < b.work; });
    if (!push(spans_, place.count)) return false;
    for (const Window& window : spans_) {
      if (window.least <= window.from) continue;
      const Work& work = place.works[window.work];
      if (!turned) {
        const Ticks time = by_day ? asleep(window.least, true) : window.least;
        if (!windows.raise(work.begin.point, time - work.begin.shift)) return false;
      } else {
        const Ticks time = by_day ? asleep(-window.least, false) : -window.least;
        if (!windows.lower(work.end.point, time - work.end.shift)) return false;
      }
    }
    if (!windows.settle()) return false;
  }
  return true;
}

}  // namespace qtn::plan
