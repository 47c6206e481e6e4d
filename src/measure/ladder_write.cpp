// A rounded amount in words. The value alone decides how it is written, not the rung that it came from.
#include "measure/ladder.hpp"

namespace qtn {
namespace {

using Pieces = std::vector<WrittenPiece>;

WrittenPiece piece(const Fraction& number, UnitId unit) {
  return {write_number(number, true, is_decimal(unit)), std::string(write_unit(unit, number))};
}

Fraction whole(const Fraction& value) {
  return Fraction::of(value.floor(), 1);
}
bool is_multiple(const Fraction& value, Wide over, Wide under) {
  return (value * Fraction::of(under, over)).is_whole();
}

// The large measure from 1 of it on, else the small one: kilograms and grams.
Pieces in_two(const Fraction& value, const Fraction& large, UnitId large_unit, UnitId small_unit) {
  if (value.abs() >= large) return {piece(value / large, large_unit)};
  return {piece(value, small_unit)};
}

Pieces in_ounces(const Fraction& grams) {
  const Fraction ounces = grams / size_of(common().ounce, Dialect::british), pounds = whole(ounces / Fraction(16));
  const Fraction rest = ounces - pounds * Fraction(16);
  Pieces pieces;
  if (!pounds.is_zero()) pieces.push_back(piece(pounds, common().pound));
  if (!rest.is_zero() || pieces.empty()) pieces.push_back(piece(rest, common().ounce));
  return pieces;
}

// Teaspoons; less than the smallest spoon is so much of it.
WrittenPiece teaspoons(const Fraction& count) {
  const Fraction smallest = Fraction::of(1, 8), part = count / smallest;
  if (part >= Fraction(1) || part.sign() <= 0 || part.under() > 4) return piece(count, common().teaspoon);
  return {write_number(part, true, false) + " of " + write_number(smallest, true, false),
          std::string(write_unit(common().teaspoon, count))};
}

// Whole and half tablespoons from one up; what is left, and all that is less, in teaspoons.
void add_spoons(const Fraction& ml, Dialect dialect, Pieces& pieces) {
  const Fraction tablespoons = ml / size_of(common().tablespoon, dialect);
  if (tablespoons >= Fraction(1) && is_multiple(tablespoons, 1, 2)) {
    pieces.push_back(piece(tablespoons, common().tablespoon));
    return;
  }
  const Fraction full = whole(tablespoons);
  if (!full.is_zero()) pieces.push_back(piece(full, common().tablespoon));
  const Fraction rest = (tablespoons - full) * size_of(common().tablespoon, dialect);
  if (!rest.is_zero() || pieces.empty())
    pieces.push_back(teaspoons(rest / size_of(common().teaspoon, dialect)));
}

Pieces in_cups(const Fraction& ml, Dialect dialect) {
  const Fraction cups = ml / size_of(common().cup, dialect);
  if (!cups.is_zero() && (is_multiple(cups, 1, 4) || is_multiple(cups, 1, 3))) return {piece(cups, common().cup)};
  const Fraction quarters = whole(cups * Fraction(4)) / Fraction(4);
  Pieces pieces;
  if (!quarters.is_zero()) pieces.push_back(piece(quarters, common().cup));
  add_spoons((cups - quarters) * size_of(common().cup, dialect), dialect, pieces);
  return pieces;
}

// Gallons from one up, quarts from two up, as the school-meal guide has them; the rest in cups and spoons.
Pieces in_large_measures(const Fraction& ml) {
  Pieces pieces;
  Fraction rest = ml;
  const auto take = [&](UnitId id, const Fraction& from) {
    const Fraction size = size_of(id, Dialect::american), count = whole(rest / size);
    if (count.is_zero() || ml < from * size) return;
    pieces.push_back(piece(count, id));
    rest -= count * size;
  };
  take(common().gallon, Fraction(1));
  take(common().quart, Fraction(2));
  if (rest.is_zero() && !pieces.empty()) return pieces;
  for (WrittenPiece& one : in_cups(rest, Dialect::american)) pieces.push_back(std::move(one));
  return pieces;
}

Pieces in_pints(const Fraction& ml, Dialect dialect) {
  const Fraction pints = ml / size_of(common().pint, dialect);
  if (!pints.is_zero() && is_multiple(pints, 1, 4)) return {piece(pints, common().pint)};
  const Fraction full = whole(pints), rest = (pints - full) * size_of(common().pint, dialect);
  Pieces pieces;
  if (!full.is_zero()) pieces.push_back(piece(full, common().pint));
  pieces.push_back(piece(rest / size_of(common().fluid_ounce, dialect), common().fluid_ounce));
  return pieces;
}

// Hours and minutes; whole days from two on, seconds below a minute.
Pieces in_minutes(const Fraction& minutes) {
  const Fraction hour(60), day(1440);
  if (minutes >= day * Fraction(2) && (minutes / day).is_whole()) return {piece(minutes / day, common().day)};
  if (minutes.sign() > 0 && minutes < Fraction(1)) return {piece(minutes * hour, common().second)};
  const Fraction hours = whole(minutes / hour), rest = minutes - hours * hour;
  Pieces pieces;
  if (!hours.is_zero()) pieces.push_back(piece(hours, common().hour));
  if (!rest.is_zero() || pieces.empty()) pieces.push_back(piece(rest, common().minute));
  return pieces;
}

// Whole and half centimetres from one up; other small lengths in millimetres.
Pieces in_centimetres(const Fraction& mm) {
  const bool halves = is_multiple(mm, 5, 1) && mm >= Fraction(10);
  return {halves || mm >= Fraction(100) ? piece(mm / Fraction(10), common().centimetre)
                                        : piece(mm, common().millimetre)};
}

Pieces in_degrees(const Fraction& celsius, Ladder ladder) {
  if (ladder == Ladder::fahrenheit) return {piece(from_celsius(celsius, common().fahrenheit), common().fahrenheit)};
  if (ladder == Ladder::celsius) return {piece(celsius, common().celsius)};
  return {{"gas", write_number(from_celsius(celsius, common().gas), true, false)}};
}

bool joined_by_plus(Ladder ladder) {
  return ladder == Ladder::cups || ladder == Ladder::spoons;
}

}  // namespace

std::vector<WrittenPiece> write_pieces(const Rounded& rounded) {
  const Fraction& value = rounded.shown;
  if (value.is_lost()) return {{"?", ""}};
  switch (rounded.ladder) {
    case Ladder::grams:
      return in_two(value, Fraction(1000), common().kilogram, common().gram);
    case Ladder::ounces:
      return in_ounces(value);
    case Ladder::millilitres:
      return in_two(value, Fraction(1000), common().litre, common().millilitre);
    case Ladder::cups:
      // Nobody counts forty cups: from a gallon on in gallons and quarts, where they are American.
      if (rounded.rung == kByTable || (rounded.dialect == Dialect::american && value >= size_of(common().gallon, rounded.dialect)))
        return in_large_measures(value);
      return in_cups(value, rounded.dialect);
    case Ladder::pints:
      return in_pints(value, rounded.dialect);
    case Ladder::spoons: {
      Pieces pieces;
      add_spoons(value, rounded.dialect, pieces);
      return pieces;
    }
    case Ladder::minutes:
      return in_minutes(value);
    case Ladder::celsius:
    case Ladder::fahrenheit:
    case Ladder::gas:
      return in_degrees(value, rounded.ladder);
    case Ladder::things:
      return {piece(value, common().each)};
    case Ladder::centimetres:
      return in_centimetres(value);
    case Ladder::inches:
      return {piece(value / size_of(common().inch, Dialect::british), common().inch)};
  }
  return {};
}

std::string write(const Rounded& rounded) {
  std::string text = rounded.rough ? "≈ " : "";
  bool first = true;
  for (const WrittenPiece& each : write_pieces(rounded)) {
    if (!first) text += joined_by_plus(rounded.ladder) ? " + " : " ";
    text += each.number;
    if (!each.unit.empty()) (text += ' ') += each.unit;
    first = false;
  }
  return text;
}

}  // namespace qtn
