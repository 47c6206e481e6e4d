// The rules, a row each. Common practice, no source, but for the densities, which carry theirs:
//
//   as written          metric            imperial              American
//   g, kg               stays             lb, oz                cups where its figure is published by the cup, else lb, oz
//   lb, oz              g, kg             stays                 stays
//   ml, l               stays             pints, fl oz          cups
//   pints, fl oz        ml, l             pints, fl oz          cups
//   cups of a liquid    ml, l             pints, fl oz          cups
//   cups of a solid     g by density      lb, oz by density     cups
//   spoons              spoons            spoons                spoons, from a quarter of a cup on cups
//   more than 8 tbsp    as cups are       as cups are           cups
//   more than a gallon  -                 -                     a liquid in gallons and quarts, a solid in lb by density
//   pinches, things     stay              stay                  stay
#include "adapt/measures.hpp"

namespace qtn {
namespace {

bool is_spoon(UnitId id) {
  const CommonUnits& c = common();
  return id == c.teaspoon || id == c.tablespoon || id == c.dessertspoon;
}

bool starts_with(std::string_view text, std::string_view front) {
  return text.substr(0, front.size()) == front;
}

// "US cup", "imperial pint", "metric tbsp": the name says whose it is.
bool named_for(std::string_view name, System system) {
  switch (system) {
    case System::metric:
      return starts_with(name, "metric ");
    case System::imperial:
      return starts_with(name, "imperial ");
    case System::american:
      return starts_with(name, "US ");
    case System::written:
      break;
  }
  return true;
}

bool volume_stays(UnitId id, Dialect from, const Reader& reader) {
  const CommonUnits& c = common();
  const bool same_size = size_of(id, from) == size_of(id, reader.dialect);
  const bool american = reader.dialect == Dialect::american;
  if (is_spoon(id)) return same_size;
  if (id == c.cup) return same_size && reader.system == System::american;
  if (id == c.pint || id == c.fluid_ounce || id == c.quart || id == c.gallon || id == c.gill)
    return same_size && reader.system != System::metric && american == (reader.system == System::american);
  return named_for(unit(id).name, reader.system);
}

Way through_weight(const Recipe& recipe, const TakeLine& line, Way way, const Reader& reader, UnitId id) {
  const Known known = known_of(recipe, line);
  const bool known_liquid = line.food != nullptr && line.food->liquid;
  if (known_liquid || (known.density.is_lost() && line.food == nullptr)) return way;  // a volume is a volume
  if (!known.density.is_lost()) {
    way.ladder = ladder_for(Dimension::mass, reader.system, recipe.dialect, false);  // the page's own scale, whosever spoons
    way.times = known.density;
    return way;
  }
  if (id != common().cup) return way;  // a pint of it is still a pint
  Way own = own_way(id, recipe.dialect);
  own.lacking = true;
  return own;
}

// Nobody counts out forty spoons: above half a cup a jug or a scale is handier (ECC App. 7, S4-08 and S4-09).
bool heaped_up(UnitId id, const Fraction& base, Dialect dialect) {
  return is_spoon(id) && base > size_of(common().tablespoon, dialect) * Fraction(8);
}

// Nor forty cups: a solid is weighed before it is made by the gallon (PC, BCM ch. 6, S3-34).
bool by_the_gallon(const Fraction& base) {
  return base > size_of(common().gallon, Dialect::american);
}

Way volume_way(const Recipe& recipe, const TakeLine* line, UnitId id, const Fraction& base, const Reader& reader) {
  const Unit& row = unit(id);
  const bool spoonful = (is_spoon(id) && !heaped_up(id, base, reader.dialect)) || row.informal;
  Way way;
  way.dialect = reader.dialect;
  way.ladder = ladder_for(Dimension::volume, reader.system, reader.dialect, spoonful);
  const bool cups = way.ladder == Ladder::cups;
  if (line == nullptr || (cups ? !by_the_gallon(base) : spoonful || row.decimal)) return way;
  return through_weight(recipe, *line, way, reader, id);
}

// A spoon's own figure where one is published and the amount is a spoon's.
Way by_cup_way(const Recipe& recipe, const TakeLine& line, const Fraction& grams) {
  Fraction density = known_of(recipe, line).density;
  const Fraction quarter_cup = size_of(common().cup, Dialect::american) * Fraction::of(1, 4);
  const Figure& small = spoon_density_of(line);
  if (small.known() && density == density_of(line).value && grams / density < quarter_cup) density = small.value;
  return {Ladder::cups, Dialect::american, Fraction(1) / density, false};
}

}  // namespace

Reader reader_of(const Recipe& recipe, System system, Dialect spoons) {
  if (system == System::american) return {system, Dialect::american};  // its cups go with its own spoons
  if (spoons != Dialect::unstated) return {system, spoons};
  const bool abroad = system != System::written && recipe.dialect == Dialect::american;
  return {system, abroad ? Dialect::british : recipe.dialect};
}

Reader reader_of(const Recipe& recipe, const Request& request) {
  Reader reader = reader_of(recipe, request.units, request.spoons);
  reader.gas_marks = request.words != AskedWords::american;
  return reader;
}

bool stays(UnitId id, Dialect from, const Reader& reader) {
  const Unit& row = unit(id);
  if (reader.system == System::written)  // two tablespoons of 20 ml are not two to who has spoons of 15
    return row.informal || reader.dialect == from || row.dimension != Dimension::volume || size_of(id, from) == size_of(id, reader.dialect);
  if (row.informal) return true;
  switch (row.dimension) {
    case Dimension::mass:
    case Dimension::length:
    case Dimension::area:
      if (row.decimal) return reader.system == System::metric;
      return reader.system != System::metric;
    case Dimension::volume:
      return row.decimal ? reader.system == System::metric : volume_stays(id, from, reader);
    default:
      return true;
  }
}

bool by_the_cup(const TakeLine& line) {
  const Figure& cup = density_of(line);
  if (!cup.known() || cup.remembered) return false;
  const std::string_view source = cup.source;
  if (source.find(" cup") == std::string_view::npos && source.find(" tbsp") == std::string_view::npos &&
      source.find(" tsp") == std::string_view::npos)
    return false;
  // Whole things are weighed or counted, not cupped: a leek, an apple. Berries, cubes of sugar and sticks of butter are
  // not.
  const Figure& each = weight_of_one(line);
  return line.food->liquid || !each.known() || each.value <= Fraction(15) ||
         each.source.find(" stick ") != std::string_view::npos;
}

Way own_way(UnitId id, Dialect from) {
  const Ladder ladder = ladder_of(id, from);
  // The American spoon's ladder goes on into cups.
  const bool cups = ladder == Ladder::spoons && from == Dialect::american;
  return {cups ? Ladder::cups : ladder, from, Fraction(1), false};
}

Dialect assumed_for(UnitId id) {
  return id == common().cup ? Dialect::american : Dialect::british;
}

Way way_of(const Recipe& recipe, const TakeLine* line, UnitId id, const Fraction& base, const Reader& reader) {
  const Dimension dimension = unit(id).dimension;
  const bool many = (reader.dialect != Dialect::american && heaped_up(id, base, reader.dialect)) ||
                    ((id == common().cup || is_spoon(id)) && by_the_gallon(base));
  if (stays(id, recipe.dialect, reader) && !many) {
    // A vessel that no ladder has, a mug or another country's cup, would come out in millilitres: a solid is weighed.
    const Way own = own_way(id, recipe.dialect);
    const bool vessel = line != nullptr && (line->house_measure || !unit(id).decimal);
    if (!vessel || dimension != Dimension::volume || own.ladder != Ladder::millilitres) return own;
    return through_weight(recipe, *line, own, reader, id);
  }
  if (dimension == Dimension::volume) return volume_way(recipe, line, id, base, reader);
  if (dimension == Dimension::mass && reader.system == System::american && line != nullptr && by_the_cup(*line)) {
    const Way cups = by_cup_way(recipe, *line, base);
    if (line->food->liquid || !by_the_gallon(base * cups.times)) return cups;
  }
  return {ladder_for(dimension, reader.system, reader.dialect, false), reader.dialect, Fraction(1), false};
}

}  // namespace qtn
