// What may be asked of a clause.
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

// Its verb, listed or the house's own; of a clause without one "work", which takes hands.
inline const Verb& verb_of(const Clause& clause) {
  return clause.house_verb != nullptr ? *clause.house_verb : verb(clause.verb);
}

}  // namespace qtn
