// Worked examples: what every form of a written time comes to, in minutes before serving.
#include <doctest/doctest.h>

#include "day/clocked.hpp"

using namespace qtn;

namespace {

constexpr const char* kTart = R"(recipe: Leek and farmhouse cheese tart
makes: 1 tart
serves: 6 to 8
tin: 23 cm round, 3 cm deep
measures: British
oven: conventional
keeps: 2 days chilled

part: Shortcrust
makes: 370 g
keeps: 2 days chilled, 3 months frozen
take: % of plain flour
  220 g (8 oz)   plain flour
  50 %           butter, cold, in 10 mm dice
  1/2 tsp        fine salt
  20 %           water, ice-cold
method:
  Rub [the butter] into [the flour] and [the salt] until it looks like crumbs [about 5 min].

  Stir in [the water] with a knife and press together. Wrap it, then
  [rest at least 1 h in the fridge at 4 °C].

part: Filling
take:
  400 g          leeks, trimmed and sliced, from 550 g
  30 g           butter
  3              large eggs
  250 ml         double cream
  100 g          farmhouse cheddar, grated
method:
  Sweat [the leeks] in [the butter], covered, [15 min], then [cool 20 min].

  meanwhile: Beat [the eggs] with [the cream] and [three quarters of the cheddar].

  Stir the two together with [the rest of the cheddar].

part: Tart
method:
  Roll [the Shortcrust] to [3 mm] and line the tin. [chill 30 min]

  ahead: Put a baking sheet in the oven, [heat 20 min at 190 °C].

  [bake 20 min at 190 °C] blind. Fill with [the Filling] and [bake 30 to 35 min at 170 °C] until the
  centre [reads 78 °C].

  [cool at least 20 min] before cutting into [8 slices].
)";

// A method in a recipe that is otherwise sound.
std::string with(const std::string& method) {
  return "recipe: Test\nmeasures: British\ntake:\n  500 g plain flour\n  300 ml water\nmethod:\n" + method;
}

}  // namespace

TEST_CASE("worked: the whole tart, latest beginnings") {
  Clocked tart(kTart);
  CHECK(tart.report.list().empty());
  CHECK(tart.before_serving("Rub the butter") == "170.5");
  CHECK(tart.before_serving("Wrap it") == "165");  // no time of its own is written
  CHECK(tart.before_serving("chill 30 min") == "105");
  CHECK(tart.before_serving("heat 20 min") == "95");
  CHECK(tart.before_serving("Sweat the leeks") == "90");
  CHECK(tart.before_serving("bake 20 min") == "75");
  CHECK(tart.before_serving("bake 30 to 35 min") == "55");
  CHECK(tart.before_serving("cool at least 20 min") == "20");
}

TEST_CASE("worked: a pause may stand between two steps") {
  Clocked one(with("  Boil [the water] with [the flour] [12 min] and drain.\n\n  [cool 20 min]\n"));
  CHECK(one.before_serving("Boil the water") == "32");
}

TEST_CASE("worked: the food's range holds for the longest, and a written longest leaves no pause") {
  Clocked one(with("  Mix [the flour] with [the water]. [prove 1 to 2 h]\n\n  [bake 40 to 45 min at 200 °C]\n"));
  CHECK(one.report.has_errors() == false);
  CHECK(one.before_serving("prove 1 to 2 h") == "165");
  CHECK(one.before_serving("bake 40 to 45 min") == "45");
}

TEST_CASE("worked: a time by weight") {
  Clocked one("recipe: Leg\nmeasures: British\nserves: 4\ntake:\n  2 kg leg of lamb, from 2.25 kg\nmethod:\n"
              "  [roast 20 min per 450 g of the lamb, plus 20 min, at 180 °C] with [the lamb] on a rack.\n");
  CHECK(one.before_serving("roast 20 min per 450 g") == "108.9");  // 980/9
}

