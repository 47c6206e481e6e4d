// The unit table: every unit by its exact size, in the dialects where it differs. Rows live in data/units.txt, each
// with its source; adding a unit is adding a row.
#pragma once
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "base/fraction.hpp"

namespace qtn {

enum class Dimension : std::uint8_t {
  ratio,        // %, ppm: sizes in 1
  mass,         // sizes in grams
  volume,       // in millilitres
  count,        // things; size 1
  length,       // in millimetres
  area,         // in square millimetres
  temperature,  // a point; affine, see to_celsius()
  difference,   // of two temperatures; in °C
  duration,     // in minutes
  money,
};
std::string_view name_of(Dimension dimension);  // "weight", "volume", "temperature", ... the word a cook would use

// Whose measures a file is written in. `unstated` where neither the file nor its kitchen says.
enum class Dialect : std::uint8_t { unstated, british, american, australian };
inline constexpr int kDialects = 4;
std::string_view name_of(Dialect dialect);  // "British", ...

using UnitId = std::uint16_t;         // a row of the table
inline constexpr UnitId kNoUnit = 0;  // row 0: a bare number, a count of things

struct Unit {
  std::string_view name;     // "ounce": in messages
  std::string_view symbol;   // printed after one: "oz", "cup"
  std::string_view symbols;  // printed after several: "oz", "cups"
  Dimension dimension = Dimension::count;
  // By dialect, in the dimension's base unit; lost() where that dialect has no such unit. The `unstated` entry is
  // lost() where the dialects differ.
  Fraction size[kDialects];
  bool counted = false;   // a count noun (clove, tin, slice): a unit only when a name follows
  bool informal = false;  // pinch, dash, drop: printable, scaled only with care
  bool decimal = false;   // written 2.5, not 2 1/2
  std::string_view source;
  // Has it more than one size until a file says whose measures it uses? A temperature is a point and has none.
  bool ambiguous() const { return dimension != Dimension::temperature && size[0].is_lost(); }
};

const Unit& unit(UnitId id);
UnitId unit_count();

// Every way a unit is written, for the word lists, in lower case and sorted: "tbsp", "tablespoons", "fl oz", "us cup".
// A written word is folded before it is looked up, except that one-letter units are lower case only (g l h s). The
// scale letters C and F are the grammar's, since they are units only where a temperature may stand.
struct UnitWord {
  std::string_view text;
  UnitId unit;
};
std::span<const UnitWord> unit_words();
UnitId unit_named(std::string_view text);  // a name or word in any case; kNoUnit when unknown

// Rows the compiler itself speaks of.
struct CommonUnits {
  UnitId gram, kilogram, ounce, pound, millilitre, litre, fluid_ounce, pint, cup, tablespoon, teaspoon, millimetre,
      centimetre, inch, minute, hour, day, celsius, fahrenheit, gas, percent, ppm, pinch, each, quart, gallon, gill,
      dessertspoon, second, celsius_degree, fahrenheit_degree /* differences */, money;
};
const CommonUnits& common();

// Temperatures are points: no size, a scale. Gas marks go through the table only (lost() outside it, 1/4 to 9).
Fraction to_celsius(const Fraction& value, UnitId scale);
Fraction from_celsius(const Fraction& celsius, UnitId scale);  // gas: nearest mark as tables print them, ties up
// A gas mark in °C as tables print it (mark 3 is 170, by its rule 162.8); lost() outside the table.
Fraction gas_printed(const Fraction& mark);
// Are these °C the two ways of giving one gas mark, by its rule and as printed?
bool one_gas_mark(const Fraction& celsius, const Fraction& other);
// What a fan oven is set lower by, in °C: 20 °C, or 25 °F (American) (S7-20, S7-21).
Fraction fan_difference(Dialect dialect);

// Size of one `unit` in its dimension's base unit as `dialect` reads it; lost() when that is not one value.
Fraction size_of(UnitId unit, Dialect dialect);

}  // namespace qtn
