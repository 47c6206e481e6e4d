// The steps of data/ladders.txt. Private to this room.
#pragma once
#include <vector>

#include "measure/ladder.hpp"

namespace qtn {

struct Rung {
  UnitId unit;
  Fraction step;      // in `unit`
  int group = 0;      // 0: the ladder's first unit, 1: its second, …
  bool fine = false;  // only where the house's scale shows it
};
const std::vector<Rung>& rungs_of(Ladder ladder);

// Whose spoons, cups and pints a ladder means when the file's are not its own or not said.
Dialect measures_of(Ladder ladder, Dialect dialect);

// The steps that an amount of this unit alone is written in, coarse to fine.
std::vector<Fraction> own_steps(UnitId unit, const Fraction& amount);

}  // namespace qtn
