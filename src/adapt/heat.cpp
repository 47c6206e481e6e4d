// Temperatures are points: they never scale. An oven goes by its own steps, a reading to the degree.
#include "adapt/shower.hpp"

namespace qtn {
namespace {

// A mark in °C as tables print it; other scales by their formula.
Fraction celsius_of(const Fraction& value, UnitId scale) {
  return scale == common().gas ? gas_printed(value) : to_celsius(value, scale);
}

std::string degrees(const Fraction& celsius, Ladder ladder, bool by_steps) {
  if (ladder == Ladder::celsius && !by_steps && celsius.is_whole() && celsius.sign() >= 0)
    return to_text(celsius.over()) + " °C";  // the page's own figure, most of all
  static const Fraction steps = Fraction::of(1, 20), none(0);
  return write(round_on(ladder, celsius, by_steps ? steps : none, Dialect::british));
}

Quantity in_fahrenheit(const Quantity& amount, const Fraction& low, const Fraction& high) {
  const UnitId scale = common().fahrenheit;
  return {from_celsius(low, scale), from_celsius(high, scale), scale, amount.manner, false};
}

std::string in_range(const Quantity& amount, const std::string& low, const std::string& high) {
  return amount.is_range() ? join_range(low, high) : low;
}

}  // namespace

bool Shower::heat_stays(UnitId scale) const {
  const bool fahrenheit = scale == common().fahrenheit;
  if (scale == common().gas && !reader_.gas_marks) return false;
  switch (reader_.system) {
    case System::american:
      return fahrenheit;
    case System::imperial:
      return !fahrenheit;  // British ovens are in °C and gas marks
    case System::metric:
      return scale == common().celsius;
    case System::written:
      break;
  }
  return true;
}

Shown Shower::heat(const Term& term, bool oven, bool restated) const {
  const Quantity& amount = term.amount;
  const bool unknown_mark = amount.unit == common().gas && !reader_.gas_marks && reader_.system != System::metric;
  const bool stay = heat_stays(amount.unit), fahrenheit = reader_.system == System::american || unknown_mark;
  Shown shown = as_written(recipe_, term.span, amount);
  if (amount.is_lost()) return shown;
  // What a plain oven is set to. A bare degree is for the oven that the recipe names (A19); a gas mark is a gas oven's.
  const bool gas = amount.unit == common().gas;
  const bool for_fan = amount.fan || (oven && !gas && recipe_.oven == OvenKind::fan);
  const Fraction off = fan_difference(recipe_.dialect);
  const auto plain_oven = [&](const Fraction& value) {
    const Fraction celsius = gas && fahrenheit ? to_celsius(value, amount.unit) : celsius_of(value, amount.unit);
    return for_fan ? celsius + off : celsius;
  };
  const Fraction low = plain_oven(amount.low), high = plain_oven(amount.high);
  if (low.is_lost() || high.is_lost()) return shown;
  if (!stay && fahrenheit)
    return from_text(in_range(amount, degrees(low, Ladder::fahrenheit, oven), degrees(high, Ladder::fahrenheit, oven)),
                     in_fahrenheit(amount, low, high));
  const bool named = amount.fan && stay;  // the page says which oven it means
  const bool both = oven && !restated && !named && low >= Fraction(100) &&
                    (recipe_.oven == OvenKind::conventional || recipe_.oven == OvenKind::fan);
  if (stay && (!both || amount.unit != common().celsius)) return shown;
  // The page's own figures where they stay, the oven's steps where anything was converted.
  const Ladder ladder = Ladder::celsius;
  const auto text = [&](const Fraction& less) {
    const bool steps = oven && !(stay && less.is_whole());
    return in_range(amount, degrees(low - less, ladder, steps), degrees(high - less, ladder, steps));
  };
  const Quantity exact{low, high, common().celsius, amount.manner, false};
  if (!both) return from_text(text(Fraction(0)), exact);
  if (for_fan) return from_text(text(off) + " fan (" + text(Fraction(0)) + ")", stay ? amount : exact);
  return from_text((stay ? shown.text : text(Fraction(0))) + " (fan " + text(off) + ")", exact);
}

Shown Shower::difference(const Term& term) const {
  Shown shown = as_written(recipe_, term.span, term.amount);
  const CommonUnits& c = common();
  const bool from_fahrenheit = term.amount.unit == c.fahrenheit || term.amount.unit == c.fahrenheit_degree;
  if (term.amount.is_lost() || heat_stays(from_fahrenheit ? c.fahrenheit : c.celsius)) return shown;
  const Fraction ratio = from_fahrenheit ? Fraction::of(5, 9) : Fraction::of(9, 5);
  Quantity other = term.amount;
  other.unit = from_fahrenheit ? c.celsius_degree : c.fahrenheit_degree;
  other.low = Fraction::of((term.amount.low * ratio).nearest(), 1);
  other.high = Fraction::of((term.amount.high * ratio).nearest(), 1);
  shown = from_text(write_plain(other), other);
  shown.exact.low = term.amount.low * ratio, shown.exact.high = term.amount.high * ratio;
  return shown;
}

}  // namespace qtn
