// What must hold of any amount: conversion there and back, and rounding that keeps what it claims.
#include <doctest/doctest.h>

#include <random>
#include <vector>

#include "measure/convert.hpp"
#include "measure/ladder.hpp"

using namespace qtn;

namespace {

const Dialect kDialects3[] = {Dialect::british, Dialect::american, Dialect::australian};

// The rule written out a second time: the coarsest step with an error of at most half the tolerance, else of at most all
// of it, else the nearest on the finest, marked.
struct Step {
  Fraction shown;
  bool rough = false;
};
Step by_rule(const Fraction& exact, const std::vector<Fraction>& steps, const Fraction& tolerance) {
  const auto nearest = [&](const Fraction& step) { return step * Fraction::of((exact / step).nearest(), 1); };
  const auto error = [&](const Fraction& shown) { return ((shown - exact) / exact).abs(); };
  for (const Fraction& allowed : {tolerance * Fraction::of(1, 2), tolerance})
    for (const Fraction& step : steps)
      if (const Fraction shown = nearest(step); shown.sign() > 0 && error(shown) <= allowed) return {shown, false};
  Fraction shown = nearest(steps.back());
  if (shown.is_zero()) shown = steps.back();
  return {shown, true};
}

std::vector<Fraction> times(std::initializer_list<Fraction> steps, const Fraction& unit) {
  std::vector<Fraction> out;
  for (const Fraction& step : steps) out.push_back(step * unit);
  return out;
}

}  // namespace

TEST_CASE("there and back through a density and the weight of one, in every dialect") {
  std::mt19937 dice(31);
  std::uniform_int_distribution<unsigned> pick(0, unit_count() - 1u), dialect(0, 2);
  std::uniform_int_distribution<int> amount(1, 100'000), figure(1, 3'000);
  const auto edible = [](UnitId id) {
    const Dimension d = unit(id).dimension;
    return d == Dimension::mass || d == Dimension::volume || (d == Dimension::count && (id == kNoUnit || unit(id).name == "dozen"));
  };
  int crossed = 0;
  for (int tried = 0; tried < 20'000;) {
    const auto from = static_cast<UnitId>(pick(dice)), to = static_cast<UnitId>(pick(dice));
    if (!edible(from) || !edible(to)) continue;
    const Dialect one = kDialects3[dialect(dice)], other = kDialects3[dialect(dice)];
    const Fraction value = Fraction::of(amount(dice), 97), density = Fraction::of(figure(dice), 1000), each = Fraction::of(figure(dice), 7);
    const Converted there = convert(value, from, one, to, other, density, each);
    ++tried;
    if (there.value.is_lost()) continue;
    crossed += there.used_density ? 1 : 0;
    CAPTURE(unit(from).name);
    CAPTURE(unit(to).name);
    CHECK(convert(there.value, to, other, from, one, density, each).value == value);
  }
  CHECK(crossed > 3'000);
}

TEST_CASE("the ladders of weight and volume are the rule, written out a second time") {
  const Fraction ounce = size_of(common().ounce, Dialect::british);
  struct Case {
    Ladder ladder;
    std::vector<Fraction> steps;
  };
  const Case cases[] = {
      {Ladder::grams, times({100, 50, 25, 10, 5, 1}, Fraction(1))},
      {Ladder::millilitres, times({1000, 500, 250, 100, 50, 25, 10, 5}, Fraction(1))},
      {Ladder::ounces, times({16, 8, 4, 2, 1, Fraction::of(1, 2), Fraction::of(1, 4)}, ounce)},
      {Ladder::minutes, times({60, 30, 15, 10, 5, 1}, Fraction(1))},
  };
  std::mt19937 dice(5);
  std::uniform_int_distribution<int> over(4'000, 9'000'000);
  for (const Case& each : cases) {
    for (int i = 0; i < 5'000; ++i) {
      const Fraction exact = Fraction::of(over(dice), 1'000) * (each.ladder == Ladder::ounces ? ounce : Fraction(1));
      for (const Fraction& t : {Fraction::of(1, 100), Fraction::of(1, 20), Fraction::of(1, 10)}) {
        const Step want = by_rule(exact, each.steps, t);
        const Rounded got = round_on(each.ladder, exact, t, Dialect::british);
        if (got.rung == kTwoFigures) continue;  // under what the steps can say: checked in ladder.cpp
        CAPTURE(exact.decimal(3));
        CAPTURE(t.decimal(2));
        if (got.ladder == Ladder::spoons) {  // a few millilitres that no step comes near
          CHECK((want.rough && exact < Fraction(15)));
          CHECK((got.rough || ((got.shown - exact) / exact).abs() <= t));
          continue;
        }
        CHECK(got.shown == want.shown);
        CHECK(got.rough == want.rough);
      }
    }
  }
}

TEST_CASE("heat is never off by more than half a step of its dial") {
  std::mt19937 dice(41);
  std::uniform_int_distribution<int> seventh(-210, 2'100);
  const Fraction half_degree = Fraction::of(1, 2), fahrenheit = Fraction::of(5, 9);
  for (int i = 0; i < 20'000; ++i) {
    const Fraction exact = Fraction::of(seventh(dice), 7);
    CAPTURE(exact.decimal(2));
    const bool oven = exact >= Fraction(100);
    const Fraction c = (round_on(Ladder::celsius, exact, Fraction::of(1, 20), Dialect::british).shown - exact).abs();
    CHECK(c <= (oven ? Fraction(5) : half_degree));
    const Fraction f = (round_on(Ladder::fahrenheit, exact, Fraction::of(1, 20), Dialect::american).shown - exact).abs();
    CHECK(f <= (oven ? Fraction::of(25, 2) : half_degree) * fahrenheit);
    const Fraction degree = (round_on(Ladder::celsius, exact, Fraction(0), Dialect::british).shown - exact).abs();
    CHECK(degree <= half_degree);
    const Fraction mark = from_celsius(exact, common().gas);
    if (mark.is_lost()) continue;
    for (const Fraction& other : {Fraction::of(1, 4), Fraction::of(1, 2), Fraction(1), Fraction(2), Fraction(3), Fraction(4), Fraction(5),
                                  Fraction(6), Fraction(7), Fraction(8), Fraction(9)})
      CHECK((gas_printed(mark) - exact).abs() <= (gas_printed(other) - exact).abs());
  }
}
