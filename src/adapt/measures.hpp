// In which measures an amount is shown: the rules of the systems. Private to this room.
#pragma once
#include "adapt/adapt.hpp"

namespace qtn {

// Whose measures a card is in.
struct Reader {
  System system = System::written;
  Dialect dialect = Dialect::unstated;  // whose spoons, cups and pints
  bool gas_marks = true;                // false: nobody there knows them, and their ovens are in °F
};
Reader reader_of(const Recipe& recipe, System system, Dialect spoons);
Reader reader_of(const Recipe& recipe, const Request& request);  // of the first column

// Does a unit as written belong to the reader's measures, in the same size? Then it stays as it stands.
bool stays(UnitId unit, Dialect from, const Reader& reader);

// How an amount comes there: its ladder, and what its base unit is multiplied by on the way (a density, or 1 over it).
struct Way {
  Ladder ladder = Ladder::things;
  Dialect dialect = Dialect::unstated;
  Fraction times = Fraction(1);
  bool lacking = false;  // a cup of something that nobody has weighed: it stays in its own measure
};
// `base` is the amount in its base unit, as the recipe's dialect reads it; `line` may be null.
Way way_of(const Recipe& recipe, const TakeLine* line, UnitId unit, const Fraction& base, const Reader& reader);
// The way of an amount that keeps its own measure.
Way own_way(UnitId unit, Dialect from);
// Whose measures to reckon in where nobody said: their proportions are what counts then.
Dialect assumed_for(UnitId unit);

// Is it measured by the cup in the American kitchen, by published figures?
bool by_the_cup(const TakeLine& line);

}  // namespace qtn
