// The one place that rounds: nearest multiple of a step, ties up, never down to nothing.
#include "measure/ladder.hpp"

#include "measure/ladder_table.hpp"

namespace qtn {
namespace {

bool is_heat(Ladder ladder) {
  return ladder == Ladder::celsius || ladder == Ladder::fahrenheit || ladder == Ladder::gas;
}

UnitId scale_of(Ladder ladder) {
  return ladder == Ladder::fahrenheit ? common().fahrenheit : ladder == Ladder::gas ? common().gas : common().celsius;
}

Fraction multiple(const Fraction& value, const Fraction& step) {
  return Fraction::of((value / step).nearest(), 1) * step;
}

Fraction step_of(const Rung& rung, Dialect dialect) {
  return rung.step * size_of(rung.unit, dialect);
}

// Spoons are counted on from the last whole quarter of a cup: an Australian quarter is no whole number of them.
Fraction nearest_in_cups(const Fraction& size, const Fraction& quarter, const Fraction& step) {
  const Fraction below = Fraction::of((size / quarter).floor(), 1) * quarter;
  const Fraction spoons = below + multiple(size - below, step), next = below + quarter;
  return (next - size).abs() < (spoons - size).abs() ? next : spoons;
}

// Where `exact` comes out on this rung of the ladder.
Fraction on_rung(const Rounded& r, const Rung& rung) {
  const Fraction step = step_of(rung, r.dialect), size = r.exact.abs();
  Fraction found = multiple(size, step);
  if (r.ladder == Ladder::cups && rung.group > 0) {
    const Fraction quarter = size_of(common().cup, r.dialect) * Fraction::of(1, 4);
    found = nearest_in_cups(size, quarter, step);
  }
  if (found.is_zero()) found = step;
  return r.exact.sign() < 0 ? -found : found;
}

Fraction error_of(const Rounded& r, const Fraction& shown) {
  return ((shown - r.exact) / r.exact).abs();
}

bool usable(const Rung& rung, Ladder ladder, const Fraction& finest) {
  if (ladder != Ladder::grams) return true;
  // A scale in steps of 2 g shows no 25; the table's fine steps need a scale that has them.
  return rung.step >= finest && (rung.step / finest).is_whole() && (!rung.fine || finest < Fraction(1));
}

// The next usable rung after `rung`; -1 when there is none.
int next_rung(const Rounded& r, int rung) {
  const auto& rungs = rungs_of(r.ladder);
  for (int i = rung + 1; i < static_cast<int>(rungs.size()); ++i) {
    if (usable(rungs[static_cast<std::size_t>(i)], r.ladder, r.finest)) return i;
  }
  return -1;
}

void place(Rounded& r, int rung) {
  r.rung = rung;
  r.shown = on_rung(r, rungs_of(r.ladder)[static_cast<std::size_t>(rung)]);
}

// The coarsest rung within half the tolerance, else the coarsest within all of it; false when there is neither.
bool place_within(Rounded& r, int groups = 9) {
  const Fraction most = (r.tolerance * r.exact).abs(), half = most * Fraction::of(1, 2);
  const auto& rungs = rungs_of(r.ladder);
  int within = -1;
  for (int i = next_rung(r, -1); i >= 0; i = next_rung(r, i)) {
    if (rungs[static_cast<std::size_t>(i)].group >= groups) continue;
    const Fraction shown = on_rung(r, rungs[static_cast<std::size_t>(i)]), off = (shown - r.exact).abs();
    if (off <= half) {
      r.rung = i, r.shown = shown;
      return true;
    }
    if (within < 0 && off <= most) within = i;
  }
  if (within < 0) return false;
  place(r, within);
  return true;
}

Fraction two_figures(const Fraction& value) {
  Fraction size = value.abs(), unit(1);
  while (size >= Fraction(100)) size /= Fraction(10), unit *= Fraction(10);
  while (!size.is_zero() && size < Fraction(10)) size *= Fraction(10), unit /= Fraction(10);
  const Fraction shown = Fraction::of(size.nearest(), 1) * unit;
  return value.sign() < 0 ? -shown : shown;
}

// Where no rung comes near: thirds and quarters of a whole thing, or of the smallest spoon when it is less than that,
// filled by eye: two thirds of an eighth of a teaspoon. False where those are not near either.
bool place_in_parts(Rounded& r, const Rung& smallest) {
  const bool things = r.ladder == Ladder::things, spoons = r.ladder == Ladder::spoons || r.ladder == Ladder::cups;
  const Fraction one = things ? Fraction(1) : step_of(smallest, r.dialect);
  if (r.exact.sign() <= 0 || !(things || (spoons && r.exact < one))) return false;
  const Fraction whole = Fraction::of((r.exact / one).floor(), 1) * one;
  Fraction best = Fraction::lost();
  for (const auto& [over, under] : {std::pair{3, 4}, {2, 3}, {1, 2}, {1, 3}, {1, 4}, {5, 6}, {1, 6}, {1, 8}}) {
    if (under > 4 && !(things && whole.is_zero())) break;  // a sixth of a lemon, not two and a sixth
    const Fraction near = whole + Fraction::of(over, under) * one;
    if (best.is_lost() || error_of(r, near) < error_of(r, best)) best = near;
  }
  if (error_of(r, best) > Fraction::of(1, 4)) return false;
  r.shown = best;
  r.rough = error_of(r, best) > r.tolerance;
  r.rung = kTwoFigures;
  return true;
}

void place_roughly(Rounded& r) {
  int last = -1;
  for (int i = next_rung(r, -1); i >= 0; i = next_rung(r, i)) last = i;
  if (last < 0) {  // a scale coarser than the table
    r.shown = two_figures(r.exact);
    r.rung = kTwoFigures;
    return;
  }
  place(r, last);
  r.rough = true;
  // Between two spoons there is no other: an eighth of a teaspoon for a sixth is as near as a kitchen comes.
  const bool spoons = r.ladder == Ladder::spoons || r.ladder == Ladder::cups;
  const bool near = error_of(r, r.shown) <= Fraction::of(1, 4) || (spoons && r.exact >= r.shown);
  if ((!near || r.ladder == Ladder::things) && place_in_parts(r, rungs_of(r.ladder)[static_cast<std::size_t>(last)])) return;
  if (near) return;
  const Fraction written_in = size_of(rungs_of(r.ladder)[static_cast<std::size_t>(last)].unit, r.dialect);
  r.shown = two_figures(r.exact / written_in) * written_in;
  r.rough = false;
  r.rung = kTwoFigures;
}

// A few millilitres, or little more than a fluid ounce, that no step of a jug comes near are a matter of spoons.
void take_to_spoons(Rounded& r) {
  const bool jug = r.ladder == Ladder::pints || r.ladder == Ladder::millilitres;
  const Fraction spoon = jug ? size_of(common().tablespoon, r.dialect) : Fraction::lost();
  if (spoon.is_lost() || r.exact.abs() >= spoon * Fraction(r.ladder == Ladder::pints ? 4 : 1)) return;
  Rounded spoons = round_on(Ladder::spoons, r.exact, r.tolerance, r.dialect, r.finest);
  if (!spoons.rough || (r.rung == kTwoFigures && spoons.rung != kTwoFigures)) r = spoons;
}

// Points: by rung only, since per cent of a degree means nothing. 0 is a temperature like any other.
void place_heat(Rounded& r, int rung) {
  const UnitId scale = scale_of(r.ladder);
  const Fraction points = from_celsius(r.exact, scale);
  r.rung = rung;
  if (points.is_lost()) {  // no gas mark is so hot or so cold: shown in degrees
    r.ladder = Ladder::celsius;
    r.rung = 0;
    return place_heat(r, 0);
  }
  const Fraction step = rungs_of(r.ladder)[static_cast<std::size_t>(rung)].step;
  r.shown = to_celsius(r.ladder == Ladder::gas ? points : multiple(points, step), scale);
}

}  // namespace

Rounded round_on(Ladder ladder, const Fraction& exact, const Fraction& tolerance, Dialect dialect,
                 const Fraction& finest) {
  Rounded r;
  r.ladder = ladder, r.dialect = measures_of(ladder, dialect);
  r.exact = exact, r.shown = exact, r.tolerance = tolerance, r.finest = finest;
  if (exact.is_lost()) return r;
  if (is_heat(ladder)) {
    // Below boiling nothing is an oven: a dough, a fridge, a core are read to the degree, and so is a sugar stage.
    const bool reading = tolerance.is_zero() || exact < Fraction(100);
    place_heat(r, reading && ladder != Ladder::gas ? static_cast<int>(rungs_of(ladder).size()) - 1 : 0);
    return r;
  }
  if (exact.is_zero()) return r;
  if (ladder == Ladder::pints && exact.abs() < size_of(common().fluid_ounce, r.dialect) * Fraction::of(1, 2))
    return round_on(Ladder::spoons, exact, tolerance, dialect, finest);
  // Above a pint nobody counts fluid ounces where quarters of a pint are near enough: 1.1 l is 2 pints.
  const bool in_quarters = ladder == Ladder::pints && exact.abs() >= size_of(common().pint, r.dialect);
  if (in_quarters && place_within(r, 1)) return r;
  if (place_within(r)) return r;
  place_roughly(r);
  take_to_spoons(r);
  return r;
}

std::vector<Fraction> steps_of(const Rounded& r) {
  if (r.rung == kByTable) return {standard_step(r.ladder, r.exact, r.ratio)};
  std::vector<Fraction> out;
  for (int i = next_rung(r, -1); i >= 0; i = next_rung(r, i))
    out.push_back(step_of(rungs_of(r.ladder)[static_cast<std::size_t>(i)], r.dialect));
  return out;
}

Rounded round_again(const Rounded& how, const Fraction& exact) {
  if (how.rung == kByTable) return round_standard(how.ladder, exact, how.ratio);
  return round_on(how.ladder, exact, how.tolerance, how.dialect, how.finest);
}

Rounded rounded_up(const Rounded& rounded) {
  Rounded r = rounded;
  const auto& rungs = rungs_of(r.ladder);
  const bool things = r.ladder == Ladder::things;
  if (r.exact.is_lost() || r.exact.sign() <= 0 || is_heat(r.ladder) || r.rung == kByTable) return r;
  if (!things && (r.ladder == Ladder::cups || r.ladder == Ladder::spoons || r.rung < 0 || r.shown >= r.exact)) return r;
  const auto up = [&](const Fraction& step) { r.shown = Fraction::of((r.exact / step).ceil(), 1) * step; };
  r.rough = false;  // never less than is wanted, and at most by a step of the finest more
  if (things) return up(Fraction(1)), r;
  for (int i = r.rung; i >= 0; i = next_rung(r, i)) {
    r.rung = i;
    up(step_of(rungs[static_cast<std::size_t>(i)], r.dialect));
    if (error_of(r, r.shown) <= r.tolerance) break;
  }
  return r;
}

bool refine(Rounded& r) {
  if (r.exact.is_lost() || r.rung < 0 || r.ladder == Ladder::gas) return false;
  const int next = next_rung(r, r.rung);
  if (next < 0) return false;
  if (is_heat(r.ladder)) {
    place_heat(r, next);
    return true;
  }
  if (r.exact.is_zero()) return false;
  place(r, next);
  r.rough = error_of(r, r.shown) > r.tolerance;
  return true;
}

}  // namespace qtn
