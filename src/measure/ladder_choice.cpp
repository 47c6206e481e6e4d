// Which ladder an amount is shown on: of a system of measures, or the one that its own unit belongs to.
#include "measure/ladder.hpp"

namespace qtn {
namespace {

Ladder volume_ladder(System system, Dialect dialect, bool spoonful) {
  const bool american = system == System::american || (system == System::written && dialect == Dialect::american);
  if (american) return Ladder::cups;
  if (spoonful) return Ladder::spoons;
  return system == System::imperial ? Ladder::pints : Ladder::millilitres;
}

// The volume units that a file's own ladders are made of, and the ladder of each.
struct Member {
  UnitId CommonUnits::*unit;
  Ladder ladder;
};
constexpr Member kMembers[] = {
    {&CommonUnits::cup, Ladder::cups},        {&CommonUnits::tablespoon, Ladder::spoons},
    {&CommonUnits::teaspoon, Ladder::spoons}, {&CommonUnits::dessertspoon, Ladder::spoons},
    {&CommonUnits::pint, Ladder::pints},      {&CommonUnits::fluid_ounce, Ladder::pints},
    {&CommonUnits::quart, Ladder::pints},     {&CommonUnits::gallon, Ladder::pints},
    {&CommonUnits::gill, Ladder::pints},
};

// "US cup" stands on the cups of an American file; in a British file nothing but millilitres says what it is.
Ladder volume_home(UnitId id, Dialect dialect) {
  if (unit(id).informal) return Ladder::spoons;
  if (unit(id).decimal) return Ladder::millilitres;
  for (const Member& member : kMembers) {
    if (common().*member.unit == id) return member.ladder;
  }
  const Fraction size = size_of(id, dialect);
  for (const Member& member : kMembers) {
    if (!size.is_lost() && size_of(common().*member.unit, dialect) == size) return member.ladder;
  }
  return Ladder::millilitres;
}

}  // namespace

std::string_view name_of(System system) {
  constexpr std::string_view kNames[] = {"written", "metric", "imperial", "american"};
  return kNames[static_cast<std::size_t>(system)];
}

Ladder ladder_for(Dimension dimension, System system, Dialect dialect, bool spoonful) {
  const bool american = system == System::american || (system == System::written && dialect == Dialect::american);
  const bool old = american || system == System::imperial;
  switch (dimension) {
    case Dimension::mass:
      return old ? Ladder::ounces : Ladder::grams;
    case Dimension::volume:
      return volume_ladder(system, dialect, spoonful);
    case Dimension::length:
    case Dimension::area:
      return old ? Ladder::inches : Ladder::centimetres;
    case Dimension::temperature:
    case Dimension::difference:
      return american ? Ladder::fahrenheit : Ladder::celsius;  // British ovens are in °C
    case Dimension::duration:
      return Ladder::minutes;
    case Dimension::ratio:
    case Dimension::count:
    case Dimension::money:
      break;
  }
  return Ladder::things;
}

Ladder ladder_of(UnitId id, Dialect dialect) {
  const bool decimal = unit(id).decimal;
  switch (unit(id).dimension) {
    case Dimension::mass:
      return decimal ? Ladder::grams : Ladder::ounces;
    case Dimension::volume:
      return volume_home(id, dialect);
    case Dimension::length:
    case Dimension::area:
      return decimal ? Ladder::centimetres : Ladder::inches;
    case Dimension::temperature:
      return id == common().gas ? Ladder::gas : id == common().fahrenheit ? Ladder::fahrenheit : Ladder::celsius;
    case Dimension::difference:
      return id == common().fahrenheit_degree ? Ladder::fahrenheit : Ladder::celsius;
    case Dimension::duration:
      return Ladder::minutes;
    case Dimension::ratio:
    case Dimension::count:
    case Dimension::money:
      break;
  }
  return Ladder::things;
}

}  // namespace qtn
