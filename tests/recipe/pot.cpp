#include <doctest/doctest.h>

#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

// A part with the head `makes:`, a list and a method.
std::string stew(const std::string& makes, const std::string& take, const std::string& method) {
  return "recipe: Test\nmeasures: British\n" + (makes.empty() ? "" : "makes: " + makes + "\n") + "take:\n" + take +
         "method:\n  " + method + "\n";
}
const Diagnostic& only(const Checked& c) {
  REQUIRE(c.report.list().size() == 1);
  return c.report.list().front();
}
std::string weight(const Checked& c, Index part = 0) {
  const Part& one = c.recipe.parts[part];
  return one.weight_low == one.weight_high ? one.weight_low.decimal(2)
                                           : one.weight_low.decimal(2) + " to " + one.weight_high.decimal(2);
}

}  // namespace

TEST_CASE("pot: what goes in against what it makes") {
  const std::string list = "  220 g  plain flour\n  110 g  butter\n  44 g  water\n";
  const std::string mix = "Rub [the butter] into [the flour], stir in [the water].";
  CHECK(Checked(stew("370 g", list, mix)).codes() == "");
  CHECK(Checked(stew("about 400 g", list, mix)).codes() == "");
  const Checked off(stew("500 g", list, mix));
  CHECK(only(off).severity == Severity::error);
  CHECK(only(off).message == "What goes in comes to 374 g, 25 % less than the 500 g that `makes:` says.");
  CHECK(off.at(off.problem(Code::makes_off)) == "500 g");
  CHECK(weight(off) == "374");
  CHECK(Checked(stew("exactly 365 g", list, mix)).codes() == "makes_off");
  CHECK(Checked(stew("1 disc", list, mix)).codes() == "");
  CHECK(weight(Checked(stew("1 disc", list, mix))) == "?");  // nobody asked
}

TEST_CASE("pot: by the piece, by ranges, by the jar") {
  CHECK(Checked(stew("4 jars of 250 g", "  600 g  plums\n  400 g  sugar\n", "Mix [the plums] and [the sugar]."))
            .codes() == "");
  CHECK(Checked(stew("5 jars of 250 g", "  600 g  plums\n  400 g  sugar\n", "Mix [the plums] and [the sugar]."))
            .codes() == "makes_off");
  const Checked range(stew("1 kg", "  500 to 600 g  plums\n  400 g  sugar\n", "Mix [the plums] and [the sugar]."));
  CHECK(range.codes() == "");
  CHECK(weight(range) == "900 to 1000");
  CHECK(
      Checked(stew("900 to 1000 g", "  600 g  plums\n  400 g  sugar\n", "Mix [the plums] and [the sugar].")).codes() ==
      "");
}

TEST_CASE("pot: by volume alone") {
  const std::string list = "  300 ml  olive oil\n  100 ml  vinegar\n";
  CHECK(Checked(stew("400 ml", list, "Shake [the oil] and [the vinegar].")).codes() == "");
  CHECK(Checked(stew("500 ml", list, "Shake [the oil] and [the vinegar].")).codes() == "makes_off");
  CHECK(Checked(stew("500 ml", "  300 ml  olive oil\n  100 g  sugar\n", "Shake [the oil] and [the sugar].")).codes() ==
        "");
}

TEST_CASE("pot: what nobody can weigh accuses nobody") {
  CHECK(
      Checked(stew("500 g", "  220 g  plain flour\n  2  lemon drizzle fingers\n", "Mix [the flour] and [the fingers]."))
          .codes() == "");
  // ... unless it leaves again
  CHECK(Checked(stew("500 g", "  220 g  plain flour\n  2  lemon drizzle fingers\n",
                     "Mix [the flour] and [the fingers]. [take out the fingers] and [discard the fingers]."))
            .codes() == "makes_off");
}

TEST_CASE("pot: cooking loses what the page does not say") {
  const std::string list = "  600 g  strong flour\n  400 g  water\n";
  const Checked baked(stew("800 g", list, "Mix [the flour] and [the water], [bake 40 min at 220 °C]."));
  CHECK(only(baked).severity == Severity::warning);
  CHECK(only(baked).expected == "what cooking takes or adds, such as `[loses 20 %]` in the method, or about 1 kg");
  CHECK(
      Checked(stew("800 g", list, "Mix [the flour] and [the water], [bake 40 min at 220 °C], [loses 20 %].")).codes() ==
      "");
  CHECK(Checked(stew("800 g", list, "Mix [the flour] and [the water], [bake 40 min at 220 °C], [loses 19 to 21 %]."))
            .codes() == "");
  const Checked drained(
      stew("500 g", "  400 g  beans\n  1 l  water\n", "Soak [the beans] in [the water] and [drain]."));
  CHECK(only(drained).severity == Severity::warning);
  CHECK(weight(drained) == "400");
}

