// The table of composition against the larder that it hangs on, and against figures typed from the published rows.
#include "larder/composition.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "data/tables.hpp"
#include "words/rows.hpp"

using namespace qtn;

namespace {

const Composition& inside(std::string_view name) {
  const Food* const food = Larder::standard().find(name);
  REQUIRE_MESSAGE(food != nullptr, name);
  const Composition* const found = composition_of(*food);
  REQUIRE_MESSAGE(found != nullptr, name);
  return *found;
}

}  // namespace

TEST_CASE("every row of composition hangs on one food, by the name that it has") {
  std::set<const Food*> met;
  for (Rows rows(data::composition()); rows.next();) {
    const Food* const food = Larder::standard().find(rows[0]);
    REQUIRE_MESSAGE(food != nullptr, rows[0]);
    CHECK_MESSAGE(food->name == rows[0], rows[0]);
    CHECK_MESSAGE(met.insert(food).second, rows[0]);
    const bool sourced = rows[5].starts_with("USDA SR28 ") || rows[5] == "by definition";
    CHECK_MESSAGE(sourced, rows[0]);
  }
  CHECK(met.size() >= 350);
}

TEST_CASE("no ingredient holds more than there is of it") {
  for (const Food& food : Larder::standard().all()) {
    const Composition* const row = composition_of(food);
    if (row == nullptr) continue;
    REQUIRE_MESSAGE(!row->water.is_lost(), food.name);
    Fraction sum;
    for (const Fraction& one : {row->water, row->fat, row->sugars})
      if (!one.is_lost()) sum += one;
    CHECK_MESSAGE(sum <= Fraction::of(1001, 1000), food.name);
    if (row->salt.is_lost()) continue;
    CHECK_MESSAGE(row->salt <= Fraction(1), food.name);
  }
}

TEST_CASE("composition as published") {
  CHECK(inside("water").water == Fraction(1));
  CHECK(inside("unsalted butter").water == Fraction::of(1794, 10000));  // USDA SR28 01145
  CHECK(inside("butter").fat == Fraction::of(8111, 10000));             // 01001
  CHECK(inside("butter").salt == Fraction::of(643 * 5, 2 * 100000));    // 643 mg of sodium, times 2.5
  CHECK(inside("large eggs").water == Fraction::of(7615, 10000));       // 01123
  CHECK(inside("whole milk").water == Fraction::of(8813, 10000));       // 01077
  CHECK(inside("granulated sugar").sugars == Fraction::of(998, 1000));  // 19335
  CHECK(inside("fine salt").salt == Fraction(1));
  CHECK(inside("fresh yeast").water == Fraction::of(69, 100));  // 18374
}

TEST_CASE("what nobody has published is not taken for nothing") {
  CHECK(inside("self-raising flour").salt.is_lost());
  CHECK(inside("arrowroot").sugars.is_lost());
  CHECK(composition_of(*Larder::standard().find("double cream")) == nullptr);
}
