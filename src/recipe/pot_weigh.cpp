// What a time by weight goes by: 20 min per 450 g of the lamb means the lamb as it is at that place (semantics part 9).
#include "recipe/pot.hpp"

namespace qtn {

Index per_term(const Recipe& recipe, const Clause& clause) {
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
    if (recipe.terms[t].role == TermRole::per) return t;
  return kNone;
}

void Pot::weigh_for(Index c) {
  const Clause& one = recipe_.clauses[c];
  const Index per = per_term(recipe_, one);
  if (per == kNone || recipe_.terms[per].amount.is_lost()) return;
  const Dimension dimension = recipe_.terms[per].amount.dimension();
  if (dimension != Dimension::mass && dimension != Dimension::volume) return;
  if ((work_ += pot_.things().size() + 1) > kMostWork) return;
  Weighed out;
  out.clause = c;
  if (one.mentions.empty()) weigh_alone(dimension, out);
  else weigh_thing(recipe_.mentions[one.mentions.first], dimension, out);
  if (!is_lost(out.one) && out.one.low.sign() > 0) recipe_.weighed.push_back(out);
}

// What it has gained and lost so far counts; of a line in pieces, one of them.
void Pot::weigh_thing(const Mention& mention, Dimension dimension, Weighed& out) const {
  const Target& target = mention.target;
  if (target.kind == TargetKind::product) {
    out.one = pot_.total().in(dimension);
    return;
  }
  const bool listed = target.kind == TargetKind::line;
  if (!listed && target.kind != TargetKind::part && target.kind != TargetKind::use) return;
  if (listed && recipe_.lines[target.index].part != part_) return;
  Load there;
  bool any = false;
  for (const auto* held : {&pot_.things(), &aside_})
    for (const Held& one : *held)
      if (is(one, target)) there = there + one.load, any = true;
  Ends share{Fraction(1), Fraction(1)};  // of the line, that went in
  if (!any) there = listed ? line_load(target.index) : other_load(target);
  out.one = there.in(dimension);
  if (!listed) return;
  out.line = target.index;
  const Ends taken = taken_[target.index - mine().lines.first];
  if (any && taken.low.sign() > 0) share = taken;
  const Quantity& amount = standing(recipe_, recipe_.lines[target.index]).amount;
  if (amount.is_lost() || amount.dimension() != Dimension::count || amount.low.sign() <= 0) return;
  out.counted = true;
  out.one = {out.one.low / (amount.low * share.low), out.one.high / (amount.high * share.high)};
}

// Nothing is named: it can only be the one thing that there is.
void Pot::weigh_alone(Dimension dimension, Weighed& out) const {
  Index line = kNone;
  for (const Held& held : pot_.things()) {
    if (held.what.kind != TargetKind::line || (line != kNone && line != held.what.index)) return;
    line = held.what.index;
  }
  for (Index i = mine().lines.first; line == kNone && i < mine().lines.end(); ++i)
    if (in_sums(recipe_.lines[i])) line = i;
  for (Index i = mine().lines.first; i < mine().lines.end(); ++i)
    if (i != line && in_sums(recipe_.lines[i]) && pot_.things().empty()) return;
  if (line == kNone) return;
  Mention alone;
  alone.target = {TargetKind::line, line, part_, {}};
  weigh_thing(alone, dimension, out);
}

}  // namespace qtn
