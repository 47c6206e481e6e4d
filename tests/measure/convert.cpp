// Exact conversion: nasty cases that programs for units have tripped over.
#include "measure/convert.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace qtn;

namespace {
const Fraction kNone = Fraction::lost();
Fraction f(Wide over, Wide under) {
  return Fraction::of(over, under);
}
Fraction into(const Fraction& value, std::string_view from, std::string_view to, Dialect dialect = Dialect::british,
              const Fraction& density = kNone, const Fraction& each = kNone) {
  return convert(value, unit_named(from), dialect, unit_named(to), dialect, density, each).value;
}
}  // namespace

TEST_CASE("points and differences") {
  CHECK(into(Fraction(425), "°F", "°C") == f(655, 3));
  CHECK(into(Fraction(-40), "°C", "°F") == Fraction(-40));
  CHECK(into(Fraction(10), "Celsius degrees", "Fahrenheit degrees") == Fraction(18));
  CHECK(into(Fraction(10), "Celsius degrees", "°F").is_lost());
  CHECK(into(Fraction(4), "gas", "°F") == Fraction(350));
  CHECK(into(Fraction(180), "°C", "gas") == Fraction(4));
  CHECK(into(f(5, 2), "gas", "°C").is_lost());
}

TEST_CASE("pints, cups and spoons take their dialect") {
  CHECK(into(Fraction(1), "pint", "ml", Dialect::unstated).is_lost());
  CHECK(into(Fraction(1), "pint", "ml", Dialect::american) == f(473176473, 1000000));
  CHECK(into(Fraction(1), "pint", "ml", Dialect::british) == f(56826125, 100000));
  CHECK(into(Fraction(1), "cup", "ml", Dialect::british).is_lost());
  CHECK(into(Fraction(1), "US cup", "ml", Dialect::british) == f(2365882365, 10000000));
  CHECK(convert(Fraction(1), common().pint, Dialect::british, common().pint, Dialect::american, kNone, kNone).value ==
        f(56826125, 100000) / f(473176473, 1000000));
}

TEST_CASE("weight and volume meet only through a density") {
  CHECK(into(Fraction(1), "oz", "ml").is_lost());
  CHECK(into(Fraction(1), "cup", "g", Dialect::american).is_lost());
  const Fraction density = Fraction(120) / f(2365882365, 10000000);
  const Converted flour =
      convert(Fraction(1), common().cup, Dialect::american, common().gram, Dialect::american, density, kNone);
  CHECK(flour.value == Fraction(120));
  CHECK(flour.used_density);
  CHECK(!flour.used_each);
  CHECK(into(Fraction(120), "g", "cup", Dialect::american, density) == Fraction(1));
  CHECK(into(Fraction(1), "g", "min", Dialect::british, density).is_lost());
  CHECK(into(Fraction(1), "ml", "g", Dialect::british, Fraction(0)) == Fraction(0));
  CHECK(into(Fraction(1), "g", "ml", Dialect::british, Fraction(0)).is_lost());
}

TEST_CASE("counts meet weights only through the weight of one") {
  const Converted eggs =
      convert(Fraction(3), common().each, Dialect::british, common().gram, Dialect::british, kNone, Fraction(50));
  CHECK(eggs.value == Fraction(150));
  CHECK(eggs.used_each);
  CHECK(!eggs.used_density);
  CHECK(into(Fraction(150), "g", "", Dialect::british, kNone, Fraction(50)) == Fraction(3));
  CHECK(into(Fraction(3), "", "ml", Dialect::british, kNone, Fraction(50)).is_lost());
  const Converted beaten = convert(Fraction(3), common().each, Dialect::british, common().millilitre, Dialect::british,
                                   f(103, 100), Fraction(50));
  CHECK(beaten.value == Fraction(150) / f(103, 100));
  CHECK((beaten.used_density && beaten.used_each));
  CHECK(into(Fraction(2), "dozen", "") == Fraction(24));
  CHECK(into(Fraction(3), "cloves", "cloves") == Fraction(3));
  CHECK(into(Fraction(3), "cloves", "") == Fraction(3));
  CHECK(into(Fraction(3), "cloves", "sticks").is_lost());
}

TEST_CASE("thirds stay thirds, sums stay sums") {
  const Fraction third = f(1, 3);
  CHECK(third * Fraction(3) == Fraction(1));
  CHECK(into(third, "US cup", "US tablespoon") == f(16, 3));
  CHECK(into(f(1, 10), "kg", "g") + into(f(2, 10), "kg", "g") == into(f(3, 10), "kg", "g"));
  CHECK(into(Fraction(1), "lb", "g") + into(Fraction(4), "oz", "g") == f(5669904625, 10000000));
  CHECK(into(Fraction(1), "foot", "cm") == f(3048, 100));
  const Fraction tin = into(Fraction(26), "cm", "inch") / Fraction(10);
  CHECK(tin * tin == f(26 * 26 * 100, 254 * 254));
}

TEST_CASE("there and back again is where one started, or it is lost") {
  CHECK(into(into(into(Fraction(1), "kg", "lb"), "lb", "oz"), "oz", "kg") == Fraction(1));
  std::mt19937 dice(11);
  std::uniform_int_distribution<unsigned> pick(1, unit_count() - 1u);
  std::uniform_int_distribution<int> amount(1, 100'000);
  int tried = 0, kept = 0;
  while (tried < 5'000) {
    const auto from = static_cast<UnitId>(pick(dice)), to = static_cast<UnitId>(pick(dice));
    if (unit(from).dimension != unit(to).dimension || from == common().gas || to == common().gas) continue;
    const Fraction value = f(amount(dice), 97);
    const Fraction there = convert(value, from, Dialect::american, to, Dialect::american, kNone, kNone).value;
    ++tried;
    if (there.is_lost()) {  // only where one of them has no size of its own
      CHECK((size_of(from, Dialect::american).is_lost() || size_of(to, Dialect::american).is_lost() || unit(from).dimension == Dimension::count));
      continue;
    }
    ++kept;
    CHECK(convert(there, to, Dialect::american, from, Dialect::american, kNone, kNone).value == value);
  }
  CHECK(kept > 2'500);
}

TEST_CASE("too much is lost, never wrapped") {
  const Fraction huge(1'000'000'000'000'000'000);
  CHECK(into(huge, "kg", "mg") == Fraction::of(Wide{1'000'000'000'000'000'000} * 1'000'000, 1));
  CHECK(into(huge * huge, "kg", "mg").is_lost());
  CHECK(into(Fraction(0), "g", "oz") == Fraction(0));
  CHECK(into(Fraction(-1), "g", "kg") == f(-1, 1000));
  CHECK(into(f(1, 0), "cup", "ml", Dialect::american).is_lost());
}
