// A kitchen that rounds by the published guide: pounds and ounces, American cups and spoons.
#include <doctest/doctest.h>

#include "tests/adapt/shown.hpp"

using namespace qtn;

namespace {

Surroundings kitchen(const std::string& text) {
  const Source source("kitchen.qtn", "kitchen: Saltmarsh House\n" + text);
  Report report;
  Surroundings around;
  around.kitchen = std::make_shared<const Kitchen>(check_kitchen(source, parse(source), report));
  REQUIRE(report.list().empty());
  return around;
}

std::string shown(const std::string& line, const Fraction& k, const std::string& rounding) {
  const Resized card(listed("measures: American\n", "  " + line + "\n"), k, {}, kitchen(rounding));
  return card.shown.lines[0].text;
}

}  // namespace

TEST_CASE("rounding: standardized") {
  const std::string guide = "rounding: standardized\n";
  CHECK(shown("1 lb 10 oz  carrots", Fraction::of(11, 10), guide) == "1 lb 12½ oz");     // 28.6 oz: by half ounces
  CHECK(shown("1 lb 10 oz  carrots", Fraction::of(11, 10), "rounding: 5 %\n") == "1 lb 12 oz");
  CHECK(shown("3 oz  butter", Fraction::of(27, 10), guide) == "8 oz");                   // 8.1 oz
  CHECK(shown("1 cup  milk", Fraction::of(11, 1), guide) == "2 quarts + 3 cups");
  CHECK(shown("2 gal  stock", Fraction::of(7, 1), guide) == "14 gallons");
  CHECK(shown("1 tsp  fine salt", Fraction::of(13, 5), guide) == "2⅝ tsp");
  // Under 2 oz a measure, where the weight of one is known; 1/4, 1/2 and 3/4 oz stay weights.
  CHECK(shown("1/2 oz  granulated sugar", Fraction::of(9, 4), guide) == "2 tbsp + 1¾ tsp");       // 1.125 oz at 200 g a cup: 7.66 tsp
  CHECK(shown("1/4 oz  granulated sugar", Fraction(3), guide) == "¾ oz");
  // Grams have no such table.
  CHECK(shown("100 g  granulated sugar", Fraction::of(28125, 10000), guide) == "275 g");
}
