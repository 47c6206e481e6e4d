// One amount in another unit: an amount, perhaps an ingredient, and the unit that is wanted.
#include "app/pipeline.hpp"
#include "app/question.hpp"
#include "measure/convert.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

// Where the last " in " or " to " stands that is followed by a unit.
std::size_t wanted_at(const std::string& text, UnitId& unit) {
  for (std::size_t at = text.size(); at-- > 0;) {
    if (text.compare(at, 4, " in ") != 0 && text.compare(at, 4, " to ") != 0) continue;
    std::string name(trim(std::string_view(text).substr(at + 4)));
    if (name == "C" || name == "°C") unit = common().celsius;
    else if (name == "F" || name == "°F") unit = common().fahrenheit;
    else if (name == "gas" || name == "gas mark") unit = common().gas;
    else unit = unit_named(name.size() > 1 ? lower(name) : name);
    if (unit != kNoUnit) return at;
  }
  return std::string::npos;
}

std::string written(const Fraction& value, UnitId unit, int places) {
  if (unit == common().gas) return "gas " + write_number(value, false, false);
  return value.decimal(places) + " " + std::string(write_unit(unit, value));
}

Ladder ladder_of_answer(const Unit& to, Dialect dialect) {
  return ladder_for(to.dimension, System::metric, dialect, false);
}

}  // namespace

bool asks_conversion(const std::string& question) {
  UnitId unit = kNoUnit;
  return wanted_at(question, unit) != std::string::npos;
}

std::optional<Sum> answer_conversion(const std::string& question, Dialect dialect, std::string& problem) {
  UnitId to = kNoUnit;
  const std::size_t cut = wanted_at(question, to);
  if (cut == std::string::npos) {
    problem = "A sum ends in the unit that is wanted: \"2 1/4 cups plain flour in g\".";
    return std::nullopt;
  }
  // The amount and its ingredient are a line of a list, so they are read by the list's own rules. A bare temperature
  // or time stands in a clause.
  const std::string amount(trim(std::string_view(question).substr(0, cut)));
  const Dimension wanted = unit(to).dimension;
  const bool heat = wanted == Dimension::temperature, clause = heat || wanted == Dimension::duration;
  const std::string dialect_line = dialect == Dialect::unstated ? "" : "measures: " + std::string(name_of(dialect)) + "\n";
  const std::string text = "recipe: sum\n" + dialect_line + (clause ? "method:\n[" + amount + "]\n" : "take:\n" + amount + "\n");
  const Source source("sum", text);
  Workbench bench;
  Report report;
  Recipe recipe = compile(source, {}, bench, report);
  // An amount without an ingredient is no line; "thing" stands in for it.
  if (!clause && (recipe.lines.empty() || !recipe.lines[0].measured())) {
    static constexpr std::string_view kThing = " thing";
    const Source again("sum", "recipe: sum\n" + dialect_line + "take:\n" + amount + std::string(kThing) + "\n");
    report = Report();
    recipe = compile(again, {}, bench, report);
    recipe.source = nullptr;
  }
  for (const Diagnostic& diagnostic : report.list())
    if (diagnostic.code == Code::ambiguous_unit || diagnostic.code == Code::no_such_measure) {
      problem = diagnostic.message + " Here " + diagnostic.found + ". Say whose: --measures British, American or Australian.";
      return std::nullopt;
    }
  Quantity from;
  Fraction density = Fraction::lost(), each = Fraction::lost();
  Sum sum;
  if (clause) {
    for (const Term& term : recipe.terms)
      if (term.amount.dimension() == wanted) from = term.amount;
  } else if (!recipe.lines.empty() && recipe.lines[0].measured()) {
    const TakeLine& line = recipe.lines[0];
    from = line.amount;
    const bool to_volume = unit(to).dimension == Dimension::volume && from.dimension() != Dimension::volume;
    const Known known = known_of(recipe, line, from, to_volume ? to : from.unit);
    density = known.density, each = known.each;
    const Dimension a = from.dimension(), b = unit(to).dimension;
    if (a != b && (a == Dimension::volume || b == Dimension::volume) && !known.density.is_lost())
      sum.because = known.density.decimal(3) + " g per ml, from " + std::string(known.density_source);
    if (a != b && (a == Dimension::count || b == Dimension::count) && !known.each.is_lost())
      sum.because += (sum.because.empty() ? "" : "; ") + known.each.decimal(1) + " g each, from " + std::string(known.each_source);
    if (!sum.because.empty()) {
      std::string_view as = taken_for(line, known.density_source);
      if (as.empty()) as = taken_for(line, known.each_source);
      if (!as.empty()) sum.because += ", taken as " + std::string(as);
    }
    if (known.remembered && !sum.because.empty()) sum.because += " (from memory)";
  }
  if (from.low.is_lost() || from.high.is_lost() || (from.low.is_zero() && from.high.is_zero() && from.unit == kNoUnit)) {
    problem = "This amount is not read: \"" + amount + "\".";
    return std::nullopt;
  }
  const Converted low = convert(from.low, from.unit, dialect, to, dialect, density, each);
  const Converted high = convert(from.high, from.unit, dialect, to, dialect, density, each);
  if (low.value.is_lost()) {
    const Dimension a = unit(from.unit).dimension, b = unit(to).dimension;
    problem = "A " + std::string(name_of(a)) + " and a " + std::string(name_of(b)) + " meet only through what is known of the ingredient, and nobody has given that here.";
    if (size_of(to, dialect).is_lost() && unit(to).dimension != Dimension::temperature) problem = "`" + std::string(unit(to).name) + "` has more than one size. Say whose: --measures British, American or Australian.";
    return std::nullopt;
  }
  const bool range = !(low.value == high.value);
  const auto rounded = [&](const Fraction& value) {
    if (heat || unit(to).dimension == Dimension::duration) return written(value, to, heat ? 0 : 2);
    if (to == common().gram || to == common().millilitre) {
      const Fraction base = value * size_of(to, dialect);
      return write(round_on(ladder_of_answer(unit(to), dialect), base, Fraction::of(1, 100), dialect));
    }
    return written(value, to, 2);
  };
  sum.answer = rounded(low.value) + (range ? " to " + rounded(high.value) : "");
  const std::string symbol = " " + std::string(write_unit(to, high.value));
  sum.exact = low.value.exact() + (range ? " to " + high.value.exact() : "") + symbol;
  return sum;
}

}  // namespace qtn
