// Forms of a food: sifted, packed, chopped, large.
#include <doctest/doctest.h>

#include <set>
#include <string>
#include <vector>

#include "data/tables.hpp"
#include "larder/food.hpp"
#include "words/rows.hpp"

using namespace qtn;

namespace {

const Larder& larder() { return Larder::standard(); }

FoodForms chosen(std::string_view name, std::vector<std::string_view> behind = {}, std::string_view noun = {}) {
  const Food* const food = larder().find(name);
  REQUIRE_MESSAGE(food != nullptr, name);
  return larder().forms(*food, {name, behind, noun});
}
// Grams of a US cup, to one place; "" where no row is chosen.
std::string cup(std::string_view name, std::vector<std::string_view> behind = {}) {
  const FoodForms forms = chosen(name, std::move(behind));
  if (forms.by_volume == nullptr) return "";
  return (forms.by_volume->density.value * Fraction::of(2365882365, 10000000)).decimal(1);
}
std::string one(std::string_view name, std::vector<std::string_view> behind = {}, std::string_view noun = {}) {
  const FoodForms forms = chosen(name, std::move(behind), noun);
  return forms.of_one == nullptr ? "" : forms.of_one->each.value.decimal(1);
}

}  // namespace

TEST_CASE("every row of the forms belongs to a food by its first name, and says something of its own") {
  std::set<std::string> seen;
  std::size_t rows = 0, kept = 0;
  for (Rows row(data::forms()); row.next(); ++rows) {
    CAPTURE(row[0]);
    CAPTURE(row[1]);
    const Food* const food = larder().find(row[0]);
    REQUIRE(food != nullptr);
    CHECK(food->name == row[0]);
    CHECK((row[2].empty() || row[2] == "in front"));
    CHECK(seen.insert(std::string(row[0]) + "|" + std::string(row[1])).second);
  }
  for (const Food& food : larder().all()) kept += larder().forms_of(food).size();
  CHECK(kept == rows);
  CHECK(rows >= 120);
}

TEST_CASE("every figure of a form has a source and a sensible size") {
  for (const Food& food : larder().all()) {
    CAPTURE(food.name);
    for (const FoodForm& form : larder().forms_of(food)) {
      CAPTURE(form.words);
      CHECK((form.density.known() || form.each.known()));
      CHECK((form.density.known() || !form.density_small.known()));
      for (const Figure* figure : {&form.density, &form.density_small, &form.each}) {
        CHECK(figure->known() == !figure->source.empty());
        if (!figure->known()) continue;
        const bool named = figure->source.starts_with("USDA SR28 ") || figure->source.starts_with("GNU Units 2.22: ");
        CHECK((named || figure->remembered));
      }
      if (form.density.known()) {
        CHECK(form.density.value > Fraction::of(1, 20));
        CHECK(form.density.value < Fraction(2));
        CHECK_MESSAGE(!(form.density.value == food.density.value && form.words.find("not") == std::string_view::npos), "no other than the food's own");
      }
    }
  }
}

TEST_CASE("flour by its ways of measuring, as published") {
  CHECK(cup("plain flour") == "");
  CHECK(cup("sifted plain flour") == "113.4");
  CHECK(cup("plain flour", {"spooned"}) == "120.5");
  CHECK(cup("plain flour", {"scooped and levelled"}) == "141.7");
  CHECK(cup("sifted strong flour") == "120.5");
  CHECK(cup("bread flour", {"scooped"}) == "155.9");
  CHECK(cup("sifted cake flour") == "99.2");
  CHECK(cup("sifted cocoa") == "75");
  CHECK(cup("sifted icing sugar") == "100");
}

TEST_CASE("sifted behind the comma is done after measuring") {
  CHECK(cup("plain flour", {"sifted"}) == "");
  CHECK(cup("icing sugar", {"sifted"}) == "");
  CHECK(cup("whipping cream", {"whipped"}) == "");
  CHECK(cup("whipped whipping cream") == "120");
}

TEST_CASE("packed, not packed, and the preparation that chooses its row") {
  CHECK(cup("soft light brown sugar", {"packed"}) == "");
  CHECK(cup("brown sugar", {"not packed"}) == "145");
  CHECK(cup("loosely packed dark brown sugar") == "145");
  CHECK(cup("raisins", {"packed"}) == "165");
  CHECK(cup("raisins", {"not packed"}) == "145");
  CHECK(cup("cheddar", {"diced"}) == "132");
  CHECK(cup("carrots", {"peeled and coarsely grated"}) == "110");
  CHECK(cup("carrots", {"peeled", "grated"}) == "110");
  CHECK(cup("hazelnuts", {"toasted", "finely ground"}) == "75");
  CHECK(cup("sliced strawberries") == "166");
}

TEST_CASE("the size and the count noun choose the weight of one") {
  CHECK(one("large onion") == "150");
  CHECK(one("onion", {"small"}) == "70");
  CHECK(one("extra large bananas") == "152");
  CHECK(one("lettuce", {}, "leaf") == "8");
  CHECK(one("lettuce") == "");
  CHECK(one("large onion", {"chopped"}) == "150");
}
