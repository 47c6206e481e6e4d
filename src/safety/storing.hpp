// Cooling, keeping, thawing, reheating, and food under oil, against the table. Private to this room.
#pragma once
#include "safety/pots.hpp"

namespace qtn {

void check_storing(const Recipe& recipe, Law law, const PotTale& tale, Report& report);

// Garlic, herbs or the like in nothing but oil, which keeps out the air.
bool is_flavoured_oil(const Recipe& recipe);

}  // namespace qtn
