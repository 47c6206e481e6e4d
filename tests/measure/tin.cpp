// Tins against formulas worked out here in floating point, another way than the fractions of the program.
#include "measure/tin.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace qtn;

namespace {

TinSize round_tin(std::int64_t across, std::int64_t deep) {
  TinSize tin;
  tin.shape = TinShape::round, tin.across = Fraction(across), tin.deep = Fraction(deep);
  return tin;
}
TinSize oblong(std::int64_t across, std::int64_t along, std::int64_t deep) {
  TinSize tin;
  tin.shape = TinShape::rectangle, tin.across = Fraction(across), tin.along = Fraction(along), tin.deep = Fraction(deep);
  return tin;
}

void near(const Fraction& found, double expected) {
  REQUIRE(!found.is_lost());
  CHECK(std::abs(found.approx() - expected) <= 1e-6 * std::abs(expected));
}

}  // namespace

TEST_CASE("what a tin holds") {
  near(held_by(round_tin(230, 30)), std::numbers::pi * 115 * 115 * 30 / 1000);
  near(held_by(oblong(210, 110, 60)), 210.0 * 110 * 60 / 1000);
  TinSize loaf = oblong(210, 110, 60);
  loaf.base_across = Fraction(190), loaf.base_along = Fraction(90);
  double slices = 0;  // in slices, as a frustum is defined
  constexpr int kSlices = 20000;
  for (int i = 0; i < kSlices; ++i) {
    const double t = (i + 0.5) / kSlices;
    slices += (190 + 20 * t) * (90 + 20 * t) * 60 / kSlices;
  }
  near(held_by(loaf), slices / 1000);
  TinSize cone = round_tin(70, 30);  // a frustum of a cone: pi h / 12 (D² + D d + d²)
  cone.base_across = Fraction(50);
  near(held_by(cone), std::numbers::pi * 30 / 12 * (70 * 70 + 70 * 50 + 50 * 50) / 1000);
  cone.count = Fraction(12);
  near(held_by(cone), 12 * std::numbers::pi * 30 / 12 * (70 * 70 + 70 * 50 + 50 * 50) / 1000);
  TinSize ring = round_tin(240, 90);
  ring.shape = TinShape::ring, ring.hole = Fraction(80);
  near(held_by(ring), std::numbers::pi * (120 * 120 - 40 * 40) * 90 / 1000);
}

TEST_CASE("what lines a tin") {
  near(lining_of(round_tin(230, 30)), std::numbers::pi * (115 * 115 + 230 * 30));
  near(lining_of(oblong(300, 200, 40)), 300.0 * 200 + 2 * (300 + 200) * 40);
  // With sloping sides never less than the true slant: wall of a cone's frustum pi (R + r) s.
  TinSize dish = round_tin(240, 40);
  dish.base_across = Fraction(200);
  const double slant = std::sqrt(20.0 * 20 + 40 * 40);
  const double truth = std::numbers::pi * (100 * 100 + (120 + 100) * slant);
  CHECK(lining_of(dish).approx() >= truth);
  CHECK(lining_of(dish).approx() <= truth * 1.25);
}

TEST_CASE("one tin for another") {
  CHECK(tin_factor(round_tin(230, 30), round_tin(260, 30)).factor == Fraction::of(676, 529));  // exact between rounds
  TinSize flat = round_tin(260, 30);
  flat.deep = Fraction::lost();
  const TinFactor by_top = tin_factor(round_tin(230, 30), flat);
  CHECK(by_top.by_top);
  CHECK(by_top.factor == Fraction::of(676, 529));
  CHECK(tin_factor(round_tin(230, 30), round_tin(230, 60)).factor == Fraction(2));
  TinSize basin;
  basin.volume = Fraction(1200);
  near(tin_factor(basin, round_tin(150, 80)).factor, std::numbers::pi * 75 * 75 * 80 / 1000 / 1200);
  CHECK(tin_factor(basin, flat).factor.is_lost());  // a volume and a width do not meet
  TinSize dish;
  dish.shape = TinShape::other, dish.across = Fraction(300), dish.deep = Fraction(50);
  CHECK(held_by(dish).is_lost());  // a dish of no shape
}