TEST_CASE("pot: a gain of one thing alone") {
  const Checked c(
      stew("2.7 kg", "  2.5 kg  lamb leg\n  2 kg  water\n",
           "Put [the leg] in [the water]. [take out the leg] and [discard the water]. [the leg gains 8 %]."));
  CHECK(c.codes() == "");
  CHECK(weight(c) == "2700");
}

TEST_CASE("pot: kept back") {
  const std::string list = "  500 g  strong flour\n  350 g  water\n";
  const Checked good(
      stew("850 g", list, "Mix [the flour] with [keep back 50 g of the water] and [the water]. Add [the kept water]."));
  CHECK(good.codes() == "");
  CHECK(weight(good) == "850");
  const Checked lost(stew("800 g", list, "[keep back 50 g of the water], then mix [the flour] and [the water]."));
  CHECK(only(lost).code == Code::kept_not_used);
  CHECK(only(lost).message == "The water kept back here never goes in.");
  CHECK(weight(lost) == "800");
}

TEST_CASE("pot: taken out, put back, thrown away") {
  const std::string list = "  1 kg  beef bones\n  500 g  carrots\n  2 kg  water\n";
  const std::string all = "Put [the bones], [the carrots] and [the water] in a pan. ";
  CHECK(weight(Checked(stew("3.5 kg", list, all))) == "3500");
  CHECK(weight(Checked(stew("2 kg", list, all + "[strain out the bones and the carrots]."))) == "2000");
  CHECK(weight(Checked(stew("2 kg", list, all + "[take out the bones] and [discard the rest]."))) == "1000");
  CHECK(weight(Checked(stew(
            "2 kg", list, all + "[take out the bones] and [discard the rest]. Back in with [the bones]."))) == "1000");
  CHECK(weight(Checked(stew("3.5 kg", list, all + "[discard half the carrots]."))) == "3250");
  CHECK(weight(Checked(stew("3.5 kg", list, all + "[discard 100 g of the carrots]."))) == "3400");
}

TEST_CASE("pot: reduced, weighed on the way") {
  const std::string list = "  2 kg  plums\n  1 kg  sugar\n";
  const std::string all = "Stir [the plums] and [the sugar]. ";
  const Checked fits(stew("2.4 kg", list, all + "[weigh 2.9 kg]. [reduce to 2.4 kg]."));
  CHECK(fits.codes() == "");
  CHECK(weight(fits) == "2400");
  const Checked off(stew("", list, all + "[weigh 3.5 kg]."));
  CHECK(only(off).code == Code::checkpoint_off);
  CHECK(only(off).severity == Severity::warning);
  CHECK(only(off).message == "By the steps so far there is 3 kg in the pot, 14 % less than 3.5 kg.");
  CHECK(weight(off) == "3500");
  const Checked more(stew("", list, all + "[reduce to 4 kg]."));
  CHECK(only(more).code == Code::reduce_to_more);
  // A checkpoint weighs what nobody could weigh before.
  const Checked unknown(
      stew("3 kg", list + "  2  lemon drizzle fingers\n", all + "Add [the fingers]. [weigh 3.06 kg]."));
  CHECK(unknown.codes() == "");
  CHECK(weight(unknown) == "3060");
}

TEST_CASE("pot: reducing goes on by volume") {
  const std::string text =
      stew("2.5 l, and about 150 g chicken fat", "  2 kg  chicken bones\n  4 l  water\n",
           "Put [the bones] in [the water], [simmer 3 h]. [strain out the bones]. [reduce to 2.5 l].");
  CHECK(Checked(text).codes() == "");
  CHECK(Checked(stew("2 l", "  2 kg  chicken bones\n  4 l  water\n",
                     "Put [the bones] in [the water], [simmer 3 h]. [strain out the bones]. [reduce to 2.5 l]."))
            .codes() == "makes_off");
}

