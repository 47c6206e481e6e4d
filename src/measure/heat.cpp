// Temperatures: two scales by formula, gas marks by their table and nothing else.
#include <vector>

#include "data/tables.hpp"
#include "measure/table_text.hpp"
#include "measure/unit.hpp"

namespace qtn {
namespace {

struct Mark {
  Fraction mark;
  Fraction exact;    // °C by the rule
  Fraction printed;  // °C as tables print it
};

Fraction fahrenheit_to_celsius(const Fraction& degrees) {
  return (degrees - Fraction(32)) * Fraction::of(5, 9);
}

const std::vector<Mark>& marks() {
  static const std::vector<Mark> table = [] {
    std::vector<Mark> made;
    table::each_row(data::gas(), [&](const table::Row& row) {
      made.push_back({table::number(row[0]), fahrenheit_to_celsius(table::number(row[1])), table::number(row[2])});
    });
    return made;
  }();
  return table;
}

Fraction nearest_mark(const Fraction& celsius) {
  // Half a step beyond the last mark is still that mark; further out there is none.
  const Fraction beyond(10);
  if (celsius < marks().front().printed - beyond || celsius > marks().back().printed + beyond) return Fraction::lost();
  const Mark* best = nullptr;
  for (const Mark& mark : marks()) {
    if (best == nullptr || (mark.printed - celsius).abs() <= (best->printed - celsius).abs()) best = &mark;
  }
  return best->mark;
}

}  // namespace

Fraction to_celsius(const Fraction& value, UnitId scale) {
  if (scale == common().celsius) return value;
  if (scale == common().fahrenheit) return fahrenheit_to_celsius(value);
  if (scale == common().gas) {
    for (const Mark& mark : marks()) {
      if (mark.mark == value) return mark.exact;
    }
  }
  return Fraction::lost();
}

Fraction from_celsius(const Fraction& celsius, UnitId scale) {
  if (celsius.is_lost() || scale == common().celsius) return celsius;
  if (scale == common().fahrenheit) return celsius * Fraction::of(9, 5) + Fraction(32);
  return scale == common().gas ? nearest_mark(celsius) : Fraction::lost();
}

bool one_gas_mark(const Fraction& celsius, const Fraction& other) {
  for (const Mark& mark : marks()) {
    if ((mark.exact == celsius && mark.printed == other) || (mark.exact == other && mark.printed == celsius))
      return true;
  }
  return false;
}

Fraction gas_printed(const Fraction& value) {
  for (const Mark& mark : marks()) {
    if (mark.mark == value) return mark.printed;
  }
  return Fraction::lost();
}

Fraction fan_difference(Dialect dialect) {
  return dialect == Dialect::american ? Fraction::of(125, 9) : Fraction(20);
}

}  // namespace qtn
