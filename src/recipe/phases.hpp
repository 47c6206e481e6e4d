// The phases of checking, in their order; check() calls each once. Private to this room.
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

// 0. Is it plain text at all (plain_text.cpp)?
void check_text(const Source& source, Report& report);
// 1. The tree's heads, lists, methods and logs as typed values (build*.cpp).
Recipe build(const Source& source, const Tree& tree, const Surroundings& around, Report& report, Recipe&& spare);
// `conventional`, `fan` or its American name `convection`, `gas` (kitchen_places.cpp).
OvenKind oven_named(std::string_view word);
// Looks a line's food up by its name, and the form by its words, for a line that was built or renamed (known.cpp).
void know_food(Recipe& recipe, TakeLine& line);
// 2. Names to lines, parts and uses (names.cpp).
void resolve_names(Recipe& recipe, Report& report);
// 3. Percentages, rates and parts to amounts: TakeLine::amount (ratios.cpp; semantics part 4).
void solve_ratios(Recipe& recipe, Report& report);
// 3a. What is bought (`from`) against what goes in (bought.cpp).
void check_bought(const Recipe& recipe, Report& report);
// 4. What each mention takes (counting.cpp; semantics 3.2).
void count_out(Recipe& recipe, Report& report);
// 5. The pot of each part: put aside, taken out, losses, checkpoints, pieces, makes (pot.cpp; semantics part 9, H4).
void weigh_pot(Recipe& recipe, Report& report);
// 5a. A part of this file of which others take more than it comes to (part_asked.cpp).
void check_asked(const Recipe& recipe, Report& report);
// 5b. Recipes of other files that nothing takes (uses_taken.cpp).
void check_uses_taken(const Recipe& recipe, Report& report);
// 6. Paste that is rolled out to line a tin, against the tin (paste.cpp).
void check_paste(const Recipe& recipe, Report& report);
bool rolls_paste(const Recipe& recipe, const Clause& clause);
// 7. The log against the list (trials.cpp; semantics part 8).
void check_trials(Recipe& recipe, int today, Report& report);
// 7. Formulas far outside what is usual for their kind (formula_check.cpp).
void check_formula(const Recipe& recipe, Report& report);

// Phases 2 to 7, for a recipe that was built or changed.
void settle(Recipe& recipe, int today, Report& report);

}  // namespace qtn
