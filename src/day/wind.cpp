// The order in which a clock is wound, and its ticks.
#include <algorithm>
#include <numeric>

#include "day/winder.hpp"

namespace qtn {
namespace {

// A tick is one minute over this at the least: with it the longest times of a larder still fit.
constexpr Wide kFinest = 10'000'000;
// No wait of a kitchen is longer, in minutes: some twenty years. What is longer counts as this.
constexpr Wide kLongest = 10'000'000;

Ticks whole(const Fraction& minutes, Wide per_minute, bool up, bool& rounded) {
  const Fraction ticks = minutes * Fraction::of(per_minute, 1);
  const Wide bound = kLongest * per_minute;
  if (ticks.is_lost()) return 0;
  if (!ticks.is_whole()) rounded = true;
  const Wide value = up ? ticks.ceil() : ticks.floor();
  return static_cast<Ticks>(std::clamp(value, -bound, bound));
}

}  // namespace

Number Winder::add(const Doing& doing, const Minutes& minutes, Number label, Number follows) {
  const auto index = static_cast<Number>(clock_.doings.size());
  clock_.doings.push_back(doing);
  minutes_.push_back(minutes);
  clock_.network.activities.push_back({{}, label, follows});
  return index;
}

Number Winder::label(Said::What what, Index making, Index part, Index clause, Span span) {
  const auto index = static_cast<Number>(clock_.said.size());
  clock_.said.push_back({what, making, part, clause, span});
  return index;
}

void Winder::rule(plan::End before, plan::End after, const Fraction& least, Number label) {
  if (before.activity == kNothing || after.activity == kNothing || least.is_lost()) return;
  clock_.network.rules.push_back({before, after, 0, label});
  leasts_.push_back(least);
}

// The least common tick of all that is written, so that nothing is rounded; a length too fine for that is rounded, and
// the clock says so.
void Winder::ticks() {
  Wide per_minute = 1;
  bool too_fine = false;
  const auto take = [&](const Fraction& minutes) {
    if (minutes.is_lost()) return;
    const bool fits = minutes.under() <= kFinest;
    const Wide both = fits ? std::lcm(static_cast<std::int64_t>(per_minute), static_cast<std::int64_t>(minutes.under())) : kFinest + 1;
    if (both <= kFinest) per_minute = both;
    else too_fine = true;
  };
  for (const Minutes& one : minutes_) {
    take(one.least);
    if (one.most) take(*one.most);
  }
  for (const Fraction& least : leasts_) take(least);
  if (too_fine && per_minute * 60 <= kFinest) per_minute *= 60;  // then to the second at least
  clock_.per_minute = static_cast<Ticks>(per_minute);
  for (std::size_t i = 0; i < minutes_.size(); ++i) {
    plan::Length& length = clock_.network.activities[i].length;
    // What chance may do is rounded outwards, what the cook may choose inwards.
    const bool chance = minutes_[i].chance;
    length.least = whole(minutes_[i].least, per_minute, !chance, clock_.rounded);
    if (minutes_[i].most) length.most = std::max(length.least, whole(*minutes_[i].most, per_minute, chance, clock_.rounded));
    length.chance = minutes_[i].chance && length.most > length.least;
  }
  for (std::size_t i = 0; i < leasts_.size(); ++i)
    clock_.network.rules[i].least = whole(leasts_[i], per_minute, true, clock_.rounded);
}

Clock Winder::run() {
  clock_.makings = std::move(order_.makings);
  for (Index i = 0; i < clock_.makings.size(); ++i) making(i);
  taken();
  dishes();
  clock_.network.labels = static_cast<Number>(clock_.said.size());
  ticks();
  return std::move(clock_);
}

Clock wind(ClockOrder order) { return Winder(std::move(order)).run(); }

}  // namespace qtn
