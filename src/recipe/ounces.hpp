// Grams beside ounces in a recipe: which ounce each pair counts with. The book asks too, since it compares its files.
#pragma once
#include <vector>

#include "measure/ounces.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

struct OuncePair {
  Span span;  // of the second statement
  OunceSet set = kAnyOunce;
};
// Every pair that tells something, in the order of the page.
std::vector<OuncePair> ounce_pairs(const Recipe& recipe);

// Says, once, that a file counts with several.
void check_ounces(const Recipe& recipe, Report& report);

}  // namespace qtn
