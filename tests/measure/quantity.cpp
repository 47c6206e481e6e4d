// Amounts as text, and whether two statements of one amount agree.
#include "measure/quantity.hpp"

#include <doctest/doctest.h>

#include "measure/table_text.hpp"

using namespace qtn;

namespace {
Quantity of(const Fraction& low, const Fraction& high, std::string_view unit, Manner manner = Manner::plain) {
  return {low, high, unit_named(unit), manner, false};
}
Quantity of(const Fraction& amount, std::string_view unit, Manner manner = Manner::plain) {
  return of(amount, amount, unit, manner);
}
Quantity fan(Quantity q) {
  q.fan = true;
  return q;
}
Fraction f(Wide over, Wide under) {
  return Fraction::of(over, under);
}
Agreement meet(const Quantity& first, const Quantity& stated, Dialect dialect = Dialect::british) {
  return agrees(first, in_base(first, dialect), stated, dialect);
}
bool holds(const Quantity& first, const Quantity& stated, Dialect dialect = Dialect::british) {
  return meet(first, stated, dialect).holds;
}
// The number at the front of "5 1/4 oz"; "2 lb 3 oz" is so many pounds.
Fraction read_number(std::string_view text, std::string_view unit = {}) {
  Fraction sum(0);
  while (!text.empty() && text[0] >= '0' && text[0] <= '9') sum += table::number(table::take_word(text));
  if (unit != "lb") return sum;
  if (table::take_word(text) == "oz") return sum / Fraction(16);
  return text.empty() ? sum : sum + read_number(text) / Fraction(16);
}
}  // namespace

TEST_CASE("numbers") {
  CHECK(write_number(f(9, 4), false, false) == "2 1/4");
  CHECK(write_number(f(9, 4), true, false) == "2¼");
  CHECK(write_number(f(9, 4), true, true) == "2.25");
  CHECK(write_number(f(1, 2), true, false) == "½");
  CHECK(write_number(f(1, 3), false, true) == "1/3");  // no decimals write a third
  CHECK(write_number(f(1, 3), true, true) == "0.333");
  CHECK(write_number(f(7, 16), true, false) == "7/16");
  CHECK(write_number(f(23, 16), true, false) == "1 7/16");
  CHECK(write_number(f(1, 97), true, false) == "0.0103");
  CHECK(write_number(f(1133980925, 10000000), true, true) == "113.4");
  CHECK(write_number(f(1133980925, 10000000), false, true) == "113.3980925");
  CHECK(write_number(Fraction(0), true, false) == "0");
  CHECK(write_number(f(-1, 2), false, false) == "-1/2");
  CHECK(write_number(f(-1, 2), true, false) == "−½");
  CHECK(write_number(Fraction::lost(), true, false) == "?");
  struct Sign {
    int over, under;
    std::string_view text;
  };
  for (const auto& [over, under, sign] : std::initializer_list<Sign>{{1, 4, "¼"},
                                                                     {1, 2, "½"},
                                                                     {3, 4, "¾"},
                                                                     {1, 3, "⅓"},
                                                                     {2, 3, "⅔"},
                                                                     {1, 8, "⅛"},
                                                                     {3, 8, "⅜"},
                                                                     {5, 8, "⅝"},
                                                                     {7, 8, "⅞"},
                                                                     {1, 6, "⅙"},
                                                                     {5, 6, "⅚"},
                                                                     {1, 5, "⅕"},
                                                                     {2, 5, "⅖"},
                                                                     {3, 5, "⅗"},
                                                                     {4, 5, "⅘"}})
    CHECK(write_number(f(over, under), true, false) == sign);
}

