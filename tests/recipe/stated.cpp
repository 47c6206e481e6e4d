// Second statements, measures of several sizes, ounces of several sizes.
#include <doctest/doctest.h>

#include "recipe/checked.hpp"

using namespace qtn;

namespace {

Checked with(const std::string& lines, const std::string& head = "measures: American\n") {
  return Checked("recipe: Supper\n" + head + "take:\n" + lines + "method:\n  Mix [everything].\n");
}
std::string found(const Checked& file, Code code) {
  const Diagnostic* const problem = file.problem(code);
  return problem == nullptr ? "nothing" : problem->found;
}

}  // namespace

TEST_CASE("an equivalent that is off tells the true value, the error, and a repair that holds") {
  const Checked file = with("  400 g (15 oz) lentils\n");
  const Diagnostic* const problem = file.problem(Code::equivalent_off);
  REQUIRE(problem != nullptr);
  CHECK(problem->message == "`400 g` is 14.11 oz; `15 oz` is 6.3 % more.");
  REQUIRE(problem->fixes.size() == 1);
  CHECK(problem->fixes[0].text == "14 oz");
  CHECK(problem->fixes[0].certainty == Certainty::safe);
  CHECK(file.source->text(problem->fixes[0].span) == "15 oz");
  CHECK(with("  400 g (14 oz) lentils\n").codes() == "");
  CHECK(with("  40 g (1 1/2 oz) butter\n").codes() == "");
  CHECK(with("  exactly 150 g (5 1/2 oz) butter\n").codes() == "equivalent_off");
}

TEST_CASE("a measure beside a weight is held against everything published of that food") {
  CHECK(with("  1/2 cup (125 g) butter\n").codes() == "weighs_otherwise");  // C-20
  CHECK(with("  1/2 cup (113 g) butter\n").codes() == "");
  CHECK(with("  1/2 cup (4 oz) butter\n").codes() == "");
  for (const char* grams : {"113", "120", "125", "130", "142", "150"})
    CHECK_MESSAGE(with("  1 cup (" + std::string(grams) + " g) flour\n").codes() == "", grams);
  CHECK(with("  1 cup (200 g) flour\n").codes() == "weighs_otherwise");
  CHECK(with("  200 g (1 cup) flour\n").codes() == "weighs_otherwise");
  CHECK(with("  1 cup (90 g) flour\n").codes() == "weighs_otherwise");
  CHECK(with("  1 tsp (5 g) salt\n").codes() == "");    // a gram is what a scale shows
  CHECK(with("  1 tbsp (30 g) salt\n").codes() == "weighs_otherwise");
  CHECK(with("  8 oz (1 cup) chocolate chips\n").codes() == "weighs_otherwise");  // C-11: 6 oz
  CHECK(with("  1 cup (240 g) snow\n").codes() == "");              // nobody has published it
  CHECK(with("  1 cup (300 g) caster sugar\n").codes() == "");      // a figure from memory accuses nobody
}

TEST_CASE("a house that weighed its own is not contradicted") {
  auto kitchen = std::make_shared<Kitchen>();
  kitchen->dialect = Dialect::american;
  HouseFood own{"butter", {}};
  own.food.density.value = Fraction::of(11, 10);
  kitchen->foods.push_back(own);
  const Checked file("recipe: Supper\ntake:\n  1/2 cup (130 g) butter\nmethod:\n  Mix [everything].\n", {kitchen, {}, 0});
  CHECK(file.codes() == "");
}

TEST_CASE("two readings of one measure are told in grams where the food is known, else in millilitres") {
  CHECK(found(with("  2 cups plain flour\n", ""), Code::ambiguous_unit) == "`2 cups` of plain flour is 250 g American, 264 g Australian");
  CHECK(found(with("  1 pint milk\n", ""), Code::ambiguous_unit) == "`1 pint` of milk is 586 g British, 488 g American, 586 g Australian");
  CHECK(found(with("  2 cups snow\n", ""), Code::ambiguous_unit) == "one cup is 236.6 ml American, 250 ml Australian");
  CHECK(found(with("  2 cups plain flour\n"), Code::ambiguous_unit) == "nothing");
}

TEST_CASE("a word with no one size anywhere names the measures that have one") {
  for (const char* head : {"", "measures: British\n", "measures: American\n"}) {
    const Checked file = with("  1 teacup sugar\n", head);
    CHECK(file.codes() == "no_such_measure");
    CHECK(found(file, Code::no_such_measure) == "it could be a `third-pint teacup`, 189.4 ml, a `gill teacup`, 142.1 ml");
  }
  CHECK(with("  1 gill teacup sugar\n", "").codes() == "");
}

TEST_CASE("large eggs of no country") {
  const Checked file = with("  2 large eggs\n  1 large egg yolk\n", "");
  CHECK(file.codes() == "ambiguous_unit");
  CHECK(found(file, Code::ambiguous_unit) == "one large egg without its shell is 59 g British, 50 g American, 47 g Australian");
  CHECK(with("  2 large eggs\n").codes() == "");
  CHECK(with("  2 eggs\n", "").codes() == "");
}

TEST_CASE("sifted behind the comma is told from sifted in front") {
  const Checked file = with("  2 cups plain flour, sifted\n");
  const Diagnostic* const problem = file.problem(Code::done_after_measuring);
  REQUIRE(problem != nullptr);
  CHECK(problem->severity == Severity::note);
  CHECK(problem->expected == "nothing else if that is meant; `2 cups sifted plain flour` is 227 g");
  CHECK(with("  2 cups sifted plain flour\n").codes() == "");
  CHECK(with("  250 g plain flour, sifted\n").codes() == "");
  CHECK(with("  1 cup carrots, grated\n").codes() == "");
}

TEST_CASE("one file, one ounce") {
  const Checked file = with("  235 g (8 oz) butter\n  450 g (1 lb) flour\n  30 g (1 oz) sugar\n  115 g (4 oz) lard\n");
  CHECK(file.codes() == "mixed_ounces");
  const Diagnostic* const problem = file.problem(Code::mixed_ounces);
  REQUIRE(problem != nullptr);
  CHECK(file.at(problem) == "8 oz");
  CHECK(problem->message == "This counts 30 g to the ounce; other lines of this file count 28.35 g.");
  REQUIRE(problem->labels.size() == 2);  // 1 oz of 30 g fits both
  CHECK(file.source->text(problem->labels[0].span) == "1 lb");
  CHECK(file.source->text(problem->labels[1].span) == "4 oz");
  CHECK(with("  225 g (8 oz) butter\n  450 g (1 lb) flour\n").codes() == "");
  // A book of 25 g throughout is off line by line, but it is not mixed.
  CHECK(with("  100 g (4 oz) butter\n  200 g (8 oz) flour\n").problem(Code::mixed_ounces) == nullptr);
  // S4-76
  CHECK(with("  15 oz (375 g) lentils\n  1 lb (450 g) flour\n").problem(Code::mixed_ounces) != nullptr);
}
