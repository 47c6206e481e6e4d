// Rounding: the roundest number within tolerance (semantics part 7).
#include "measure/ladder.hpp"

#include "measure/rungs.hpp"

namespace qtn {
namespace {

Fraction step_size(const Rung& rung, Dialect dialect) {
  const Fraction size = size_of(rung.unit, dialect);
  return rung.step * (size.is_lost() ? Fraction(1) : size);
}

Fraction nearest_on(const Fraction& exact, const Fraction& step) { return Fraction::of((exact / step).nearest(), 1) * step; }

Fraction error(const Fraction& shown, const Fraction& exact) { return ((shown - exact) / exact).abs(); }

// Temperatures: the scale's own numbers, back in °C.
void round_heat(Rounded& r) {
  const UnitId scale = r.ladder == Ladder::fahrenheit ? common().fahrenheit : common().celsius;
  if (r.ladder == Ladder::gas) {
    r.shown = to_celsius(from_celsius(r.exact, common().gas), common().gas);
    return;
  }
  const Rung& rung = rungs_of(r.ladder)[static_cast<std::size_t>(r.rung)];
  r.shown = to_celsius(nearest_on(from_celsius(r.exact, scale), rung.step), scale);
}

bool is_heat(Ladder ladder) { return ladder == Ladder::celsius || ladder == Ladder::fahrenheit || ladder == Ladder::gas; }

// Two significant figures, for what no rung of the ladder shows.
Fraction two_figures(const Fraction& exact) {
  Fraction step(1);
  while (exact / step < Fraction(10) && step.under() < 1000000) step /= Fraction(10);
  return nearest_on(exact, step);
}

void push(std::vector<WrittenPiece>& out, const Fraction& number, UnitId id) {
  out.push_back({write_number(number, true, unit(id).decimal), std::string(write_unit(id, number))});
}

// The whole units of one size first, what is left in the next.
void split(std::vector<WrittenPiece>& out, const Fraction& value, UnitId big, const Fraction& step, UnitId small, Dialect dialect) {
  const Fraction size = size_of(big, dialect) * step;
  const Fraction whole = Fraction::of((value / size).floor(), 1);
  if (!whole.is_zero()) push(out, whole * step, big);
  const Fraction rest = value - whole * size;
  if (!rest.is_zero() || out.empty()) push(out, rest / size_of(small, dialect), small);
}

void write_spoons(std::vector<WrittenPiece>& out, const Rounded& r, const Fraction& value, UnitId rung_unit) {
  const CommonUnits& c = common();
  if (rung_unit == c.tablespoon) return push(out, value / size_of(c.tablespoon, r.dialect), c.tablespoon);
  split(out, value, c.tablespoon, Fraction(1), c.teaspoon, r.dialect);
}

void write_cups(std::vector<WrittenPiece>& out, const Rounded& r, UnitId rung_unit) {
  const CommonUnits& c = common();
  const Fraction cup = size_of(c.cup, r.dialect);
  if (rung_unit == c.cup) return push(out, r.shown / cup, c.cup);
  const Fraction quarters = Fraction::of((r.shown / cup * Fraction(4)).floor(), 1) / Fraction(4);
  if (!quarters.is_zero()) push(out, quarters, c.cup);
  const Fraction rest = r.shown - quarters * cup;
  if (!rest.is_zero()) write_spoons(out, r, rest, rung_unit);
}

}  // namespace

Rounded round_on(Ladder ladder, const Fraction& exact, const Fraction& allowed, Dialect dialect, const Fraction& finest) {
  Rounded r;
  r.ladder = ladder;
  // Spoons and pints of nobody in particular are British: the metric spoon and the imperial pint.
  r.dialect = ladder == Ladder::cups                                ? Dialect::american
              : ladder == Ladder::pints || dialect == Dialect::unstated ? Dialect::british
                                                                        : dialect;
  r.exact = exact;
  r.tolerance = allowed;
  if (is_heat(ladder)) {
    round_heat(r);
    return r;
  }
  const auto& rungs = rungs_of(ladder);
  int last = 0;
  for (std::size_t i = 0; i < rungs.size(); ++i)
    if (!rungs[i].fine || rungs[i].step >= finest) last = static_cast<int>(i);
  if (exact.is_lost() || exact.sign() <= 0) {
    r.shown = exact;
    r.rung = last;
    return r;
  }
  for (const Fraction& limit : {allowed / Fraction(2), allowed}) {
    for (r.rung = 0; r.rung <= last; ++r.rung) {
      r.shown = nearest_on(exact, step_size(rungs[static_cast<std::size_t>(r.rung)], r.dialect));
      if (!r.shown.is_zero() && error(r.shown, exact) <= limit) return r;
    }
  }
  r.rung = last;
  const Fraction step = step_size(rungs[static_cast<std::size_t>(last)], r.dialect);
  r.shown = nearest_on(exact, step);
  if (r.shown.is_zero()) r.shown = step;
  r.rough = true;
  if (error(r.shown, exact) > Fraction::of(1, 4) && (ladder == Ladder::grams || ladder == Ladder::ounces || ladder == Ladder::millilitres)) {
    const Fraction unit_size = step_size(rungs[static_cast<std::size_t>(last)], r.dialect) / rungs[static_cast<std::size_t>(last)].step;
    r.shown = two_figures(exact / unit_size) * unit_size;
    r.rung = kTwoFigures;
    r.rough = false;
  }
  return r;
}

bool refine(Rounded& r) {
  const auto& rungs = rungs_of(r.ladder);
  if (r.rung == kTwoFigures || r.rung + 1 >= static_cast<int>(rungs.size()) || rungs[static_cast<std::size_t>(r.rung) + 1].fine) return false;
  ++r.rung;
  if (is_heat(r.ladder)) {
    round_heat(r);
    return true;
  }
  const Fraction step = step_size(rungs[static_cast<std::size_t>(r.rung)], r.dialect);
  r.shown = nearest_on(r.exact, step);
  if (r.shown.is_zero()) r.shown = step;
  return true;
}

std::vector<WrittenPiece> write_pieces(const Rounded& r) {
  std::vector<WrittenPiece> out;
  const CommonUnits& c = common();
  const auto& rungs = rungs_of(r.ladder);
  const UnitId rung_unit = rungs[static_cast<std::size_t>(r.rung == kTwoFigures ? static_cast<int>(rungs.size()) - 1 : r.rung)].unit;
  switch (r.ladder) {
    case Ladder::grams:
      if (r.shown >= Fraction(1000)) push(out, r.shown / Fraction(1000), c.kilogram);
      else push(out, r.shown, c.gram);
      break;
    case Ladder::millilitres:
      if (r.shown >= Fraction(1000)) push(out, r.shown / Fraction(1000), c.litre);
      else push(out, r.shown, c.millilitre);
      break;
    case Ladder::ounces: split(out, r.shown, c.pound, Fraction(1), c.ounce, r.dialect); break;
    case Ladder::pints:
      if (rung_unit == c.pint) push(out, r.shown / size_of(c.pint, r.dialect), c.pint);
      else split(out, r.shown, c.pint, Fraction(1), c.fluid_ounce, r.dialect);
      break;
    case Ladder::cups: write_cups(out, r, rung_unit); break;
    case Ladder::spoons: write_spoons(out, r, r.shown, rung_unit); break;
    case Ladder::minutes: split(out, r.shown, c.hour, Fraction(1), c.minute, r.dialect); break;
    case Ladder::celsius: push(out, r.shown, c.celsius); break;
    case Ladder::fahrenheit: push(out, from_celsius(r.shown, c.fahrenheit), c.fahrenheit); break;
    case Ladder::gas: out.push_back({"gas", write_number(from_celsius(r.exact, c.gas), true, false)}); break;
    case Ladder::things: out.push_back({write_number(r.shown, true, false), ""}); break;
    case Ladder::centimetres:
      if (r.shown < Fraction(10)) push(out, r.shown, c.millimetre);
      else push(out, r.shown / Fraction(10), c.centimetre);
      break;
    case Ladder::inches: push(out, r.shown / size_of(c.inch, r.dialect), c.inch); break;
  }
  return out;
}

std::string write(const Rounded& r) {
  std::string text = r.rough ? "≈ " : "";
  const bool plus = r.ladder == Ladder::cups || r.ladder == Ladder::spoons;
  bool first = true;
  for (const WrittenPiece& piece : write_pieces(r)) {
    if (!first) text += plus ? " + " : " ";
    first = false;
    text += piece.number;
    if (!piece.unit.empty()) text += " " + piece.unit;
  }
  return text;
}

std::string_view name_of(System system) {
  constexpr std::string_view kNames[] = {"written", "metric", "imperial", "american"};
  return kNames[static_cast<std::size_t>(system)];
}

Ladder ladder_for(Dimension dimension, System system, Dialect, bool spoonful) {
  const bool metric = system == System::metric || system == System::written;
  switch (dimension) {
    case Dimension::mass: return metric ? Ladder::grams : Ladder::ounces;
    case Dimension::volume:
      if (system == System::american) return Ladder::cups;
      if (spoonful) return Ladder::spoons;
      return metric ? Ladder::millilitres : Ladder::pints;
    case Dimension::length:
    case Dimension::area: return metric ? Ladder::centimetres : Ladder::inches;
    case Dimension::temperature:
    case Dimension::difference: return system == System::american ? Ladder::fahrenheit : Ladder::celsius;
    case Dimension::duration: return Ladder::minutes;
    default: return Ladder::things;
  }
}

}  // namespace qtn
