// Lines of one ratio are rounded together. Private to this room.
#pragma once
#include <optional>
#include <vector>

#include "adapt/adapt.hpp"

namespace qtn {

bool is_ratio(const TakeLine& line);

// How a line's shown amount came about; nothing for one that stands as written.
using Roundings = std::vector<std::optional<Rounded>>;

// Refines the lines of a part that percentages, rates or parts tie, until the furthest two of them drift from each
// other by at most one tolerance. `shown` is the list's, by TakeLine.
void tie(const Recipe& recipe, const Part& part, Roundings& roundings, std::vector<Shown>& shown);

}  // namespace qtn
