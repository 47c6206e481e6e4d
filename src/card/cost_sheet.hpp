// What a dish costs as a card: a section a part, a row an ingredient, its share of the whole beside it.
#pragma once
#include <span>

#include "card/card.hpp"
#include "card/words.hpp"
#include "order/cost.hpp"

namespace qtn {

struct CostWish {
  std::optional<Fraction> food_cost;  // the price at which the food is this share of it
  std::optional<Fraction> allowance;  // on top, for what nobody weighs; only where the writer asks for it
};
// A `variant:` or an `or` line of the recipe, costed at the same size.
struct CostVersion {
  std::string name;
  bool other_line = false;  // an `or` line
  Costing costing;
};
// `versions`: those whose cost differs are told beside it.
Card make_costs(const Costing& all, std::span<const CostVersion> versions, const Recipe& recipe, const Board& board, const CostWish& wish, const Words& words);

}  // namespace qtn
