#include <doctest/doctest.h>

#include "recipe/linear.hpp"
#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {
std::string dish(const std::string& makes, const std::string& take) {
  return "recipe: Test\nmeasures: British\n" + (makes.empty() ? "" : "makes: " + makes + "\n") + take;
}
}  // namespace

TEST_CASE("ratios: the worked examples") {
  SUBCASE("1: shortcrust, makes is a check") {
    const Checked c(
        dish("370 g",
             "take: % of plain flour\n  220 g  plain flour\n  50 %  butter\n  1/2 tsp  fine salt\n  20 %  water\n"));
    CHECK(c.codes() == "");
    CHECK(c.amount("butter") == "110 g");
    CHECK(c.amount("water") == "44 g");
    CHECK(c.amount("plain flour") == "220 g");
  }
  SUBCASE("2: makes decides") {
    const Checked c(dish(
        "1 kg", "take: % of strong flour\n  100 %  strong flour\n  67 %  water\n  2 %  salt\n  1 %  dried yeast\n"));
    CHECK(c.codes() == "");
    CHECK(c.line("strong flour").amount.low == Fraction::of(10000, 17));
    CHECK(c.amount("water") == "394.12 g");
    CHECK(c.amount("salt") == "11.76 g");
    CHECK(c.amount("dried yeast") == "5.88 g");
  }
  SUBCASE("3: parts by makes") {
    const Checked c(dish("400 ml", "take: parts\n  3 parts  olive oil\n  1 part  vinegar\n"));
    CHECK(c.codes() == "");
    CHECK(c.amount("olive oil") == "300 ml");
    CHECK(c.amount("vinegar") == "100 ml");
  }
  SUBCASE("4: parts by a line that gives both") {
    const Checked c(dish("", "take: parts\n  3 parts (300 ml)  olive oil\n  1 part  vinegar\n"));
    CHECK(c.codes() == "");
    CHECK(c.amount("olive oil") == "300 ml");
    CHECK(c.amount("vinegar") == "100 ml");
  }
  SUBCASE("5: a percentage and a rate of a set") {
    const Checked a(dish("", "take:\n  1.5 kg  pork thighs\n  500 g  pork fat\n  1.8 % of [thighs + fat]  salt\n"));
    CHECK(a.codes() == "");
    CHECK(a.amount("salt") == "36 g");
    const Checked b(
        dish("", "take:\n  1.5 kg  pork thighs\n  500 g  pork fat\n  18 g per kg of [thighs + fat]  salt\n"));
    CHECK(b.codes() == "");
    CHECK(b.amount("salt") == "36 g");
    const Checked d(
        dish("", "take: per kg of [thighs + fat]\n  1.5 kg  pork thighs\n  500 g  pork fat\n  18 g per kg  salt\n"));
    CHECK(d.codes() == "");
    CHECK(d.amount("salt") == "36 g");
  }
  SUBCASE("6: the base in shares of itself") {
    const Checked c(dish(
        "2 kg", "take: % of [thighs + fat]\n  70 %  pork thighs\n  30 %  pork fat\n  1.8 %  salt\n  10 %  water\n"));
    CHECK(c.codes() == "");
    CHECK(c.amount("pork thighs") == "1252.24 g");
    CHECK(c.amount("pork fat") == "536.67 g");
    CHECK(c.amount("salt") == "32.2 g");
    CHECK(c.amount("water") == "178.89 g");
  }
  SUBCASE("7: two sizes of one part") {
    const Checked c(dish("", "take: parts\n  3 parts (300 ml)  olive oil\n  1 part (150 ml)  vinegar\n"));
    REQUIRE(c.codes() == "ratios_clash");
    const Diagnostic* const clash = c.problem(Code::ratios_clash);
    CHECK(clash->message == "One part is 100 ml by the olive oil, and 150 ml by the vinegar.");
    CHECK(c.at(clash) == "150 ml");
    CHECK(clash->labels.size() == 1);
  }
  SUBCASE("8: only zero fits") {
    const Checked c(dish("", "take:\n  50 % of [the sugar]  butter\n  50 % of [the butter]  sugar\n"));
    REQUIRE(c.codes() == "only_zero_fits");
    CHECK(c.problem(Code::only_zero_fits)->message == "Only an amount of nothing fits for butter and sugar.");
    CHECK(c.amount("butter") == "?");
  }
  SUBCASE("9: the line that takes the part decides") {
    const Checked c(
        "recipe: Tart\n\npart: Shortcrust\ntake: % of plain flour\n  100 %  plain flour\n  50 %  butter\n  20 %  "
        "water\n"
        "method:\n  Rub [the butter] into [the flour], add [the water].\n\n"
        "part: Tart\ntake:\n  450 g  [Shortcrust]\nmethod:\n  Roll [the Shortcrust].\n");
    CHECK(c.codes() == "");
    CHECK(c.line("plain flour").amount.low == Fraction::of(4500, 17));
    CHECK(c.amount("butter") == "132.35 g");
    CHECK(c.amount("water") == "52.94 g");
  }
  SUBCASE("10: makes as a check that fails") {
    const Checked c(dish("500 g", "take: % of plain flour\n  220 g  plain flour\n  50 %  butter\n  20 %  water\n"));
    REQUIRE(c.codes() == "makes_off");
    CHECK(c.problem(Code::makes_off)->message.find("374 g") != std::string::npos);
    CHECK(c.amount("butter") == "110 g");
  }
}