TEST_CASE("worked: a night between the making and the baking") {
  const auto pudding = [](const std::string& within) {
    return "recipe: Pudding\nmeasures: British\npart: Batter\ntake:\n  140 g plain flour\n  200 ml whole milk\nmethod:\n"
           "  Whisk [the flour] into [the milk]. [chill overnight in the fridge] and [use within " + within + "].\n"
           "part: Pudding\nmethod:\n  Pour in [the Batter] and [bake 40 min at 200 °C].\n";
  };
  Clocked fits(pudding("14 h"));
  CHECK(fits.problem(Code::times_clash) == nullptr);
  CHECK(fits.before_serving("Whisk") == "520");
  Clocked clashes(pudding("6 h"));
  REQUIRE(clashes.problem(Code::times_clash) != nullptr);
  const std::string said = clashes.problem(Code::times_clash)->message;
  CHECK(said.find("chill overnight") != std::string::npos);
  CHECK(said.find("use within 6 h") != std::string::npos);
  CHECK(said.find("2 h too many") != std::string::npos);
}

TEST_CASE("worked: a wait lasts until what follows it begins") {
  Clocked one(with("  Mix [the flour] with [the water], [exactly 5 min]. [chill at most 30 min]\n\n  meanwhile: [simmer 1 h]\n\n  Pour it out.\n"));
  REQUIRE(one.problem(Code::times_clash) != nullptr);
  // Simmering may begin with the mixing: 60 - 5 - 30.
  CHECK(one.problem(Code::times_clash)->message.find("25 min too many") != std::string::npos);
}

TEST_CASE("worked: a soak overnight begins before the night and ends 8 to 12 h later") {
  Clocked one("recipe: Beans\nmeasures: British\nserves: 4\ntake:\n  500 g haricot beans, dried\n  2 l water\nmethod:\n"
              "  Cover [the beans] with [the water] and [soak overnight].\n\n  [boil 1 h]\n");
  Report report;
  CHECK(begins(one.day("2026-03-01 11:00", report), "soak overnight") == "2026-02-28 22:00");  // next at 10:00 at the latest
  CHECK(begins(one.day("2026-03-01 11:00", report), "boil 1 h") == "2026-03-01 10:00");
  CHECK(begins(one.day("2026-03-01 08:30", report), "soak overnight") == "2026-02-28 22:00");
  // Later than that the soaking begins no earlier than 12 h before the boiling ends it, and not in the night.
  const Day late = one.day("2026-03-01 20:00", report);
  CHECK(late.planned);
}

TEST_CASE("worked: repeats lie at their distances, and with a wait between") {
  Clocked folds(with("  Mix [the flour] with [the water], [5 min]. [fold 4 times, every 30 min].\n\n  [bake 30 min at 200 °C]\n"));
  CHECK(folds.before_serving("(1 of 4)") == "120");
  CHECK(folds.before_serving("(4 of 4)") == "30");
  Clocked turns(with("  Mix [the flour] with [the water], [5 min]. [turn 6 times, chill 30 min between].\n\n  [bake 30 min at 200 °C]\n"));
  CHECK(turns.before_serving("(1 of 6)") == "180");
}

TEST_CASE("worked: two ways of one step take the first on the page") {
  Clocked one(with("  by hand: [knead 10 min] with [the flour] and [the water].\n\n  by machine: [mix 4 min] with all of it.\n\n  [bake 30 min at 200 °C]\n"));
  CHECK(one.before_serving("knead 10 min") == "40");
  CHECK(one.before_serving("mix 4 min") == "?");
}

TEST_CASE("worked: ready after, and keeps") {
  Clocked one("recipe: Pickle\nmeasures: British\nready: after 2 weeks\nserves: 4\ntake:\n  500 g beetroot\n  300 ml malt vinegar\nmethod:\n"
              "  Simmer [the beetroot] in [the vinegar] [30 min].\n");
  CHECK(one.before_serving("Simmer") == Fraction(14 * 1440 + 30).decimal(0));
}
