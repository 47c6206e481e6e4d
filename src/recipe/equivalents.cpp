#include "recipe/equivalents.hpp"

namespace qtn {
namespace {

std::string grams(const Fraction& value) { return value.decimal(value < Fraction(10) ? 1 : 0) + " g"; }

bool is_mass(const Quantity& amount) { return amount.dimension() == Dimension::mass; }
bool is_volume(const Quantity& amount) { return amount.dimension() == Dimension::volume; }
// A weight beside a measure of volume.
bool crosses(const Restated& both) {
  return (is_mass(both.first) && is_volume(both.second)) || (is_volume(both.first) && is_mass(both.second));
}

// The lightest and the heaviest that a millilitre of this food is published to weigh, in whatever form.
struct Published {
  Fraction least = Fraction::lost(), most = Fraction::lost();
  bool remembered = false;

  void add(const Figure& figure) {
    if (!figure.known()) return;
    remembered = remembered || figure.remembered;
    if (least.is_lost() || figure.value < least) least = figure.value;
    if (most.is_lost() || figure.value > most) most = figure.value;
  }
};

Published published(const Food& food) {
  Published out;
  out.add(food.density), out.add(food.density_small);
  for (const FoodForm& form : Larder::standard().forms_of(food)) out.add(form.density), out.add(form.density_small);
  return out;
}

// Does the weight by volume of a line come from the built-in table?
bool by_table(const Recipe& recipe, const TakeLine& line) {
  const Fraction& density = known_of(recipe, line).density;
  return density == density_of(line).value || density == spoon_density_of(line).value;
}

// The first amount in the base unit of the second; lost where they cannot be compared.
Ends as_second(const Recipe& recipe, const Restated& both, const TakeLine* line) {
  const Ends lost{Fraction::lost(), Fraction::lost()};
  const Dimension from = both.first.dimension(), to = both.second.dimension();
  if (from == to) return in_base(both.first, recipe.dialect);
  if (line == nullptr) return lost;
  // Pieces differ; the weight of one in the table is one of many. So is its weight by volume: see check_published().
  if ((from == Dimension::count || to == Dimension::count) && line->food != nullptr) return lost;
  if (crosses(both) && by_table(recipe, *line)) return lost;
  const Ends weight = grams_of(recipe, *line, both.first);
  if (to == Dimension::mass) return weight;
  const Fraction density = known_of(recipe, *line).density;
  return to == Dimension::volume ? Ends{weight.low / density, weight.high / density} : lost;
}

// A measure and a weight of one thing, against every form of it that is published. Scoops and shakes differ, so a tenth
// either way stands, and so does what no kitchen scale can tell; a figure from memory accuses nobody.
void check_published(const Recipe& recipe, const Restated& both, const TakeLine& line, Report& report) {
  if (recipe.kitchen && recipe.kitchen->food(line.name) != nullptr) return;  // the house weighed its own
  const bool weight_last = is_mass(both.second);
  const Ends said = in_base(weight_last ? both.second : both.first, recipe.dialect);
  const Ends ml = in_base(weight_last ? both.first : both.second, recipe.dialect);
  const Published all = published(*line.food);
  if (ml.low.is_lost() || said.low.is_lost() || all.least.is_lost() || all.remembered) return;
  const Fraction least = ml.low * all.least, most = ml.high * all.most;
  const Fraction tenth = Fraction::of(1, 10), one(1);
  const bool light = said.high < least * (one - tenth) && said.high < least - one;
  const bool heavy = said.low > most * (one + tenth) && said.low > most + one;
  if (!light && !heavy) return;
  const Figure& figure = density_of(line).known() ? density_of(line) : spoon_density_of(line);
  const std::string range = least.decimal(1) == most.decimal(1) ? grams(least) : grams(least) + " to " + grams(most);
  report.add(Code::weighs_otherwise, both.second_span,
             quoted(recipe.slice(weight_last ? both.first_span : both.second_span)) + " of " + std::string(line.name) +
                 " is published at " + range + ".")
      .also(both.first_span, "the first amount rules")
      .find(quoted(recipe.slice(both.second_span)) + " for " + quoted(recipe.slice(both.first_span)))
      .expect("a weight and a measure of one amount; the table has " + std::string(figure.source));
}

// "14.11 oz", the first amount as the second is written; "°C" and the like have a scale of their own.
std::string true_value(const Ends& first, const Quantity& second, Dialect dialect) {
  const auto in_unit = [&](const Fraction& base) {
    return second.dimension() == Dimension::temperature ? from_celsius(base, second.unit) : base / size_of(second.unit, dialect);
  };
  const Fraction low = in_unit(first.low), high = in_unit(first.high);
  const std::string one = low.decimal(2), other = high.decimal(2), symbol(write_unit(second.unit, high));
  return one + (one == other ? "" : " to " + other) + (symbol.empty() ? "" : " " + symbol);
}

}  // namespace

void check_restated(const Recipe& recipe, const Restated& both, const TakeLine* line, Report& report) {
  if (both.first.is_lost() || both.second.is_lost()) return;
  if (line != nullptr && line->food != nullptr && crosses(both)) check_published(recipe, both, *line, report);
  const Ends first = as_second(recipe, both, line);
  if (first.low.is_lost() || first.high.is_lost()) return;
  const Agreement agreement = agrees(both.first, first, both.second, recipe.dialect);
  if (agreement.holds) return;
  const Fraction percent = agreement.error * Fraction(100);
  const std::string second = quoted(recipe.slice(both.second_span));
  auto& problem = report.add(Code::equivalent_off, both.second_span,
                             quoted(recipe.slice(both.first_span)) + " is " + true_value(first, both.second, recipe.dialect) + "; " +
                                 second + " is " + percent.abs().decimal(1) + " % " + (percent.sign() < 0 ? "less" : "more") + ".");
  problem.also(both.first_span, "the first amount rules").find(second);
  if (agreement.correct.empty()) return;
  problem.expect(quoted(agreement.correct)).fix(both.second_span, agreement.correct, "write " + quoted(agreement.correct));
}

}  // namespace qtn
