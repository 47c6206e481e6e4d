// Cooling, keeping, thawing, reheating, food under oil, and food for babies, against the table. Private to this room.
#pragma once
#include "safety/pots.hpp"

namespace qtn {

void check_storing(const Recipe& recipe, Law law, const PotTale& tale, Report& report);

// Garlic, herbs or the like in nothing but oil, which keeps out the air.
bool is_flavoured_oil(const Recipe& recipe);
// ... or in oil with other things, neither cooked nor sour, and kept for more than a day: pesto, feta under oil.
bool keeps_under_oil(const Recipe& recipe);
void check_oil(const Recipe& recipe, Report& report);

// Honey in a recipe that says that it is for a baby.
void check_babies(const Recipe& recipe, Report& report);

}  // namespace qtn
