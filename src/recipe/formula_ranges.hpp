// How formulas usually stand: the rows of data/formula_ranges.txt. Private to this room.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "base/fraction.hpp"

namespace qtn {

enum class Measured : std::uint8_t { water, fat, sugars, salt, yeast, eggs };

struct FormulaRange {
  std::string_view kind;           // "yeast bread"
  std::vector<std::string> words;  // folded; stand in this order in the name
  Fraction flour;                  // at least this share of the whole
  bool yeast = false;              // there must be some
  Measured of = Measured::water;
  std::string_view of_word;
  Fraction usual, least, most;  // shares of the flour; lost where the row has none
  std::string_view source;
};

// Built on first use.
const std::vector<FormulaRange>& formula_ranges();

}  // namespace qtn
