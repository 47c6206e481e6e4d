#include "plan/rivals.hpp"

#include <algorithm>

namespace qtn::plan {

Rivals::Rivals(const Problem& problem) : problem_(problem) {
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

Ticks Rivals::gap(Order::For what, Number first, Number second) const {
  if (what != Order::For::oven || problem_.jobs[second].heated_before || alike(first, second)) return 0;
  return problem_.ovens.change;
}

Lag Rivals::lag(const Order& order) const {
  const Moment& end = problem_.jobs[order.first].end;
  const Moment& begin = problem_.jobs[order.second].begin;
  return {end.point, begin.point, gap(order.what, order.first, order.second) + end.shift - begin.shift};
}

bool Rivals::holds(const Order& order, const std::vector<Ticks>& times) const {
  const Lag least = lag(order);
  return times[least.after] - times[least.before] >= least.least;
}

// Each begins before the other ends, or before the oven has changed its heat.
bool Rivals::clash(Order::For what, const Span& a, const Span& b) const {
  return !one_run(a.job, b.job) && a.end + gap(what, a.job, b.job) > b.begin && b.end + gap(what, b.job, a.job) > a.begin;
}

void Rivals::both_ways(Order::For what, Number a, Number b, std::vector<Order>& out) const {
  out.push_back({what, a, b});
  out.push_back({what, b, a});
}

std::vector<Rivals::Span> Rivals::spans(const std::vector<Number>& jobs, const std::vector<Ticks>& times) const {
  std::vector<Span> out;
  out.reserve(jobs.size());
  for (const Number job : jobs) {
    const Moment &begin = problem_.jobs[job].begin, &end = problem_.jobs[job].end;
    out.push_back({job, times[begin.point] + begin.shift, times[end.point] + end.shift});
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
      if (spans[j].end + problem_.ovens.change <= spans[i].begin || alike(spans[i].job, spans[j].job) || !clash(Order::For::oven, spans[i], spans[j])) continue;
      Rivalry& rivalry = out.emplace_back();
      rivalry.when = spans[i].begin;
      both_ways(Order::For::oven, spans[i].job, spans[j].job, rivalry.choices);
      ++found;
    }
}

void Rivals::find(const std::vector<Ticks>& times, std::size_t most, std::vector<Rivalry>& out) const {
  out.clear();
  crowds(spans(hands_, times), problem_.cooks, Order::For::hands, most, out);
  if (rings_.size() > static_cast<std::size_t>(std::max(problem_.rings, 0)))
    crowds(spans(rings_, times), problem_.rings, Order::For::ring, most, out);
  if (problem_.ovens.count == 1) {
    const std::vector<Span> bakes = spans(bakes_, times);
    unlike(bakes, most, out);
    crowds(bakes, problem_.ovens.shelves, Order::For::oven, most, out);
  } else if (!bakes_.empty()) {
    const std::vector<Span> bakes = spans(bakes_, times);
    unassigned(bakes, times, false, out);
    if (!out.empty() && out.back().choices.size() > 2) unassigned(bakes, times, true, out);
  }
  std::stable_sort(out.begin(), out.end(), [](const Rivalry& a, const Rivalry& b) { return a.when > b.when; });
  if (out.size() > most) out.resize(most);
}

std::vector<Order> Rivals::pairs() const {
  std::vector<Order> out;
  const auto all = [&](const std::vector<Number>& jobs, Order::For what, auto&& rivals) {
    for (std::size_t a = 0; a < jobs.size(); ++a)
      for (std::size_t b = a + 1; b < jobs.size(); ++b)
        if (!one_run(jobs[a], jobs[b]) && rivals(jobs[a], jobs[b])) out.push_back({what, jobs[a], jobs[b]});
  };
  const auto each = [](Number, Number) { return true; };
  if (problem_.cooks == 1) all(hands_, Order::For::hands, each);
  if (problem_.rings == 1) all(rings_, Order::For::ring, each);
  if (problem_.ovens.count == 1) all(bakes_, Order::For::oven, [&](Number a, Number b) { return problem_.ovens.shelves == 1 || !alike(a, b); });
  return out;
}

}  // namespace qtn::plan