TEST_CASE("pot: pieces") {
  const std::string list = "  600 g  strong flour\n  400 g  water\n",
                    mix = "Mix [the flour] and [the water], cut into ";
  CHECK(Checked(stew("", list, mix + "[6 rounds of 165 g].")).codes() == "");
  const Checked over(stew("", list, mix + "[8 rounds of 150 g]."));
  CHECK(only(over).code == Code::pieces_weigh);
  CHECK(only(over).severity == Severity::error);
  CHECK(only(over).message == "These pieces weigh 1.2 kg together, and there is only 1 kg.");
  const Checked under(stew("", list, mix + "[6 rounds of 150 g]."));
  CHECK(only(under).severity == Severity::note);
  CHECK(only(under).message == "100 g is left over: these pieces weigh 900 g together, and there is 1 kg.");
  CHECK(Checked(stew("", list, mix + "[6 rounds of about 155 g].")).codes() == "");
}

TEST_CASE("pot: what coats and fries counts by what is taken up") {
  const Checked c(
      stew("260 g", "  200 g  plaice\n  1 l  rapeseed oil, taking up 60 g\n", "Fry [the plaice] in [the oil]."));
  CHECK(c.codes() == "");
  CHECK(weight(c) == "260");
}

TEST_CASE("pot: parts in parts") {
  const std::string crust =
      "part: Shortcrust\nmakes: 374 g\ntake:\n  220 g  plain flour\n  110 g  butter\n  44 g  water\n"
      "method:\n  Mix [the flour], [the butter] and [the water].\n\n";
  const Checked whole(
      "recipe: Tart\nmakes: 674 g\n\n" + crust +
      "part: Tart\ntake:\n  300 g  leeks\nmethod:\n  Line the tin with [the Shortcrust], fill with [the leeks].\n");
  CHECK(whole.codes() == "");
  CHECK(weight(whole, 1) == "674");
  const Checked some("recipe: Tart\nmakes: 600 g\n\n" + crust +
                     "part: Tart\ntake:\n  300 g  [Shortcrust], and 10 % for trimmings\n  300 g  leeks\n"
                     "method:\n  Line the tin with [the Shortcrust], fill with [the leeks].\n");
  CHECK(some.codes() == "");
  CHECK(weight(some, 1) == "600");
}

TEST_CASE("pot: everything, and lines that no step names") {
  CHECK(weight(Checked(stew("500 g", "  300 g  plums\n  200 g  sugar\n", "Stir [everything] together."))) == "500");
  const Checked unused(stew("500 g", "  300 g  plums\n  200 g  sugar\n", "Stir [the plums]."));
  CHECK(only(unused).code == Code::unused_line);
}

TEST_CASE("pot: by hand or by machine is done once") {
  const Checked c(
      "recipe: Loaf\nmakes: 900 g\ntake:\n  600 g  strong flour\n  400 g  water\nmethod:\n  Mix [the flour] and [the "
      "water].\n\n"
      "  by hand: Knead [10 min], [loses 10 %].\n\n  by machine: Knead [5 min], [loses 10 %].\n");
  CHECK(weight(c) == "900");
}

TEST_CASE("pot: eggs by size, spoons, kitchen figures") {
  const Checked egg(stew("171 g", "  3  large eggs\n", "Beat [the eggs]."));
  CHECK(egg.problem(Code::makes_off) == nullptr);
  CHECK(known_of(egg.recipe, egg.line("large eggs")).each > Fraction(50));
  auto kitchen = std::make_shared<Kitchen>();
  HouseFood starter{"starter", {}};
  starter.food.density.value = Fraction::of(105, 100);
  kitchen->foods.push_back(starter);
  Surroundings around;
  around.kitchen = kitchen;
  const Checked house(stew("210 g", "  200 ml  ripe starter\n", "Stir [the starter]."), around);
  CHECK(house.codes() == "");
  CHECK(weight(house) == "210");
  const Checked stated(stew("130 g", "  250 ml (130 g)  bramble crumble dust\n", "Sift [the dust]."));
  CHECK(weight(stated) == "130");
  const Checked spoon(stew("500 g", "  1 tbsp  dried yeast\n", "Mix [the yeast]."));
  CHECK(weight(spoon).substr(0, 5) == "12.17");  // by its spoon's row: 12 g in an American one
}
