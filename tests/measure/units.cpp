// The unit table: whole, unambiguous, each row with its source.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "data/tables.hpp"
#include "measure/convert.hpp"
#include "measure/table_text.hpp"
#include "measure/unit.hpp"

using namespace qtn;

namespace {
std::string lower(std::string_view text) {
  std::string made(text);
  for (char& c : made)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + ('a' - 'A'));
  return made;
}
UnitId named(std::string_view text) {
  const UnitId id = unit_named(text);
  CHECK_MESSAGE(id != kNoUnit, text);
  return id;
}
Fraction size(std::string_view text, Dialect dialect) {
  return size_of(named(text), dialect);
}
constexpr Dialect kAll[] = {Dialect::unstated, Dialect::british, Dialect::american, Dialect::australian};
}  // namespace

TEST_CASE("every row of the unit table is whole and was read") {
  UnitId rows = 0;
  table::each_row(data::units(), [&](const table::Row& row) {
    CHECK_MESSAGE(row.count == 7, row[0]);
    CHECK_MESSAGE(!row[0].empty(), row[1]);
    CHECK_MESSAGE(!row[6].empty(), row[0]);
    CHECK(unit(rows).name == row[0]);
    ++rows;
  });
  CHECK(rows == unit_count());
}

TEST_CASE("every unit has a source, a sign and, where the table gives one, a size above nothing") {
  for (UnitId id = 1; id < unit_count(); ++id) {
    const Unit& row = unit(id);
    CAPTURE(row.name);
    CHECK(!row.source.empty());
    if (row.dimension != Dimension::money) CHECK(!row.symbol.empty());
    for (const Fraction& each : row.size) CHECK((each.is_lost() || each.sign() > 0));
    if (row.counted) CHECK((row.dimension == Dimension::count || row.informal));
  }
  CHECK(unit(kNoUnit).name == "each");
  CHECK(unit(60000).name == "each");
}

TEST_CASE("no word means two units, all are in lower case, and a name is a word") {
  const auto words = unit_words();
  CHECK(words.size() > 400);
  for (std::size_t i = 0; i < words.size(); ++i) {
    CAPTURE(words[i].text);
    if (i > 0) CHECK(words[i - 1].text < words[i].text);
    CHECK(lower(words[i].text) == words[i].text);
    CHECK(words[i].text.find("  ") == std::string_view::npos);
    CHECK(unit_named(words[i].text) == words[i].unit);
  }
  for (UnitId id = 1; id < unit_count(); ++id) {
    if (unit(id).dimension == Dimension::money) continue;
    CAPTURE(unit(id).name);
    CHECK(unit_named(unit(id).name) == id);
  }
}

TEST_CASE("look-alikes are no units, and one-letter units are lower case only") {
  for (const std::string_view word :
       {"c",  "C",   "t",   "T", "m", "M", "tb", "tbs", "tblsp", "pts", "in",    "ltr", "gr",
        "gm", "gms", "ozs", "G", "L", "H", "S",  "f",   "F",     "",    "money", "each"})
    CHECK_MESSAGE(unit_named(word) == kNoUnit, word);
  CHECK(unit_named(std::string(500, 'g')) == kNoUnit);
  CHECK(unit_named("g") == common().gram);
  CHECK(unit_named("Tbsp") == common().tablespoon);
  CHECK(unit_named("TBSP") == common().tablespoon);
  CHECK(unit_named("Fl Oz") == common().fluid_ounce);
  CHECK(unit_named("US cup") != common().cup);
  CHECK(unit_named("°C") == common().celsius);
}

TEST_CASE("the rows that the compiler speaks of are all there") {
  const CommonUnits& c = common();
  for (const UnitId id : {c.gram,
                          c.kilogram,
                          c.ounce,
                          c.pound,
                          c.millilitre,
                          c.litre,
                          c.fluid_ounce,
                          c.pint,
                          c.cup,
                          c.tablespoon,
                          c.teaspoon,
                          c.millimetre,
                          c.centimetre,
                          c.inch,
                          c.minute,
                          c.hour,
                          c.day,
                          c.celsius,
                          c.fahrenheit,
                          c.gas,
                          c.percent,
                          c.ppm,
                          c.pinch,
                          c.quart,
                          c.gallon,
                          c.gill,
                          c.dessertspoon,
                          c.second,
                          c.celsius_degree,
                          c.fahrenheit_degree,
                          c.money})
    CHECK(id != kNoUnit);
  CHECK(c.each == kNoUnit);
}