TEST_CASE("quantities as a cook writes them") {
  CHECK(write_plain(of(f(9, 4), "cup")) == "2 1/4 cups");
  CHECK(write_plain(of(f(1, 2), "cup")) == "1/2 cup");
  CHECK(write_plain(of(Fraction(0), "cup")) == "0 cups");
  CHECK(write_plain(fan(of(Fraction(180), "°C"))) == "180 °C fan");
  CHECK(write_plain(of(Fraction(5), "min", Manner::about)) == "about 5 min");
  CHECK(write_plain(of(Fraction(2), "h", Manner::at_least)) == "at least 2 h");
  CHECK(write_plain(of(Fraction(24), "h", Manner::at_most)) == "at most 24 h");
  CHECK(write_plain(of(Fraction(200), "g", Manner::exactly)) == "exactly 200 g");
  CHECK(write_plain(of(Fraction(6), Fraction(8), "")) == "6 to 8");
  CHECK(write_plain(of(Fraction(-18), Fraction(-15), "°C")) == "-18 to -15 °C");
  CHECK(write_plain(of(Fraction(4), "gas")) == "gas 4");
  CHECK(write_plain(of(f(1, 2), Fraction(1), "gas")) == "gas 1/2 to 1");
  CHECK(write_plain(of(f(5, 4), "h")) == "1 h 15 min");
  CHECK(write_plain(of(f(3, 2), "h")) == "1 1/2 h");
  CHECK(write_plain(of(f(1, 3), "h")) == "20 min");
  CHECK(write_plain(of(f(5, 2), "kg")) == "2.5 kg");
  CHECK(write_plain(of(Fraction(4), "cloves")) == "4 cloves");
  CHECK(write_plain(of(Fraction(22), "%")) == "22 %");
}

TEST_CASE("tolerances by manner") {
  CHECK(tolerance(Manner::plain) == f(1, 20));
  CHECK(tolerance(Manner::exactly) == f(1, 100));
  CHECK(tolerance(Manner::about) == f(1, 10));
  CHECK(tolerance(Manner::at_least, f(1, 50)) == f(1, 50));
}

TEST_CASE("a second statement stands within tolerance") {
  CHECK(holds(of(Fraction(220), "g"), of(Fraction(8), "oz")));
  CHECK(holds(of(Fraction(450), "g"), of(Fraction(1), "lb")));
  CHECK(holds(of(Fraction(400), "g"), of(Fraction(14), "oz")));
  CHECK(!holds(of(Fraction(400), "g"), of(Fraction(12), "oz")));
  CHECK(meet(of(Fraction(400), "g"), of(Fraction(12), "oz")).correct == "14 oz");
  CHECK(holds(of(Fraction(100), "g"), of(Fraction(108), "g", Manner::about)));
  CHECK(!holds(of(Fraction(100), "g", Manner::exactly), of(Fraction(102), "g", Manner::about)));
}

TEST_CASE("the nearest that a unit can write stands up to 10 %, unless exactly") {
  CHECK(holds(of(Fraction(40), "g"), of(f(3, 2), "oz")));
  CHECK(holds(of(Fraction(250), "ml"), of(Fraction(1), "cup"), Dialect::american));
  CHECK(holds(of(Fraction(150), "ml"), of(f(1, 4), "pint")));
  CHECK(holds(of(Fraction(150), "ml"), of(Fraction(5), "fl oz")));
  CHECK(holds(of(Fraction(15), "ml"), of(f(1, 2), "fl oz")));
  CHECK(holds(of(Fraction(30), "g"), of(Fraction(1), "oz")));
  const Agreement strict = meet(of(Fraction(150), "g", Manner::exactly), of(f(11, 2), "oz"));
  CHECK(!strict.holds);
  CHECK(strict.correct == "5 1/4 oz");
  CHECK(strict.error > f(38, 1000));
  CHECK(strict.error < f(40, 1000));
  CHECK(holds(of(Fraction(150), "g"), of(f(11, 2), "oz")));
  CHECK(!holds(of(Fraction(25), "g"), of(Fraction(1), "oz")));  // 13 % off
}

