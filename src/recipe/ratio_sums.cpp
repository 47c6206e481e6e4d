// Sums of lines in one dimension: the bases of percentages, the products of parts.
#include <algorithm>

#include "recipe/ratio_system.hpp"

namespace qtn {
namespace {

constexpr std::size_t kDeepest = 60;  // parts within parts; no kitchen goes there

std::size_t slot(Index part, Dimension dimension) {
  return part * std::size_t{3} + (dimension == Dimension::mass ? 0u : dimension == Dimension::volume ? 1u : 2u);
}

}  // namespace

// Base units of `to` in one base unit of `from`, for the food of this line.
Fraction RatioSystem::convert(Index i, Dimension from, Dimension to) const {
  if (from == to) return Fraction(1);
  const Known known = known_of(recipe_, recipe_.lines[i]);
  const auto grams = [&](Dimension dimension) {
    if (dimension == Dimension::mass) return Fraction(1);
    if (dimension == Dimension::volume) return known.density;
    return dimension == Dimension::count ? known.each : Fraction::lost();
  };
  return grams(from) / grams(to);
}

Ends RatioSystem::sized(Index i, const Quantity& amount, Dimension dimension) const {
  if (amount.dimension() == dimension) return in_base(amount, recipe_.dialect);
  const Ends grams = grams_of(recipe_, recipe_.lines[i], amount);
  if (dimension == Dimension::mass) return grams;
  const Fraction by = convert(i, Dimension::mass, dimension);
  return {grams.low * by, grams.high * by};
}

void RatioSystem::add_line(RatioSum& sum, Index line, Dimension dimension, const Fraction& by) {
  const Index i = standing_index(line);
  const TakeLine& one = recipe_.lines[i];
  if (one.struck || recipe_.lines[line].struck) return;
  const bool part_kept = tail_of(recipe_, one, TailKind::taking_up) != nullptr;
  if (has(i) && !part_kept) {
    const Fraction factor = by * convert(i, dim_[i], dimension);
    if (spoiled_[i])
      sum.spoiled = true;
    else if (factor.is_lost())
      sum.unweighed = line;
    else
      sum.factors.push_back({var_[i], factor});
    if (one.written.is_range()) sum.ranged = line;
    return;
  }
  if (!one.measured()) {
    sum.unweighed = line;
    return;
  }
  const Quantity amount = kept_amount(recipe_, one);
  if (amount.is_lost()) {
    sum.spoiled = true;  // damaged, and said so where it was read
    return;
  }
  const Ends size = sized(i, amount, dimension);
  if (size.low.is_lost() || size.high.is_lost()) {
    sum.unweighed = line;
    return;
  }
  if (!(size.low == size.high)) sum.ranged = line;
  sum.constant += by * middle(size);
}

void RatioSystem::add_member(RatioSum& sum, const Target& member, Dimension dimension, const Fraction& by) {
  switch (member.kind) {
    case TargetKind::line:
    case TargetKind::aside:
      return add_line(sum, member.index, dimension, by);
    case TargetKind::part:
      return add_whole(sum, product_of(member.index, dimension), by);
    case TargetKind::use: {
      const Use& use = recipe_.uses[member.index];
      if (use.recipe == nullptr || use.recipe->parts.empty()) break;
      for (const Yield& yield : yields_of(*use.recipe, use.part == kNone ? use.recipe->dish : use.part)) {
        if (yield.by_product || yield.dimension != dimension) continue;
        sum.constant += by * middle(yield.ends);
        return;
      }
      break;
    }
    default:
      break;
  }
  sum.spoiled = true;
}

void RatioSystem::add_whole(RatioSum& sum, Whole& whole, const Fraction& by) {
  if (whole.sum.unweighed != kNone) sum.unweighed = whole.sum.unweighed;
  if (whole.sum.spoiled || whole.open) sum.spoiled = true;
  if (!sum.holds()) return;
  if (whole.sum.factors.empty()) {
    sum.constant += by * whole.sum.constant;
    return;
  }
  sum.factors.push_back({whole.var, by});
}

RatioSystem::Whole& RatioSystem::product_of(Index part, Dimension dimension) {
  Index& at = product_at_[slot(part, dimension)];
  if (at != kNone) return wholes_[at];
  at = static_cast<Index>(wholes_.size());
  Whole& whole = wholes_.emplace_back();
  if (within_.size() >= kDeepest) {
    whole.sum.spoiled = true;
  } else {
    within_.push_back(part);
    add_up_product(whole.sum, part, dimension);
    within_.pop_back();
  }
  whole.open = false;
  whole.var = system_.unknown();
  waiting_.push_back(product_at_[slot(part, dimension)]);
  return whole;
}

void RatioSystem::add_up_product(RatioSum& sum, Index part, Dimension dimension) {
  const PotShares& shares = shares_of(part);
  if (!shares.plain) {
    for (const Yield& yield : yields_of(recipe_, part)) {
      if (yield.by_product || yield.dimension != dimension || !(yield.ends.low == yield.ends.high)) continue;
      sum.constant = yield.ends.low;
      return;
    }
    sum.spoiled = true;
    return;
  }
  for (const auto& [line, share] : shares.lines) add_line(sum, line, dimension, share);
  for (const auto& [other, share] : shares.parts) add_whole(sum, product_of(other, dimension), share);
}

RatioSystem::Whole& RatioSystem::head_of(Index part, Dimension dimension) {
  Index& at = head_at_[slot(part, dimension)];
  if (at != kNone) return wholes_[at];
  at = static_cast<Index>(wholes_.size());
  Whole& whole = wholes_.emplace_back();
  const TakeHead& head = recipe_.parts[part].head;
  if (head.all_flour) {
    add_flour(whole.sum, part);
  } else {
    for (Index m = head.members.first; m < head.members.end(); ++m)
      add_member(whole.sum, recipe_.set_members[m], dimension, Fraction(1));
  }
  whole.open = false;
  whole.var = system_.unknown();
  waiting_.push_back(head_at_[slot(part, dimension)]);
  return whole;
}

// All flour: the lines that are flour, and what is flour in the parts and recipes taken.
void RatioSystem::add_flour(RatioSum& sum, Index part) {
  const Slice lines = recipe_.parts[part].lines;
  for (Index i = lines.first; i < lines.end(); ++i) {
    const TakeLine& line = recipe_.lines[i];
    if (!in_sums(line)) continue;
    if (line.target.kind != TargetKind::part && line.target.kind != TargetKind::use) {
      if (is_flour(standing(recipe_, line))) add_line(sum, i, Dimension::mass, Fraction(1));
      continue;
    }
    const Fraction share = flour_share(line.target);
    if (share.is_lost())
      sum.unweighed = i;
    else if (!share.is_zero())
      add_line(sum, i, Dimension::mass, share);
  }
}

Fraction RatioSystem::flour_share(const Target& taken) {
  if (taken.kind == TargetKind::use) {
    const Use& use = recipe_.uses[taken.index];
    if (use.recipe == nullptr || use.recipe->parts.empty()) return Fraction::lost();
    return flour_share_of(*use.recipe, use.part == kNone ? use.recipe->dish : use.part);
  }
  return flour_share(taken.index);
}

// The proportions of a part do not hang on how much of it is made, so it is worked out by itself. What it takes of its
// own last batch has the same proportions, and is left out.
Fraction RatioSystem::flour_share(Index part) {
  if (std::find(within_.begin(), within_.end(), part) != within_.end()) return Fraction(0);
  if (!flour_[part].is_zero() || flour_[part].is_lost()) return flour_[part];
  if (within_.size() >= kDeepest) return Fraction::lost();
  std::vector<Index> within = within_;
  within.push_back(part);
  RatioSystem alone(recipe_, part, std::move(within));
  alone.flour_ = flour_;
  alone.find_unknowns();
  alone.choose_dimensions();
  const Slice lines = recipe_.parts[part].lines;
  for (Index i = lines.first; i < lines.end(); ++i)
    if (alone.has(i) && !alone.spoiled_[i]) alone.line_equation(i);
  alone.add_waiting_wholes();
  for (Index i = lines.first; i < lines.end(); ++i)
    if (alone.has(i)) alone.stated_equation(i);
  RatioSum flour, all;
  for (Index i = lines.first; i < lines.end(); ++i) {
    const TakeLine& line = recipe_.lines[i];
    if (!in_sums(line) || (line.target.kind == TargetKind::part && line.target.index == part)) continue;
    const bool taken = line.target.kind == TargetKind::part || line.target.kind == TargetKind::use;
    const Fraction share = taken ? alone.flour_share(line.target) : Fraction(is_flour(standing(recipe_, line)) ? 1 : 0);
    if (share.is_lost())
      all.spoiled = true;
    else if (!share.is_zero())
      alone.add_line(flour, i, Dimension::mass, share);
    alone.add_line(all, i, Dimension::mass, Fraction(1));
  }
  // One gram of it, unless its own lines say how much there is.
  RatioSum one = all;
  one.constant -= Fraction(1);
  if (all.holds()) alone.add(one, {kNone, part, false}, Linear::kNobody);
  alone.system_.solve();
  const auto total = [&](const RatioSum& sum) {
    Fraction value = sum.holds() && !alone.system_.gave_up() ? sum.constant : Fraction::lost();
    for (const Linear::Factor& factor : sum.factors)
      value +=
          alone.system_.is_known(factor.unknown) ? factor.by * alone.system_.value(factor.unknown) : Fraction::lost();
    return value;
  };
  flour_ = alone.flour_;
  flour_[part] = total(flour) / total(all);
  return flour_[part];
}

}  // namespace qtn
