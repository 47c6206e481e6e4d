// The unit table, read once from data/units.txt and data/gas.txt.
#include "measure/unit.hpp"

#include <array>
#include <vector>

#include "data/tables.hpp"
#include "measure/columns.hpp"

namespace qtn {
namespace {

struct GasMark {
  Fraction mark, celsius, printed;
};

struct Table {
  std::vector<Unit> units;
  std::vector<UnitWord> words;
  std::vector<GasMark> gas;
  CommonUnits common{};

  Table() {
    units.reserve(160);
    words.reserve(420);
    Columns rows(data::units());
    while (rows.next()) add(rows);
    Columns marks(data::gas());
    while (marks.next()) {
      const Fraction fahrenheit = read_fraction(marks[1]);
      gas.push_back({read_fraction(marks[0]), (fahrenheit - Fraction(32)) * Fraction::of(5, 9), read_fraction(marks[2])});
    }
    fill_common();
  }

  UnitId find(std::string_view name) const {
    for (std::size_t i = 0; i < units.size(); ++i)
      if (units[i].name == name) return static_cast<UnitId>(i);
    return kNoUnit;
  }

  static Dimension dimension(std::string_view word) {
    constexpr std::pair<std::string_view, Dimension> kWords[] = {
        {"mass", Dimension::mass}, {"volume", Dimension::volume}, {"count", Dimension::count}, {"length", Dimension::length},
        {"area", Dimension::area}, {"temperature", Dimension::temperature}, {"difference", Dimension::difference},
        {"duration", Dimension::duration}, {"money", Dimension::money}, {"ratio", Dimension::ratio}};
    for (const auto& [text, value] : kWords)
      if (text == word) return value;
    return Dimension::count;
  }

  // "1/16 pound", "25.4", "british 1 metric teaspoon; american 1 US teaspoon".
  void sizes(std::string_view text, Unit& out) const {
    for (Fraction& size : out.size) size = Fraction::lost();
    if (text == "-") return;
    bool unstated = false;
    while (!text.empty()) {
      std::string_view one = cut(text, ';');
      int only = -1;
      constexpr std::string_view kNames[] = {"unstated ", "british ", "american ", "australian "};
      for (int d = 0; d < kDialects; ++d)
        if (one.substr(0, kNames[d].size()) == kNames[d]) only = d, one.remove_prefix(kNames[d].size());
      const std::size_t blank = one.find(' ');
      const Fraction factor = read_fraction(one.substr(0, blank));
      const Unit* base = blank == std::string_view::npos ? nullptr : &units[find(one.substr(blank + 1))];
      for (int d = 0; d < kDialects; ++d)
        if (only == d || (only < 0 && d != 0) || (only < 0 && base == nullptr))
          out.size[d] = base == nullptr ? factor : factor * base->size[d];
      unstated = unstated || only == 0;
    }
    if (!unstated) out.size[0] = out.size[1] == out.size[2] && out.size[2] == out.size[3] ? out.size[1] : Fraction::lost();
  }

  void add(const Columns& row) {
    Unit unit;
    unit.name = row[0];
    std::string_view printed = row[1] == "-" ? std::string_view() : row[1];
    unit.symbol = cut(printed, ',');
    unit.symbols = printed.empty() ? unit.symbol : cut(printed, ',');
    unit.dimension = dimension(row[2]);
    sizes(row[3], unit);
    unit.counted = row[4].find("counted") != std::string_view::npos;
    unit.informal = row[4].find("informal") != std::string_view::npos;
    unit.decimal = row[4].find("decimal") != std::string_view::npos;
    unit.source = row[6];
    const auto id = static_cast<UnitId>(units.size());
    units.push_back(unit);
    std::string_view list = row[5] == "-" ? std::string_view() : row[5];
    while (!list.empty()) words.push_back({cut(list, ','), id});
  }

  void fill_common() {
    const std::pair<UnitId*, std::string_view> names[] = {
        {&common.gram, "gram"}, {&common.kilogram, "kilogram"}, {&common.ounce, "ounce"}, {&common.pound, "pound"},
        {&common.millilitre, "millilitre"}, {&common.litre, "litre"}, {&common.fluid_ounce, "fluid ounce"},
        {&common.pint, "pint"}, {&common.cup, "cup"}, {&common.tablespoon, "tablespoon"}, {&common.teaspoon, "teaspoon"},
        {&common.millimetre, "millimetre"}, {&common.centimetre, "centimetre"}, {&common.inch, "inch"},
        {&common.minute, "minute"}, {&common.hour, "hour"}, {&common.day, "day"}, {&common.celsius, "degree Celsius"},
        {&common.fahrenheit, "degree Fahrenheit"}, {&common.gas, "gas mark"}, {&common.percent, "per cent"},
        {&common.ppm, "ppm"}, {&common.pinch, "pinch"}, {&common.each, "each"}};
    for (const auto& [id, name] : names) *id = find(name);
  }
};

const Table& table() {
  static const Table kTable;
  return kTable;
}

}  // namespace

const Unit& unit(UnitId id) { return table().units[id]; }
UnitId unit_count() { return static_cast<UnitId>(table().units.size()); }
std::span<const UnitWord> unit_words() { return table().words; }
const CommonUnits& common() { return table().common; }

UnitId unit_named(std::string_view text) {
  if (const UnitId id = table().find(text); id != kNoUnit) return id;
  for (const UnitWord& word : table().words)
    if (word.text == text) return word.unit;
  return kNoUnit;
}

std::string_view name_of(Dimension dimension) {
  constexpr std::string_view kNames[] = {"percentage", "weight", "volume", "number of things", "length", "area",
                                         "temperature", "difference of temperature", "time", "price"};
  return kNames[static_cast<std::size_t>(dimension)];
}

std::string_view name_of(Dialect dialect) {
  constexpr std::string_view kNames[] = {"unstated", "British", "American", "Australian"};
  return kNames[static_cast<std::size_t>(dialect)];
}

Fraction to_celsius(const Fraction& value, UnitId scale) {
  if (scale == common().celsius) return value;
  if (scale == common().fahrenheit) return (value - Fraction(32)) * Fraction::of(5, 9);
  for (const GasMark& row : table().gas)
    if (row.mark == value) return row.celsius;
  return Fraction::lost();
}

Fraction from_celsius(const Fraction& celsius, UnitId scale) {
  if (scale == common().celsius) return celsius;
  if (scale == common().fahrenheit) return celsius * Fraction::of(9, 5) + Fraction(32);
  const GasMark* best = nullptr;
  for (const GasMark& row : table().gas)
    if (best == nullptr || (row.printed - celsius).abs() <= (best->printed - celsius).abs()) best = &row;
  return best == nullptr || celsius.is_lost() ? Fraction::lost() : best->mark;
}

Fraction fan_difference(Dialect dialect) {
  return dialect == Dialect::american ? Fraction(25) * Fraction::of(5, 9) : Fraction(20);
}

Fraction size_of(UnitId id, Dialect dialect) { return table().units[id].size[static_cast<int>(dialect)]; }

}  // namespace qtn
