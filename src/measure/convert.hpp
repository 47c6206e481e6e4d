// One amount in another unit: same dimension by size, temperatures by their scale, and across weight, volume and count
// only through what is known of the ingredient. Exact; rounding is the ladders' business.
#pragma once
#include "measure/unit.hpp"

namespace qtn {

struct Converted {
  Fraction value = Fraction::lost();  // lost: not possible, or not known
  bool used_density = false;          // a density had a part in it, and whoever shows the value says so
  bool used_each = false;             // the weight of one had
};

// `grams_per_ml` and `grams_each` are lost() when nobody has given them.
Converted convert(const Fraction& value, UnitId from, Dialect from_dialect, UnitId to, Dialect to_dialect,
                  const Fraction& grams_per_ml, const Fraction& grams_each);

}  // namespace qtn
