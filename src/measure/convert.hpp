// From one unit to another, through exact factors, a density, the weight of one.
#pragma once
#include "measure/unit.hpp"

namespace qtn {

struct Converted {
  Fraction value = Fraction::lost();  // in the wanted unit; lost when a figure is lacking or the kinds never meet
  bool used_density = false;
  bool used_each = false;
};
// `grams_per_ml` and `grams_each` are lost() where nobody gives them.
Converted convert(const Fraction& value, UnitId from, Dialect from_dialect, UnitId to, Dialect to_dialect,
                  const Fraction& grams_per_ml, const Fraction& grams_each);

}  // namespace qtn
