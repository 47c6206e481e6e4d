// Pastry rolled out: what a weight covers at a thickness, and the reverse. Areas in mm², lengths in mm, weights in grams.
#pragma once
#include "base/fraction.hpp"

namespace qtn {

Fraction paste_covers(const Fraction& grams, const Fraction& thick);
Fraction paste_for(const Fraction& area, const Fraction& thick);
Fraction paste_thickness(const Fraction& grams, const Fraction& area);
// The widest round that an area makes, in whole mm, never more than there is; lost() for no area.
Fraction widest_round(const Fraction& area);

}  // namespace qtn
