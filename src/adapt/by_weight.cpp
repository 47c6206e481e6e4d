// Times that go by weight: worked out exactly for what there is, rounded once as times are.
#include <algorithm>

#include "adapt/works.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

const Term* term_of(const Recipe& recipe, const Clause& clause, TermRole role) {
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
    if (recipe.terms[t].role == role) return &recipe.terms[t];
  return nullptr;
}

// `makes: 1 chicken` made twice is two chickens: so many whole pieces the weight is shared by.
Fraction pieces(const Recipe& recipe, const Weighed& weighed) {
  if (weighed.counted) return Fraction(1);
  const Part* const dish = recipe.dish < recipe.parts.size() ? &recipe.parts[recipe.dish] : nullptr;
  for (const auto* all : {&recipe.makes, dish != nullptr ? &dish->makes : nullptr}) {
    if (all == nullptr) continue;
    for (const Made& made : *all) {
      if (made.by_product || made.amount.unit != kNoUnit || made.amount.is_range()) continue;
      const bool one = made.amount.low / recipe.factor == Fraction(1);
      return one && made.amount.low > Fraction(1) ? Fraction::of(made.amount.low.floor(), 1) : Fraction(1);
    }
  }
  return Fraction(1);
}

Shown time_of(const Recipe& recipe, const Quantity& length, const Ends& minutes) {
  const Fraction allowed = tolerance(length.manner, recipe.tolerance());
  const auto round = [&](const Fraction& end) { return round_on(Ladder::minutes, end, allowed, recipe.dialect); };
  Quantity exact = length;
  exact.unit = common().minute, exact.low = minutes.low, exact.high = minutes.high;
  const Rounded low = round(minutes.low), high = round(minutes.high);
  Shown shown = from_rounded(exact, low, high);
  shown.exact = exact;
  return shown;
}

void say_lacking(const Recipe& recipe, const Clause& clause, Report& lacks) {
  std::string message = "Nothing says what the time by weight goes by";
  if (!clause.mentions.empty()) {
    std::string_view name = recipe.slice(recipe.mentions[clause.mentions.first].span);
    if (lower(name.substr(0, 4)) == "the ") name.remove_prefix(4);
    message = "What the " + std::string(name) + " weighs at that place is not known";
  }
  lacks.add(Code::weight_not_known, clause.span,
            message + ", so the total is not worked out: weigh it and reckon by the rule.");
}

}  // namespace

std::vector<ByWeight> by_weight(const Recipe& recipe, Shower& shower, Shower* beside, Report& lacks) {
  std::vector<ByWeight> out;
  for (Index c = 0; c < recipe.clauses.size(); ++c) {
    const Clause& clause = recipe.clauses[c];
    if (clause.kind != ClauseKind::time) continue;
    const Term *per = term_of(recipe, clause, TermRole::per), *length = term_of(recipe, clause, TermRole::length);
    if (per == nullptr || length == nullptr || per->amount.is_lost() || length->amount.is_lost()) continue;
    if (per->amount.dimension() == Dimension::count) continue;
    const auto weighed = std::find_if(recipe.weighed.begin(), recipe.weighed.end(),
                                      [&](const Weighed& one) { return one.clause == c; });
    const Ends unit = in_base(per->amount, recipe.dialect);
    if (weighed == recipe.weighed.end() || unit.low.is_lost() || unit.low.sign() <= 0 || per->amount.is_range()) {
      say_lacking(recipe, clause, lacks);
      continue;
    }
    const Fraction share = pieces(recipe, *weighed);
    const Ends one{weighed->one.low / share, weighed->one.high / share};
    Ends minutes = in_base(length->amount, recipe.dialect);
    minutes = {minutes.low * one.low / unit.low, minutes.high * one.high / unit.low};
    if (const Term* const plus = term_of(recipe, clause, TermRole::plus); plus != nullptr) {
      const Ends more = in_base(plus->amount, recipe.dialect);
      minutes = {minutes.low + more.low, minutes.high + more.high};
    }
    if (minutes.low.is_lost() || minutes.high.is_lost()) continue;
    const Fraction size = size_of(per->amount.unit, recipe.dialect);
    const Quantity weight{one.low / size, one.high / size, per->amount.unit, Manner::plain, false};
    ByWeight total;
    total.clause = c;
    total.time = time_of(recipe, length->amount, minutes);
    total.weight = shower.amount(nullptr, weight, {}, Origin::worked_out);
    if (beside != nullptr) total.weight_beside = beside->amount(nullptr, weight, {}, Origin::worked_out);
    const bool several = weighed->line < recipe.lines.size() && weighed->counted &&
                         recipe.lines[weighed->line].amount.high > Fraction(1);
    total.each = several || share > Fraction(1);
    out.push_back(std::move(total));
  }
  return out;
}

}  // namespace qtn
