// What the standardized-recipe form lacks (check values: the ten components of the school-meal forms).
#include "app/form.hpp"

#include <doctest/doctest.h>

#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

const std::string kWhole =
    "recipe: Beef and potato stew\nmakes: 8 portions of 400 g\nserves: 8\nmeasures: British\nneeds: a 6 l pan, a ladle, a probe thermometer\n"
    "take:\n  1.5 kg stewing beef, in 3 cm dice\n  1.2 kg potatoes, peeled\n  700 ml beef stock\n  12 g fine salt\n"
    "method:\n  Put [everything] in the pan, cover and [simmer 2 h] until the meat [reads 90 °C].\n";

// What is lacking, without the words that are the same in every note.
std::string lacks(const std::string& text, std::string_view folder = "stews") {
  const Checked one(text);
  CHECK_MESSAGE(!one.report.has_errors(), one.codes());
  Report report;
  check_form(one.recipe, folder, report);
  std::string out;
  for (const Diagnostic& problem : report.list()) {
    CHECK(problem.code == Code::form_lacks);
    CHECK(problem.severity == Severity::note);
    CHECK_FALSE(problem.expected.empty());
    const std::string_view wanted = std::string_view(problem.message).substr(27);  // "The standardized form wants"
    out += (out.empty() ? "" : ";") + std::string(wanted.substr(0, wanted.size() - 1));
  }
  return out;
}

std::string without(std::string text, const std::string& part, const std::string& other = "") {
  const std::size_t at = text.find(part);
  REQUIRE(at != std::string::npos);
  return text.replace(at, part.size(), other);
}

}  // namespace

TEST_CASE("a recipe that has all ten components lacks none") { CHECK(lacks(kWhole) == ""); }

TEST_CASE("each component is missed by itself") {
  CHECK(lacks(kWhole, "") == " the category");
  CHECK(lacks(without(kWhole, "fine salt", "salt")) == " to know which salt");
  CHECK(lacks(without(kWhole, "  12 g fine salt\n", "  fine salt, to taste\n")) == " a weight or measure of `fine salt`");
  CHECK(lacks(without(kWhole, "  12 g fine salt\n", "  fine salt, to taste, start with 12 g\n")) == "");
  CHECK(lacks(without(kWhole, " and [simmer 2 h]", " and [bake 2 h]")) == " the oven's temperature");
  CHECK(lacks(without(kWhole, " and [simmer 2 h]", " and [bake 2 h at 150 °C]")) == "");
  CHECK(lacks(without(kWhole, "makes: 8 portions of 400 g\n", "makes: 3.2 kg\n")) == "");
  CHECK(lacks(without(kWhole, "makes: 8 portions of 400 g\n", "makes: 1 pot\n")) == " the size of a portion; the whole yield by weight or volume");
  CHECK(lacks(without(kWhole, "serves: 8\n")) == " the number of servings");
  CHECK(lacks(without(kWhole, "needs: a 6 l pan, a ladle, a probe thermometer\n")) == " the equipment");
  CHECK(lacks(without(kWhole, " until the meat [reads 90 °C]")) == " a control point for `stewing beef`, which goes in raw");
}

TEST_CASE("a step that heats without a time, and a list without steps") {
  CHECK(lacks("recipe: Onions\nmakes: 540 g\nserves: 4\nneeds: a pan\nmeasures: British\ntake:\n  500 g onions, sliced\n  40 g butter\n"
              "method:\n  Fry [the onions] in [the butter] until they are brown.\n") == " the time of cooking");
  // No animal in it: nothing is read of bread, jam or beans.
  CHECK(lacks("recipe: Flatbread\nmakes: 4 flatbreads of 90 g\nserves: 4\nneeds: a pan\nmeasures: British\ntake:\n  240 g plain flour\n  120 g water\n"
              "method:\n  Mix [everything], roll into [4 rounds of 90 g] and [fry 2 min].\n") == "");
}

TEST_CASE("eggs want a control point where nothing heats them") {
  const std::string mousse = "recipe: Chocolate mousse\nmakes: 6 pots of 70 g\nserves: 6\nneeds: six pots\nmeasures: British\ntake:\n  200 g dark chocolate\n  4 large eggs, separated\n";
  CHECK(lacks(mousse + "method:\n  Melt [the chocolate], beat in [the eggs] and [chill 4 h].\n") == " a control point for `large eggs`, which goes in raw");
  CHECK(lacks(mousse + "method:\n  Melt [the chocolate], beat in [the eggs] and [bake 12 min at 180 °C].\n") == "");
  CHECK(lacks(mousse + "  butter, for greasing\nmethod:\n  Grease the pots with [the butter]. Beat [the rest of the chocolate] with [the eggs] and [bake 12 min at 180 °C].\n") == "");
}

TEST_CASE("a menu has no form") {
  const Checked menu("menu: Lunch\nserves: 4\ntake:\n  1 [Pie]\n");
  Report report;
  check_form(menu.recipe, "", report);
  CHECK(report.list().empty());
}
