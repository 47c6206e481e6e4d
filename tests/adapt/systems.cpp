// Other measures: metric, imperial, American; heat on other scales and other ovens.
#include <doctest/doctest.h>

#include "tests/adapt/shown.hpp"

using namespace qtn;

namespace {

std::string shown_in(System units, const std::string& amount, const std::string& name,
                     const std::string& head = "measures: British\n") {
  return Resized(listed(head, "  " + amount + "  " + name + "\n"), Fraction(1), in(units)).line(name);
}

std::string heat_in(System units, const std::string& clause, TermRole role, const std::string& head) {
  return Resized(listed(head, "  300 g  plain flour\n") + "  " + clause + ".\n", Fraction(1), in(units)).terms(role);
}

const char* const kPlain = "measures: British\noven: conventional\n";
const char* const kAmerican = "measures: American\noven: conventional\n";

}  // namespace

TEST_CASE("a unit of the reader's own measures is left as written") {
  CHECK(shown_in(System::metric, "281 g", "plain flour") == "281 g");
  CHECK(shown_in(System::imperial, "1 lb 3 oz", "plain flour") == "1 lb 3 oz");
  CHECK(shown_in(System::metric, "2 tbsp", "golden syrup") == "2 tbsp");
  CHECK(shown_in(System::american, "1 3/4 cups", "plain flour", kAmerican) == "1¾ cups");
  CHECK(shown_in(System::metric, "2", "large eggs") == "2");
}

TEST_CASE("metric: ounces to grams, pints and cups of a liquid to millilitres, cups of a solid to grams") {
  CHECK(shown_in(System::metric, "8 oz", "plain flour") == "225 g");
  CHECK(shown_in(System::metric, "1 pint", "milk") == "575 ml");
  CHECK(shown_in(System::metric, "2 cups", "all-purpose flour", kAmerican) == "250 g");
  CHECK(shown_in(System::metric, "1 cup", "milk", kAmerican) == "240 ml");
}

TEST_CASE("imperial: grams to pounds and ounces, millilitres to pints and fluid ounces") {
  CHECK(shown_in(System::imperial, "110 g", "plain flour") == "4 oz");
  CHECK(shown_in(System::imperial, "500 g", "plain flour") == "1 lb 2 oz");
  CHECK(shown_in(System::imperial, "568 ml", "milk") == "1 pint");
}

TEST_CASE("American: cups by published figures, else pounds and ounces") {
  CHECK(shown_in(System::american, "250 g", "plain flour") == "2 cups");
  CHECK(shown_in(System::american, "240 ml", "milk") == "1 cup");
  CHECK(shown_in(System::american, "450 g", "minced beef") == "1 lb");
}

TEST_CASE("a cup of what nobody has weighed stays a cup, and that is said once") {
  const Resized one(listed(kAmerican, "  2 cups  spelt flour\n"), Fraction(1), in(System::metric));
  CHECK(one.line("spelt flour") == "2 cups");
  CHECK(one.said(Code::no_density) == 1);
}

TEST_CASE("a spoon of another size goes through millilitres") {
  // An Australian tablespoon is 20 ml, a British one 15 ml.
  Request request = in(System::metric);
  request.spoons = Dialect::british;
  const Resized one(listed("measures: Australian\n", "  3 tbsp  golden syrup\n"), Fraction(1), request);
  CHECK(one.line("golden syrup") == "4 tbsp");
}

TEST_CASE("who has other spoons gets the page in those, and weights stay the page's") {
  const auto to = [](const std::string& line, const std::string& name, System units, Dialect spoons) {
    Request request = in(units);
    request.spoons = spoons;
    return Resized(listed("measures: Australian\n", "  " + line + "  " + name + "\n"), Fraction(1), request).line(name);
  };
  CHECK(to("2 tbsp", "water", System::written, Dialect::unstated) == "2 tbsp");
  CHECK(to("2 tbsp", "water", System::written, Dialect::australian) == "2 tbsp");
  CHECK(to("2 tbsp", "water", System::written, Dialect::british) == "2 tbsp + 2 tsp");
  CHECK(to("1 tsp", "fine salt", System::written, Dialect::british) == "1 tsp");
  CHECK(to("1 cup", "plain flour", System::written, Dialect::american) == "1 cup + 1 tbsp");
  CHECK(to("1 cup", "milk", System::american, Dialect::british) == "1 cup + 1 tbsp");
}

