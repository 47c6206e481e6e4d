// The steps of data/ladders.txt. Private to this room.
#pragma once
#include <vector>

#include "measure/ladder.hpp"

namespace qtn {

struct Rung {
  UnitId unit;
  Fraction step;      // in `unit`
  bool fine = false;  // only where the house's scale shows it
};
const std::vector<Rung>& rungs_of(Ladder ladder);

// The value nearest to `exact` (in `unit`) on the coarsest of the unit's own steps that is within `allowed`, else on
// the finest if that is within 10 % and the amount is not `exactly`.
struct OwnStep {
  bool found = false;
  Fraction value;
};
OwnStep own_step(UnitId unit, const Fraction& exact, const Fraction& allowed, bool exactly);
// A stated temperature stands when it is the nearest step of its own scale.
Agreement agrees_as_heat(const Ends& first_celsius, const Quantity& stated);

}  // namespace qtn
