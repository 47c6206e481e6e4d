// What came out of the equations, looked over: lines that nothing fixed, amounts of nothing or less, stated amounts
// that do not fit.
#include "recipe/ratio_system.hpp"

namespace qtn {

// Amounts that are wrong in themselves, and lines that nothing fixed.
void RatioSystem::look_over() {
  if (system_.gave_up()) {
    troubles_.clear();
    for (Index i = 0; i < recipe_.lines.size() && troubles_.empty(); ++i)
      if (has(i)) trouble(RatioTrouble::too_long, i);
    return;
  }
  for (const Index i : unproved_) {
    if (!system_.is_known(var_[i])) continue;
    const Quantity& stated = size_stated(recipe_, recipe_.lines[i])->amount;
    const Fraction wanted = middle(sized(i, stated, dim_[i])), found = system_.value(var_[i]);
    if ((found - wanted).abs() <= wanted.abs() * tolerance(stated.manner, recipe_.tolerance())) continue;
    RatioTrouble& one = trouble(RatioTrouble::clash, i);
    one.wanted = wanted, one.found = found;
    for (const Equation& equation : equations_)
      if (equation.stated && equation.line < i && recipe_.lines[equation.line].part == one.part)
        one.other = equation.line;
  }
  for (Index p = 0; p < recipe_.parts.size(); ++p)
    if (included(p)) look_over(p);
}

void RatioSystem::look_over(Index part) {
  const Slice lines = recipe_.parts[part].lines;
  std::vector<Index> open, zero;
  bool spoiled = recipe_.parts[part].disturbed;
  for (Index i = lines.first; i < lines.end(); ++i) {
    if (!has(i)) continue;
    spoiled = spoiled || spoiled_[i];
    if (spoiled_[i]) continue;
    if (!system_.is_known(var_[i]))
      open.push_back(i);
    else if (value(i).sign() < 0)
      trouble(RatioTrouble::below_zero, i).found = value(i), spoiled_[i] = true;
    else if (value(i).is_zero() && !recipe_.lines[i].written.low.is_zero())
      zero.push_back(i);
  }
  const auto say = [&](RatioTrouble::Kind kind, const std::vector<Index>& those) {
    if (those.empty()) return;
    RatioTrouble& one = trouble(kind, those.front());
    one.lines.assign(those.begin() + 1, those.end());
    for (const Index i : those) spoiled_[i] = true;
    one.makes = makes_[part];
    if (kind != RatioTrouble::open || one.makes != MakesFails::unweighed) return;
    one.kind = RatioTrouble::makes_unweighed;
    for (const Index at : {product_at_[part * 3], product_at_[part * 3 + 1]})
      if (at != kNone && one.other == kNone) one.other = wholes_[at].sum.unweighed;
    if (one.other == kNone) one.kind = RatioTrouble::open;
  };
  say(RatioTrouble::only_zero, zero);
  if (!spoiled) say(RatioTrouble::open, open);  // else one mistake would be told twice
}

}  // namespace qtn
