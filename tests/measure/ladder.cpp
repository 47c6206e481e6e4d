// Rounding: the worked examples of the language reference, then its edges.
#include "measure/ladder.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace qtn;

namespace {
const Fraction kPlain = Fraction::of(1, 20), kExactly = Fraction::of(1, 100);
Fraction f(Wide over, Wide under) {
  return Fraction::of(over, under);
}
std::string grams(const Fraction& g, const Fraction& t = kPlain) {
  return write(round_on(Ladder::grams, g, t, Dialect::british));
}
std::string shown(Ladder ladder, const Fraction& amount, UnitId unit, Dialect dialect, const Fraction& t = kPlain) {
  return write(round_on(ladder, amount * size_of(unit, dialect), t, dialect));
}
}  // namespace

TEST_CASE("worked examples 1 to 11: weights") {
  CHECK(grams(Fraction(135)) == "135 g");
  CHECK(grams(f(28125, 100)) == "275 g");
  CHECK(grams(f(5625, 10)) == "550 g");
  CHECK(grams(f(28125, 10)) == "2.8 kg");
  CHECK(grams(f(3375, 100)) == "34 g");
  CHECK(grams(f(125, 10)) == "13 g");
  CHECK(grams(f(28125, 100), kExactly) == "280 g");
  CHECK(grams(f(4, 10)) == "0.4 g");
  CHECK(round_on(Ladder::grams, f(4, 10), kPlain, Dialect::british).rung == kTwoFigures);
  CHECK(write(round_on(Ladder::ounces, Fraction(110), kPlain, Dialect::british)) == "4 oz");
  CHECK(write(round_on(Ladder::ounces, Fraction(500), kPlain, Dialect::british)) == "1 lb 2 oz");
  CHECK(write(round_on(Ladder::ounces, Fraction(30), kPlain, Dialect::british)) == "≈ 1 oz");
}

TEST_CASE("worked examples 12 to 15: cups and spoons") {
  const Dialect us = Dialect::american;
  CHECK(write(round_on(Ladder::cups, Fraction(250), kPlain, us)) == "1 cup + 1 tbsp");
  CHECK(shown(Ladder::cups, f(33, 10), common().cup, us) == "3⅓ cups");
  CHECK(shown(Ladder::cups, f(9, 4), common().tablespoon, us) == "2 tbsp + ¾ tsp");
  CHECK(shown(Ladder::spoons, f(9, 4), common().tablespoon, us) == "2 tbsp + ¾ tsp");
  CHECK(shown(Ladder::spoons, f(3, 10), common().teaspoon, us) == "≈ ¼ tsp");
}

TEST_CASE("worked example 16: lines of one ratio") {
  Rounded large = round_on(Ladder::grams, f(28125, 100), kPlain, Dialect::british);
  const Rounded small = round_on(Ladder::grams, f(125, 10), kPlain, Dialect::british);
  const auto drift = [&] { return (small.shown / small.exact) / (large.shown / large.exact); };
  CHECK(drift() > Fraction(1) + kPlain);
  CHECK(refine(large));
  CHECK(drift() <= Fraction(1) + kPlain);
  CHECK(write(large) == "280 g");
  CHECK(write(small) == "13 g");
}

TEST_CASE("litres, pints and spoons of the dialect") {
  CHECK(write(round_on(Ladder::millilitres, f(28125, 100), kPlain, Dialect::british)) == "275 ml");
  CHECK(write(round_on(Ladder::millilitres, f(16875, 10), kPlain, Dialect::british)) == "1.7 l");
  CHECK(write(round_on(Ladder::pints, Fraction(568), kPlain, Dialect::british)) == "1 pint");
  CHECK(write(round_on(Ladder::pints, Fraction(850), kPlain, Dialect::british)) == "1½ pints");
  CHECK(write(round_on(Ladder::pints, Fraction(655), kPlain, Dialect::british)) == "1 pint 3 fl oz");
  CHECK(write(round_on(Ladder::pints, Fraction(1100), kPlain, Dialect::british)) == "2 pints");
  CHECK(write(round_on(Ladder::pints, Fraction(1100), kExactly, Dialect::british)) == "1 pint 19 fl oz");
  CHECK(write(round_on(Ladder::pints, Fraction(5), kPlain, Dialect::british)) == "1 tsp");
  CHECK(shown(Ladder::pints, Fraction(54), common().fluid_ounce, Dialect::american, kExactly) == "3 pints 6 fl oz");
  CHECK(write(round_on(Ladder::spoons, Fraction(30), kPlain, Dialect::british)) == "2 tbsp");
  CHECK(write(round_on(Ladder::spoons, Fraction(30), kPlain, Dialect::australian)) == "1½ tbsp");
  CHECK(write(round_on(Ladder::spoons, Fraction(25), kPlain, Dialect::australian)) == "1 tbsp + 1 tsp");
  CHECK(write(round_on(Ladder::spoons, f(75, 10), kPlain, Dialect::british)) == "1½ tsp");
  CHECK(write(round_on(Ladder::spoons, Fraction(30), kPlain, Dialect::unstated)) == "2 tbsp");
  CHECK(write(round_on(Ladder::cups, Fraction(375), kPlain, Dialect::australian)) == "1½ cups");
  CHECK(write(round_on(Ladder::cups, Fraction(270), kPlain, Dialect::australian)) == "1 cup + 1 tbsp");
}

