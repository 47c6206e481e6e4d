// A card from an adapted recipe: which facts, in which order, in which words; prose through CommonMark.
#pragma once
#include "adapt/adapt.hpp"
#include "card/card.hpp"

namespace qtn {

Card make_card(const Adapted& adapted);
// A note at the end of a card, in plain words.
void add_note(Card& card, std::string_view text);
// What other dishes of a table take of this one, beside the amounts of its card: "105 g for Bean salad".
void add_taken(Card& card, std::string_view portion);
// A sheet for the kitchen wall: a line for every reading that the recipe asks, with blanks to fill in. `adapted` has
// both scales of heat, the second beside the first.
Card make_readings(const Adapted& adapted);

}  // namespace qtn
