#include "recipe/equivalents.hpp"

namespace qtn {
namespace {

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

// The first amount in the base unit of the second; lost where they cannot be compared.
Ends as_second(const Recipe& recipe, const Restated& both, const TakeLine* line) {
  const Ends lost{Fraction::lost(), Fraction::lost()};
  const Dimension from = both.first.dimension(), to = both.second.dimension();
  if (from == to) return in_base(both.first, recipe.dialect);
  if (line == nullptr) return lost;
  // Pieces differ; the weight of one in the table is one of many.
  if ((from == Dimension::count || to == Dimension::count) && line->food != nullptr) return lost;
  const Ends grams = grams_of(recipe, *line, both.first);
  if (to == Dimension::mass) return grams;
  const Fraction density = known_of(recipe, *line).density;
  return to == Dimension::volume ? Ends{grams.low / density, grams.high / density} : lost;
}

}  // namespace

void check_restated(const Recipe& recipe, const Restated& both, const TakeLine* line, Report& report) {
  if (both.first.is_lost() || both.second.is_lost()) return;
  const Ends first = as_second(recipe, both, line);
  if (first.low.is_lost() || first.high.is_lost()) return;
  const Agreement agreement = agrees(both.first, first, both.second, recipe.dialect);
  if (agreement.holds) return;
  const Fraction percent = agreement.error * Fraction(100);
  const std::string second = quoted(recipe.slice(both.second_span));
  auto& problem = report.add(Code::equivalent_off, both.second_span,
                             second + " is " + percent.abs().decimal(1) + " % " + (percent.sign() < 0 ? "less" : "more") +
                                 " than " + quoted(recipe.slice(both.first_span)) + ".");
  problem.also(both.first_span, "the first amount rules").find(second);
  if (agreement.correct.empty()) return;
  problem.expect(quoted(agreement.correct)).fix(both.second_span, agreement.correct, "write " + quoted(agreement.correct));
}

}  // namespace qtn
