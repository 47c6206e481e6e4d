// Costs and prices. Shares are fractions of 1: a food cost of 28 % is 7/25.
#pragma once
#include "base/fraction.hpp"

namespace qtn {

// So much of a pack: amount ÷ pack × price of the pack, both amounts in one unit (BCM ch. 11; VCC).
Fraction cost_of(const Fraction& amount, const Fraction& pack, const Fraction& price);
// What to ask for a dish so that its food is this share of the price: cost ÷ share (SMA).
Fraction price_for(const Fraction& cost, const Fraction& food_cost);
// What the food may cost at a price: share × price (Wall, Trade Calculations, obj. 7).
Fraction cost_within(const Fraction& price, const Fraction& food_cost);
// With so much on top for what nobody weighs, seasonings and the like (Professional Cooking, Wiley).
Fraction with_allowance(const Fraction& cost, const Fraction& allowance);

}  // namespace qtn