TEST_CASE("ratios: what is free, and what would fix it") {
  const Checked c(dish("1 loaf", "take: % of strong flour\n  100 %  strong flour\n  67 %  water\n  2 %  salt\n"));
  REQUIRE(c.codes() == "ratios_open");
  const Diagnostic& open = *c.problem(Code::ratios_open);
  CHECK(open.message == "Nothing says how much there is of strong flour, water and salt.");
  CHECK(open.expected == "an amount for the strong flour, or `makes:` with a weight");
  CHECK(open.found == "`makes:` gives a number of things, which fixes no weight");
  CHECK(open.labels.size() == 2);
}

TEST_CASE("ratios: shares of the whole that are more than the whole") {
  const Checked c(dish("2 kg", "take: % of [thighs + fat]\n  70 %  pork thighs\n  40 %  pork fat\n  2 %  salt\n"));
  REQUIRE(c.problem(Code::only_zero_fits) != nullptr);
  CHECK(c.problem(Code::only_zero_fits)->found == "what the shares are of adds up to 110 %, and should to 100 %");
}

TEST_CASE("ratios: clashes and amounts below nothing") {
  const Checked below(dish("", "take:\n  100 g  butter\n  150 % of [the butter + the sugar]  sugar\n"));
  REQUIRE(below.codes() == "only_zero_fits");
  CHECK(below.problem(Code::only_zero_fits)->found == "-300 g");
  const Checked clash(dish("", "take:\n  100 g  butter\n  100 % of [the butter + the sugar]  sugar\n"));
  CHECK(clash.codes() == "ratios_clash");
}

TEST_CASE("ratios: a stated amount that proves a percentage") {
  const Checked good(dish("", "take: % of plain flour\n  220 g  plain flour\n  50 % (112 g)  butter\n"));
  CHECK(good.codes() == "");
  CHECK(good.amount("butter") == "110 g");
  const Checked off(dish("", "take: % of plain flour\n  220 g  plain flour\n  50 % (150 g)  butter\n"));
  REQUIRE(off.codes() == "ratios_clash");
  CHECK(off.problem(Code::ratios_clash)->message ==
        "The butter is said to be 150 g, and by the other lines it is 110 g.");
  const Checked needed(dish("", "take: % of plain flour\n  100 %  plain flour\n  50 % (110 g)  butter\n"));
  CHECK(needed.codes() == "");
  CHECK(needed.amount("plain flour") == "220 g");
}

TEST_CASE("ratios: ranges") {
  const Checked base(dish("", "take: % of plain flour\n  200 to 240 g  plain flour\n  50 %  butter\n"));
  REQUIRE(base.codes() == "range_as_base");
  CHECK(base.at(base.problem(Code::range_as_base)) == "200 to 240 g");
  const Checked share(dish("", "take: % of plain flour\n  200 g  plain flour\n  60 to 70 %  water\n"));
  CHECK(share.codes() == "");
  CHECK(share.amount("water") == "120 to 140 g");
}

TEST_CASE("ratios: what cannot be weighed") {
  const Checked base(dish("", "take: % of the spelt flour\n  300 ml  spelt flour\n  10 g  salt\n  2 %  dried yeast\n"));
  CHECK(base.codes() == "base_without_weight");  // a per cent of a flour is by weight
  const Checked mixed(dish("", "take:\n  200 g  plain flour\n  100 ml  zaltwort\n  10 % of [flour + zaltwort]  oxwort\n"));
  CHECK(mixed.codes() == "base_without_weight");
  const Checked both(dish("", "take: % of zaltwort\n  1 l  zaltwort\n  10 %  oxwort\n"));
  CHECK(both.amount("oxwort") == "100 ml");  // by volume, where nobody knows the weight of either
  const Checked counted(dish("", "take:\n  3  lemon drizzle fingers\n  50 % of [the fingers]  sugar\n"));
  REQUIRE(counted.codes() == "base_without_weight");
  CHECK(counted.amount("sugar") == "?");
  const Checked makes(
      dish("1 kg", "take: % of plain flour\n  100 %  plain flour\n  60 %  water\n  3  lemon drizzle fingers\n"));
  REQUIRE(makes.problem(Code::makes_without_weight) != nullptr);
  CHECK(makes.codes() == "makes_without_weight");
}

