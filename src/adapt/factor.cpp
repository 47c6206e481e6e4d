// Which factor a request asks for.
#include "adapt/adapt.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

void refuse(Report& report, const std::string& message) { report.add(Code::cannot_make_that, {}, message); }

// How much of it one batch makes, in the kind that is asked for; lost when `makes:` says nothing of that kind.
Fraction made(const Recipe& recipe, const Quantity& asked, const std::string& thing) {
  const std::string wanted = singular_of(lower(thing));
  std::vector<Made> all = recipe.makes;
  if (recipe.dish < recipe.parts.size()) all.insert(all.end(), recipe.parts[recipe.dish].makes.begin(), recipe.parts[recipe.dish].makes.end());
  for (const Made& made : all) {
    if (made.by_product) continue;
    const Ends base = in_base(made.amount, recipe.dialect);
    if (asked.dimension() == Dimension::count) {
      if (made.amount.dimension() == Dimension::count && (wanted.empty() || wanted == "thing" || singular_of(lower(made.thing)) == wanted)) return base.low;
    } else if (made.amount.dimension() == asked.dimension()) {
      return base.low;
    } else if (made.each && made.each->dimension() == asked.dimension()) {
      return base.low * in_base(*made.each, recipe.dialect).low;
    }
  }
  return Fraction::lost();
}

}  // namespace

Fraction factor_of(const Recipe& recipe, const Request& request, Report& report) {
  Fraction factor(1);
  if (request.times) {
    factor = *request.times;
  } else if (request.serves) {
    if (!recipe.serves) return refuse(report, "this recipe does not say how many it serves, so it cannot be made for another number"), Fraction(1);
    factor = request.serves->high / recipe.serves->low;  // enough at the larger helping
  } else if (request.makes) {
    const Fraction one = made(recipe, *request.makes, request.makes_thing);
    if (one.is_lost()) return refuse(report, "this recipe does not say how much it makes of that"), Fraction(1);
    factor = in_base(*request.makes, recipe.dialect).low / one;
  }
  if (factor.is_lost() || factor.sign() <= 0) return refuse(report, "a recipe is made more than 0 times"), Fraction(1);
  return factor;
}

}  // namespace qtn
