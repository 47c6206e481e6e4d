// The formulas against themselves turned round, and against sums worked out here in floating point.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "formula/cure.hpp"
#include "formula/dough.hpp"
#include "formula/figures.hpp"
#include "formula/paste.hpp"
#include "formula/store.hpp"

using namespace qtn;

TEST_CASE("a figure that is not in the table is lost, and every row has a source") {
  CHECK(kitchen_figure("no such figure").low.is_lost());
  for (const char* name : {"dough factor", "dough factor, ferment", "ice melting", "water in meat", "salometer degree", "paste density",
                           "thaw, fridge, a kg", "thaw, fridge, a lb", "thaw, water, a lb"}) {
    CAPTURE(name);
    CHECK(!kitchen_figure(name).low.is_lost());
    CHECK(!kitchen_figure(name).source.empty());
  }
  CHECK(kitchen_figure("paste density").remembered);
}

TEST_CASE("a ferment is a fourth temperature, and friction is a difference") {
  const DoughHeat straight{Fraction(26), Fraction(20), Fraction(22), Fraction(12), {}};
  CHECK(water_for(straight) == Fraction(24));
  DoughHeat leavened = straight;
  leavened.ferment = Fraction(24);
  CHECK(water_for(leavened) == Fraction(26));
  DoughHeat rubbed = straight;
  rubbed.friction += Fraction(1);
  CHECK(water_for(straight) - water_for(rubbed) == Fraction(1));
}

TEST_CASE("ice and water come to the heat that was asked") {
  std::mt19937 random(7);
  for (int i = 0; i < 500; ++i) {
    const int tap = std::uniform_int_distribution(1, 40)(random), wanted = std::uniform_int_distribution(0, tap - 1)(random);
    const Fraction ice = ice_in(Fraction(10), Fraction(tap), Fraction(wanted));
    // Heat counted from ice at 0 °C: the mix at `wanted` holds what the water brought, less what melting took.
    const double share = ice.approx() / 10.0;
    CHECK(std::abs((1 - share) * tap - share * (334.6 / 4.186) - wanted) < 1e-9);
    CHECK(ice < Fraction(10));
  }
  CHECK(ice_in(Fraction(10), Fraction(5), Fraction(5)).is_lost());
  CHECK(ice_in(Fraction(10), Fraction(5), Fraction(-1)).is_lost());
}

TEST_CASE("cure for parts per million, and back") {
  const Fraction share = Fraction::of(625, 10000);
  for (int ppm = 1; ppm < 700; ppm += 7)
    CHECK(nitrite_ppm(cure_for(Fraction(ppm), share, Fraction(1234)), share, Fraction(1234)) == Fraction(ppm));
  for (const CureLimit& limit : cure_limits()) {
    CAPTURE(limit.what);
    CHECK(!limit.ppm.is_lost());
    CHECK(!limit.what.empty());
    CHECK(!limit.source.empty());
    CHECK(!passes(limit, limit.ppm));
    CHECK(passes(limit, limit.least ? limit.ppm - Fraction(1) : limit.ppm + Fraction(1)));
  }
  CHECK(cure_limit(CureKind::chilled).least);
}

TEST_CASE("buying and trimming undo each other") {
  const Fraction yield = Fraction::of(81, 100);
  CHECK(edible_of(bought_for(Fraction(5), yield), yield) == Fraction(5));
  CHECK(yield_of(edible_of(Fraction(7), yield), Fraction(7)) == yield);
  CHECK(bought_for(Fraction(5), Fraction(0)).is_lost());
  CHECK(portions_in(Fraction(0), Fraction(3)) == Fraction(0));
  CHECK(portions_in(Fraction(128), Fraction(0)).is_lost());
}

TEST_CASE("the widest round is the widest in whole millimetres") {
  for (int grams = 1; grams < 2000; grams += 13) {
    const Fraction area = paste_covers(Fraction(grams), Fraction(3));
    const double across = std::sqrt(area.approx() * 4 / std::numbers::pi);
    CHECK(std::abs(widest_round(area).approx() - std::floor(across)) <= 1e-9 + (std::abs(across - std::round(across)) < 1e-4 ? 1.0 : 0.0));
    CHECK(paste_for(area, Fraction(3)) == Fraction(grams));
    CHECK(paste_thickness(Fraction(grams), area) == Fraction(3));
  }
  CHECK(widest_round(Fraction(0)).is_lost());
  CHECK(widest_round(Fraction::lost()).is_lost());
}