TEST_CASE("what is offered instead stands itself") {
  for (int g = 3; g < 3000; g += 7) {
    for (const Manner manner : {Manner::plain, Manner::exactly}) {
      for (const std::string_view unit : {"oz", "lb", "kg"}) {
        CAPTURE(g);
        CAPTURE(unit);
        const Quantity first = of(Fraction(g), "g", manner);
        const Agreement wrong = meet(first, of(Fraction(g), unit));
        CHECK_FALSE(wrong.holds);
        if (!wrong.correct.empty()) CHECK_MESSAGE(holds(first, of(read_number(wrong.correct, unit), unit)), wrong.correct);
        if (manner == Manner::plain && unit == "oz" && g > 30) CHECK(!wrong.correct.empty());
      }
    }
  }
  CHECK(meet(of(Fraction(7), "g"), of(Fraction(1), "oz")).correct == "1/4 oz");
  CHECK(meet(of(Fraction(7), "g", Manner::exactly), of(Fraction(1), "oz")).correct.empty());
  CHECK(meet(of(Fraction(1234), "g", Manner::exactly), of(Fraction(9), "kg")).correct == "1.23 kg");
  CHECK(meet(of(Fraction(400), "g"), of(Fraction(1), "lb")).correct == "14 oz");
  CHECK(meet(of(Fraction(510), "g"), of(Fraction(2), "lb")).correct == "1 lb 2 oz");
  CHECK(meet(of(Fraction(900), "g"), of(Fraction(3), "lb")).correct == "2 lb");
}

TEST_CASE("ranges") {
  CHECK(holds(of(Fraction(100), Fraction(120), "g"), of(f(7, 2), f(17, 4), "oz")));
  CHECK(!holds(of(Fraction(100), Fraction(120), "g"), of(f(7, 2), Fraction(6), "oz")));
  CHECK(meet(of(Fraction(100), Fraction(120), "g"), of(f(7, 2), Fraction(6), "oz")).correct == "3 1/2 to 4 1/4 oz");
  CHECK(holds(of(Fraction(100), Fraction(120), "g"), of(Fraction(4), "oz")));  // one value inside the range
  CHECK(!holds(of(Fraction(100), Fraction(120), "g"), of(Fraction(6), "oz")));
}

TEST_CASE("heat agrees by its steps, its table and its fan") {
  const auto c = [](int d) { return of(Fraction(d), "°C"); };
  const auto fahrenheit = [](int d) { return of(Fraction(d), "°F"); };
  CHECK(holds(c(180), fahrenheit(350)));
  CHECK(holds(c(170), fahrenheit(325)));  // mark 3 as printed
  CHECK(holds(c(170), fahrenheit(350)));
  CHECK(holds(c(180), of(Fraction(4), "gas")));
  CHECK(holds(c(160), of(Fraction(2), "gas")));
  CHECK(holds(c(160), of(Fraction(3), "gas")));
  CHECK(!holds(c(180), of(Fraction(6), "gas")));
  CHECK(meet(c(180), of(Fraction(6), "gas")).correct == "gas 4");
  CHECK(!holds(c(180), fahrenheit(400)));
  CHECK(meet(c(180), fahrenheit(400)).correct == "350 °F");
  CHECK(holds(fahrenheit(350), c(180)));
  CHECK(holds(fahrenheit(350), c(175)));
  CHECK(holds(c(180), fan(c(160))));
  CHECK(!holds(c(180), fan(c(180))));
  CHECK(meet(c(180), fan(c(180))).correct == "160 °C fan");
  CHECK(holds(fan(c(160)), of(Fraction(4), "gas")) == true);
  // A core reading is no oven: eight degrees are eight degrees.
  CHECK(holds(c(75), fahrenheit(167)));
  CHECK(holds(c(75), fahrenheit(165)));
  CHECK(!holds(c(70), fahrenheit(150)));
  CHECK(meet(c(70), fahrenheit(150)).correct == "158 °F");
}

TEST_CASE("what has no size, or is nothing, accuses nobody") {
  CHECK(holds(of(Fraction(200), "ml"), of(Fraction(3), "cup")));  // a British cup
  CHECK(agrees(of(Fraction(1), "g"), {Fraction::lost(), Fraction::lost()}, of(Fraction(9), "oz"), Dialect::british)
            .holds);
  CHECK(holds(of(Fraction(0), "g"), of(Fraction(0), "oz")));
  CHECK(!holds(of(Fraction(0), "g"), of(Fraction(1), "oz")));
}
