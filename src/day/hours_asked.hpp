// The hours that a day is asked for: from the command, the menu or nobody.
#pragma once
#include "day/board.hpp"

namespace qtn {

// Sets the zone and the hour of each dish. `now`: hours before it are over. False after a report: no such zone, no hour,
// one that is over or that the clocks skip.
bool set_hours(const Board& board, const std::string& zone, std::optional<Minute> serve, std::optional<Minute> now, DayOrder& order,
               Report& report);

}  // namespace qtn
