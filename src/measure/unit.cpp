#include "measure/unit.hpp"

#include "measure/unit_table.hpp"

namespace qtn {

std::string_view name_of(Dimension dimension) {
  switch (dimension) {
    case Dimension::ratio:
      return "percentage";
    case Dimension::mass:
      return "weight";
    case Dimension::volume:
      return "volume";
    case Dimension::count:
      return "number of things";
    case Dimension::length:
      return "length";
    case Dimension::area:
      return "area";
    case Dimension::temperature:
      return "temperature";
    case Dimension::difference:
      return "difference of temperature";
    case Dimension::duration:
      return "time";
    case Dimension::money:
      return "price";
  }
  return "";
}

std::string_view name_of(Dialect dialect) {
  switch (dialect) {
    case Dialect::unstated:
      return "unstated";
    case Dialect::british:
      return "British";
    case Dialect::american:
      return "American";
    case Dialect::australian:
      return "Australian";
  }
  return "";
}

const Unit& unit(UnitId id) {
  static const std::vector<Unit>& units = unit_table().units;
  return id < units.size() ? units[id] : units[kNoUnit];
}

UnitId unit_count() {
  return static_cast<UnitId>(unit_table().units.size());
}

std::span<const UnitWord> unit_words() {
  return unit_table().words;
}

UnitId unit_named(std::string_view text) {
  constexpr std::size_t kLongest = 64;  // twice the longest word of the table
  if (text.size() > kLongest) return kNoUnit;
  if (text.size() == 1) return unit_table().by_word(text);  // G, L, H and S are no units
  char folded[kLongest];
  for (std::size_t i = 0; i < text.size(); ++i)
    folded[i] = text[i] >= 'A' && text[i] <= 'Z' ? static_cast<char>(text[i] + ('a' - 'A')) : text[i];
  return unit_table().by_word({folded, text.size()});
}

const CommonUnits& common() {
  static const CommonUnits units = [] {
    const UnitTable& table = unit_table();
    CommonUnits c{};
    c.gram = table.by_name("gram"), c.kilogram = table.by_name("kilogram");
    c.ounce = table.by_name("ounce"), c.pound = table.by_name("pound");
    c.millilitre = table.by_name("millilitre"), c.litre = table.by_name("litre");
    c.fluid_ounce = table.by_name("fluid ounce"), c.pint = table.by_name("pint"), c.cup = table.by_name("cup");
    c.tablespoon = table.by_name("tablespoon"), c.teaspoon = table.by_name("teaspoon");
    c.millimetre = table.by_name("millimetre"), c.centimetre = table.by_name("centimetre");
    c.inch = table.by_name("inch"), c.minute = table.by_name("minute"), c.hour = table.by_name("hour");
    c.day = table.by_name("day"), c.second = table.by_name("second");
    c.celsius = table.by_name("degree Celsius"), c.fahrenheit = table.by_name("degree Fahrenheit");
    c.gas = table.by_name("gas mark"), c.percent = table.by_name("per cent"), c.ppm = table.by_name("ppm");
    c.pinch = table.by_name("pinch"), c.each = kNoUnit;
    c.quart = table.by_name("quart"), c.gallon = table.by_name("gallon"), c.gill = table.by_name("gill");
    c.dessertspoon = table.by_name("dessertspoon");
    c.celsius_degree = table.by_name("Celsius degree"), c.fahrenheit_degree = table.by_name("Fahrenheit degree");
    c.money = table.by_name("money");
    return c;
  }();
  return units;
}

Fraction size_of(UnitId id, Dialect dialect) {
  return unit(id).size[static_cast<int>(dialect)];
}

}  // namespace qtn