TEST_CASE("a small measure that no jug shows goes into spoons, and less than a spoon is a part of one") {
  const auto text = [](Ladder ladder, const Fraction& ml) { return write(round_on(ladder, ml, kPlain, Dialect::british)); };
  CHECK(text(Ladder::pints, Fraction(20)) == "1 tbsp + 1 tsp");    // 0.704 fl oz
  CHECK(text(Ladder::pints, Fraction(50)) == "3 tbsp + 1 tsp");    // 1.76 fl oz
  CHECK(text(Ladder::pints, Fraction(57)) == "2 fl oz");
  CHECK(text(Ladder::millilitres, Fraction::of(25, 2)) == "2½ tsp");
  CHECK(text(Ladder::millilitres, Fraction::of(10, 3)) == "≈ ⅝ tsp");
  CHECK(text(Ladder::millilitres, Fraction(10)) == "10 ml");
  CHECK(text(Ladder::spoons, Fraction::of(5, 12)) == "⅔ of ⅛ tsp");  // a third of a quarter
  CHECK(text(Ladder::spoons, Fraction::of(5, 16)) == "½ of ⅛ tsp");
  CHECK(text(Ladder::spoons, Fraction::of(5, 17)) == "≈ ½ of ⅛ tsp");
  CHECK(text(Ladder::spoons, Fraction::of(1, 20)) == "0.01 tsp");
  CHECK(text(Ladder::spoons, Fraction::of(5, 6)) == "≈ ⅛ tsp");  // a sixth: no spoon is nearer
}

TEST_CASE("things that are divided are told in thirds and quarters too") {
  const auto text = [](const Fraction& count) { return write(round_on(Ladder::things, count, kPlain, Dialect::british)); };
  CHECK(text(Fraction::of(1, 3)) == "⅓");
  CHECK(text(Fraction::of(2, 3)) == "⅔");
  CHECK(text(Fraction::of(4, 3)) == "1⅓");
  CHECK(text(Fraction::of(2, 5)) == "≈ ⅓");
  CHECK(text(Fraction::of(16, 3)) == "5½");
  CHECK(text(Fraction::of(1, 6)) == "⅙");
  CHECK(text(Fraction::of(13, 6)) == "2¼");
  CHECK(text(Fraction::of(1, 10)) == "≈ ⅛");
  CHECK(text(Fraction::of(1, 20)) == "0.05");
}

TEST_CASE("halves and doubles of household measures read as the published chart does") {
  const auto us = [](const Fraction& cups) {
    return shown(Ladder::cups, cups, common().cup, Dialect::american, kExactly);
  };
  CHECK(us(f(3, 8)) == "¼ cup + 2 tbsp");
  CHECK(us(f(3, 16)) == "3 tbsp");
  CHECK(us(f(1, 6)) == "2 tbsp + 2 tsp");
  CHECK(us(f(1, 12)) == "1 tbsp + 1 tsp");
  CHECK(us(f(9, 16)) == "½ cup + 1 tbsp");
  CHECK(us(f(1, 16)) == "1 tbsp");
  CHECK(us(f(1, 24)) == "2 tsp");
  CHECK(us(f(1, 32)) == "1½ tsp");
  CHECK(us(f(3, 64)) == "2¼ tsp");
}

TEST_CASE("times, things and lengths") {
  CHECK(write(round_on(Ladder::minutes, f(980, 9), kPlain, Dialect::british)) == "1 h 50 min");
  CHECK(write(round_on(Ladder::minutes, Fraction(60), kPlain, Dialect::british)) == "1 h");
  CHECK(write(round_on(Ladder::minutes, Fraction(45), kPlain, Dialect::british)) == "45 min");
  CHECK(write(round_on(Ladder::minutes, f(1, 2), kPlain, Dialect::british)) == "30 s");
  CHECK(write(round_on(Ladder::minutes, Fraction(4320), kPlain, Dialect::british)) == "3 days");
  CHECK(write(round_on(Ladder::things, f(39, 20), kPlain, Dialect::british)) == "2");
  CHECK(write(round_on(Ladder::things, f(3, 2), kPlain, Dialect::british)) == "1½");
  CHECK(write(round_on(Ladder::centimetres, f(2286, 10), kPlain, Dialect::british)) == "23 cm");
  CHECK(write(round_on(Ladder::centimetres, Fraction(3), kPlain, Dialect::british)) == "3 mm");
  CHECK(write(round_on(Ladder::centimetres, Fraction(25), kPlain, Dialect::british)) == "2.5 cm");
  CHECK(write(round_on(Ladder::inches, Fraction(230), kPlain, Dialect::british)) == "9 inches");
  CHECK(write(round_on(Ladder::inches, f(127, 10), kPlain, Dialect::british)) == "½ inch");
}

