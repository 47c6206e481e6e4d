#include "adapt/shower.hpp"

#include <algorithm>

namespace qtn {
namespace {

enum class Family : std::uint8_t { other, metric, imperial, spoon, cup, informal };

Family family(UnitId id) {
  const CommonUnits& c = common();
  const Unit& row = unit(id);
  if (row.informal) return Family::informal;
  if (id == c.teaspoon || id == c.tablespoon || id == c.dessertspoon) return Family::spoon;
  if (id == c.cup) return Family::cup;
  if (id == c.ounce || id == c.pound || id == c.fluid_ounce || id == c.pint || id == c.quart || id == c.gallon || id == c.gill || id == c.inch) return Family::imperial;
  if (row.decimal && row.dimension != Dimension::ratio && row.dimension != Dimension::money) return Family::metric;
  return Family::other;
}

std::string_view manner_word(Manner manner) {
  switch (manner) {
    case Manner::about: return "about ";
    case Manner::at_least: return "at least ";
    case Manner::at_most: return "at most ";
    default: return "";
  }
}

}  // namespace

Shown Shower::as_written(Span span, const Quantity& exact) const {
  Shown shown;
  shown.exact = exact;
  const std::string_view text = recipe_.slice(span);
  if (text.find_first_of("\n\r\t") == std::string_view::npos && text.find("  ") == std::string_view::npos) {
    shown.text = text;
    return shown;
  }
  for (char c : text) {
    const bool blank = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (!blank) shown.text += c;
    else if (!shown.text.empty() && shown.text.back() != ' ') shown.text += ' ';
  }
  while (!shown.text.empty() && shown.text.back() == ' ') shown.text.pop_back();
  return shown;
}

// Does a unit as written belong to the measures that are asked for, in the same size?
bool Shower::stays(UnitId id) const {
  if (system_ == System::written) return true;
  const Unit& row = unit(id);
  const bool same_size = size_of(id, recipe_.dialect) == size_of(id, dialect_) || row.dimension == Dimension::temperature;
  switch (family(id)) {
    case Family::metric: return system_ == System::metric;
    case Family::spoon: return same_size;
    case Family::informal: return true;
    case Family::imperial: return system_ != System::metric && same_size && (system_ == System::american) == (dialect_ == Dialect::american);
    case Family::cup: return system_ == System::american && same_size;
    default: return true;
  }
}

void Shower::lacking(const TakeLine& line) {
  if (lacks_ == nullptr) return;
  for (const Diagnostic& said : lacks_->list())
    if (said.code == Code::no_density && said.span == line.name_span) return;
  lacks_->add(Code::no_density, line.name_span, "No weight by volume is known for " + std::string(line.name) + ", so it stays as it is written.");
}

// Spoons are at home in every kitchen; a liquid is measured, a solid is weighed, and only a density turns one into the
// other. The American kitchen measures what its own tables give a cup of.
Ladder Shower::volume_ladder(const TakeLine* line, const Quantity& amount, Ends& base, bool spoonful) {
  if (system_ == System::written) return ladder_of(amount.unit, recipe_.dialect);
  if (spoonful || system_ == System::american) return ladder_for(Dimension::volume, system_, dialect_, spoonful);
  const bool solid = line != nullptr && line->food != nullptr && !line->food->liquid;
  if (!solid || family(amount.unit) == Family::metric) return ladder_for(Dimension::volume, system_, dialect_, false);
  const Known known = known_of(recipe_, *line);
  if (known.density.is_lost()) {
    lacking(*line);
    return ladder_of(amount.unit, recipe_.dialect);
  }
  base.low *= known.density, base.high *= known.density;
  return ladder_for(Dimension::mass, system_, dialect_, false);
}

Ladder Shower::ladder(const TakeLine* line, const Quantity& amount, Ends& base) {
  const Family kind = family(amount.unit);
  const bool spoonful = kind == Family::spoon || kind == Family::informal;
  switch (amount.dimension()) {
    case Dimension::volume: return volume_ladder(line, amount, base, spoonful);
    case Dimension::mass: {
      if (system_ == System::written) return ladder_of(amount.unit, recipe_.dialect);
      const bool by_cup = system_ == System::american && line != nullptr && line->food != nullptr && line->food->density.known() &&
                          line->food->density.source.find(" cup") != std::string_view::npos && (line->food->liquid || !line->food->each.known());
      if (!by_cup) return ladder_for(Dimension::mass, system_, dialect_, false);
      const Known known = known_of(recipe_, *line);
      base.low /= known.density, base.high /= known.density;
      return Ladder::cups;
    }
    case Dimension::length: return system_ == System::written ? ladder_of(amount.unit, recipe_.dialect) : ladder_for(Dimension::length, system_, dialect_, false);
    default: return Ladder::things;
  }
}

Shown Shower::rounded(const Quantity& amount, Ladder ladder, const Ends& base) {
  const Fraction allowed = tolerance(amount.manner, recipe_.tolerance());
  const Fraction finest = recipe_.kitchen ? recipe_.kitchen->finest : Fraction(1);
  Shown shown;
  shown.changed = true;
  shown.exact = amount;
  const Rounded low = round_on(ladder, base.low, allowed, dialect_, finest);
  shown.rough = low.rough;
  if (base.low == base.high) {
    last = low;
    const auto pieces = write_pieces(low);
    if (pieces.size() == 1) shown.number = pieces[0].number, shown.unit = pieces[0].unit;
    shown.text = std::string(manner_word(amount.manner)) + write(low);
    return shown;
  }
  const Rounded high = round_on(ladder, base.high, allowed, dialect_, finest);
  shown.rough = low.rough || high.rough;
  const auto a = write_pieces(low), b = write_pieces(high);
  const bool one_unit = a.size() == 1 && b.size() == 1 && (a[0].unit == b[0].unit || a[0].unit.substr(0, 3) == b[0].unit.substr(0, 3));
  shown.text = one_unit ? (shown.rough ? "≈ " : "") + a[0].number + " to " + b[0].number + (b[0].unit.empty() ? "" : " " + b[0].unit) : write(low) + " to " + write(high);
  shown.text.insert(0, manner_word(amount.manner));
  return shown;
}

// Counts: whole where that is within tolerance, else in halves, with a weight where one is known.
Shown Shower::things(const TakeLine* line, const Quantity& amount) {
  Shown shown = rounded(amount, Ladder::things, {amount.low, amount.high});
  if (amount.unit != kNoUnit) {
    shown.unit = std::string(write_unit(amount.unit, amount.high));
    shown.text += " " + shown.unit;
  }
  const bool splits = last && !last->shown.is_whole() && !amount.is_range();
  if (!splits || line == nullptr) return shown;
  const Ends grams = grams_of(recipe_, *line, amount);
  if (!grams.low.is_lost()) shown.text += " (" + write(round_on(Ladder::grams, grams.low, recipe_.tolerance(), dialect_)) + ")";
  shown.number = shown.text, shown.unit.clear();
  if (lacks_ != nullptr && amount.unit == kNoUnit)
    lacks_->add(Code::whole_thing_splits, line->name_span, "At this size the " + std::string(line->name) + " come to " + write_number(last->shown, true, false) + ", and a whole one has to be divided.");
  return shown;
}

// 2 x 400 g tins: packs where a whole number is within tolerance, else the weight.
Shown Shower::packs(const TakeLine& line) {
  const Fraction count = in_base(line.amount, recipe_.dialect).low / in_base(*line.pack, recipe_.dialect).low;
  const Fraction whole = Fraction::of(std::max<Wide>(count.nearest(), 1), 1);
  if (((whole - count) / count).abs() > recipe_.tolerance() || !stays(line.pack->unit)) {
    Ends base = in_base(line.amount, recipe_.dialect);
    const Ladder to = ladder(&line, line.amount, base);
    return rounded(line.amount, to, base);
  }
  Shown shown;
  shown.exact = line.amount;
  shown.changed = true;
  shown.text = whole.exact() + " x " + write_plain(*line.pack) + " " + (whole == Fraction(1) ? singular_of(line.pack_noun) : plural_of(singular_of(line.pack_noun)));
  shown.number = shown.text;
  return shown;
}

Shown Shower::amount(const TakeLine* line, const Quantity& amount, Span written, bool worked_out) {
  last.reset();
  if (amount.is_lost()) return as_written(written, amount);
  const bool scaled = !(recipe_.factor == Fraction(1)) && !(line != nullptr && line->fixed);
  if (!scaled && !worked_out && stays(amount.unit)) return as_written(written, amount);
  if (amount.dimension() == Dimension::count && !unit(amount.unit).informal) return things(line, amount);
  if (unit(amount.unit).informal && amount.high <= Fraction(4)) {
    Shown shown = rounded(amount, Ladder::things, {std::max(amount.low, Fraction(1), [](auto& a, auto& b) { return a < b; }), std::max(amount.high, Fraction(1), [](auto& a, auto& b) { return a < b; })});
    shown.unit = std::string(write_unit(amount.unit, amount.high));
    shown.text += " " + shown.unit;
    return shown;
  }
  Ends base = in_base(amount, recipe_.dialect);
  if (base.low.is_lost()) return as_written(written, amount);
  const Ladder to = ladder(line, amount, base);
  Shown shown = rounded(amount, to, base);
  if (unit(amount.unit).informal && !shown.rough) shown.text.insert(0, "≈ "), shown.rough = true;
  return shown;
}

Shown Shower::line(const TakeLine& line) {
  last.reset();
  if (!line.measured() || line.amount_span.empty()) return {};
  if (line.pack) {
    const bool scaled = !(recipe_.factor == Fraction(1)) && !line.fixed;
    if (!scaled && stays(line.pack->unit)) return as_written(line.amount_span, line.amount);
    return packs(line);
  }
  if (line.house_measure && recipe_.factor == Fraction(1) && system_ == System::written) return as_written(line.amount_span, line.amount);
  return amount(&line, line.amount, line.amount_span, line.basis != Basis::amount || line.house_measure);
}

// Points on a scale: never scaled. An oven goes by its own steps, a reading to the degree.
Shown Shower::heat(const Term& term, bool oven) {
  const CommonUnits& c = common();
  const bool fahrenheit = term.amount.unit == c.fahrenheit;
  const bool stay = system_ == System::written || (system_ == System::american ? fahrenheit : !fahrenheit);
  Shown shown = as_written(term.span, term.amount);
  if (term.amount.is_lost()) return shown;
  if (stay) {
    const bool both = oven && recipe_.oven == OvenKind::conventional && term.amount.unit == c.celsius && !term.amount.fan && !term.amount.is_range() && !term.changed &&
                      term.amount.low >= Fraction(100);
    if (!both) return shown;
    const Fraction fan = term.amount.low - fan_difference(recipe_.dialect);
    shown.text += " (fan " + write(round_on(Ladder::celsius, fan, Fraction(0), dialect_)) + ")";
    shown.changed = true;
    return shown;
  }
  const Ladder to = system_ == System::american ? Ladder::fahrenheit : Ladder::celsius;
  const Fraction allowed = oven ? recipe_.tolerance() : Fraction(0);
  const auto point = [&](const Fraction& value) {
    Fraction celsius = to_celsius(value, term.amount.unit);
    if (term.amount.fan) celsius += fan_difference(recipe_.dialect);  // the other kitchen's recipes mean a plain oven
    return write(round_on(to, celsius, allowed, dialect_));
  };
  shown.text = point(term.amount.low);
  if (term.amount.is_range()) shown.text += " to " + point(term.amount.high);
  shown.number = shown.text;
  shown.changed = true;
  return shown;
}

Shown Shower::length(const Term& term) {
  if (stays(term.amount.unit)) return as_written(term.span, term.amount);
  Ends base = in_base(term.amount, recipe_.dialect);
  return rounded(term.amount, ladder_for(term.amount.dimension(), system_, dialect_, false), base);
}

}  // namespace qtn
