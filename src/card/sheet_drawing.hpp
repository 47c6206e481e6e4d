// A day as strips and lanes. Private to this room.
#pragma once
#include "card/card.hpp"
#include "day/day.hpp"

namespace qtn {

// `at_table`: what stands before an hour of serving.
Drawing drawing_of(const Day& day, const std::string& title, std::string_view at_table);

}  // namespace qtn
