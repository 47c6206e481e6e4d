// What can hurt somebody: raw food that is not cooked through, food that stands warm, allergens. The figures are reminders with
// their sources; local codes and licensed practice rule, and what is silent here is not thereby safe.
#pragma once
#include <string>
#include <vector>

#include "recipe/recipe.hpp"

namespace qtn {

// Reports what falls short of the figures of the kitchen's law, and promises (`without:`) that the list breaks.
void check_safety(const Recipe& recipe, Report& report);

// A caution that a card prints with a step, or for the whole dish.
struct Caution {
  Index step = kNone;  // of Recipe::steps; kNone: the dish
  std::string text;
};
struct Cautions {
  std::vector<Caution> list;  // in the order of the page, each said once; what the writer's own cautions say is left out
  std::string checked;        // "by the figures of the UK: the chicken thighs"; empty where nothing was to be checked
};
Cautions cautions_of(const Recipe& recipe);

}  // namespace qtn
