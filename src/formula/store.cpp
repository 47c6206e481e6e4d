#include "formula/store.hpp"

#include "formula/figures.hpp"
#include "measure/unit.hpp"

namespace qtn {

Fraction bought_for(const Fraction& edible, const Fraction& yield) { return edible / yield; }
Fraction edible_of(const Fraction& bought, const Fraction& yield) { return bought * yield; }
Fraction yield_of(const Fraction& edible, const Fraction& bought) { return edible / bought; }

Fraction portions_in(const Fraction& amount, const Fraction& portion) {
  const Fraction count = amount / portion;
  return count.is_lost() ? count : Fraction::of(count.floor(), 1);
}

Thawing thaw(const Fraction& grams, ThawPlace place, bool american) {
  const bool by_pound = american || place == ThawPlace::cold_water;
  const KitchenFigure& rule = kitchen_figure(place == ThawPlace::cold_water ? "thaw, water, a lb"
                                             : american                     ? "thaw, fridge, a lb"
                                                                            : "thaw, fridge, a kg");
  const Fraction pieces = grams / size_of(by_pound ? common().pound : common().kilogram, Dialect::unstated);
  const Fraction minutes = pieces * Fraction(60);
  return {minutes * rule.low, minutes * rule.high, rule.source, by_pound};
}

}  // namespace qtn
