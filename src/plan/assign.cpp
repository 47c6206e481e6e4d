// Several ovens: which bake goes into which, and which bakes no choice of ovens can hold at once.
#include <algorithm>

#include "plan/rivals.hpp"

namespace qtn::plan {

// Tries the ovens in turn, the bakes in order of their beginning; of the ovens still empty only the first. All that clash
// with a bake and began before it share its first instant, so counting them counts the shelves in use.
std::vector<Number> Rivals::assign(const std::vector<Number>& bakes, const std::vector<Ticks>& times) const {
  std::vector<Span> order = spans(bakes, times);
  std::reverse(order.begin(), order.end());
  const auto ovens = static_cast<Number>(std::max(problem_.ovens.count, 0));
  std::vector<Number> oven(order.size(), 0);
  std::vector<std::vector<std::size_t>> earlier(order.size());
  for (std::size_t at = 0; at < order.size(); ++at)
    for (std::size_t i = 0; i < at; ++i)
      if (clash(Order::For::oven, order[i], order[at])) earlier[at].push_back(i);
  const auto fits = [&](std::size_t at) {
    int used = 1;
    std::vector<Number> runs;
    for (const std::size_t i : earlier[at]) {
      if (oven[i] != oven[at]) continue;
      if (!alike(order[i].job, order[at].job)) return false;
      const Number run = problem_.jobs[order[i].job].run;
      if (run != kNothing && std::find(runs.begin(), runs.end(), run) != runs.end()) continue;
      runs.push_back(run);
      if (++used > problem_.ovens.shelves) return false;
    }
    return used <= problem_.ovens.shelves;
  };
  std::size_t at = 0;
  while (at < order.size()) {
    // Nothing in its way: whatever oven will do, and there is nothing to come back to.
    Number limit = 0;
    for (std::size_t i = 0; i < at; ++i) limit = std::max(limit, oven[i] + 1);
    limit = std::min(limit + 1, ovens);
    while (oven[at] < limit && !fits(at)) ++oven[at];
    if (oven[at] < limit) {
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
