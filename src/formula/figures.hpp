// The figures that the kitchen formulas rest on, each with its source: data/formulas.txt.
#pragma once
#include <string_view>

#include "base/fraction.hpp"

namespace qtn {

struct KitchenFigure {
  std::string_view name;
  Fraction low, high;  // equal unless the source gives a range
  std::string_view source;
  bool remembered = false;  // a value from memory, and said so wherever it is shown
};
// A row by its name. The names are this program's own, so one that is not there is lost() at both ends.
const KitchenFigure& kitchen_figure(std::string_view name);

}  // namespace qtn
