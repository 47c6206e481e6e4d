// Which ounce two statements of one weight count with.
#include "measure/ounces.hpp"

#include <doctest/doctest.h>

using namespace qtn;

namespace {

Quantity of(const Fraction& value, std::string_view unit, Manner manner = Manner::plain) {
  return {value, value, unit_named(unit), manner, false};
}
// "28.35 g, 30 g"
std::string between(const Quantity& one, const Quantity& other) {
  const OunceSet set = ounces_between(one, other);
  if (set == kAnyOunce) return "any";
  std::string out;
  for (int i = 0; i < kOunces; ++i)
    if (has(set, static_cast<OunceOf>(i))) out += (out.empty() ? "" : ", ") + name_of(static_cast<OunceOf>(i));
  return out;
}
std::string grams_first(int grams, const Fraction& ounces) { return between(of(Fraction(grams), "g"), of(ounces, "oz")); }
std::string ounces_first(const Fraction& ounces, int grams) { return between(of(ounces, "oz"), of(Fraction(grams), "g")); }

}  // namespace

TEST_CASE("the four ways of print are told apart (S4-70 to S4-73)") {
  CHECK(ounces_first(Fraction(8), 225) == "28.35 g");
  CHECK(ounces_first(Fraction(8), 200) == "25 g");
  CHECK(ounces_first(Fraction(8), 240) == "30 g");
  CHECK(ounces_first(Fraction(8), 250) == "31.25 g");
  CHECK(ounces_first(Fraction(16), 454) == "28.35 g");
  CHECK(between(of(Fraction(1), "lb"), of(Fraction(400), "g")) == "25 g");
  CHECK(between(of(Fraction(1), "lb"), of(Fraction::of(1, 2), "kg")) == "31.25 g");
  CHECK(grams_first(120, Fraction(4)) == "30 g");
  CHECK(grams_first(125, Fraction(4)) == "31.25 g");
  CHECK(grams_first(50, Fraction(2)) == "25 g");
}

TEST_CASE("rounding is not another ounce") {
  CHECK(ounces_first(Fraction(4), 115) == "28.35 g");
  CHECK(ounces_first(Fraction(4), 110) == "28.35 g");
  CHECK(ounces_first(Fraction(1), 30) == "28.35 g, 30 g, 31.25 g");
  CHECK(has(ounces_between(of(Fraction(40), "g"), of(Fraction::of(3, 2), "oz")), OunceOf::exact));
  CHECK(has(ounces_between(of(Fraction(30), "g"), of(Fraction(1), "oz")), OunceOf::exact));
  CHECK(has(ounces_between(of(Fraction(60), "g"), of(Fraction(2), "oz")), OunceOf::exact));
  // Every whole number of grams, worked out to the nearest quarter ounce, counts the exact ounce.
  for (int g = 10; g < 2000; ++g) {
    const Fraction quarters = Fraction(g) / size_of(unit_named("oz"), Dialect::british) * Fraction(4);
    const Fraction nearest = Fraction::of(quarters.nearest(), 4);
    const Fraction error = (nearest * size_of(unit_named("oz"), Dialect::british) / Fraction(g) - Fraction(1)).abs();
    if (error <= Fraction::of(1, 10)) CHECK_MESSAGE(has(ounces_between(of(Fraction(g), "g"), of(nearest, "oz")), OunceOf::exact), g);
  }
}

TEST_CASE("ranges, loose statements and other units tell nothing") {
  CHECK(between(of(Fraction(25), "g", Manner::about), of(Fraction(1), "oz")) == "any");
  CHECK(between(of(Fraction(250), "ml"), of(Fraction(8), "oz")) == "any");
  CHECK(between(of(Fraction(113), "g"), of(Fraction(1), "US stick")) == "any");
  CHECK(between(of(Fraction(1), "kg"), of(Fraction(1000), "g")) == "any");
  CHECK(between({Fraction(25), Fraction(30), unit_named("g"), Manner::plain, false}, of(Fraction(1), "oz")) == "any");
  CHECK(between(of(Fraction(70), "g"), of(Fraction(1), "oz")) == "");
}

TEST_CASE("the commonest way, the exact one where several tie") {
  CHECK(most_of({}) == OunceOf::exact);
  const OunceSet exact = 1, twenty_five = 2, either = 3;
  CHECK(most_of({exact, twenty_five}) == OunceOf::exact);
  CHECK(most_of({exact, twenty_five, either, twenty_five}) == OunceOf::g25);
  CHECK(first_of(twenty_five) == OunceOf::g25);
}