TEST_CASE("above half a cup nobody counts out spoons") {
  const auto forty = [](const std::string& line, const std::string& name, System units) {
    return Resized(listed("measures: British\n", "  " + line + "  " + name + "\n"), Fraction(40), in(units)).line(name);
  };
  CHECK(forty("1 tbsp", "water", System::written) == "600 ml");
  CHECK(forty("1 tbsp", "cornflour", System::written) == "325 g");  // 128 g an American cup
  CHECK(forty("1 tbsp", "water", System::imperial) == "1 pint 1 fl oz");
  CHECK(forty("1/2 tsp", "dried thyme", System::written) == "6½ tbsp");
  CHECK(forty("250 g", "plain flour", System::american) == "22 lb");
  CHECK(forty("250 ml", "whole milk", System::american) == "2 gallons + 2 quarts + 2 cups");
  const std::string cups = "  3 cups  all-purpose flour\n  1 cup  whole milk\n";
  CHECK(Resized(listed(kAmerican, cups), Fraction(40)).line("all-purpose flour") == "33 lb");
  CHECK(Resized(listed(kAmerican, cups), Fraction(40)).line("whole milk") == "2 gallons + 2 quarts");
  CHECK(Resized(listed("measures: Australian\n", "  1 cup  plain flour\n"), Fraction(40)).line("plain flour") == "5.3 kg");
}

TEST_CASE("a second column is worked out from the exact amount") {
  Request request;
  request.beside = System::imperial;
  const Resized one(listed("measures: British\n", "  110 g  plain flour\n"), Fraction(1), request);
  CHECK(one.line("plain flour") == "110 g");
  CHECK(one.beside("plain flour") == "4 oz");
  CHECK(one.shown.terms_beside.size() == one.shown.terms.size());
  CHECK(one.shown.mentions_beside.size() == one.shown.mentions.size());
}

TEST_CASE("oven heat goes by the steps of the oven") {
  const auto fahrenheit = [](const std::string& degrees) {
    return heat_in(System::american, "[bake 20 min at " + degrees + " °C]", TermRole::temperature, kPlain);
  };
  CHECK(fahrenheit("180") == "350 °F");
  CHECK(fahrenheit("190") == "375 °F");
  CHECK(fahrenheit("200") == "400 °F");
  CHECK(fahrenheit("160") == "325 °F");
  CHECK(fahrenheit("170") == "350 °F");
  const std::string back =
      heat_in(System::metric, "[bake 20 min at 350 °F]", TermRole::temperature, "measures: American\n");
  CHECK(back == "180 °C");
}

TEST_CASE("a conventional oven's heat has the fan's beside it") {
  CHECK(heat_in(System::written, "[bake 20 min at 180 °C]", TermRole::temperature, kPlain) == "180 °C (fan 160 °C)");
  CHECK(heat_in(System::metric, "[bake 20 min at 180 °C]", TermRole::temperature, kPlain) == "180 °C (fan 160 °C)");
  CHECK(heat_in(System::written, "[bake 20 min at 160 °C fan]", TermRole::temperature, kPlain) == "160 °C fan");
  CHECK(heat_in(System::written, "[bake 20 min at gas 4]", TermRole::temperature, kPlain) == "gas 4");
  CHECK(heat_in(System::written, "[bake 20 min at 180 °C]", TermRole::temperature, "measures: British\n") == "180 °C");
  CHECK(heat_in(System::written, "[fry 5 min at 180 °C]", TermRole::temperature, kPlain) == "180 °C");
}

TEST_CASE("a fan's heat is told for a plain oven where the scale changes") {
  CHECK(heat_in(System::american, "[bake 20 min at 160 °C fan]", TermRole::temperature, kPlain) == "350 °F");
}

TEST_CASE("gas marks go by the table") {
  CHECK(heat_in(System::american, "[bake 20 min at gas 4]", TermRole::temperature, "measures: British\n") == "350 °F");
  CHECK(heat_in(System::metric, "[bake 20 min at gas 3]", TermRole::temperature, "measures: British\n") == "170 °C");
}

TEST_CASE("readings go to the degree, differences without the 32") {
  CHECK(heat_in(System::american, "[reads 78 °C]", TermRole::reading, kPlain) == "172 °F");
  CHECK(heat_in(System::american, "[cool to 40 °C]", TermRole::to, kPlain) == "104 °F");
  CHECK(heat_in(System::metric, "[reads 172 °F]", TermRole::reading, kAmerican) == "78 °C");
  CHECK(heat_in(System::american, "[raise by 10 °C]", TermRole::by, kPlain) == "18 °F");
}

TEST_CASE("conversion and scaling meet in one rounding") {
  const Resized twice(listed("measures: British\n", "  55 g  plain flour\n"), Fraction(2), in(System::imperial));
  CHECK(twice.line("plain flour") == "4 oz");
}
