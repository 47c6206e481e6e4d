// What a card shows of amounts at another size: as written, rounded, tied, whole things, packs.
#include <doctest/doctest.h>

#include "tests/adapt/shown.hpp"

using namespace qtn;

namespace {

std::string one_line(const std::string& amount, const std::string& name, const Fraction& k,
                     const std::string& head = "measures: British\n") {
  return Resized(listed(head, "  " + amount + "  " + name + "\n"), k).line(name);
}

}  // namespace

TEST_CASE("unscaled amounts stand as they are written, blanks collapsed, fractions as print has them") {
  CHECK(one_line("1 1/2 kg", "plain flour", 1) == "1½ kg");
  CHECK(one_line("6-8", "large eggs", 1) == "6-8");
  CHECK(one_line("about  200 g", "plain flour", 1) == "about 200 g");
  CHECK(one_line("2 x 400 g tins", "tomatoes", 1) == "2 x 400 g tins");
  const Resized one(listed("", "  281.25 g  plain flour\n"));
  CHECK(one.line("plain flour") == "281.25 g");
  CHECK_FALSE(one.shown.lines[0].changed);
}

TEST_CASE("scaled amounts are the roundest within tolerance") {
  CHECK(one_line("187.5 g", "plain flour", Fraction::of(3, 2)) == "275 g");
  CHECK(one_line("937.5 g", "plain flour", 3) == "2.8 kg");
  CHECK(one_line("exactly 187.5 g", "plain flour", Fraction::of(3, 2)) == "exactly 280 g");
  CHECK(one_line("about 100 g", "plain flour", 2) == "about 200 g");
  CHECK(one_line("300 to 400 ml", "water", 2) == "600 to 800 ml");
  CHECK(one_line("3 to 4 g", "fine salt", 2) == "6 to 8 g");
}

TEST_CASE("fixed lines stand as written at every size, gentle ones grow gently") {
  const Resized ten(listed("", "  137 g  plain flour, fixed\n  10 g  fine salt, gently\n"), Fraction(10));
  CHECK(ten.line("plain flour") == "137 g");
  CHECK(ten.line("fine salt") == "60 g");
}

TEST_CASE("unmeasured lines show nothing, what to start with is shown") {
  const Resized three(listed("", "  500 g  plain flour\n  fine salt, to taste, start with 20 g\n"), Fraction(3));
  CHECK(three.line("fine salt") == "");
  CHECK(three.tail(TailKind::start_with) == "50 g");
}

TEST_CASE("a percentage is shown by what it comes to") {
  const Resized one(
      "recipe: Loaf\ntake: % of plain flour\n  500 g  plain flour\n  65 %  water\nmethod:\n  Mix [everything].\n");
  CHECK(one.line("plain flour") == "500 g");
  CHECK(one.line("water") == "325 g");
}

TEST_CASE("lines of one ratio are rounded together") {
  // 281.25 g alone is 275 g, 12.5 g is 13 g: 6.4 % apart. One rung finer it is 280 g.
  const Resized one(
      "recipe: Loaf\ntake: % of plain flour\n  187.5 g  plain flour\n  4 4/9 %  fine salt\nmethod:\n  Mix "
      "[everything].\n",
      Fraction::of(3, 2));
  CHECK(one.line("plain flour") == "280 g");
  CHECK(one.line("fine salt") == "13 g");
}

TEST_CASE("whole things: whole within tolerance, else halves with a weight, and a warning") {
  const Resized split(listed("measures: American\n", "  1  large egg\n"), Fraction::of(3, 2));
  CHECK(split.line("large egg") == "1½ (75 g)");
  CHECK(split.said(Code::whole_thing_splits) == 1);
  const Resized whole(listed("measures: American\n", "  3  large eggs\n"), Fraction::of(2, 3));
  CHECK(whole.line("large eggs") == "2");
  CHECK(whole.said(Code::whole_thing_splits) == 0);
  const Resized near(listed("measures: American\n", "  30  large eggs\n"), Fraction::of(101, 100));
  CHECK(near.line("large eggs") == "30");
  const Resized cloves(listed("", "  3 cloves  garlic\n"), Fraction(2));
  CHECK(cloves.line("garlic") == "6 cloves");
}

