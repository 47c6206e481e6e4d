#include "formula/dough.hpp"

#include "formula/figures.hpp"

namespace qtn {

Fraction dough_factor(bool ferment) {
  return kitchen_figure(ferment ? "dough factor, ferment" : "dough factor").low;
}

Fraction water_for(const DoughHeat& heat) {
  const Fraction known = heat.flour + heat.room + heat.ferment.value_or(Fraction(0));
  return dough_factor(heat.ferment.has_value()) * heat.dough - known - heat.friction;
}

// What the ice takes up in melting and in warming is what the rest of the water gives off.
Fraction ice_in(const Fraction& water, const Fraction& tap, const Fraction& wanted) {
  if (!(tap > wanted) || wanted < Fraction(0)) return Fraction::lost();
  return water * (tap - wanted) / (tap + kitchen_figure("ice melting").low);
}

std::vector<Fraction> percents_of(const std::vector<Fraction>& weights, const Fraction& base) {
  std::vector<Fraction> out;
  for (const Fraction& weight : weights) out.push_back(weight / base * Fraction(100));
  return out;
}

}  // namespace qtn
