// Bread: how warm the water must be, how much of it must be ice, and the shares of a formula. Temperatures are in °C;
// friction is a difference and never gains 32.
#pragma once
#include <optional>
#include <vector>

#include "base/fraction.hpp"

namespace qtn {

struct DoughHeat {
  Fraction dough, flour, room;      // points, °C
  Fraction friction;                // what mixing adds, in °C of difference
  std::optional<Fraction> ferment;  // a starter, sponge or old dough, °C
};
// °C; below 0 or above 100 where water alone cannot do it.
Fraction water_for(const DoughHeat& heat);
// By how many times the dough's temperature is taken: 3, or 4 with a ferment.
Fraction dough_factor(bool ferment);

// So much of `water` (any weight) must be ice for tap water to come down to what is wanted, with no other heat.
// lost() where the water is not to be cooled, or to below freezing.
Fraction ice_in(const Fraction& water, const Fraction& tap, const Fraction& wanted);

// Each weight as per cent of `base`: of the flour (baker's per cent), or of all (true per cent).
std::vector<Fraction> percents_of(const std::vector<Fraction>& weights, const Fraction& base);

}  // namespace qtn