TEST_CASE("a word that the dialects read apart has no size until one is said") {
  for (const std::string_view word :
       {"pint", "fl oz", "gill", "quart", "gallon", "tbsp", "tsp", "dessertspoon", "cup"}) {
    CHECK_MESSAGE(unit(named(word)).ambiguous(), word);
    CHECK_MESSAGE(!size(word, Dialect::american).is_lost(), word);
  }
  CHECK(size("cup", Dialect::british).is_lost());
  CHECK(size("cup", Dialect::australian) == Fraction(250));
  for (const std::string_view word : {"teacup", "breakfast cup"})
    for (const Dialect dialect : kAll) CHECK_MESSAGE(size(word, dialect).is_lost(), word);
  for (const std::string_view word :
       {"oz", "lb", "g", "ml", "inch", "min", "%", "pinch", "US cup", "imperial pint", "clove", "°C"})
    CHECK_MESSAGE(!unit(named(word)).ambiguous(), word);
  for (const std::string_view word : {"oz", "kg", "US cup", "imperial pint", "metric tablespoon", "inch", "week"})
    for (const Dialect dialect : kAll) CHECK_MESSAGE(size(word, dialect) == size(word, Dialect::unstated), word);
}

TEST_CASE("sizes by dialect") {
  CHECK(size("pint", Dialect::american) == Fraction::of(473176473, 1000000));
  CHECK(size("pint", Dialect::british) == Fraction::of(56826125, 100000));
  CHECK(size("pint", Dialect::australian) == size("pint", Dialect::british));
  CHECK(size("fl oz", Dialect::american) == Fraction::of(295735295625, 10000000000));
  CHECK(size("fl oz", Dialect::british) == Fraction::of(284130625, 10000000));
  CHECK(size("cup", Dialect::american) == Fraction::of(473176473, 2000000));
  CHECK(size("US legal cup", Dialect::british) == Fraction(240));
  CHECK(size("imperial cup", Dialect::british) == Fraction::of(284130625, 1000000));
  CHECK(size("tablespoon", Dialect::american) == Fraction::of(1478676478125, 100000000000));
  CHECK(size("tablespoon", Dialect::british) == Fraction(15));
  CHECK(size("tablespoon", Dialect::australian) == Fraction(20));
  CHECK(size("teaspoon", Dialect::australian) == Fraction(5));
  CHECK(size("pinch", Dialect::british) == Fraction::of(5, 16));
  CHECK(size("pinch", Dialect::unstated) == Fraction::of(5, 16));
  CHECK(size("stick", Dialect::american) == Fraction(1));
}

TEST_CASE("count nouns are counts, and a pinch is a small volume") {
  for (const std::string_view word :
       {"clove",   "sticks", "heads",  "tin", "slices", "leaves",  "portion", "sprigs", "bunches", "rasher", "fillets",
        "handful", "knob",   "sheets", "can", "jar",    "packets", "sachet",  "bottle", "bulbs",   "stalk",  "ribs",
        "ears",    "bag",    "boxes",  "tub", "block",  "cube",    "pieces",  "punnet", "trays"}) {
    CHECK_MESSAGE(unit(named(word)).counted, word);
    CHECK_MESSAGE(unit(named(word)).dimension == Dimension::count, word);
  }
  for (const std::string_view word : {"pinch", "dashes", "drop", "smidgen"}) {
    CHECK_MESSAGE(unit(named(word)).informal, word);
    CHECK_MESSAGE(unit(named(word)).dimension == Dimension::volume, word);
  }
  CHECK(size("dozen", Dialect::british) == Fraction(12));
}
