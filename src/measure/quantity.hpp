// An amount with its unit and its manner, exact, before any rounding.
#pragma once
#include "measure/unit.hpp"

namespace qtn {

enum class Manner : std::uint8_t { plain, about, exactly, at_least, at_most };

struct Quantity {
  Fraction low;   // in `unit`
  Fraction high;  // equal to low unless a range; for at_least both are the least, for at_most both the most
  UnitId unit = kNoUnit;
  Manner manner = Manner::plain;
  bool fan = false;  // a temperature set on a fan oven

  bool is_range() const { return !(low == high); }
  bool is_lost() const { return low.is_lost() || high.is_lost(); }
  Dimension dimension() const { return qtn::unit(unit).dimension; }
  friend bool operator==(const Quantity&, const Quantity&) = default;
};

// The plain tolerance is 5 % unless a kitchen says `rounding:`; exactly 1 %, about 10 % (language.md §5).
Fraction tolerance(Manner manner, const Fraction& plain = Fraction::of(1, 20));

// `low` or `high` of a quantity in its dimension's base unit (°C for temperatures); lost() when the unit has no one
// size in this dialect.
struct Ends {
  Fraction low, high;
};
Ends in_base(const Quantity& quantity, Dialect dialect);

// Does `stated` stand as an equivalent of `first`? `first_base` is the first in the base unit of
// `stated`'s dimension: the caller takes it there by density or each-weight where the dimensions differ. Temperatures
// stand by their step (a stated 350 °F by half of 25), gas marks by their table, a fan by the oven's difference.
struct Agreement {
  bool holds = true;
  Fraction error;       // relative, signed: (stated - first) / first; 0 when not measurable
  std::string correct;  // the rounding that would hold, in the stated unit: "5 1/4 oz"; empty when none is round
};
Agreement agrees(const Quantity& first, const Ends& first_base, const Quantity& stated, Dialect dialect);

// As a cook writes it in a .qtn file: "2 1/4 cups", "180 °C fan", "about 5 min", "at least 2 h", "6 to 8".
std::string write_plain(const Quantity& quantity);
// Numbers alone. plain: "2 1/4"; pretty: "2¼" with vulgar fractions where they exist; decimals where they are the
// unit's habit (metric: "2.5"), fractions elsewhere.
std::string write_number(const Fraction& value, bool pretty, bool decimal);
// How many times, for people: "3", "2½", "2.3", "about 1.28".
std::string write_times(const Fraction& factor);
// How a unit is written after this many: "cup", "cups", "" for a bare count.
std::string_view write_unit(UnitId unit, const Fraction& number);
// Is it a unit that is written with decimals (g, kg, ml, l, cm, mm, °C, %, ...)?
bool is_decimal(UnitId unit);

}  // namespace qtn
