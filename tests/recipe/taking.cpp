// What a step takes of the list: shares and amounts, and how they are restated (semantics part 3).
#include "recipe/checked.hpp"

#include <doctest/doctest.h>

using namespace qtn;

namespace {

Checked supper(const std::string& list, const std::string& method) {
  return Checked("recipe: Supper\nmeasures: British\ntake:\n" + list + "method:\n  " + method + "\n");
}

// The codes of a step over 200 ml milk and 3 eggs, of which the rest is taken afterwards.
std::string of_milk(const std::string& clause) {
  return supper("  200 ml milk\n  3 eggs\n", "Warm " + clause + " with [the eggs]. Add [the rest of the milk].").codes();
}
std::string of_eggs(const std::string& clause) {
  return supper("  200 ml milk\n  3 eggs\n", "Warm [the milk] with " + clause + ". Add [the rest of the eggs].").codes();
}

}  // namespace

TEST_CASE("more than the whole is said once, however it is written") {
  for (const std::string clause : {"[3/2 of the milk]", "[1 1/2 of the milk]", "[1½ of the milk]", "[1.5 of the milk]", "[2 of the milk]",
                             "[150 % of the milk]", "[100 to 150 % of the milk]", "[three halves of the milk]",
                             "[about 3/2 of the milk]", "[3/2 milk]", "[keep back 150 % of the milk]", "[keep back 3/2 of the milk]"})
    CHECK_MESSAGE(of_milk(clause) == "share_over_whole", clause);
  const Checked one = supper("  200 ml milk\n", "Warm [1 1/2 of the milk].");
  CHECK(one.codes() == "share_over_whole");
  CHECK(one.at(one.problem(Code::share_over_whole)) == "1 1/2");
  CHECK(supper("  200 ml milk\n  200 g flour\n", "Whisk [3/2 of the milk and the flour].").codes() == "share_over_whole");
}

TEST_CASE("a share up to the whole is taken") {
  for (const std::string clause : {"[1/2 of the milk]", "[½ of the milk]", "[0.5 of the milk]", "[50 % of the milk]", "[half the milk]", "[1/2 milk]"}) {
    const Checked one = supper("  200 ml milk\n", "Warm " + clause + ". Add [the rest of the milk].");
    CHECK_MESSAGE(one.codes() == "", clause);
    REQUIRE(one.recipe.mentions.size() == 2);
    CHECK_MESSAGE(one.recipe.mentions[0].part_low == Fraction::of(1, 2), clause);
  }
  CHECK(supper("  200 ml milk\n", "Warm [1 of the milk].").codes() == "");
  CHECK(of_milk("[about 100 ml of the milk]") == "");
}

TEST_CASE("of things that are counted a whole or mixed number is so many of them, a plain fraction a share") {
  CHECK(of_eggs("[2 of the eggs]") == "");
  CHECK(of_eggs("[1 1/2 of the eggs]") == "");
  CHECK(of_eggs("[1/3 of the eggs]") == "");
  CHECK(of_eggs("[3/2 of the eggs]") == "share_over_whole");
  CHECK(of_eggs("[4 of the eggs]") == "more_than_left");
}

TEST_CASE("pieces of the dish, and parts that are counted, are no shares") {
  CHECK(Checked("recipe: Cheese straws\nmakes: 24 straws\ntake:\n  400 g dough\nmethod:\n  Cut [the dough] into [24 straws of 15 g].\n").codes() == "");
  CHECK(Checked("recipe: Cheese straws\ntake:\n  400 g dough\nmethod:\n  Cut [the dough] into [24 straws].\n").codes() == "");
  const auto codes = [](const std::string& makes, const std::string& clause) {
    return Checked("recipe: Supper\npart: Rolls\nmakes: " + makes + "\ntake:\n  400 g dough\nmethod:\n  Shape [the dough].\npart: Table\nmethod:\n  Lay out " +
                   clause + ".\n").codes();
  };
  CHECK(codes("12 rolls", "[6 of the Rolls]").find("share") == std::string::npos);
  CHECK(codes("400 g", "[2 of the Rolls]") == "share_over_whole");
  CHECK(codes("400 g", "[3/2 of the Rolls]") == "share_over_whole");
}

TEST_CASE("an amount that is taken may be restated in parentheses, and is checked as in the list") {
  const std::string list = "  200 g cheddar\n  250 ml runny honey\n  3 eggs\n";
  const auto codes = [&](const std::string& clause) {
    return supper(list, "Mix " + clause + " with [the cheddar], [the honey] and [the eggs].").codes();
  };
  const Checked one = supper("  200 g cheddar\n", "Stir in [100 g (3 1/2 oz) of the cheddar]. Add [the rest of the cheddar].");
  CHECK(one.codes() == "");
  REQUIRE(one.recipe.terms.size() == 2);
  CHECK(one.recipe.terms[1].role == TermRole::equivalent);
  CHECK(one.recipe.mentions[0].term == 0);
  CHECK(one.recipe.mentions[0].part_low == Fraction::of(1, 2));
  CHECK(codes("[100 g (3 1/2 oz) of the cheddar]") == "say_the_rest");
  CHECK(codes("[100 g (3 1/2 oz) cheddar]") == "say_the_rest");
  CHECK(codes("[100 g (5 oz) of the cheddar]") == "equivalent_off say_the_rest");
  CHECK(codes("[100 g (5 oz; about 0.1 kg) cheddar]") == "equivalent_off say_the_rest");
  CHECK(codes("[keep back 100 g (5 oz) of the cheddar]").find("equivalent_off") != std::string::npos);
  CHECK(codes("[2 (about 60 g each) of the eggs]") == "say_the_rest");
  // Through the density of honey: 100 ml of it weighs 142 g.
  CHECK(codes("[100 ml (100 g) of the honey]") == "weighs_otherwise say_the_rest");
  CHECK(codes("[100 ml (142 g) of the honey]") == "say_the_rest");
  const Checked off = supper("  200 g cheddar\n", "Stir in [100 g (5 oz) of the cheddar]. Add [the rest of the cheddar].");
  const Diagnostic* const problem = off.problem(Code::equivalent_off);
  REQUIRE(problem);
  CHECK(off.at(problem) == "5 oz");
  REQUIRE(problem->fixes.size() == 1);
  CHECK(problem->fixes[0].text == "3 1/2 oz");
}
