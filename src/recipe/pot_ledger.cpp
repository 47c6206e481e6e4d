#include "recipe/pot_ledger.hpp"

namespace qtn {
namespace {

// A weight that falls to `by` of itself by drying has its strengths in less; one that takes up water, in more.
void concentrate(Makeup& makeup, const Ends& by) {
  const Fraction one(1);
  for (Strength& strength : makeup.strengths) {
    if (by.high > one) strength.share.low /= by.high;
    if (by.low < one) strength.share.high /= by.low;
    if (strength.share.high > one || strength.share.high.is_lost()) strength.share.high = one;
  }
}

}  // namespace

void PotLedger::put(const Held& held) {
  things_.push_back(held);
  bool cure = held.makeup.meat.sign() > 0;
  for (const Strength& one : held.makeup.strengths) cure = cure || is_nitrite(one.name);
  cures_put_ += cure ? 1 : 0;
}

Load PotLedger::total() const {
  Load sum = mix_;
  for (const Held& held : things_) sum = sum + held.load;
  return sum;
}

void Held::drift(const Ends& by) {
  load = load.times(by);
  concentrate(makeup, by);
}

void PotLedger::scale(const Ends& by) {
  for (Held& held : things_) held.drift(by);
  mix_ = mix_.times(by);
}

void PotLedger::set(Dimension dimension, const Ends& amount) {
  const Ends now = total().in(dimension);
  const Load said = dimension == Dimension::volume ? Load{lost_ends(), amount} : Load{amount, lost_ends()};
  if (!is_lost(now) && now.low.sign() > 0) {
    const Ends by{amount.low / now.low, amount.high / now.high};
    const auto shrink = [&](Load& load) {
      Ends& known = dimension == Dimension::volume ? load.ml : load.grams;
      known = known * by;
      (dimension == Dimension::volume ? load.grams : load.ml) = lost_ends();
    };
    for (Held& held : things_) shrink(held.load), concentrate(held.makeup, by);
    if (mixed_) shrink(mix_);
    return;
  }
  for (Held& held : things_) held.load = {}, held.stirred_in = true;
  mix_ = said;
  mixed_ = true;
}

Held PotLedger::part_of(Held& held, const Ends& share) {
  Held taken = held;
  if (held.stirred_in) {
    taken.load = {lost_ends(), lost_ends()};
    taken.stirred_in = false;
    mix_ = {lost_ends(), lost_ends()};  // nobody knows how much of it that was
    return taken;
  }
  taken.load = held.load.times(share);
  const Ends left{Fraction(1) - share.low, Fraction(1) - share.high};
  held.load = held.load.times(left);
  return taken;
}

std::vector<Held> PotLedger::take_all() {
  std::vector<Held> all = std::move(things_);
  things_.clear();
  if (mixed_) all.push_back({{}, mix_, false, false});
  mix_ = {};
  mixed_ = false;
  return all;
}

Held PotLedger::skim(const Target& what, const Load& load) {
  const Load now = total();
  const auto less = [](const Ends& whole, const Ends& part) {
    return Ends{whole.low - part.low, whole.high - part.high};
  };
  const Load left{less(now.grams, load.grams), less(now.ml, load.ml)};
  const bool weight = !is_lost(left.grams);
  if (weight || !is_lost(left.ml))
    set(weight ? Dimension::mass : Dimension::volume, weight ? left.grams : left.ml);
  else
    mix_ = {lost_ends(), lost_ends()}, mixed_ = true;
  return {what, load, false, false};
}

}  // namespace qtn
