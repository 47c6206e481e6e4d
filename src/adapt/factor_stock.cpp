// How far what there is goes: the factor that uses it up.
#include "adapt/factor.hpp"
#include "words/fold.hpp"

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

// How much of `have` the line takes, in its base unit; lost where no density or weight of one takes it there.
Fraction taken(const Recipe& recipe, const TakeLine& line, const Quantity& have) {
  const Quantity need = needed(recipe, line, have);
  if (have.dimension() == need.dimension()) return in_base(need, recipe.dialect).high;
  return grams_of(recipe, line, need).high * in_base(have, recipe.dialect).low / grams_of(recipe, line, have).low;
}

// Lines of one name in several parts are one thing in the larder.
bool one_thing(const Recipe& recipe, const std::vector<Index>& lines) {
  for (Index i : lines)
    if (fold_name(recipe.lines[i].name) != fold_name(recipe.lines[lines[0]].name)) return false;
  return !lines.empty();
}

}  // namespace

Fraction factor_for_stock(const Recipe& recipe, const Quantity& have, const std::string& thing, Report& report) {
  const std::vector<Index> found = lines_named(recipe, thing);
  if (!one_thing(recipe, found)) {
    std::string names;
    for (Index i : found) names += (names.empty() ? "`" : ", `") + std::string(recipe.lines[i].name) + "`";
    return refuse(report, found.empty() ? Span{} : recipe.lines[found[0]].name_span,
                  found.empty() ? "Nothing in this recipe's lists is called `" + thing + "`."
                                : "`" + thing + "` may mean several lines: " + names + ".",
                  "the name of one line of a list, as it stands there");
  }
  Fraction need;
  for (Index i : found) {
    const TakeLine& line = recipe.lines[i];
    if (!line.measured() && found.size() > 1) continue;  // butter, for greasing
    if (!line.measured() || line.amount.is_lost() || line.fixed)
      return refuse(report, line.name_span, "`" + std::string(line.name) + "` has no amount that grows with the recipe.",
                    "a line with an amount that is not `fixed`");
    need += taken(recipe, line, have);
  }
  const TakeLine& first = recipe.lines[found[0]];
  const Fraction factor = in_base(have, recipe.dialect).low / need;
  if (factor.is_lost())
    return refuse(report, first.amount_span,
                  "What there is and what `" + std::string(first.name) +
                      "` takes are measured in different ways, and nothing known of it takes one to the other.",
                  "an amount in the measure of the list");
  return factor;
}

}  // namespace qtn
