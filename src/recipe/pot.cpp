// Phase 5: the pot of each part (semantics part 9): what goes in, is put aside, leaves, is lost. A pot that cannot be
// weighed is never accused.
#include "recipe/pot.hpp"

#include <algorithm>

#include "recipe/phases.hpp"
#include "recipe/strength.hpp"

namespace qtn {
namespace {
constexpr int kDeepest = 60;                  // parts within parts; no kitchen goes there
constexpr Load kUnknown{{Fraction::lost(), Fraction::lost()}, {Fraction::lost(), Fraction::lost()}};

bool changes_the_mix(ClauseKind kind) {
  return kind == ClauseKind::take_out || kind == ClauseKind::discard || kind == ClauseKind::strain_out || kind == ClauseKind::drain ||
         kind == ClauseKind::drift || kind == ClauseKind::reduce || kind == ClauseKind::checkpoint;
}

bool is_zero(const Load& load) {
  return load.grams.high.is_zero() && load.ml.high.is_zero();
}
}  // namespace

Pot::Pot(Pots& pots, Recipe& recipe, Report& report, Index part, int depth)
    : pots_(pots), recipe_(recipe), report_(report), part_(part), depth_(depth) {
  taken_.assign(mine().lines.count, Ends{});
  named_.assign(mine().lines.count, false);
}

Load Pot::run() {
  for (Index s = mine().steps.first; s < mine().steps.end(); ++s) {
    const Slice clauses = recipe_.steps[s].clauses;
    const bool counts = counts_in_pot(recipe_, mine(), s);
    for (Index c = clauses.first; c < clauses.end(); ++c) {
      const Clause& one = recipe_.clauses[c];
      if (one.kind == ClauseKind::time) weigh_for(c);
      if (one.kind == ClauseKind::bad || (!counts && one.kind != ClauseKind::use)) continue;
      clause(one);
    }
  }
  bring_in_unused();
  check_cure();
  const Load sum = product();
  recipe_.parts[part_].weight_low = sum.grams.low, recipe_.parts[part_].weight_high = sum.grams.high;
  recipe_.parts[part_].makeup = makeup_of_all();
  check_kept();
  check_makes();
  return sum;
}

Load Pot::product() const {
  if (work_ > kMostWork) return kUnknown;
  Load sum = pot_.total();
  for (const Held& held : aside_) sum = sum + held.load;
  return sum;
}

void Pot::note_heat(const Clause& one) {
  if (one.house_verb != nullptr ? one.house_verb->heats : one.verb != kNoVerb && verb(one.verb).heats) heated_ = true;
}

void Pot::clause(const Clause& one) {
  note_heat(one);
  if (one.kind != ClauseKind::use && (work_ += pot_.things().size()) > kMostWork) return;
  if (changes_the_mix(one.kind)) check_cure();  // nitrite counts as it went in
  switch (one.kind) {
    case ClauseKind::use:
      for (Index m = one.mentions.first; m < one.mentions.end(); ++m) use(recipe_.mentions[m]);
      return;
    case ClauseKind::keep_back:
      return keep_back(one);
    case ClauseKind::take_out:
    case ClauseKind::discard:
    case ClauseKind::strain_out:
    case ClauseKind::drain:
      return leave(one);
    case ClauseKind::drift:
      return drift(one);
    case ClauseKind::reduce:
    case ClauseKind::checkpoint:
      return holds(one);
    case ClauseKind::pieces:
      return check_pieces(one);
    case ClauseKind::strength:
      return check_strength(one);
    default:
      return;
  }
}

// ---- aside and gone -----------------------------------------------------------------------------------------------
void Pot::keep_back(const Clause& one) {
  for (Index m = one.mentions.first; m < one.mentions.end(); ++m) {
    const Mention& mention = recipe_.mentions[m];
    if (mention.target.kind != TargetKind::line) continue;
    const TakeLine& line = recipe_.lines[mention.target.index];
    if (line.struck || line.part != part_) continue;
    const Index own = mention.target.index - mine().lines.first;
    named_[own] = true;
    const Ends share{mention.part_low, mention.part_high};
    const bool counted = mention.takes || mention.part_high.sign() > 0;
    if (counted) taken_[own] = taken_[own] + share;
    Held held{mention.target,
              counted ? line_load(mention.target.index).times(share) : asked_load(mention, mention.target.index), false,
              false, makeup_of(mention.target)};
    held.liquid = line.amount.dimension() == Dimension::volume || (line.food != nullptr && line.food->liquid);
    kept_.push_back({held, one.span, false});
  }
}

// What a share or an amount is of a thing that is in the pot; one whole unless something else is said.
Ends Pot::share_of(const Mention& mention, const Held& held) const {
  if (mention.taking == Taking::share) {
    const Fraction share = mention.share > Fraction(1) ? Fraction(1) : mention.share;
    return {share, share};
  }
  if (mention.taking != Taking::amount || mention.term == kNone) return {Fraction(1), Fraction(1)};
  const Load asked = asked_load(mention, held.what.kind == TargetKind::line ? held.what.index : kNone);
  const auto part = [](const Fraction& amount, const Fraction& whole) {
    const Fraction share = amount / whole;
    return share > Fraction(1) ? Fraction(1) : share;
  };
  const Ends by_weight{part(asked.grams.low, held.load.grams.low), part(asked.grams.high, held.load.grams.high)};
  if (!is_lost(by_weight)) return by_weight;
  return {part(asked.ml.low, held.load.ml.low), part(asked.ml.high, held.load.ml.high)};
}

std::vector<Held> Pot::leaving(const Clause& one, const Mention& mention) {
  const Target& target = mention.target;
  if (target.kind == TargetKind::everything) return pot_.take_all();
  if (target.kind == TargetKind::aside) {
    for (Kept& kept : kept_)
      if (kept.held.what.index == target.index) kept.came_back = true;
    return {};
  }
  const bool own_product = target.kind == TargetKind::product && target.part == part_;
  const auto& makes = makes_of(recipe_, part_);
  if (own_product && target.index < makes.size() && makes[target.index].by_product) {
    Load load = kUnknown;
    const Quantity& amount = makes[target.index].amount;
    if (amount.dimension() == Dimension::mass) load.grams = in_base(amount, recipe_.dialect);
    if (amount.dimension() == Dimension::volume) load.ml = in_base(amount, recipe_.dialect);
    if (one.kind != ClauseKind::take_out) skimmed_.push_back(target.index);
    return {pot_.skim(target, load)};
  }
  if (own_product) return pot_.take_all();
  Ends share{Fraction(1), Fraction(1)};
  for (const Held& held : pot_.things())
    if (is(held, target)) share = share_of(mention, held);
  std::vector<Held> out = pot_.take_where([&](const Held& held) { return is(held, target); }, share);
  if (!out.empty() || one.kind == ClauseKind::take_out) return out;
  std::erase_if(aside_, [&](const Held& held) { return is(held, target); });  // thrown away after it was taken out
  return out;
}

void Pot::leave(const Clause& one) {
  std::vector<Held> out;
  if (pots_.strong()) blend();  // what leaves takes its share of all that is dissolved
  if (one.kind == ClauseKind::drain) {
    drained_ = true;  // the liquids go, whatever is named as drained
    out = pot_.take_where([](const Held& held) { return held.liquid; }, {Fraction(1), Fraction(1)});
  } else if (one.the_rest || one.mentions.empty()) {
    out = pot_.take_all();
  } else {
    for (Index m = one.mentions.first; m < one.mentions.end(); ++m) {
      const std::vector<Held> some = leaving(one, recipe_.mentions[m]);
      out.insert(out.end(), some.begin(), some.end());
    }
  }
  if (one.kind == ClauseKind::take_out) aside_.insert(aside_.end(), out.begin(), out.end());
}

// ---- on the way ---------------------------------------------------------------------------------------------------
void Pot::drift(const Clause& one) {
  if (one.terms.empty()) return;
  const Quantity& change = recipe_.terms[one.terms.first].amount;
  if (change.is_lost() || change.dimension() != Dimension::ratio) return;
  const Ends by = in_base(change, recipe_.dialect);
  about_ = about_ || change.manner == Manner::about;
  const Ends left =
      one.gains ? Ends{Fraction(1) + by.low, Fraction(1) + by.high} : Ends{Fraction(1) - by.high, Fraction(1) - by.low};
  if (one.mentions.empty()) return pot_.scale(left);
  for (Index m = one.mentions.first; m < one.mentions.end(); ++m) {
    const Target& target = recipe_.mentions[m].target;
    if (target.kind == TargetKind::product || (target.kind == TargetKind::part && target.index == part_)) {
      pot_.scale(left);
      continue;
    }
    const auto meant = [&](const Held& held) { return is(held, target); };
    if (pot_.scale_where(left, meant)) continue;
    for (Held& held : aside_)
      if (meant(held)) held.drift(left);
  }
}

void Pot::by_share(const Term& term) {
  const Ends by = in_base(term.amount, recipe_.dialect);
  if (term.amount.dimension() == Dimension::ratio) pot_.scale({Fraction(1) - by.high, Fraction(1) - by.low});
}

// reduce to A, weigh A: the pot is A from here.
void Pot::holds(const Clause& one) {
  for (Index t = one.terms.first; t < one.terms.end(); ++t) {
    const Term& term = recipe_.terms[t];
    if (term.amount.is_lost()) continue;
    if (term.role == TermRole::by && one.kind == ClauseKind::reduce) by_share(term);
    if (term.role != TermRole::to && term.role != TermRole::checkpoint) continue;
    const Dimension dimension = term.amount.dimension();
    if (dimension != Dimension::mass && dimension != Dimension::volume) continue;
    const Ends said = in_base(term.amount, recipe_.dialect);
    if (is_lost(said)) continue;
    if (one.kind == ClauseKind::checkpoint)
      check_checkpoint(term, said);
    else
      check_reduced(term, dimension, said);
    about_ = about_ || term.amount.manner == Manner::about;
    pot_.set(dimension, said);
  }
}

// ---- all of them --------------------------------------------------------------------------------------------------
Pots::Pots(Recipe& recipe, Report& report)
    : recipe_(recipe),
      report_(report),
      state_(recipe.parts.size(), State::waiting),
      loads_(recipe.parts.size(), kUnknown) {
  look_for_strengths();
}

Load Pots::product(Index part, int depth) {
  if (state_[part] == State::waiting && depth < kDeepest) {
    state_[part] = State::busy;
    Load load = kUnknown;  // of a part that could not be read whole, nothing follows
    if (!recipe_.parts[part].disturbed) load = Pot(*this, recipe_, report_, part, depth).run();
    if (is_zero(load)) load = kUnknown;  // nothing in it that the page says anything about
    for (const Yield& yield : yields_of(recipe_, part)) {
      if (yield.by_product) continue;
      if (yield.dimension == Dimension::mass) load.grams = yield.ends;
      if (yield.dimension == Dimension::volume) load.ml = yield.ends;
    }
    loads_[part] = load;
    state_[part] = State::done;
  }
  return loads_[part];
}

// Only parts with something to compare are worked out, and those that they take.
void Pots::run() {
  std::vector<bool> asked(recipe_.parts.size(), false);
  recipe_.weighed.clear();
  recipe_.found_strengths.clear();
  for (Index p = 0; p < recipe_.parts.size(); ++p) {
    recipe_.parts[p].weight_low = recipe_.parts[p].weight_high = Fraction::lost();
    recipe_.parts[p].makeup = {};
    asked[p] = strong_;
    for (const Made& made : makes_of(recipe_, p))
      if (made.each || made.amount.dimension() != Dimension::count) asked[p] = true;
  }
  for (const TakeLine& line : recipe_.lines)  // of which others take so much
    if (line.target.kind == TargetKind::part && line.target.index < asked.size() && line.measured() && !line.amount.is_lost())
      asked[line.target.index] = true;
  for (const Clause& clause : recipe_.clauses) {
    if (clause.part >= asked.size()) continue;
    const bool pieces = clause.kind == ClauseKind::pieces && clause.terms.count > 1;
    if (pieces || clause.kind == ClauseKind::checkpoint || clause.kind == ClauseKind::reduce ||
        clause.kind == ClauseKind::keep_back || per_term(recipe_, clause) != kNone)
      asked[clause.part] = true;
    if (rolls_paste(recipe_, clause)) asked.assign(asked.size(), true);
  }
  for (Index p = 0; p < recipe_.parts.size(); ++p)
    if (asked[p]) product(p, 0);
}

void weigh_pot(Recipe& recipe, Report& report) {
  if (recipe.kind == FileKind::menu) return;
  check_strength_lines(recipe, report);
  Pots(recipe, report).run();
}

}  // namespace qtn
