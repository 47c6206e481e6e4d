// The standardized-recipe form: what a recipe lacks of the ten components that the school-meal forms print as required
// (Measuring Success with Standardized Recipes, USDA and National Food Service Management Institute, 2002).
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

// One note (Q861) a missing component, with its place and how to write it. `folder`: of the file inside its book, which is
// its category; empty for a file in the book's own folder. Menus have no such form.
void check_form(const Recipe& recipe, std::string_view folder, Report& report);

}  // namespace qtn
