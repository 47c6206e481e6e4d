#include "day/lengths.hpp"

#include <algorithm>

namespace qtn {
namespace {

// A length written as a range, or as `at most`, `exactly` or `overnight`: its longest holds for the pause behind it too.
bool binds(const Term& term) {
  return term.overnight || term.amount.is_range() || term.amount.manner == Manner::at_most ||
         term.amount.manner == Manner::exactly;
}

Minutes written(const Recipe& recipe, const Term& term) {
  const Ends ends = in_base(term.amount, recipe.dialect);
  Minutes out;
  out.written = true;
  out.least = ends.low, out.most = ends.high;
  const Fraction loose = Fraction::of(1, 10);  // as everywhere: `about` is 10 %
  switch (term.amount.manner) {
    case Manner::about:
      out.least = ends.low * (Fraction(1) - loose), out.most = ends.high * (Fraction(1) + loose);
      break;
    case Manner::at_least: out.most.reset(); break;
    case Manner::at_most: out.least = Fraction(0); break;
    default: break;
  }
  return out;
}

void times(Minutes& minutes, const Fraction& k) {
  minutes.least *= k;
  if (minutes.most) *minutes.most *= k;
}

// So many rounds, one after another, the heat held throughout.
Fraction rounds_of(const Making& making, const Clause& clause) {
  if (making.adapted == nullptr) return Fraction(1);
  for (const Rounds& load : making.adapted->loads)
    if (load.term >= clause.terms.first && load.term < clause.terms.end()) return Fraction::of(load.count, 1);
  return Fraction(1);
}

// 20 min per 450 g, plus 20 min: what it comes to; 0 or more where the weight is not known.
bool by_weight(const Making& making, Index clause, Minutes& minutes) {
  if (making.adapted == nullptr) return false;
  for (const ByWeight& total : making.adapted->by_weight) {
    if (total.clause != clause) continue;
    minutes.least = total.time.exact.low, minutes.most = total.time.exact.high;
    return true;
  }
  return false;
}

}  // namespace

const Term* term_of(const Recipe& recipe, const Clause& clause, TermRole role) {
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
    if (recipe.terms[t].role == role) return &recipe.terms[t];
  return nullptr;
}

Fraction minutes_in(const Recipe& recipe, const Quantity& amount) { return in_base(amount, recipe.dialect).low; }

bool takes_time(const Recipe& recipe, const Clause& clause, bool after_time) {
  switch (clause.kind) {
    case ClauseKind::time:
    case ClauseKind::reduce: return true;
    case ClauseKind::reading: return !after_time;
    case ClauseKind::temperature: return !after_time && term_of(recipe, clause, TermRole::to) != nullptr;
    default: return false;
  }
}

Minutes minutes_of(const Making& making, Index index) {
  const Recipe& recipe = *making.recipe;
  const Clause& clause = recipe.clauses[index];
  Minutes out;
  const Term* const length = term_of(recipe, clause, TermRole::length);
  if (length == nullptr || length->amount.is_lost() || clause.kind != ClauseKind::time) return out;
  out = written(recipe, *length);
  const Term* const per = term_of(recipe, clause, TermRole::per);
  if (per != nullptr && per->amount.dimension() != Dimension::count) {
    if (!by_weight(making, index, out)) return Minutes{};
  } else if (const Term* const plus = term_of(recipe, clause, TermRole::plus); plus != nullptr && !plus->amount.is_lost()) {
    const Ends more = in_base(plus->amount, recipe.dialect);
    out.least += more.low;
    if (out.most) *out.most += more.high;
  }
  if (clause.each_side) times(out, Fraction(2));
  times(out, rounds_of(making, clause));
  if (clause.if_needed) out.least = Fraction(0);
  if (out.least.is_lost() || (out.most && out.most->is_lost())) return Minutes{};
  const Verb& verb = verb_of(clause);
  const bool by_sign = term_of(recipe, clause, TermRole::to) != nullptr || term_of(recipe, clause, TermRole::reading) != nullptr;
  // `cool at most 90 min to 8 °C`: the food says when it is there, whosever range the verb's is.
  // The same of `chill 20 min, if needed`: room for it is kept.
  out.chance = (verb.range == Range::food || by_sign || clause.if_needed) && !length->overnight && out.most && *out.most > out.least;
  out.longest_binds = verb.wait && (binds(*length) || verb.spoils) && out.most && !by_sign;
  return out;
}

int oven_heat(const Recipe& recipe, const Clause& clause) {
  const std::string_view name = verb_of(clause).name;
  const bool turned = name == "raise" || name == "lower";
  const Term* const at = term_of(recipe, clause, turned ? TermRole::to : TermRole::temperature);
  if (at == nullptr || at->amount.is_lost()) return -1;
  Fraction celsius = at->amount.unit == common().gas ? gas_printed(at->amount.high) : to_celsius(at->amount.high, at->amount.unit);
  if (celsius.is_lost()) celsius = in_base(at->amount, recipe.dialect).high;
  const bool fan = at->amount.fan || (recipe.oven == OvenKind::fan && at->amount.unit != common().gas);
  if (fan) celsius += fan_difference(recipe.dialect);
  return celsius.is_lost() ? -1 : static_cast<int>((celsius * Fraction(10)).nearest());
}

}  // namespace qtn