TEST_CASE("a finer or coarser scale changes the rungs") {
  const auto on = [](const Fraction& g, const Fraction& scale) {
    return write(round_on(Ladder::grams, g, kPlain, Dialect::british, scale));
  };
  CHECK(on(f(4, 10), f(1, 10)) == "0.4 g");
  CHECK(on(f(44, 100), f(1, 10)) == "≈ 0.4 g");
  CHECK(on(f(44, 100), f(1, 100)) == "0.45 g");  // +2.3 % on the rung of 0.05
  CHECK(on(Fraction(23), Fraction(5)) == "≈ 25 g");
  CHECK(on(Fraction(23), Fraction(2)) == "≈ 20 g");
  Rounded r = round_on(Ladder::grams, Fraction(13), kPlain, Dialect::british);
  CHECK(!refine(r));  // 1 g is the last rung of a plain scale
  r = round_on(Ladder::grams, Fraction(13), kPlain, Dialect::british, f(1, 10));
  CHECK(refine(r));
}

TEST_CASE("nothing, less than nothing and what was lost") {
  CHECK(grams(Fraction(0)) == "0 g");
  CHECK(grams(Fraction::lost()) == "?");
  CHECK(grams(Fraction(-135)) == "−135 g");
  for (const Ladder ladder : {Ladder::ounces, Ladder::cups, Ladder::pints, Ladder::spoons, Ladder::minutes,
                              Ladder::things, Ladder::centimetres, Ladder::inches, Ladder::millilitres})
    CHECK(write(round_on(ladder, Fraction(0), kPlain, Dialect::british)).substr(0, 1) == "0");
}

TEST_CASE("what is shown is within tolerance, or says that it is not, on every ladder") {
  std::mt19937 dice(7);
  std::uniform_int_distribution<int> over(1, 2'000'000), ladder_at(0, 12);
  for (int i = 0; i < 20'000; ++i) {
    const auto ladder = static_cast<Ladder>(ladder_at(dice));
    if (ladder == Ladder::celsius || ladder == Ladder::fahrenheit || ladder == Ladder::gas) continue;
    const Fraction exact = f(over(dice), 1000);
    for (const Fraction& t : {kExactly, kPlain, f(1, 10)}) {
      Rounded r = round_on(ladder, exact, t, Dialect::australian);
      const Fraction error = ((r.shown - exact) / exact).abs();
      CHECK(r.shown.sign() > 0);
      if (!r.rough && r.rung != kTwoFigures) CHECK(error <= t);
      if (r.rough) CHECK(error <= f(1, 4));
      if (r.rung == kTwoFigures && !r.rough) CHECK(error <= f(1, 20));
      CHECK(!write(r).empty());
      if (refine(r)) CHECK((r.rough || ((r.shown - exact) / exact).abs() <= t));
    }
  }
}

TEST_CASE("pieces line up with the one-line form") {
  const auto pieces = write_pieces(round_on(Ladder::cups, Fraction(250), kPlain, Dialect::american));
  REQUIRE(pieces.size() == 2);
  CHECK(pieces[0].number == "1");
  CHECK(pieces[0].unit == "cup");
  CHECK(pieces[1].number == "1");
  CHECK(pieces[1].unit == "tbsp");
}

TEST_CASE("which ladder shows what") {
  CHECK(ladder_for(Dimension::mass, System::imperial, Dialect::british, false) == Ladder::ounces);
  CHECK(ladder_for(Dimension::volume, System::american, Dialect::british, true) == Ladder::cups);
  CHECK(ladder_for(Dimension::volume, System::metric, Dialect::american, true) == Ladder::spoons);
  CHECK(ladder_for(Dimension::volume, System::imperial, Dialect::british, false) == Ladder::pints);
  CHECK(ladder_for(Dimension::temperature, System::american, Dialect::british, false) == Ladder::fahrenheit);
  CHECK(ladder_of(common().cup, Dialect::american) == Ladder::cups);
  CHECK(ladder_of(unit_named("US cup"), Dialect::american) == Ladder::cups);
  CHECK(ladder_of(unit_named("US cup"), Dialect::british) == Ladder::millilitres);
  CHECK(ladder_of(unit_named("imperial pint"), Dialect::british) == Ladder::pints);
  CHECK(ladder_of(common().pinch, Dialect::british) == Ladder::spoons);
  CHECK(ladder_of(common().pound, Dialect::british) == Ladder::ounces);
  CHECK(ladder_of(common().gas, Dialect::british) == Ladder::gas);
}
