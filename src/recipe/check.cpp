// The phases in their order.
#include "recipe/phases.hpp"

namespace qtn {

void settle(Recipe& recipe, int today, Report& report) {
  resolve_names(recipe, report);
  solve_ratios(recipe, report);
  check_bought(recipe, report);
  count_out(recipe, report);
  weigh_pot(recipe, report);
  check_asked(recipe, report);
  check_uses_taken(recipe, report);
  check_paste(recipe, report);
  check_trials(recipe, today, report);
  check_formula(recipe, report);
}

Recipe check(const Source& source, const Tree& tree, const Surroundings& around, Report& report, Recipe&& spare) {
  check_text(source, report);
  Recipe recipe = build(source, tree, around, report, std::move(spare));
  settle(recipe, around.today, report);
  return recipe;
}

}  // namespace qtn
