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
    Place out{count, true, {}, {}};
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
  place(problem.ovens.all_shelves(), &Job::oven);
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

bool Energy::follow(Facts& facts) {
  for (Place& place : places_) {
    if (!moved(place, facts)) continue;
    for (const bool turned : {false, true})
      if (!follow(place, turned, facts)) return false;
    moved(place, facts);
  }
  return true;
}

// Has any of its windows changed since all that follows from them was told?
bool Energy::moved(Place& place, const Facts& facts) const {
  bool out = place.seen.empty();
  place.seen.resize(place.works.size(), {-kNever, kNever});
  for (std::size_t i = 0; i < place.works.size(); ++i) {
    const std::pair now{facts.early(place.works[i].begin), facts.late(place.works[i].end)};
    out = out || place.seen[i] != now;
    place.seen[i] = now;
  }
  return out;
}

// For every deadline: the jobs due by it, the latest released first. `spans_` is ordered by release.
bool Energy::push(Ticks places) const {
  deadlines_.clear();
  from_.clear(), to_.clear(), length_.clear();
  for (const Window& window : spans_) {
    deadlines_.push_back(window.to);
    from_.push_back(places * window.from), to_.push_back(window.to), length_.push_back(window.length);
  }
  std::sort(deadlines_.begin(), deadlines_.end());
  deadlines_.erase(std::unique(deadlines_.begin(), deadlines_.end()), deadlines_.end());
  for (const Ticks to : deadlines_) {
    std::size_t end = spans_.size();
    while (to_[end - 1] > to && from_[end - 1] >= places * to) --end;
    Ticks work = 0, fullest = -kNever, longest = 0;  // `longest`: of those due later
    for (std::size_t i = end; i-- > 0;) {
      const Ticks due = -Ticks{to_[i] <= to};  // all bits or none: to branch here would take longest of all
      work += length_[i] & due;
      longest = std::max(longest, length_[i] & ~due);
      fullest = std::max(fullest, from_[i] + work);
    }
    const Ticks spare = places * to - fullest;
    if (spare < 0) return overfull(to, places), false;
    if (spare < longest) press(to, end, spare, places);
  }
  return true;
}

void Energy::overfull(Ticks to, Ticks places) const {
  Ticks work = 0;
  for (std::size_t i = spans_.size(); i-- > 0;) {
    if (spans_[i].to > to) continue;
    work += spans_[i].length;
    over_ = {spans_[i].from, to};
    if (places * spans_[i].from + work > places * to) return;
  }
}

// Those that do not fit beside what is due by then come after it.
void Energy::press(Ticks to, std::size_t end, Ticks spare, Ticks places) const {
  Ticks work = 0, done = -kNever;
  sets_.clear();
  for (std::size_t i = end; i-- > 0;) {
    if (spans_[i].to > to) continue;
    work += spans_[i].length;
    const Ticks from = spans_[i].from, rest = work - (places - 1) * (to - from);
    if (rest > 0) done = std::max(done, from + rest);
    sets_.push_back({from, work, done});
  }
  if (done == -kNever) return;
  // Releases go down along `sets_`; jobs are taken from the first released on, so from the back.
  Ticks most = -kNever;  // over the sets released no later than the job
  std::size_t fullest = 0, later = sets_.size();
  for (std::size_t i = 0; i < end; ++i) {
    Window& job = spans_[i];
    while (later > 0 && sets_[later - 1].from <= job.from) {
      --later;
      if (places * sets_[later].from + sets_[later].work > most) {
        most = places * sets_[later].from + sets_[later].work;
        fullest = later;
      }
    }
    if (job.to <= to || job.length <= spare) continue;
    const auto after = [&](const Set& set) {
      if (set.done <= job.least) return;
      job.least = set.done;
      job.set_from = set.from, job.set_to = to;
    };
    if (most + job.length > places * to) after(sets_[fullest]);
    if (later > 0 && places * job.from + sets_[later - 1].work + job.length > places * to) after(sets_[later - 1]);
  }
}

bool Energy::follow(const Place& place, bool turned, Facts& facts) const {
  const bool by_day = place.by_day && !problem_.closed.empty();
  const auto there = [&](Ticks time) { return by_day ? awake(time) : time; };
  spans_.clear();
  for (std::size_t i = 0; i < place.works.size(); ++i) {
    const Work& work = place.works[i];
    const Ticks from = facts.early(work.begin), to = facts.late(work.end);
    if (from <= -kNever / 2) continue;
    Window window{there(from), there(to), work.length, i};
    if (turned) window = {-window.to, -window.from, work.length, i};
    window.least = window.from;
    spans_.push_back(window);
  }
  if (spans_.size() <= static_cast<std::size_t>(place.count)) return true;
  std::sort(spans_.begin(), spans_.end(), [](const Window& a, const Window& b) { return a.from != b.from ? a.from < b.from : a.work < b.work; });
  // Those within a stretch of time: all that is said of them is that they are.
  const auto within = [&](Ticks from, Ticks to) {
    because_.clear();
    Ticks early = kNever, late = -kNever;
    for (const int turn : {0, 1})
      for (const Window& window : spans_) {
        if (window.from < from || window.to > to) continue;
        const Work& work = place.works[window.work];
        if (turn == 0) {
          early = std::min(early, facts.early(work.begin)), late = std::max(late, facts.late(work.end));
          continue;
        }
        because_.push_back(not_before(work.begin, early));
        because_.push_back(not_after(work.end, late));
      }
  };
  if (!push(place.count)) {
    within(over_.first, over_.second);
    return facts.clash(because_);
  }
  for (const Window& window : spans_) {
    if (window.least <= window.from) continue;
    const Work& work = place.works[window.work];
    const Ticks time = turned ? -window.least : window.least;
    const Ticks there_again = by_day ? asleep(time, !turned) : time;
    const Fact fact = turned ? not_after(work.end, there_again) : not_before(work.begin, there_again);
    if (facts.holds(fact)) continue;
    within(window.set_from, window.set_to);
    because_.push_back(turned ? not_after(work.end, facts.late(work.end)) : not_before(work.begin, facts.early(work.begin)));
    if (!facts.tell(fact, because_)) return false;
  }
  return true;
}

}  // namespace qtn::plan
