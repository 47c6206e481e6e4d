// A second statement of one amount against the first (semantics A16). Private to this room.
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

struct Restated {
  const Quantity& first;
  Span first_span;
  const Quantity& second;
  Span second_span;
};
// `line` is what the amount is of, for its density and the weight of one; null where nothing is known of it. Two kinds
// of amount that no figure joins are not compared: a sum that needs a figure nobody gives never accuses.
void check_restated(const Recipe& recipe, const Restated& both, const TakeLine* line, Report& report);

}  // namespace qtn