TEST_CASE("packs: a whole number of them, else the weight") {
  CHECK(one_line("2 x 400 g tins", "tomatoes", 2) == "4 x 400 g tins");
  CHECK(one_line("2 x 400 g tins", "tomatoes", Fraction::of(1, 2)) == "1 x 400 g tin");
  CHECK(one_line("2 x 400 g tins", "tomatoes", Fraction::of(101, 50)) == "4 x 400 g tins");
  CHECK(one_line("2 x 400 g tins", "tomatoes", Fraction::of(5, 4)) == "1 kg");
}

TEST_CASE("pinches: never under one, up to four, then spoons and roughly") {
  CHECK(one_line("1 pinch", "fine salt", Fraction::of(1, 4)) == "1 pinch");
  CHECK(one_line("1 pinch", "fine salt", 3) == "3 pinches");
  const Resized many(listed("measures: British\n", "  2 pinches  fine salt\n"), Fraction(8));
  CHECK(many.line("fine salt").substr(0, 4) == "≈ ");
  CHECK(many.line("fine salt").find("tsp") != std::string::npos);
  CHECK(many.shown.lines[0].rough);
}

TEST_CASE("helpings and counts made round down, pieces to the nearest") {
  const Resized more(listed("serves: 6 to 8\nmakes: 8 buns\n", "  300 g  plain flour\n"), Fraction::of(10, 3));
  CHECK(more.shown.serves.text == "20 to 26");
  REQUIRE(more.shown.makes.size() == 1);
  CHECK(more.shown.makes[0].text == "26");
  const std::string rounds = listed("", "  300 g  plain flour\n") + "  Shape into [8 rounds].\n";
  CHECK(Resized(rounds, Fraction::of(10, 3)).terms(TermRole::pieces) == "27");
  CHECK(Resized(rounds, Fraction::of(1, 20)).terms(TermRole::pieces) == "1");
}

TEST_CASE("times stand as written; far from the written size they are not tested") {
  const std::string text =
      listed("scales: 1/2 to 4\n", "  300 g  plain flour\n") + "  [bake 35 to 40 min at 180 °C].\n";
  const Resized three(text, Fraction(3));
  CHECK(three.terms(TermRole::length) == "35 to 40 min");
  CHECK(three.said(Code::times_not_tested) == 1);
  CHECK(three.said(Code::outside_scales) == 0);
  CHECK(Resized(text, Fraction(2)).said(Code::times_not_tested) == 0);
  CHECK(Resized(text, Fraction::of(1, 2)).said(Code::times_not_tested) == 0);
  CHECK(Resized(text, Fraction::of(1, 3)).said(Code::times_not_tested) == 1);
  CHECK(Resized(text, Fraction(5)).said(Code::outside_scales) == 1);
  CHECK(Resized(text, Fraction::of(1, 3)).said(Code::outside_scales) == 1);
}

TEST_CASE("a share in the method is told as an amount; an amount that is written there is not told twice") {
  const std::string text =
      "recipe: Sauce\ntake:\n  400 ml  milk\n  150 g  cheddar\nmethod:\n"
      "  Warm [1/4 of the milk]. Add [100 g of the cheddar], then [the rest of the milk] and [the rest of the "
      "cheddar].\n";
  const Resized one(text);
  CHECK(one.mentions() == "100 ml | 300 ml | 50 g");
  const Resized twice(text, Fraction(2));
  CHECK(twice.mentions() == "200 ml | 600 ml | 100 g");
  CHECK(twice.terms(TermRole::use) == "200 g");
}
