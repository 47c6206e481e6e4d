// Dishes against allergens: one table for a menu or a book.
#pragma once
#include <span>
#include <string_view>

#include "card/card.hpp"
#include "safety/allergens.hpp"

namespace qtn {

// A row a recipe, a column a group of the list that any of them brings; `title` heads it.
Card make_matrix(std::string_view title, std::span<const Recipe* const> recipes, AllergenList list);

}  // namespace qtn
