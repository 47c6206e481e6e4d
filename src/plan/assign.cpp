// Several ovens: which bake goes into which, and which bakes no choice of ovens can hold at once.
#include <algorithm>

#include "plan/rivals.hpp"

namespace qtn::plan {

// Tries the ovens in turn, the bakes in order of their beginning; of the ovens still empty only the first. All that clash
// with a bake and began before it share its first instant, so counting them counts the shelves in use.
std::vector<Number> Rivals::assign(const std::vector<Number>& bakes, const std::vector<Ticks>& times) const {
  std::vector<Span> order = spans(bakes, times);
  std::reverse(order.begin(), order.end());
  const std::vector<int>& shelves = problem_.ovens.shelves;
  const auto ovens = static_cast<Number>(shelves.size());
  std::vector<Number> oven(order.size(), 0);
  std::vector<std::vector<std::size_t>> earlier(order.size());
  std::vector<std::size_t> mate(order.size(), order.size());  // the first of those that stand in its oven
  for (std::size_t at = 0; at < order.size(); ++at)
    for (std::size_t i = at; i-- > 0;) {
      if (clash(Order::For::oven, order[i], order[at])) earlier[at].push_back(i);
      if (one_oven(order[i].job, order[at].job)) mate[at] = i;
    }
  // Of empty ovens alike only the first.
  const auto worth = [&](std::size_t at) {
    if (mate[at] < at) return oven[at] == oven[mate[at]];
    const auto empty = [&](Number which) { return std::find(oven.begin(), oven.begin() + static_cast<std::ptrdiff_t>(at), which) == oven.begin() + static_cast<std::ptrdiff_t>(at); };
    for (Number other = 0; other < oven[at]; ++other)
      if (shelves[other] == shelves[oven[at]] && empty(other)) return !empty(oven[at]);
    return true;
  };
  const auto fits = [&](std::size_t at) {
    int used = 1;
    std::vector<Number> runs;
    for (const std::size_t i : earlier[at]) {
      if (oven[i] != oven[at]) continue;
      if (!alike(order[i].job, order[at].job)) return false;
      const Number run = problem_.jobs[order[i].job].run;
      if (run != kNothing && std::find(runs.begin(), runs.end(), run) != runs.end()) continue;
      runs.push_back(run);
      ++used;
    }
    return used <= shelves[oven[at]];
  };
  std::size_t at = 0;
  while (at < order.size()) {
    while (oven[at] < ovens && !(worth(at) && fits(at))) ++oven[at];
    if (oven[at] < ovens) {
      if (++at < order.size()) oven[at] = 0;
      continue;
    }
    if (at == 0) return {};
    ++oven[--at];
  }
  std::vector<Number> out(problem_.jobs.size(), kNothing);
  for (std::size_t i = 0; i < order.size(); ++i) out[order[i].job] = oven[i];
  return out;
}

// Whether bakes fit depends on nothing but which of them clash, so one pair of those that do not fit must be set apart.
void Rivals::unassigned(const std::vector<Span>& spans, const std::vector<Ticks>& times, bool from_the_end,
                        std::vector<Rivalry>& out) const {
  std::vector<Number> all, taken;
  for (const Span& span : spans) all.push_back(span.job);
  if (!assign(all, times).empty()) return;
  if (from_the_end) std::reverse(all.begin(), all.end());
  for (const Number job : all) {
    taken.push_back(job);
    if (assign(taken, times).empty()) break;
  }
  for (std::size_t i = taken.size(); i-- > 0;) {
    std::vector<Number> fewer = taken;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
    if (!fewer.empty() && assign(fewer, times).empty()) taken = std::move(fewer);
  }
  Rivalry& rivalry = out.emplace_back();
  rivalry.when = -kNever;
  for (const Span& a : spans) {
    if (std::find(taken.begin(), taken.end(), a.job) == taken.end()) continue;
    rivalry.when = std::max(rivalry.when, a.begin);
    for (const Span& b : spans)
      if (a.job < b.job && std::find(taken.begin(), taken.end(), b.job) != taken.end() && clash(Order::For::oven, a, b))
        both_ways(Order::For::oven, a.job, b.job, rivalry.choices);
  }
}

}  // namespace qtn::plan
