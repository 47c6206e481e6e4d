// How much a clause asks of what it names: an amount of it or a share. Private to this room.
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

// For a clause whose names are found. A share over the whole is reported here, in digits as in per cents, and so is a
// second statement in parentheses that does not fit the first.
void settle_asked(Recipe& recipe, const Clause& clause, Report& report);

}  // namespace qtn
