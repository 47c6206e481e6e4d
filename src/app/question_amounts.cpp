// The amounts of a question as weights, degrees, tins; and how a found one is rounded.
#include "app/pipeline.hpp"
#include "app/question.hpp"
#include "larder/food.hpp"

namespace qtn {

Ends weigh(const Question& question, const Asked& asked, std::string& problem) {
  const Ends lost{Fraction::lost(), Fraction::lost()};
  if (asked.bare()) return problem = "`" + asked.written + "` has no unit here: write 500 g or 1 lb.", lost;
  if (asked.dimension() != Dimension::mass && asked.dimension() != Dimension::volume)
    return problem = "`" + asked.written + "` is a " + std::string(name_of(asked.dimension())) + ", and a weight is wanted.", lost;
  const Ends base = in_base(asked.amount, question.dialect);
  if (base.low.is_lost())
    return problem = "`" + asked.written + "` has more than one size. Say whose: --measures British, American or Australian.", lost;
  if (base.low.sign() <= 0) return problem = "`" + asked.written + "` is no amount to reckon with: it must be above 0.", lost;
  if (asked.dimension() == Dimension::mass) return base;
  const Food* const food = Larder::standard().find(asked.after);
  const Fraction density = food == nullptr ? Fraction::lost() : food->density.value;
  if (density.is_lost()) return problem = "`" + asked.written + "` is a volume, and its weight is not known here: give the weight.", lost;
  return {base.low * density, base.high * density};
}

Fraction celsius_of(const Asked& asked) { return to_celsius(asked.amount.low, asked.amount.unit); }

Fraction celsius_difference(const Asked& asked) {
  return asked.amount.unit == common().fahrenheit ? asked.amount.low * Fraction::of(5, 9) : asked.amount.low;
}

std::optional<TinSize> tin_size_of(std::string_view text, Dialect dialect) {
  if (text.empty() || text.find('\n') != std::string_view::npos) return std::nullopt;
  const std::string head = dialect == Dialect::unstated ? "" : "measures: " + std::string(name_of(dialect)) + "\n";
  const Source source("tin", "recipe: tin\n" + head + "tin: " + std::string(text) + "\n");
  Workbench bench;
  Report report;
  const Recipe recipe = compile(source, {}, bench, report);
  if (!recipe.tin) return std::nullopt;
  return recipe.tin->size;
}

std::string rounded_up(const Fraction& value, int places) {
  Fraction unit(1);
  for (int i = 0; i < places; ++i) unit *= Fraction(10);
  return (Fraction::of((value * unit).ceil(), 1) / unit).decimal(places);
}

std::string rounded_down(const Fraction& value, int places) {
  Fraction unit(1);
  for (int i = 0; i < places; ++i) unit *= Fraction(10);
  return (Fraction::of((value * unit).floor(), 1) / unit).decimal(places);
}

std::string both(const std::string& low, const std::string& high) { return low == high ? low : low + " to " + high; }

}  // namespace qtn
