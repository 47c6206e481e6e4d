// The ways to say how much, one a file. Private to this room.
#pragma once
#include "adapt/adapt.hpp"

namespace qtn {

// Reports why a size cannot be had; the factor is then 1.
Fraction refuse(Report& report, Span span, std::string message, std::string expected);

// What fills `asked` as the written tin is filled: by what they hold, or by their tops where a depth is not given
// (semantics part 6; the rule of kitchen-table trade books, COCO, S10-01 to S10-08).
Fraction factor_for_tin(const Recipe& recipe, const Request& request, Report& report);
// The tin that is meant by a request: a size, or the name of one of the house's; null when it is neither.
const Tin* tin_asked(const Recipe& recipe, const Request& request);

// What uses up `have` of a line, before trimming where the line says what was bought (`from`).
Fraction factor_for_stock(const Recipe& recipe, const Quantity& have, const std::string& thing, Report& report);

}  // namespace qtn
