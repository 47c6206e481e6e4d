// What is in ingredients: water, fat, sugars, salt. Rows live in data/composition.txt, each with its source.
#pragma once
#include "larder/food.hpp"

namespace qtn {

// Grams in one gram of the part that is eaten; lost where nobody has published it here.
struct Composition {
  Fraction water, fat, sugars, salt;
  std::string_view source;  // "USDA SR28 20081"
  std::string_view note;
};

// nullptr where the table has no row for it. `food` is one of Larder::standard().all(). Built on first use.
const Composition* composition_of(const Food& food);

}  // namespace qtn
