#include "formula/price.hpp"

namespace qtn {

Fraction cost_of(const Fraction& amount, const Fraction& pack, const Fraction& price) { return amount / pack * price; }
Fraction price_for(const Fraction& cost, const Fraction& food_cost) { return cost / food_cost; }
Fraction cost_within(const Fraction& price, const Fraction& food_cost) { return price * food_cost; }
Fraction with_allowance(const Fraction& cost, const Fraction& allowance) { return cost * (Fraction(1) + allowance); }

}  // namespace qtn
