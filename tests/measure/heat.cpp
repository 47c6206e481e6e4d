// Temperatures are points on a scale, their differences are not, and gas marks are a table.
#include <doctest/doctest.h>

#include "measure/ladder.hpp"

using namespace qtn;

namespace {
std::string oven(int celsius, Ladder ladder) {
  return write(round_on(ladder, Fraction(celsius), Fraction::of(1, 20), Dialect::british));
}
}  // namespace

TEST_CASE("points go by their scales") {
  CHECK(to_celsius(Fraction(425), common().fahrenheit) == Fraction::of(655, 3));
  CHECK(from_celsius(Fraction(-40), common().fahrenheit) == Fraction(-40));
  CHECK(from_celsius(Fraction(180), common().fahrenheit) == Fraction(356));
  CHECK(to_celsius(Fraction(1), common().gram).is_lost());
  for (int c = -40; c < 300; c += 7)
    CHECK(to_celsius(from_celsius(Fraction(c), common().fahrenheit), common().fahrenheit) == Fraction(c));
}

TEST_CASE("a difference has no 32") {
  const Fraction degree = size_of(common().fahrenheit_degree, Dialect::unstated);
  CHECK(Fraction(10) / degree == Fraction(18));
  CHECK(Fraction(25) * degree == Fraction::of(125, 9));
  CHECK(size_of(common().celsius, Dialect::british).is_lost());
}

TEST_CASE("gas marks") {
  const UnitId gas = common().gas;
  CHECK(to_celsius(Fraction(4), gas) == Fraction::of(1590, 9));
  CHECK(to_celsius(Fraction::of(1, 4), gas) == Fraction::of(965, 9));
  CHECK(to_celsius(Fraction::of(1, 2), gas) == Fraction::of(1090, 9));
  for (const Fraction& mark : {Fraction(0), Fraction(10), Fraction::of(5, 2), Fraction(-1), Fraction::lost()})
    CHECK(to_celsius(mark, gas).is_lost());
  for (const Fraction& mark : {Fraction::of(1, 4), Fraction::of(1, 2), Fraction(1), Fraction(2), Fraction(3),
                               Fraction(4), Fraction(5), Fraction(6), Fraction(7), Fraction(8), Fraction(9)}) {
    CHECK(from_celsius(to_celsius(mark, gas), gas) == mark);
    CHECK(from_celsius(gas_printed(mark), gas) == mark);
    CHECK(one_gas_mark(to_celsius(mark, gas), gas_printed(mark)));
  }
  CHECK(from_celsius(Fraction(160), gas) == Fraction(3));
  CHECK(from_celsius(Fraction(250), gas) == Fraction(9));
  CHECK(from_celsius(Fraction(300), gas).is_lost());
  CHECK(from_celsius(Fraction(60), gas).is_lost());
  CHECK(gas_printed(Fraction(11)).is_lost());
}

TEST_CASE("a fan oven is set lower by a difference") {
  CHECK(fan_difference(Dialect::british) == Fraction(20));
  CHECK(fan_difference(Dialect::australian) == Fraction(20));
  CHECK(fan_difference(Dialect::american) == Fraction::of(125, 9));
}

TEST_CASE("oven heat is rounded by rung alone") {
  CHECK(oven(180, Ladder::fahrenheit) == "350 °F");
  CHECK(oven(190, Ladder::fahrenheit) == "375 °F");
  CHECK(oven(200, Ladder::fahrenheit) == "400 °F");
  CHECK(oven(160, Ladder::fahrenheit) == "325 °F");
  CHECK(oven(170, Ladder::fahrenheit) == "350 °F");
  CHECK(oven(180, Ladder::gas) == "gas 4");
  CHECK(oven(130, Ladder::gas) == "gas ½");
  CHECK(oven(184, Ladder::celsius) == "180 °C");
  CHECK(oven(185, Ladder::celsius) == "190 °C");
  CHECK(oven(300, Ladder::gas) == "300 °C");  // no mark is so hot
}

TEST_CASE("a reading keeps its degree") {
  CHECK(oven(78, Ladder::fahrenheit) == "172 °F");
  CHECK(oven(-18, Ladder::fahrenheit) == "0 °F");
  CHECK(oven(-18, Ladder::celsius) == "−18 °C");
  CHECK(write(round_on(Ladder::fahrenheit, Fraction(115), Fraction(0), Dialect::british)) == "239 °F");
  Rounded r = round_on(Ladder::fahrenheit, Fraction(180), Fraction::of(1, 20), Dialect::british);
  CHECK(refine(r));
  CHECK(write(r) == "355 °F");
  CHECK(refine(r));
  CHECK(write(r) == "356 °F");
  CHECK(!refine(r));
}
