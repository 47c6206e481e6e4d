// What a dish costs as a card: a section a part, a row an ingredient, its share of the whole beside it.
#pragma once
#include "card/card.hpp"
#include "card/words.hpp"
#include "order/cost.hpp"

namespace qtn {

struct CostWish {
  std::optional<Fraction> food_cost;  // the price at which the food is this share of it
  std::optional<Fraction> allowance;  // on top, for what nobody weighs; only where the writer asks for it
};
Card make_costs(const Costing& all, const Recipe& recipe, const Board& board, const CostWish& wish, const Words& words);

}  // namespace qtn