TEST_CASE("ratios: per cent of a liquid is by weight where its weight is known") {
  const Checked c(dish("", "take:\n  500 ml  water\n  2 % of [the water]  salt\n"));
  CHECK(c.codes() == "");
  CHECK(c.amount("salt") == "10 g");
  const Checked rate(dish("", "take:\n  2 l  water\n  15 g per l of [the water]  salt\n"));
  CHECK(rate.amount("salt") == "30 g");
}

TEST_CASE("ratios: all flour counts the flour inside what is taken") {
  const Checked c(
      "recipe: Loaf\nmakes: 1 kg\n\npart: Levain\ntake: % of strong flour\n  100 %  strong flour\n  100 %  water\n"
      "method:\n  Mix [the flour] and [the water].\n\n"
      "part: Loaf\ntake: % of all flour\n  400 g  strong white flour\n  200 g  [Levain]\n  60 %  water\n  2 %  salt\n"
      "method:\n  Mix [the flour], [the water], [the salt] and [the Levain].\n");
  CHECK(c.codes() == "makes_off");  // 910 g
  CHECK(c.amount("salt") == "10 g");
  CHECK(c.amount("strong flour") == "100 g");
}

TEST_CASE("ratios: a starter made from its own last batch") {
  const Checked c(
      "recipe: Levain\nmakes: 230 g\ntake: % of all flour\n  20 g  [Levain], from the last batch\n  100 g  strong "
      "flour\n  100 %  water\n");
  CHECK(c.codes() == "");
  CHECK(c.amount("water") == "110 g");  // half of the last batch is flour
  const Checked twice(
      "recipe: Levain\nmakes: 220 g\ntake: % of all flour\n  20 g  [Levain], from the last batch\n  100 %  strong "
      "flour\n  100 %  water\n");
  REQUIRE(twice.codes() == "ratios_clash");
  CHECK(twice.at(twice.problem(Code::ratios_clash)).find("strong flour") != std::string::npos);
}

TEST_CASE("ratios: a loss of the pot enters makes") {
  const Checked c(
      "recipe: Loaf\nmakes: 850 g\ntake: % of strong flour\n  100 %  strong flour\n  68 %  water\n  2 %  salt\n"
      "method:\n  Mix [the flour], [the water] and [the salt], [bake 40 min at 220 °C], [loses 15 %].\n");
  CHECK(c.problem(Code::makes_off) == nullptr);
  CHECK(c.line("strong flour").amount.low == Fraction::of(10000, 17));
  const Checked late(
      "recipe: Loaf\nmakes: 950 g\ntake: % of strong flour\n  100 %  strong flour\n  68 %  water\n  100 g  butter\n"
      "method:\n  Mix [the flour] and [the water], [bake 40 min at 220 °C], [loses 15 %]. Add [the butter].\n");
  CHECK(late.problem(Code::makes_off) == nullptr);
  CHECK((late.line("strong flour").amount.low * Fraction::of(168, 100)) == Fraction(1000));
}

TEST_CASE("ratios: pages that would take for ever") {
  std::string text = "recipe: Chain\ntake:\n  1 g  thing qaaq\n";
  // No digits in the names: a number in a name is a second thing in the line, and then nothing is worked out.
  const auto name = [](int i) { return std::string("thing q") + static_cast<char>('a' + i / 26) + static_cast<char>('a' + i % 26) + "q"; };
  for (int i = 1; i < 400; ++i) text += "  33.3 % of [" + name(i - 1) + "]  " + name(i) + "\n";
  const Checked chain(text);
  CHECK(chain.problem(Code::ratios_too_long) != nullptr);
  std::string many = "recipe: Many\nmakes: 1 kg\ntake: % of flour\n  100 %  flour\n";
  for (int i = 0; i < 3000; ++i)
    many += "  1 %  spice b" + std::string(1, static_cast<char>('a' + i % 26)) + std::to_string(i) + "\n";
  const Checked wide(many);
  CHECK(wide.problem(Code::ratios_open) == nullptr);
}

TEST_CASE("linear: what clashes is told") {
  Linear system;
  const auto x = system.unknown(), y = system.unknown();
  CHECK(system.add({{x, Fraction(1)}, {y, Fraction(-2)}}, Fraction(0), 7, x) == Linear::Outcome::added);
  system.solve();
  CHECK_FALSE(system.is_known(x));
  CHECK(system.add({{y, Fraction(1)}}, Fraction(3), 8, y) == Linear::Outcome::added);
  CHECK(system.add({{x, Fraction(1)}}, Fraction(6), 9, x) == Linear::Outcome::redundant);
  CHECK(system.add({{x, Fraction(1)}}, Fraction(5), 10, x) == Linear::Outcome::clash);
  CHECK(system.clashing() == std::vector<std::uint32_t>{7, 8});
  system.solve();
  CHECK(system.value(x) == Fraction(6));
}
