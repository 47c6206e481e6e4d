// What goes into the pot: lines by what was counted out of them, parts and recipes by what they make.
#include "recipe/pot.hpp"

namespace qtn {
namespace {
constexpr Load kUnknown{{Fraction::lost(), Fraction::lost()}, {Fraction::lost(), Fraction::lost()}};
}  // namespace

Load Pot::other_load(const Target& target) const {
  if (target.kind == TargetKind::part)
    return target.index == part_ ? kUnknown : pots_.product(target.index, depth_ + 1);
  const Use& use = recipe_.uses[target.index];
  if (use.recipe == nullptr || use.recipe->parts.empty()) return kUnknown;
  const Index part = use.part == kNone ? use.recipe->dish : use.part;
  Load load{{use.recipe->parts[part].weight_low, use.recipe->parts[part].weight_high}, lost_ends()};
  for (const Yield& yield : yields_of(*use.recipe, part)) {
    if (yield.by_product) continue;
    if (yield.dimension == Dimension::mass) load.grams = yield.ends;
    if (yield.dimension == Dimension::volume) load.ml = yield.ends;
  }
  return load;
}

Load Pot::line_load(Index i) const {
  const TakeLine& line = standing(recipe_, recipe_.lines[i]);
  if (!line.measured()) {
    const bool other = line.target.kind == TargetKind::part || line.target.kind == TargetKind::use;
    return other ? other_load(line.target) : Load{};
  }
  const Quantity amount = kept_amount(recipe_, line);
  Load load{grams_of(recipe_, line, amount), lost_ends()};
  if (!amount.is_lost() && amount.dimension() == Dimension::volume) load.ml = in_base(amount, recipe_.dialect);
  return load;
}

// What was asked of a line whose share of the whole is not known: 100 g of the Shortcrust.
Load Pot::asked_load(const Mention& mention, Index i) const {
  if (mention.taking != Taking::amount || mention.term == kNone) return kUnknown;
  const Quantity& asked = recipe_.terms[mention.term].amount;
  if (asked.is_lost()) return kUnknown;
  Load load = kUnknown;
  if (i != kNone)
    load.grams = grams_of(recipe_, standing(recipe_, recipe_.lines[i]), asked);
  else if (asked.dimension() == Dimension::mass)
    load.grams = in_base(asked, recipe_.dialect);
  if (asked.dimension() == Dimension::volume) load.ml = in_base(asked, recipe_.dialect);
  return load;
}

void Pot::put_line(Index i, const Load& load) {
  const TakeLine& line = standing(recipe_, recipe_.lines[i]);
  const bool volume = line.measured() && line.amount.dimension() == Dimension::volume;
  about_ = about_ || line.amount.manner == Manner::about;
  const Target target{TargetKind::line, i, part_, {}};
  pot_.put({target, load, volume || (line.food != nullptr && line.food->liquid), false, makeup_of(target)});
}

void Pot::use(const Mention& mention) {
  const Target& target = mention.target;
  if (mention.taking == Taking::named && !mention.takes) return;
  switch (target.kind) {
    case TargetKind::line:
      return use_line(mention, target.index);
    case TargetKind::part:
    case TargetKind::use:
      return use_part(mention);
    case TargetKind::product:
      put_back(target);
      return;
    case TargetKind::everything:
      return everything();
    case TargetKind::aside:
      break;
    default:
      return;
  }
  for (Kept& kept : kept_) {
    if (kept.held.what.index != target.index) continue;
    Held held = kept.held;
    if (mention.takes) held.load = held.load.times({mention.part_low, mention.part_high});
    if (mention.takes || !kept.came_back) pot_.put(held);
    kept.came_back = true;
  }
}

void Pot::use_line(const Mention& mention, Index i) {
  const TakeLine& line = recipe_.lines[i];
  if (line.struck || line.part != part_) return;
  const Index own = i - mine().lines.first;
  const bool first = !named_[own];
  named_[own] = true;
  if (mention.takes) {
    put_line(i, line_load(i).times({mention.part_low, mention.part_high}));
    taken_[own] = taken_[own] + Ends{mention.part_low, mention.part_high};
    return;
  }
  if (put_back({TargetKind::line, i, part_, {}})) return;
  if (!line.measured() && first) return put_line(i, line_load(i));
  if (line.measured() && mention.taking == Taking::amount) put_line(i, asked_load(mention, i));
}

// A part or recipe: its line where the list has one, else its product.
void Pot::use_part(const Mention& mention) {
  const Target& target = mention.target;
  if (target.kind == TargetKind::part && target.index == part_) return;
  for (Index i = mine().lines.first; i < mine().lines.end(); ++i) {
    const TakeLine& line = recipe_.lines[i];
    if (line.target.kind != target.kind || line.target.index != target.index || line.struck) continue;
    const Index own = i - mine().lines.first;
    const bool first = !named_[own];
    named_[own] = true;
    if (put_back(target)) return;
    if (mention.takes)
      put_line(i, line_load(i).times({mention.part_low, mention.part_high}));
    else if (first)
      put_line(i, line_load(i));  // another part took the rest of what is made
    return;
  }
  if (mention.takes)
    return pot_.put({target, other_load(target).times({mention.part_low, mention.part_high}), false, false, makeup_of(target)});
  if (!put_back(target) && mention.taking == Taking::amount)
    pot_.put({target, asked_load(mention, kNone), false, false, makeup_of(target)});
}

void Pot::everything() {
  for (Index i = mine().lines.first; i < mine().lines.end(); ++i) {
    const Index own = i - mine().lines.first;
    if (!in_sums(recipe_.lines[i]) || taken_[own].low >= Fraction(1)) continue;
    put_line(i, line_load(i).times({Fraction(1) - taken_[own].low, Fraction(1) - taken_[own].high}));
    named_[own] = true;
    taken_[own] = {Fraction(1), Fraction(1)};
  }
}

// A line that no step names was pointed at by the counting; it is not to be missed a second time here.
void Pot::bring_in_unused() {
  for (Index i = mine().lines.first; i < mine().lines.end(); ++i)
    if (in_sums(recipe_.lines[i]) && !named_[i - mine().lines.first]) put_line(i, line_load(i));
}

bool Pot::put_back(const Target& target) {
  bool any = false;
  for (std::size_t i = 0; i < aside_.size();) {
    if (!is(aside_[i], target)) {
      ++i;
      continue;
    }
    pot_.put(aside_[i]);
    aside_.erase(aside_.begin() + static_cast<std::ptrdiff_t>(i));
    any = true;
  }
  return any;
}

// Does a name mean this thing? A part is also the line that takes it; a line split by `giving`, all it gives.
bool Pot::is(const Held& held, const Target& target) const {
  if (held.what.kind == target.kind && held.what.index == target.index) return true;
  if (held.what.kind != TargetKind::line) return false;
  const TakeLine& line = recipe_.lines[held.what.index];
  if (target.kind == TargetKind::line) return line.given && line.parent == target.index;
  return line.target.kind == target.kind && line.target.index == target.index && target.kind != TargetKind::none;
}

}  // namespace qtn
