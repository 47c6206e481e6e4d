// How fast each amount of a recipe grows with it. Private to this room.
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

enum class Pace : std::uint8_t { still, plain, gentle };

// Up to twice in proportion, beyond that half as fast: ten times the batch takes six times as much (S3-31, CSA).
Fraction gentle(const Fraction& k);
Pace pace_of(const Recipe& recipe, const TakeLine& line);
// Of a term: what a step takes grows with its line; times, temperatures, measures, piece weights and loads stand still.
Pace pace_of(const Recipe& recipe, const Clause& clause, Index term);
// The line that an amount in a clause is of; nullptr for the pot, a part, pieces.
const TakeLine* line_of(const Recipe& recipe, const Clause& clause, Index term);
// The term that a stated equivalent restates; the term itself where it is none.
Index restated_by(const Recipe& recipe, const Clause& clause, Index term);

}  // namespace qtn
