// What one serving measures, as an American food label rounds it: data/label_rounding.txt.
#pragma once
#include <string_view>

#include "measure/quantity.hpp"

namespace qtn {

struct OnLabel {
  Fraction value = Fraction::lost();  // in `unit`; lost where a label has no such measure
  UnitId unit = kNoUnit;
  std::string_view source;
};
OnLabel on_label(const Fraction& value, UnitId unit);

}  // namespace qtn
