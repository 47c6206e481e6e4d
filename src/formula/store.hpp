// The store room: what to buy for what is wanted on the board, and how long a frozen piece takes to thaw.
#pragma once
#include <string_view>

#include "base/fraction.hpp"

namespace qtn {

// As purchased from edible, and back; `yield` is the edible share of what is bought.
Fraction bought_for(const Fraction& edible, const Fraction& yield);
Fraction edible_of(const Fraction& bought, const Fraction& yield);
Fraction yield_of(const Fraction& edible, const Fraction& bought);
// Whole portions: never one that is short.
Fraction portions_in(const Fraction& amount, const Fraction& portion);

enum class ThawPlace : std::uint8_t { fridge, cold_water };
struct Thawing {
  Fraction low = Fraction::lost(), high = Fraction::lost();  // minutes
  std::string_view source;
  bool american = false;  // whose rule it is; of cold water there is only the American one here
};
Thawing thaw(const Fraction& grams, ThawPlace place, bool american);

}  // namespace qtn
