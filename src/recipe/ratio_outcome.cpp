// What came out of the equations, looked over: lines that nothing fixed, amounts of nothing or less, stated amounts
// that do not fit.
#include <algorithm>

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
  drop_followers();
}

// A part of nothing, because that is what the part that takes it comes to: told there.
void RatioSystem::drop_followers() {
  std::vector<bool> nothing(recipe_.parts.size(), false);
  for (const RatioTrouble& one : troubles_) nothing[one.part] = nothing[one.part] || one.kind == RatioTrouble::only_zero;
  std::erase_if(troubles_, [&](const RatioTrouble& one) {
    const std::vector<Index>& by = askers_[one.part];
    return one.kind == RatioTrouble::only_zero &&
           std::any_of(by.begin(), by.end(), [&](Index line) { return nothing[recipe_.lines[line].part]; });
  });
}

// What the shares of a base come to when all of it is shares itself: 1, or there is none of it. Lost where some of it
// is an amount.
Fraction RatioSystem::shares_of_base(Index part) {
  const TakeHead& head = recipe_.parts[part].head;
  Fraction sum;
  const auto count = [&](Index i, const Fraction& by) {
    const TakeLine& line = recipe_.lines[i];
    const bool share = line.basis == Basis::percent && line.members.empty();
    sum += share ? by * middle(in_base(line.written, recipe_.dialect)) : Fraction::lost();
  };
  const auto all = [&](auto&& by) {
    const Slice lines = recipe_.parts[part].lines;
    for (Index i = lines.first; i < lines.end(); ++i) {
      const Fraction share = in_sums(recipe_.lines[i]) ? by(recipe_.lines[i]) : Fraction();
      if (!share.is_zero()) count(i, share);
    }
  };
  if (head.all_flour) {
    all([&](const TakeLine& line) {
      const bool taken = line.target.kind == TargetKind::part || line.target.kind == TargetKind::use;
      return taken ? flour_share(line.target) : Fraction(is_flour(standing(recipe_, line)) ? 1 : 0);
    });
    return sum;
  }
  for (Index m = head.members.first; m < head.members.end(); ++m) {
    const Target& member = recipe_.set_members[m];
    if (member.kind == TargetKind::line)
      count(member.index, Fraction(1));
    else if (member.kind == TargetKind::part && member.index == part)
      all([](const TakeLine&) { return Fraction(1); });
    else
      return Fraction::lost();
  }
  return sum;
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
    if (kind == RatioTrouble::only_zero) one.adds_up = shares_of_base(part);
    if (kind != RatioTrouble::open || one.makes != MakesFails::unweighed) return;
    one.kind = RatioTrouble::makes_unweighed;
    for (const Index at : {product_at_[part * 3], product_at_[part * 3 + 1]})
      if (at != kNone && one.other == kNone) one.other = wholes_[at].sum.unweighed;
    if (one.other == kNone) one.kind = RatioTrouble::open;
  };
  say(RatioTrouble::only_zero, zero);
  // What hangs on something that was reported is silent: one mistake is told once.
  for (const MakesFails one : makes_) spoiled = spoiled || one == MakesFails::damaged;
  if (!spoiled) say(RatioTrouble::open, open);
}

}  // namespace qtn
