// How long a clause takes, as it is written. Private to this room.
#pragma once
#include "recipe/clauses.hpp"
#include "day/clock.hpp"

namespace qtn {

struct Minutes {
  Fraction least{0};
  std::optional<Fraction> most;  // nullopt: no end
  bool chance = false;           // the food decides
  bool written = false;
  bool longest_binds = false;    // of a wait: the pause behind it counts as waiting
};

// Does the clause take time of its own? `after_time`: a time clause stands before it in its sentence, whose sign it is.
bool takes_time(const Recipe& recipe, const Clause& clause, bool after_time);
Minutes minutes_of(const Making& making, Index clause);
const Term* term_of(const Recipe& recipe, const Clause& clause, TermRole role);
Fraction minutes_in(const Recipe& recipe, const Quantity& amount);  // of its low end
// What an oven is set to, or raised or lowered to, in tenths of a °C of a conventional one; -1 without a temperature.
int oven_heat(const Recipe& recipe, const Clause& clause);

}  // namespace qtn
