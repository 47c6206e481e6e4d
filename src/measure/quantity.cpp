#include "measure/quantity.hpp"

#include "measure/rungs.hpp"

namespace qtn {
namespace {

struct Sign {
  int over, under;
  std::string_view sign;
};
constexpr Sign kSigns[] = {{1, 2, "½"}, {1, 3, "⅓"}, {2, 3, "⅔"}, {1, 4, "¼"}, {3, 4, "¾"}, {1, 8, "⅛"}, {3, 8, "⅜"},
                           {5, 8, "⅝"}, {7, 8, "⅞"}, {1, 5, "⅕"}, {2, 5, "⅖"}, {3, 5, "⅗"}, {4, 5, "⅘"}, {1, 6, "⅙"}, {5, 6, "⅚"}};

std::string_view manner_word(Manner manner) {
  constexpr std::string_view kWords[] = {"", "about ", "exactly ", "at least ", "at most "};
  return kWords[static_cast<std::size_t>(manner)];
}

std::string with_unit(const Fraction& low, const Fraction& high, const Quantity& q) {
  const Unit& row = unit(q.unit);
  const bool decimal = row.decimal;
  std::string number = write_number(low, false, decimal);
  if (!(low == high)) number += " to " + write_number(high, false, decimal);
  if (q.unit == common().gas) return "gas " + number;
  const std::string_view symbol = write_unit(q.unit, high);
  if (!symbol.empty()) number += " " + std::string(symbol);
  if (q.fan) number += " fan";
  return number;
}

}  // namespace

Fraction tolerance(Manner manner, const Fraction& plain) {
  if (manner == Manner::exactly) return Fraction::of(1, 100);
  if (manner == Manner::about) return Fraction::of(1, 10);
  return plain;
}

Ends in_base(const Quantity& q, Dialect dialect) {
  const Unit& row = unit(q.unit);
  if (row.dimension == Dimension::temperature) return {to_celsius(q.low, q.unit), to_celsius(q.high, q.unit)};
  const Fraction& size = row.size[static_cast<int>(dialect)];
  if (q.low == q.high) {
    const Fraction one = q.low * size;
    return {one, one};
  }
  return {q.low * size, q.high * size};
}

std::string write_number(const Fraction& value, bool pretty, bool decimal) {
  if (value.is_lost()) return "?";
  if (value.is_whole()) return to_text(value.over());
  if (decimal) return value.decimal(2);
  if (value.sign() < 0) return "-" + write_number(-value, pretty, decimal);
  const Wide whole = value.floor();
  const Fraction rest = value - Fraction::of(whole, 1);
  for (const Sign& row : kSigns) {
    if (!(rest == Fraction::of(row.over, row.under))) continue;
    if (pretty) return (whole == 0 ? std::string() : to_text(whole)) + std::string(row.sign);
    return (whole == 0 ? std::string() : to_text(whole) + " ") + rest.exact();
  }
  if (rest.under() <= 16) return (whole == 0 ? std::string() : to_text(whole) + " ") + rest.exact();
  return value.decimal(2);
}

std::string_view write_unit(UnitId id, const Fraction& number) {
  const Unit& row = unit(id);
  return number > Fraction(1) ? row.symbols : row.symbol;
}

bool is_decimal(UnitId id) { return unit(id).decimal; }

std::string write_plain(const Quantity& q) {
  // Hours that are no halves read better with their minutes.
  if (q.unit == common().hour && q.low == q.high && q.low.under() > 2) {
    const Wide hours = q.low.floor();
    Quantity minutes = q;
    minutes.unit = common().minute;
    minutes.low = minutes.high = (q.low - Fraction::of(hours, 1)) * Fraction(60);
    return std::string(manner_word(q.manner)) + (hours == 0 ? "" : to_text(hours) + " h ") + with_unit(minutes.low, minutes.high, minutes);
  }
  return std::string(manner_word(q.manner)) + with_unit(q.low, q.high, q);
}

namespace {

// Error of `stated` against one point or a range of what it restates; 0 inside the range.
Fraction error_of(const Fraction& stated, const Ends& first) {
  if (first.low <= stated && stated <= first.high) return Fraction(0);
  const Fraction& end = stated < first.low ? first.low : first.high;
  return (stated - end) / end;
}

Fraction worst(const Ends& stated, const Ends& first) {
  if (!(stated.low == stated.high) && !(first.low == first.high)) {
    const Fraction low = (stated.low - first.low) / first.low, high = (stated.high - first.high) / first.high;
    return low.abs() > high.abs() ? low : high;
  }
  const Fraction low = error_of(stated.low, first), high = error_of(stated.high, first);
  return low.abs() > high.abs() ? low : high;
}

}  // namespace

Agreement agrees(const Quantity& first, const Ends& first_base, const Quantity& stated, Dialect dialect) {
  Agreement out;
  const Ends own = in_base(stated, dialect);
  if (own.low.is_lost() || first_base.low.is_lost() || first_base.low.is_zero()) return out;
  if (stated.dimension() == Dimension::temperature) return agrees_as_heat(first_base, stated);
  out.error = worst(own, first_base);
  const bool exact = first.manner == Manner::exactly || stated.manner == Manner::exactly;
  const bool about = first.manner == Manner::about || stated.manner == Manner::about;
  const Fraction allowed = tolerance(exact ? Manner::exactly : about ? Manner::about : Manner::plain);
  if (out.error.is_lost() || out.error.abs() <= allowed) return out;
  out.holds = false;
  const Fraction size = size_of(stated.unit, dialect);
  if (size.is_lost() || stated.is_range() || !(first_base.low == first_base.high)) return out;
  const OwnStep best = own_step(stated.unit, first_base.low / size, allowed, exact);
  if (!best.found) return out;
  if (!exact && best.value == stated.low) out.holds = out.error.abs() <= Fraction::of(1, 10);
  if (!out.holds) {
    Quantity correct = stated;
    correct.low = correct.high = best.value;
    correct.manner = Manner::plain;
    out.correct = write_plain(correct);
  }
  return out;
}

}  // namespace qtn
