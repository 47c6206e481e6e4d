// Phase 3: percentages, rates and parts are solved, not typed (semantics part 4).
#include <algorithm>

#include "recipe/phases.hpp"
#include "recipe/ratio_system.hpp"

namespace qtn {
namespace {

UnitId base_unit(const TakeLine& line, Dimension dimension) {
  if (dimension == Dimension::mass) return common().gram;
  return dimension == Dimension::volume ? common().millilitre : line.written.unit;
}

// A range of a percentage gives a range of the amount; the middle of it was solved.
Quantity solved(const TakeLine& line, const Fraction& value, Dimension dimension) {
  Quantity amount{value, value, base_unit(line, dimension), line.written.manner, false};
  if (line.written.is_range()) {
    const Fraction middle = (line.written.low + line.written.high) * Fraction::of(1, 2);
    amount.low = value * line.written.low / middle;
    amount.high = value * line.written.high / middle;
  }
  return amount;
}

}  // namespace

void solve_ratios(Recipe& recipe, Report& report) {
  if (std::none_of(recipe.lines.begin(), recipe.lines.end(), is_ratio)) return;
  for (TakeLine& line : recipe.lines)  // of a version, those of the recipe it was made from
    if (is_ratio(line)) line.amount = {Fraction::lost(), Fraction::lost(), common().gram, Manner::plain, false};
  RatioSystem system(recipe);
  system.solve();
  for (Index i = 0; i < recipe.lines.size(); ++i) {
    TakeLine& line = recipe.lines[i];
    if (system.is_known(i)) line.amount = solved(line, system.value(i), system.dimension(i));
  }
  // What hangs on something that could not be read is no fault of its own.
  const bool disturbed = std::any_of(recipe.parts.begin(), recipe.parts.end(), [](const Part& part) {
    return part.disturbed || part.in_ring;
  });
  if (disturbed) return;
  for (const RatioTrouble& trouble : system.troubles()) say_trouble(recipe, trouble, report);
}

}  // namespace qtn
