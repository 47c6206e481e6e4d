// Versions of a recipe (semantics part 9).
#include "recipe/checked.hpp"

#include <doctest/doctest.h>

using namespace qtn;

namespace {

const std::string kHead =
    "recipe: Cake\nmakes: 1 cake\nmeasures: British\ntake:\n  200 g flour\n  3 large eggs\n  100 g butter\n  or 80 g oil\n  1/2 tsp salt\n"
    "method:\n  Beat [the butter], [the eggs], [the flour] and [the salt]. [bake 30 min at 180 °C], then [cool 20 min].\n";

const TakeLine& line_of(const Recipe& recipe, std::string_view name) {
  for (const TakeLine& line : recipe.lines)
    if (line.name == name) return line;
  FAIL("no line of that name");
  return recipe.lines.front();
}

}  // namespace

TEST_CASE("amounts, steps and lines of a version") {
  const Checked cake(kHead +
                     "variant: Light\n  flour  200 g -> 180 g\n  bake  30 min -> 25 min\n  butter  100 g -> none\n"
                     "  cornflour  none -> 20 g\n");
  REQUIRE_MESSAGE(cake.report.list().empty(), cake.codes());
  Report report;
  CHECK_FALSE(variant_of(cake.recipe, "Heavy", report));
  const auto light = variant_of(cake.recipe, "light", report);
  REQUIRE(light);
  CHECK_MESSAGE(report.list().empty(), (report.list().empty() ? "" : report.list()[0].message));
  CHECK(light->version == "Light");
  CHECK(line_of(*light, "flour").amount.low == Fraction(180));
  CHECK(light->slice(line_of(*light, "flour").amount_span) == "180 g");
  CHECK(line_of(*light, "butter").struck);
  const TakeLine& added = line_of(*light, "cornflour");
  CHECK(added.added);
  CHECK(added.amount.low == Fraction(20));
  CHECK(light->parts[light->dish].lines.count == cake.recipe.parts[cake.recipe.dish].lines.count + 1);
  bool found = false;
  for (const Term& term : light->terms)
    if (term.role == TermRole::length && term.changed) found = term.amount.low == Fraction(25);
  CHECK(found);
  // The recipe itself is as it was.
  CHECK(line_of(cake.recipe, "flour").amount.low == Fraction(200));
}

TEST_CASE("another thing in a line's place stands as its `or` line would") {
  const Checked cake(kHead + "variant: Egg-free\n  large eggs  3 -> 150 g silken tofu\n");
  REQUIRE_MESSAGE(cake.report.list().empty(), cake.codes());
  Report report;
  const auto version = variant_of(cake.recipe, "Egg-free", report);
  REQUIRE(version);
  CHECK(report.list().empty());
  const TakeLine& eggs = line_of(*version, "large eggs");
  REQUIRE(eggs.chosen != kNone);
  CHECK(version->lines[eggs.chosen].name == "silken tofu");
  CHECK(version->lines[eggs.chosen].amount.low == Fraction(150));
  // What stood behind has moved on by one, with all that points at it.
  for (const TakeLine& line : version->lines)
    if (line.alternative) CHECK(line.parent < version->lines.size());
  CHECK(version->lines[line_of(*version, "oil").parent].name == "butter");
}

TEST_CASE("ratios of a version are solved anew") {
  const Checked dough("recipe: Dough\ntake: % of flour\n  500 g flour\n  60 % water\nmethod:\n  Mix [the flour] and [the water].\n"
                      "variant: Wet\n  water  60 % -> 70 %\nvariant: Big\n  flour  500 g -> 1 kg\n");
  REQUIRE_MESSAGE(dough.report.list().empty(), dough.codes());
  Report report;
  const auto wet = variant_of(dough.recipe, "Wet", report);
  REQUIRE(wet);
  CHECK(in_base(line_of(*wet, "water").amount, Dialect::unstated).low == Fraction(350));
  const auto big = variant_of(dough.recipe, "Big", report);
  REQUIRE(big);
  CHECK(in_base(line_of(*big, "water").amount, Dialect::unstated).low == Fraction(600));
  CHECK(report.list().empty());
}

