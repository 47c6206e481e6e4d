// How a menu says what its guests do without: "24, 3 without gluten, 1 vegan and 2 coeliac".
#pragma once
#include "safety/allergens.hpp"

namespace qtn {

// Those who do without something, each with its words; nothing is said of dishes yet. What is not understood is reported, and
// its guests are among them.
std::vector<GuestNeed> read_guests(const Recipe& menu, Span guests, Report* report);

}  // namespace qtn
