// Amounts as words: as the source has them, or from a rounded value. Private to this room.
#pragma once
#include "adapt/adapt.hpp"

namespace qtn {

// Blanks and line ends collapsed, nothing else changed.
Shown as_written(const Recipe& recipe, Span span, const Quantity& exact);
// From both ends, rounded; `amount` gives the manner. `exact` is in the unit that is shown.
Shown from_rounded(const Quantity& amount, const Rounded& low, const Rounded& high);
// A text that is put together elsewhere, and so not as written.
Shown from_text(std::string text, const Quantity& exact);
// "6 to 8", "200 to 250 g", "900 g to 1 kg".
std::string join_range(const std::string& low, const std::string& high);

}  // namespace qtn
