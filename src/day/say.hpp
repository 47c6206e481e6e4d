// Lengths of time and names of things in words.
#pragma once
#include "day/clock.hpp"

namespace qtn {

// "8 h", "1 h 30 min", "2 days", "5 min": of ticks, to the minute, upwards.
std::string say_length(Ticks ticks, Ticks per_minute);
// The words of a clause without its brackets, on one line.
std::string words_of(const Recipe& recipe, Span span);

}  // namespace qtn
