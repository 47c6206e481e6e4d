// Can a recipe's promises of time all be kept? Decided exactly, with written times only.
#pragma once
#include "day/clock.hpp"

namespace qtn {

// The makings of one recipe: itself, then what it uses, and what those use, each once. `adapted`: its own; null where
// the times by weight are not known. What is used is taken as it is written.
std::vector<Making> makings_of(const Recipe& recipe, const Adapted* adapted);

// Could any of its times clash? False: all of them one after another are no longer than the shortest time that anything
// may take at most, so that there is nothing to look for.
bool may_clash(const Recipe& recipe);

// Reports the shortest set of clauses that clash, if any.
void check_clock(const Recipe& recipe, Report& report);

// The sentence, and the places, for a clash of a clock. `source`: the file that the report is of.
void tell_clash(const Clock& clock, const plan::Clash& clash, const Source* source, Report& report);

}  // namespace qtn
