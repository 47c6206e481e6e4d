// Two ways of one step: by hand and by machine.
#include "recipe/recipe.hpp"

namespace qtn {
namespace {

bool is_way(StepKindOf kind) { return kind == StepKindOf::by_hand || kind == StepKindOf::by_machine; }

// The steps that stand with this one: of its part, or of its block after the dish.
Slice beside(const Recipe& recipe, Index step) {
  const Index part = recipe.steps[step].part;
  if (part < recipe.parts.size()) return recipe.parts[part].steps;
  for (const AfterBlock& block : recipe.after)
    if (step >= block.steps.first && step < block.steps.end()) return block.steps;
  return {step, 1};
}

}  // namespace

bool is_other_way(const Recipe& recipe, Index step, std::optional<StepWay> way) {
  if (!is_way(recipe.steps[step].kind)) return false;
  const Slice steps = beside(recipe, step);
  Index first = step;
  while (first > steps.first && is_way(recipe.steps[first - 1].kind)) --first;
  StepKindOf taken = recipe.steps[first].kind;
  if (way) {
    const StepKindOf asked = *way == StepWay::by_hand ? StepKindOf::by_hand : StepKindOf::by_machine;
    for (Index s = first; s < steps.end() && is_way(recipe.steps[s].kind); ++s)
      if (recipe.steps[s].kind == asked) taken = asked;
  }
  return recipe.steps[step].kind != taken;
}

}  // namespace qtn
