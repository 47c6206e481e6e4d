// Two statements of one amount: does the second stand? And if not, what would.
#include "measure/ladder.hpp"
#include "measure/ladder_table.hpp"

namespace qtn {
namespace {

Fraction relative(const Fraction& stated, const Fraction& exact) {
  if (exact.is_zero()) return stated.is_zero() ? Fraction(0) : Fraction(stated.sign());
  return (stated - exact) / exact;
}

Fraction multiple(const Fraction& value, const Fraction& step) {
  const Wide times = (value / step).nearest();
  return step * Fraction::of(times == 0 ? 1 : times, 1);
}

// The value nearest to `exact` that the unit's steps can write.
Fraction nearest_own(UnitId unit, const Fraction& exact) {
  Fraction best = Fraction::lost();
  for (const Fraction& step : own_steps(unit, exact)) {
    const Fraction at = multiple(exact, step);
    if (best.is_lost() || (at - exact).abs() < (best - exact).abs()) best = at;
  }
  return best;
}

constexpr int kNearestUpTo = 10;  // per cent

bool nearest_stands(UnitId unit, const Fraction& stated, const Fraction& exact) {
  return relative(stated, exact).abs() <= Fraction::of(kNearestUpTo, 100) &&
         (stated - exact).abs() <= (nearest_own(unit, exact) - exact).abs();
}

// The roundest value of this unit that would hold; lost() when only an odd fraction would, which is no advice.
Fraction would_hold(UnitId unit, const Fraction& exact, const Fraction& allowed, bool strict) {
  if (exact.is_zero()) return exact;
  std::vector<Fraction> steps = own_steps(unit, exact);
  for (const Fraction& share : {allowed * Fraction::of(1, 2), allowed}) {
    for (const Fraction& step : steps) {
      if (const Fraction at = multiple(exact, step); relative(at, exact).abs() <= share) return at;
    }
  }
  if (const Fraction at = nearest_own(unit, exact); !strict && nearest_stands(unit, at, exact)) return at;
  const Fraction finer = Fraction::of(1, is_decimal(unit) ? 10 : 2);
  for (Fraction step = steps.back() * finer; step >= Fraction::of(1, is_decimal(unit) ? 1000 : 16); step *= finer) {
    if (const Fraction at = multiple(exact, step); relative(at, exact).abs() <= allowed) return at;
  }
  return Fraction::lost();
}

// A scale marked in pounds shows quarters; below them it shows ounces: 14 oz, not 7/8 lb.
std::string pounds_and_ounces(const Fraction& pounds) {
  const Fraction whole = Fraction::of(pounds.floor(), 1), ounces = (pounds - whole) * Fraction(16);
  const auto one = [](const Fraction& value, UnitId unit) {
    return write_plain({value, value, unit, Manner::plain, false});
  };
  if (whole.is_zero()) return one(ounces, common().ounce);
  return one(whole, common().pound) + (ounces.is_zero() ? "" : " " + one(ounces, common().ounce));
}

std::string written(const Quantity& like, const Fraction& low, const Fraction& high) {
  if (low.is_lost() || high.is_lost()) return {};
  if (like.unit == common().pound && low == high && !(low * Fraction(4)).is_whole()) return pounds_and_ounces(low);
  Quantity q = like;
  q.low = low, q.high = high, q.manner = Manner::plain;
  return write_plain(q);
}

// Degrees have no per cent. A stated point may be off by half of the roundest step that it is written in: 350 °F by
// 12 1/2, 165 °F by 2 1/2. Below boiling it is no oven, and the step is never more than 5.
Fraction heat_step(const Fraction& points, const Fraction& celsius, UnitId scale) {
  const int oven = scale == common().fahrenheit ? 25 : 10;
  for (const int step : {oven, 5}) {
    if (step != 5 && celsius < Fraction(100)) continue;
    if ((points / Fraction(step)).is_whole()) return Fraction(step);
  }
  return Fraction(1);
}

bool gas_stands(const Fraction& mark, const Fraction& celsius) {
  const Fraction nearest = from_celsius(celsius, common().gas);
  if (mark == nearest || to_celsius(mark, common().gas) == celsius) return true;
  return (gas_printed(mark) - celsius).abs() == (gas_printed(nearest) - celsius).abs();  // half way between two
}

bool heat_stands(const Fraction& points, UnitId scale, const Fraction& celsius) {
  if (scale == common().gas) return gas_stands(points, celsius);
  if (one_gas_mark(celsius, to_celsius(points, scale))) return true;
  const Fraction off = (points - from_celsius(celsius, scale)).abs();
  return off <= heat_step(points, celsius, scale) * Fraction::of(1, 2);
}

Agreement heat_agrees(const Quantity& first, const Ends& first_base, const Quantity& stated, Dialect dialect) {
  // A fan oven is set lower: take the first to the kind of oven that the second is for.
  Fraction change(0);
  if (first.fan && !stated.fan) change = fan_difference(dialect);
  if (stated.fan && !first.fan) change = -fan_difference(dialect);
  const Fraction low = first_base.low + change, high = first_base.high + change;
  Agreement found;
  found.holds = heat_stands(stated.low, stated.unit, low) && heat_stands(stated.high, stated.unit, high);
  if (found.holds) return found;
  const Ladder ladder = ladder_of(stated.unit, dialect);
  const Fraction low_shown = round_on(ladder, low, tolerance(Manner::plain), dialect).shown;
  const Fraction high_shown = round_on(ladder, high, tolerance(Manner::plain), dialect).shown;
  found.correct = written(stated, from_celsius(low_shown, stated.unit), from_celsius(high_shown, stated.unit));
  return found;
}

// What each stated end restates. Of two ranges, end for end; one value for a range may be anywhere inside it.
Ends restated(const Quantity& stated, const Ends& exact) {
  if (stated.is_range()) return exact;
  const Fraction& at = stated.low;
  const Fraction of = at < exact.low ? exact.low : at > exact.high ? exact.high : at;
  return {of, of};
}

}  // namespace

Agreement agrees(const Quantity& first, const Ends& first_base, const Quantity& stated, Dialect dialect) {
  const Ends said = in_base(stated, dialect);
  Agreement found;
  if (first_base.low.is_lost() || first_base.high.is_lost() || said.low.is_lost() || said.high.is_lost()) return found;
  if (stated.dimension() == Dimension::temperature) return heat_agrees(first, first_base, stated, dialect);

  const bool strict = first.manner == Manner::exactly || stated.manner == Manner::exactly;
  const Fraction one = tolerance(first.manner), other = tolerance(stated.manner);
  const Fraction allowed = strict ? tolerance(Manner::exactly) : one > other ? one : other;
  const Fraction size = size_of(stated.unit, dialect);
  const Ends exact{first_base.low / size, first_base.high / size};  // the first, in the stated unit
  const Ends against = restated(stated, exact);
  const Fraction low_error = relative(stated.low, against.low), high_error = relative(stated.high, against.high);
  found.error = high_error.abs() > low_error.abs() ? high_error : low_error;
  const auto stands = [&](const Fraction& at, const Fraction& of, const Fraction& error) {
    return error.abs() <= allowed || (!strict && nearest_stands(stated.unit, at, of));
  };
  found.holds = stands(stated.low, against.low, low_error) && stands(stated.high, against.high, high_error);
  if (!found.holds)
    found.correct = written(stated, would_hold(stated.unit, against.low, allowed, strict),
                            would_hold(stated.unit, against.high, allowed, strict));
  return found;
}

}  // namespace qtn
