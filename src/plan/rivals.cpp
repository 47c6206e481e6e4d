#include "plan/rivals.hpp"

#include <algorithm>

namespace qtn::plan {

Rivals::Rivals(const Problem& problem)
    : problem_(problem), single_(std::all_of(problem.ovens.shelves.begin(), problem.ovens.shelves.end(), [](int count) { return count == 1; })) {
  for (Number job = 0; job < problem.jobs.size(); ++job) {
    if (problem.jobs[job].hands) hands_.push_back(job);
    if (problem.jobs[job].ring) rings_.push_back(job);
    if (problem.jobs[job].oven) bakes_.push_back(job);
  }
}

bool Rivals::alike(Number a, Number b) const {
  const int apart = problem_.jobs[a].heat - problem_.jobs[b].heat;
  return (apart < 0 ? -apart : apart) <= problem_.ovens.tolerance;
}

bool Rivals::waits(Number bake, Number heating) const {
  const auto heats = [&](Number job) { return job != kNothing && problem_.jobs[job].heats; };
  return !single_ && heats(heating) && !heats(bake) && !heats(problem_.jobs[bake].goes_on) && alike(bake, heating) && !one_run(bake, heating);
}

Ticks Rivals::gap(Order::For what, Number first, Number second) const {
  if (what != Order::For::oven || problem_.jobs[second].heats || alike(first, second)) return 0;
  return problem_.ovens.change;
}

Lag Rivals::lag(const Order& order) const {
  const Job& second = problem_.jobs[order.second];
  const Moment& end = order.what == Order::For::warm ? problem_.jobs[order.first].begin : problem_.jobs[order.first].end;
  const Moment& begin = order.what == Order::For::heat ? problem_.jobs[second.goes_on].end : second.begin;
  return {end.point, begin.point, gap(order.what, order.first, order.second) + end.shift - begin.shift};
}

bool Rivals::holds(const Order& order, const std::vector<Ticks>& times) const {
  const Lag least = lag(order);
  return times[least.after] - times[least.before] >= least.least;
}

// It is over in time for the oven to change its heat too, or before the heat was made that the other takes over.
bool Rivals::first_goes(Order::For what, const Span& first, const Span& second) const {
  return first.end + gap(what, first.job, second.job) <= second.begin || (what == Order::For::oven && first.end <= second.taken_over);
}

void Rivals::one_way(Order::For what, Number first, Number second, std::vector<Order>& out) const {
  if (gap(what, first, second) > 0 && problem_.jobs[second].goes_on != kNothing) out.push_back({Order::For::heat, first, second});
  out.push_back({what, first, second});
}

void Rivals::both_ways(Order::For what, Number a, Number b, std::vector<Order>& out) const {
  one_way(what, a, b, out);
  one_way(what, b, a, out);
}

void Rivals::warm_ways(Number bake, Number heating, std::vector<Order>& out) const {
  out.push_back({Order::For::oven, heating, bake});
  out.push_back({Order::For::warm, bake, heating});
}

std::vector<Rivals::Span> Rivals::spans(const std::vector<Number>& jobs, const std::vector<Ticks>& times) const {
  std::vector<Span> out;
  out.reserve(jobs.size());
  for (const Number job : jobs) {
    const auto at = [&](const Moment& moment) { return times[moment.point] + moment.shift; };
    const Job& one = problem_.jobs[job];
    out.push_back({job, at(one.begin), at(one.end), one.goes_on == kNothing ? -kNever : at(problem_.jobs[one.goes_on].end)});
  }
  std::sort(out.begin(), out.end(), [](const Span& a, const Span& b) { return a.begin != b.begin ? a.begin > b.begin : a.job < b.job; });
  return out;
}

// More jobs at one instant than there are places: the instant is the beginning of the last of them.
void Rivals::crowds(const std::vector<Span>& spans, int capacity, Order::For what, std::size_t most, std::vector<Rivalry>& out) const {
  std::vector<Number> crowd;
  std::size_t found = 0;
  std::vector<Ticks> ends(spans.size());  // the last end of those from here on
  for (std::size_t i = spans.size(); i-- > 0;) ends[i] = std::max(spans[i].end, i + 1 < spans.size() ? ends[i + 1] : -kNever);
  for (std::size_t i = 0; i < spans.size() && found < most; ++i) {
    crowd.assign(1, spans[i].job);
    const auto add = [&] {
      Rivalry& rivalry = out.emplace_back();
      rivalry.when = spans[i].begin;
      for (std::size_t a = 0; a < crowd.size(); ++a)
        for (std::size_t b = a + 1; b < crowd.size(); ++b) both_ways(what, crowd[a], crowd[b], rivalry.choices);
      ++found;
    };
    if (capacity < 1) return add();
    for (std::size_t j = i + 1; j < spans.size() && found < most && ends[j] > spans[i].begin; ++j) {
      if (spans[j].end <= spans[i].begin || !clash(what, spans[i], spans[j])) continue;  // most end long before
      const bool counted = std::any_of(crowd.begin(), crowd.end(), [&](Number job) { return one_run(job, spans[j].job); });
      // Unlike bakes are rivals as a pair already.
      const bool other = what == Order::For::oven && std::any_of(crowd.begin(), crowd.end(), [&](Number job) { return !alike(job, spans[j].job); });
      if (counted || other) continue;
      crowd.push_back(spans[j].job);
      if (crowd.size() <= static_cast<std::size_t>(capacity)) continue;
      add();
      crowd.pop_back();  // the next one in its place makes another crowd
    }
  }
}

void Rivals::unlike(const std::vector<Span>& spans, std::size_t most, std::vector<Rivalry>& out) const {
  std::size_t found = 0;
  for (std::size_t i = 0; i < spans.size(); ++i)
    for (std::size_t j = i + 1; j < spans.size() && found < most; ++j) {
      if (spans[j].end + problem_.ovens.change <= spans[i].begin) continue;
      const bool too_cold = cold(spans[j], spans[i]);
      if (!too_cold && (alike(spans[i].job, spans[j].job) || !clash(Order::For::oven, spans[i], spans[j]))) continue;
      Rivalry& rivalry = out.emplace_back();
      rivalry.when = spans[i].begin;
      if (too_cold) warm_ways(spans[i].job, spans[j].job, rivalry.choices);
      else both_ways(Order::For::oven, spans[i].job, spans[j].job, rivalry.choices);
      ++found;
    }
}

void Rivals::find(const std::vector<Ticks>& times, std::size_t most, std::vector<Rivalry>& out) const {
  out.clear();
  crowds(spans(hands_, times), problem_.cooks, Order::For::hands, most, out);
  if (rings_.size() > static_cast<std::size_t>(std::max(problem_.rings, 0)))
    crowds(spans(rings_, times), problem_.rings, Order::For::ring, most, out);
  if (problem_.ovens.count() == 1) {
    const std::vector<Span> bakes = spans(bakes_, times);
    unlike(bakes, most, out);
    crowds(bakes, problem_.ovens.shelves.front(), Order::For::oven, most, out);
  } else if (!bakes_.empty()) {
    unassigned(times, out);
  }
  std::stable_sort(out.begin(), out.end(), [](const Rivalry& a, const Rivalry& b) { return a.when > b.when; });
  if (out.size() > most) out.resize(most);
}

std::vector<std::pair<Lag, Lag>> Rivals::pairs() const {
  std::vector<std::pair<Lag, Lag>> out;
  const auto one_way = [&](Order::For what, Number first, Number second) {
    Lag least = lag({what, first, second});
    // It may end before the bake whose heat the other takes over, and then there is no change.
    if (what == Order::For::oven && problem_.jobs[second].goes_on != kNothing) least.least -= gap(what, first, second);
    return least;
  };
  const auto all = [&](const std::vector<Number>& jobs, Order::For what, auto&& rivals) {
    for (std::size_t a = 0; a < jobs.size(); ++a)
      for (std::size_t b = a + 1; b < jobs.size(); ++b)
        if (!one_run(jobs[a], jobs[b]) && rivals(jobs[a], jobs[b]))
          out.push_back({one_way(what, jobs[a], jobs[b]), one_way(what, jobs[b], jobs[a])});
  };
  const auto each = [](Number, Number) { return true; };
  if (problem_.cooks == 1) all(hands_, Order::For::hands, each);
  if (problem_.rings == 1) all(rings_, Order::For::ring, each);
  all(bakes_, Order::For::oven, [&](Number a, Number b) { return one_oven(a, b) && (single_ || !alike(a, b)); });
  for (const Number heating : bakes_)
    for (const Number bake : bakes_)
      if (waits(bake, heating) && one_oven(bake, heating))
        out.push_back({lag({Order::For::oven, heating, bake}), lag({Order::For::warm, bake, heating})});
  return out;
}

}  // namespace qtn::plan
