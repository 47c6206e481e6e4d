// Which factor a request asks for.
#include <algorithm>

#include "adapt/factor.hpp"
#include "words/fold.hpp"

namespace qtn {

Fraction refuse(Report& report, Span span, std::string message, std::string expected) {
  report.add(Code::cannot_make_that, span, std::move(message)).expect(std::move(expected));
  return Fraction(1);
}

namespace {

bool same_thing(std::string_view a, std::string_view b) {
  return fold_name(singular_of(a)) == fold_name(singular_of(b));
}

// How much of what is asked one batch makes by this statement; lost when it says nothing of that kind.
Fraction made_by(const Recipe& recipe, const Made& made, const Quantity& asked, const std::string& thing) {
  const Fraction low = in_base(made.amount, recipe.dialect).low;
  const bool counted = made.amount.dimension() == Dimension::count;
  if (asked.dimension() == Dimension::count) {
    const bool same = counted && asked.unit == made.amount.unit && (thing.empty() || same_thing(thing, made.thing));
    return same ? low : Fraction::lost();
  }
  if (made.amount.dimension() == asked.dimension()) return low;
  if (counted && made.each && made.each->dimension() == asked.dimension())
    return low * in_base(*made.each, recipe.dialect).low;  // 10 jars of 330 g
  return Fraction::lost();
}

// A weight asked without a name is of the dish; a by-product is asked for by its name.
Fraction made_of(const Recipe& recipe, const Quantity& asked, const std::string& thing) {
  const Part* const dish = recipe.dish < recipe.parts.size() ? &recipe.parts[recipe.dish] : nullptr;
  for (const bool by_product : {false, true}) {
    for (const auto* all : {&recipe.makes, dish != nullptr ? &dish->makes : nullptr}) {
      if (all == nullptr) continue;
      for (const Made& made : *all) {
        if (made.by_product != by_product || (by_product && !same_thing(thing, made.thing))) continue;
        const Fraction one = made_by(recipe, made, asked, thing);
        if (!one.is_lost() && one.sign() > 0) return one;
      }
    }
  }
  return Fraction::lost();
}

// Enough at the larger helping: 20 of a recipe that serves 6 to 8 is 20/6 times. A range asks for both its ends.
Fraction serving(const Quantity& asked, const Quantity& serves) {
  const Fraction low = asked.low / serves.low, high = asked.high / serves.high;
  return low < high ? high : low;
}

}  // namespace

Fraction factor_of(const Recipe& recipe, const Request& request, Report& report) {
  Fraction factor(1);
  if (request.times) {
    factor = *request.times;
  } else if (request.serves) {
    if (!recipe.serves)
      return refuse(report, {}, "This recipe does not say how many it serves, so it cannot be made for another number.",
                    "a line `serves: 6 to 8` in the head, or another way to say how much");
    factor = serving(*request.serves, *recipe.serves);
  } else if (request.makes) {
    const Fraction one = made_of(recipe, *request.makes, request.makes_thing);
    if (one.is_lost())
      return refuse(report, recipe.makes.empty() ? Span{} : recipe.makes.front().span,
                    "This recipe does not say how much of that it makes.",
                    "a number of what stands in `makes:`, or its weight where that is given");
    factor = in_base(*request.makes, recipe.dialect).low / one;
  } else if (!request.tin_text.empty()) {
    factor = factor_for_tin(recipe, request, report);
  } else if (request.have) {
    factor = factor_for_stock(recipe, *request.have, request.have_thing, report);
  }
  if (report.has_errors()) return Fraction(1);
  if (factor.is_lost())
    return refuse(report, {}, "That size is too long a number to work out exactly.", "a shorter number");
  if (factor.sign() <= 0) return refuse(report, {}, "A recipe can only be made more than 0 times.", "a number above 0");
  return factor;
}

}  // namespace qtn
