#include <doctest/doctest.h>

#include "tests/adapt/shown.hpp"

using namespace qtn;

namespace {

struct Asked {
  Fraction factor;
  Report report;
};

Asked ask(const std::string& head, const Request& request) {
  const Checked one(listed(head, "  300 g  plain flour\n"));
  Asked asked;
  asked.factor = factor_of(one.recipe, request, asked.report);
  return asked;
}

Request serving(Fraction n) {
  Request request;
  request.serves = quantity(n);
  return request;
}

Request making(Fraction n, UnitId unit, std::string thing) {
  Request request;
  request.makes = quantity(n, unit);
  request.makes_thing = std::move(thing);
  return request;
}

bool refused(const Asked& asked) {
  return asked.report.errors() == 1 && asked.report.list()[0].code == Code::cannot_make_that;
}

}  // namespace

TEST_CASE("nothing asked is the recipe as written") {
  const Asked asked = ask("serves: 4\n", {});
  CHECK(asked.factor == Fraction(1));
  CHECK(asked.report.list().empty());
}

TEST_CASE("so many times") {
  Request request;
  request.times = Fraction::of(3, 2);
  CHECK(ask("", request).factor == Fraction::of(3, 2));
  request.times = Fraction(0);
  CHECK(refused(ask("", request)));
  request.times = Fraction(-2);
  CHECK(refused(ask("", request)));
}

TEST_CASE("a range of helpings is asked at the larger helping") {
  CHECK(ask("serves: 6 to 8\n", serving(20)).factor == Fraction::of(10, 3));
  CHECK(ask("serves: 4\n", serving(6)).factor == Fraction::of(3, 2));
}

TEST_CASE("serves needs a recipe that says how many it serves") {
  CHECK(refused(ask("makes: 8 buns\n", serving(20))));
  CHECK(refused(ask("serves: 4\n", serving(0))));
}

TEST_CASE("a number of what it makes") {
  CHECK(ask("makes: 8 buns\n", making(12, kNoUnit, "buns")).factor == Fraction::of(3, 2));
  CHECK(ask("makes: 8 buns\n", making(1, kNoUnit, "bun")).factor == Fraction::of(1, 8));
  CHECK(ask("makes: 8 buns\n", making(12, kNoUnit, "")).factor == Fraction::of(3, 2));
  CHECK(ask("makes: 8 loaves\n", making(4, kNoUnit, "Loaf")).factor == Fraction::of(1, 2));
}

TEST_CASE("what it does not make is refused") {
  CHECK(refused(ask("makes: 8 buns\n", making(12, kNoUnit, "pasties"))));
  CHECK(refused(ask("makes: 8 buns\n", making(2, common().kilogram, ""))));
  CHECK(refused(ask("", making(12, kNoUnit, "buns"))));
}

TEST_CASE("a weight of what it makes, also by the weight of each") {
  CHECK(ask("makes: 300 g\n", making(2, common().kilogram, "")).factor == Fraction::of(20, 3));
  CHECK(ask("makes: 10 jars of 30 g\n", making(900, common().gram, "")).factor == Fraction(3));
  CHECK(ask("makes: 10 jars of 30 g\n", making(5, kNoUnit, "jars")).factor == Fraction::of(1, 2));
}
