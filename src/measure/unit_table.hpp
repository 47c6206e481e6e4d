// The unit table in memory, read once from data/units.txt. Private to this room: others ask through unit.hpp.
#pragma once
#include <vector>

#include "measure/unit.hpp"

namespace qtn {

struct UnitTable {
  std::vector<Unit> units;                        // in the order of the file; row 0 is a bare number
  std::vector<UnitWord> words;                    // sorted by text
  UnitId by_word(std::string_view folded) const;  // kNoUnit when unknown
  UnitId by_name(std::string_view name) const;
};
const UnitTable& unit_table();

}  // namespace qtn
