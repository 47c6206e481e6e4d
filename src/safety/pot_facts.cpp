// What a line, a clause, a recipe is for safety: which raw food, how hot, how long, what reading.
#include <algorithm>

#include "recipe/makes.hpp"
#include "safety/pots.hpp"

namespace qtn {
namespace {

constexpr double kByWeight = 45;  // minutes that a time by weight is taken to come to, where the weight is not known
// Nothing that is eaten is hotter in its middle: fat, an oven, a syrup.
constexpr double kNoMiddle = 100;

// A part or another recipe is what is in it, whatever it is called; what comes in tins was cooked in them.
Hazard by_name(const Recipe& recipe, const TakeLine& line) {
  const std::string_view pack = line.pack_noun.empty() ? unit(line.written.unit).name : line.pack_noun;
  for (const std::string_view cooked : {"tin", "tins", "can", "cans", "jar", "jars", "pouch", "pouches"})
    if (pack == cooked) return Hazard::none;
  return line.food == nullptr && line.target.kind != TargetKind::none ? Hazard::none : hazard_of(line.food, recipe.keys_of(line));
}

// 20 min per 450 g of the lamb, plus 20 min, where the lamb has a weight of its own.
double by_weight(const Recipe& recipe, const Clause& clause, const Term& per) {
  double each = 0, plus = 0;
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
    const Term& term = recipe.terms[t];
    if (term.amount.is_lost()) continue;
    if (term.role == TermRole::length) each = in_base(term.amount, recipe.dialect).low.approx();
    if (term.role == TermRole::plus) plus = in_base(term.amount, recipe.dialect).low.approx();
  }
  for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
    const Target& target = recipe.mentions[m].target;
    if (target.kind != TargetKind::line) continue;
    const Quantity& weight = recipe.lines[target.index].amount;
    if (weight.is_lost() || per.amount.is_lost() || weight.dimension() != per.amount.dimension()) continue;
    const double parts = in_base(weight, recipe.dialect).low.approx() / in_base(per.amount, recipe.dialect).high.approx();
    return each * parts + plus;
  }
  return kByWeight;
}

}  // namespace

Hazard hazard_of(const Recipe& recipe, const TakeLine& line) {
  if (line.given && line.parent != kNone) return hazard_of(recipe, recipe.lines[line.parent]);  // the shells of the prawns
  const Hazard kind = by_name(recipe, line);
  if (kind == Hazard::none || kind == Hazard::cooked || kind == Hazard::honey || kind == Hazard::curing_salt || kind == Hazard::cooked_rice) return kind;
  bool cooked = false, minced = false;
  const auto look = [&](WordKey key) {
    static const WordKey kMinced = fold_key("minced"), kGround = fold_key("ground");
    cooked = cooked || says_not_raw(key);
    minced = minced || key == kMinced || key == kGround;
  };
  const auto own = recipe.keys_of(line);
  static const WordKey kRoast = fold_key("roast");
  for (std::size_t i = 0; i < own.size(); ++i)
    if (own[i] != kRoast || i + 1 < own.size()) look(own[i]);  // roast beef is cooked, a beef roast is a joint
  std::vector<WordKey> keys;
  for (Index t = line.tails.first; t < line.tails.end(); ++t)
    if (recipe.tails[t].kind == TailKind::preparation) fold_keys(recipe.slice(recipe.tails[t].span), keys);
  for (const WordKey key : keys) look(key);
  static const WordKey kDried = fold_key("dried"), kDrained = fold_key("drained"), kThawed = fold_key("thawed");
  const auto behind = [&](WordKey key) { return std::find(keys.begin(), keys.end(), key) != keys.end(); };
  if (kind == Hazard::fish && behind(kDrained) && !behind(kThawed)) return Hazard::none;  // tuna, drained: out of a tin
  if (kind == Hazard::beans && std::find(keys.begin(), keys.end(), kDried) == keys.end()) {
    // "dried" is what makes them dangerous; "tinned" and "cooked" what makes them safe.
    const bool dried = std::find(own.begin(), own.end(), kDried) != own.end();
    return cooked && !dried ? Hazard::none : Hazard::beans;
  }
  if (cooked && kind != Hazard::beans) return kind == Hazard::egg || kind == Hazard::flour ? Hazard::none : kind == Hazard::rice ? Hazard::cooked_rice : Hazard::cooked;
  if (minced && (kind == Hazard::beef || kind == Hazard::pork)) return Hazard::minced;
  return kind;
}

bool has_hazards(const Recipe& recipe, int depth) {
  for (const TakeLine& line : recipe.lines)
    if (by_name(recipe, line) != Hazard::none) return true;
  for (const Use& use : recipe.uses)
    if (use.recipe != nullptr && depth < kDeepestUse && has_hazards(*use.recipe, depth + 1)) return true;
  return false;
}

double least_minutes(const Recipe& recipe, const Clause& clause) {
  double minutes = 0;
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
    const Term& term = recipe.terms[t];
    if (term.amount.is_lost()) continue;
    if (term.role == TermRole::per) return by_weight(recipe, clause, term);
    if (term.role == TermRole::length && term.amount.manner != Manner::at_most) minutes = in_base(term.amount, recipe.dialect).low.approx();
  }
  return clause.each_side ? 2 * minutes : clause.if_needed ? 0 : minutes;
}

double most_minutes(const Recipe& recipe, const Clause& clause) {
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
    const Term& term = recipe.terms[t];
    if (term.role == TermRole::length && !term.amount.is_lost()) return in_base(term.amount, recipe.dialect).high.approx();
  }
  return 0;
}

std::optional<Reading> reading_of(const Recipe& recipe, const Clause& clause) {
  std::optional<Reading> out;
  const Verb& verb = verb_of(clause);
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
    const Term& term = recipe.terms[t];
    if (term.amount.is_lost()) continue;
    const bool sign = term.role == TermRole::reading || (term.role == TermRole::to && verb.heats);
    if (sign && term.amount.dimension() == Dimension::temperature && in_base(term.amount, recipe.dialect).low.approx() <= kNoMiddle) out = {in_base(term.amount, recipe.dialect).low.approx(), settle_seconds()};
    if (term.role == TermRole::hold && out) out->seconds = 60 * in_base(term.amount, recipe.dialect).low.approx();
  }
  return out;
}

// What a clause heats to, in °C; nothing where it does not say.
std::optional<double> heat_of(const Recipe& recipe, const Clause& clause) {
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
    const Term& term = recipe.terms[t];
    if (term.role == TermRole::temperature && !term.amount.is_lost() && term.amount.dimension() == Dimension::temperature) return in_base(term.amount, recipe.dialect).high.approx();
  }
  return std::nullopt;
}

}  // namespace qtn
