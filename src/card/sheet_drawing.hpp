// A day as strips and lanes. Private to this room.
#pragma once
#include "card/card.hpp"
#include "day/day.hpp"

namespace qtn {

Drawing drawing_of(const Day& day, const std::string& title);

}  // namespace qtn
