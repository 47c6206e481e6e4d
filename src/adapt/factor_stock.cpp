// How far what there is goes: the factor that uses it up.
#include "adapt/factor.hpp"

namespace qtn {
namespace {

// What the line takes as it comes from the shop, where it says so, else as it goes in.
Quantity needed(const Recipe& recipe, const TakeLine& line, const Quantity& have) {
  for (Index t = line.tails.first; t < line.tails.end(); ++t) {
    const Tail& tail = recipe.tails[t];
    if (tail.kind == TailKind::from && tail.amount && tail.amount->dimension() == have.dimension()) return *tail.amount;
  }
  return line.amount;
}

// Both in one dimension; lost where no density or weight of one takes them there.
Fraction ratio(const Recipe& recipe, const TakeLine& line, const Quantity& have, const Quantity& need) {
  if (have.dimension() == need.dimension())
    return in_base(have, recipe.dialect).low / in_base(need, recipe.dialect).high;
  return grams_of(recipe, line, have).low / grams_of(recipe, line, need).high;
}

}  // namespace

Fraction factor_for_stock(const Recipe& recipe, const Quantity& have, const std::string& thing, Report& report) {
  const std::vector<Index> found = lines_named(recipe, thing);
  if (found.size() != 1) {
    std::string names;
    for (Index i : found) names += (names.empty() ? "`" : ", `") + std::string(recipe.lines[i].name) + "`";
    return refuse(report, found.empty() ? Span{} : recipe.lines[found[0]].name_span,
                  found.empty() ? "Nothing in this recipe's lists is called `" + thing + "`."
                                : "`" + thing + "` may mean several lines: " + names + ".",
                  "the name of one line of a list, as it stands there");
  }
  const TakeLine& line = recipe.lines[found[0]];
  if (!line.measured() || line.amount.is_lost() || line.fixed)
    return refuse(report, line.name_span, "`" + std::string(line.name) + "` has no amount that grows with the recipe.",
                  "a line with an amount that is not `fixed`");
  const Fraction factor = ratio(recipe, line, have, needed(recipe, line, have));
  if (factor.is_lost())
    return refuse(report, line.amount_span, "What there is and what `" + std::string(line.name) + "` takes are measured in different ways, and nothing known of it takes one to the other.",
                  "an amount in the measure of the list");
  return factor;
}

}  // namespace qtn
