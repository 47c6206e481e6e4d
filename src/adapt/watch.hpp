// What to watch on a card of another size: times, tins, evaporation, seasoning. Private to this room.
#pragma once
#include "adapt/ties.hpp"

namespace qtn {

// Said once each, into `lacks`; nothing for a card of the recipe as written. `roundings` are those of the list.
void watch_size(const Recipe& recipe, const Request& request, const Roundings& roundings, Report& lacks);

}  // namespace qtn
