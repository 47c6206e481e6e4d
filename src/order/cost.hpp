// What a dish costs: every line at its as-bought amount and the price of the house, exact. Packs play no part in it: what is
// left of one is not lost. Rounding is for whoever shows it.
#pragma once
#include "order/order.hpp"

namespace qtn {

struct CostLine {
  std::string name;
  Measure measure;                   // as bought; of a taken recipe what is taken of it
  bool taken = false;                // another recipe, or a dish of a menu
  bool optional = false;
  bool trimmed = false;              // `from` says what is bought
  bool spoonful = false;             // written in spoons
  std::string into;                  // as of a Need
  Fraction cost = Fraction::lost();  // lost: nobody says what it costs, or not in a measure that it can be brought to
  const HousePrice* price = nullptr;
  std::string through;               // the figure that brought it to the measure of its price, with its source
};
struct CostPart {
  std::string name;
  std::vector<CostLine> lines;
  Fraction cost{0};                  // of the lines that have one
};
struct Costing {
  std::vector<CostPart> parts;       // of a recipe; of a menu one, with a line for each dish
  Fraction cost{0};                  // of all parts: their exact sum
  std::optional<Quantity> serves;    // at its size
  std::vector<Made> makes;           // of the head, at its size
  std::vector<std::string> no_price; // left out of the sums: "nutmeg", "fine salt (Shortcrust)"
  std::vector<std::string> unmeasured;
  std::vector<const HousePrice*> stale, undated;  // of the prices that were used
  bool untrimmed = false;            // of something nobody says what is bought
};
// `today`: days since 1970-01-01; a price is stale when it was asked more than a year before. 0: not checked.
Costing costing_of(const Recipe& recipe, const Board& board, int today);

}  // namespace qtn