TEST_CASE("parts stay parts") {
  const Checked punch("recipe: Punch\nmakes: 500 ml\ntake: parts by volume\n  3 parts water\n  1 part rum\nmethod:\n  Mix [the water] and [the rum].\n"
                      "variant: Strong\n  rum  1 -> 2\n");
  REQUIRE_MESSAGE(punch.report.list().empty(), punch.codes());
  Report report;
  const auto strong = variant_of(punch.recipe, "Strong", report);
  REQUIRE(strong);
  CHECK(in_base(line_of(*strong, "rum").amount, Dialect::unstated).low == Fraction(200));
}

TEST_CASE("an alternative is chosen by its name") {
  const Checked cake(kHead);
  Report report;
  CHECK_FALSE(with_alternative(cake.recipe, "lard", report));
  const auto oil = with_alternative(cake.recipe, "oil", report);
  REQUIRE(oil);
  CHECK(oil->version == "oil");
  CHECK(oil->lines[line_of(*oil, "butter").chosen].name == "oil");
}

TEST_CASE("a version that does not fit its recipe") {
  const auto codes = [](const std::string& change) { return Checked(kHead + "variant: V\n" + change).codes(); };
  CHECK(codes("  flour  150 g -> 180 g\n") == "version_old_differs");
  CHECK(codes("  flour  none -> 180 g\n") == "version_old_differs");
  CHECK(codes("  suger  150 g -> 180 g\n") == "change_of_nothing");
  CHECK(codes("  bake  45 min -> 50 min\n") == "version_old_differs");
  CHECK(codes("  fry  45 min -> 50 min\n") == "change_of_nothing");
  CHECK(codes("  bake  30 min -> none\n") == "version_drops_step");
  CHECK(codes("  bake  30 g -> 40 g\n") == "change_of_kind");
  CHECK(codes("  flour  200 g -> 20 min\n") == "change_of_kind");
  CHECK(codes("  [Icing] flour  200 g -> 180 g\n") == "change_of_nothing");
  CHECK(codes("  flour  200 g -> 180 g\n  flour  200 g -> 190 g\n") == "changed_twice");
  CHECK(codes("") == "empty_variant");
  CHECK(codes("  note: nothing yet\n") == "empty_variant");
  CHECK(Checked(kHead + "variant: V\n  flour  200 g -> 180 g\nvariant: v\n  flour  200 g -> 190 g\n").codes() == "repeated_variant");
  // The old amount is offered, since the cook must look at the new one too.
  const Checked late(kHead + "variant: V\n  flour  150 g -> 180 g\n");
  REQUIRE(late.problem(Code::version_old_differs)->fixes.size() == 1);
  CHECK(late.problem(Code::version_old_differs)->fixes[0].certainty == Certainty::choice);
}

TEST_CASE("a version may count in nouns, in parts and in measures of the house") {
  auto kitchen = std::make_shared<Kitchen>();
  kitchen->measures.push_back({"ladle", {Fraction(120), Fraction(120), common().millilitre, Manner::plain, false}});
  Surroundings around;
  around.kitchen = kitchen;
  const Checked one(
      "recipe: Dressing\nmakes: 400 ml\nmeasures: British\ntake: parts\n  3 parts olive oil\n  1 part cider vinegar\n  2 cloves garlic\n"
      "  1 ladle  cream\nmethod:\n  Shake [everything].\n"
      "variant: Sharp\n  olive oil  3 parts -> 1 part\n  garlic  2 cloves -> 3 cloves\n  cream  1 ladle -> 2 ladles\n",
      around);
  const Checked& sound = one;
  for (const Diagnostic& problem : sound.report.list()) CHECK_MESSAGE(problem.severity == Severity::note, problem.message);
  Report report;
  const auto sharp = variant_of(one.recipe, "Sharp", report);
  REQUIRE(sharp);
  const TakeLine& oil = line_of(*sharp, "olive oil");
  CHECK(oil.basis == Basis::parts);
  CHECK(in_base(oil.amount, Dialect::british).low == in_base(line_of(*sharp, "cider vinegar").amount, Dialect::british).low);
  CHECK(line_of(*sharp, "garlic").amount.low == Fraction(3));
  CHECK(unit(line_of(*sharp, "garlic").amount.unit).name == "clove");
  const TakeLine& cream = line_of(*sharp, "cream");
  CHECK(cream.house_measure);
  CHECK(cream.amount.low == Fraction(240));
  CHECK(sharp->slice(cream.amount_span) == "2 ladles");
}
