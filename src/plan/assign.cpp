// Several ovens: which bake goes into which, and which bakes no choice of ovens can hold at once.
#include <algorithm>

#include "plan/rivals.hpp"

namespace qtn::plan {

// Bakes in the order of their beginning, and who is in whose way.
class Rivals::Fit {
 public:
  Fit(const Rivals& rivals, std::vector<Span> spans) : rivals_(rivals), spans_(std::move(spans)), earlier_(spans_.size()), mates_(spans_.size()) {
    std::reverse(spans_.begin(), spans_.end());
    for (std::size_t at = 0; at < spans_.size(); ++at)
      for (std::size_t i = 0; i < at; ++i) {
        if (rivals.clash(Order::For::oven, spans_[i], spans_[at])) earlier_[at].push_back(i);
        if (rivals.one_oven(spans_[i].job, spans_[at].job)) mates_[at].push_back(i);
      }
    oven_.resize(spans_.size());
    taken_.resize(spans_.size());
  }

  std::size_t size() const { return spans_.size(); }
  Number job(std::size_t at) const { return spans_[at].job; }
  Number oven(std::size_t at) const { return oven_[at]; }
  const std::vector<std::size_t>& earlier(std::size_t at) const { return earlier_[at]; }
  Ticks begin(std::size_t at) const { return spans_[at].begin; }
  bool cold(std::size_t before, std::size_t at) const { return rivals_.cold(spans_[before], spans_[at]); }

  // Is there an oven for each of these? Tries the ovens in turn, the bakes in order of their beginning.
  bool holds(std::vector<std::size_t> bakes) {
    std::sort(bakes.begin(), bakes.end());
    std::fill(taken_.begin(), taken_.end(), 0);
    for (const std::size_t bake : bakes) taken_[bake] = 1, oven_[bake] = 0;
    const std::size_t ovens = shelves().size();
    for (std::size_t at = 0; at < bakes.size();) {
      Number& oven = oven_[bakes[at]];
      while (oven < ovens && !(worth(bakes, at) && fits(bakes[at]))) ++oven;
      if (oven < ovens) {
        if (++at < bakes.size()) oven_[bakes[at]] = 0;
        continue;
      }
      if (at == 0) return false;
      ++oven_[bakes[--at]];
    }
    return true;
  }

 private:
  const std::vector<int>& shelves() const { return rivals_.problem_.ovens.shelves; }

  // The oven of those that it must stand with; else of empty ovens alike only the first.
  bool worth(const std::vector<std::size_t>& bakes, std::size_t at) const {
    const std::size_t bake = bakes[at];
    for (const std::size_t mate : mates_[bake])
      if (taken_[mate] != 0) return oven_[bake] == oven_[mate];
    const auto empty = [&](Number which) {
      for (std::size_t i = 0; i < at; ++i)
        if (oven_[bakes[i]] == which) return false;
      return true;
    };
    for (Number other = 0; other < oven_[bake]; ++other)
      if (shelves()[other] == shelves()[oven_[bake]] && empty(other)) return !empty(oven_[bake]);
    return true;
  }

  // All that clash with a bake and began before it share its first instant, so counting them counts the shelves in use.
  bool fits(std::size_t bake) {
    int used = 1;
    runs_.clear();
    for (const std::size_t i : earlier_[bake]) {
      if (taken_[i] == 0 || oven_[i] != oven_[bake]) continue;
      if (!rivals_.alike(spans_[i].job, spans_[bake].job) || rivals_.cold(spans_[i], spans_[bake])) return false;
      const Number run = rivals_.problem_.jobs[spans_[i].job].run;
      if (run != kNothing && std::find(runs_.begin(), runs_.end(), run) != runs_.end()) continue;
      runs_.push_back(run);
      ++used;
    }
    return used <= shelves()[oven_[bake]];
  }

  const Rivals& rivals_;
  std::vector<Span> spans_;
  std::vector<std::vector<std::size_t>> earlier_, mates_;  // of each: those before it that clash; that stand in its oven
  std::vector<Number> oven_;
  std::vector<char> taken_;
  std::vector<Number> runs_;
};

std::vector<Number> Rivals::assign(const std::vector<Ticks>& times) const {
  Fit fit(*this, spans(bakes_, times));
  std::vector<std::size_t> all(fit.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  if (!fit.holds(all)) return {};
  std::vector<Number> out(problem_.jobs.size(), kNothing);
  for (const std::size_t at : all) out[fit.job(at)] = fit.oven(at);
  return out;
}

// Whether bakes fit depends on nothing but which of them clash, and which of these go in while the other heats: so one pair
// of those that do not fit must be set apart, or be in before the heating.
void Rivals::unassigned(const std::vector<Ticks>& times, std::vector<Rivalry>& out) const {
  Fit fit(*this, spans(bakes_, times));
  std::vector<std::size_t> all(fit.size()), taken;
  std::iota(all.rbegin(), all.rend(), std::size_t{0});
  if (fit.holds(all)) return;
  // As few as do not fit, of the latest there are.
  do taken.push_back(all[taken.size()]);
  while (fit.holds(taken));
  for (std::size_t i = taken.size(); i-- > 0;) {
    std::vector<std::size_t> fewer = taken;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
    if (!fewer.empty() && !fit.holds(fewer)) taken = std::move(fewer);
  }
  Rivalry& rivalry = out.emplace_back();
  rivalry.when = -kNever;
  for (const std::size_t at : taken) {
    rivalry.when = std::max(rivalry.when, fit.begin(at));
    for (const std::size_t before : fit.earlier(at)) {
      if (std::find(taken.begin(), taken.end(), before) == taken.end()) continue;
      if (fit.cold(before, at)) warm_ways(fit.job(at), fit.job(before), rivalry.choices);
      else both_ways(Order::For::oven, fit.job(before), fit.job(at), rivalry.choices);
    }
  }
}

}  // namespace qtn::plan
