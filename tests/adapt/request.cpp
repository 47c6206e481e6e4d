// Which factor is asked for.
#include "adapt/by_hand.hpp"

using namespace qtn;
using namespace qtn::adapt_tests;

namespace {

Quantity plain(const Fraction& number, UnitId unit = kNoUnit) {
  return {number, number, unit, Manner::plain, false};
}

Fraction factor(const Page& page, const Request& request, bool fine = true) {
  Report report;
  const Fraction k = factor_of(page.recipe, request, report);
  CHECK(report.has_errors() == !fine);
  return k;
}

Request serves(int n) {
  Request request;
  request.serves = plain(Fraction(n));
  return request;
}

Request makes(const Quantity& amount, std::string thing = {}) {
  Request request;
  request.makes = amount;
  request.makes_thing = std::move(thing);
  return request;
}

}  // namespace

TEST_CASE("nothing asked, and times") {
  const Page page("serves: 4\n", "  1 kg  flour\n");
  CHECK(factor(page, {}) == Fraction(1));
  Request request;
  request.times = Fraction::of(5, 2);
  CHECK(factor(page, request) == Fraction::of(5, 2));
  request.times = Fraction(0);
  CHECK(factor(page, request, false) == Fraction(1));
  request.times = Fraction::lost();
  CHECK(factor(page, request, false) == Fraction(1));
}

TEST_CASE("20 of what serves 6 to 8 is 10/3, and says 20 to 26") {
  const Page page("serves: 6 to 8\n", "  1 kg  flour\n");
  CHECK(factor(page, serves(20)) == Fraction::of(10, 3));
  CHECK(Card(page, Fraction::of(10, 3)).adapted.serves.text == "20 to 26");
  Request same;
  same.serves = Quantity{Fraction(6), Fraction(8), kNoUnit, Manner::plain, false};
  CHECK(factor(page, same) == Fraction(1));
  CHECK(factor(Page("", "  1 kg  flour\n"), serves(20), false) == Fraction(1));
}

TEST_CASE("makes: things by name, weight by weight, jars by what they hold") {
  const Page pasties("makes: 8 pasties, 2.4 kg\n", "  1 kg  flour\n");
  CHECK(factor(pasties, makes(plain(Fraction(12)), "pasty")) == Fraction::of(3, 2));
  CHECK(factor(pasties, makes(plain(Fraction(12)), "Pasties")) == Fraction::of(3, 2));
  CHECK(factor(pasties, makes(plain(Fraction(12)))) == Fraction::of(3, 2));
  CHECK(factor(pasties, makes(plain(Fraction(12)), "pies"), false) == Fraction(1));
  CHECK(factor(pasties, makes(plain(Fraction(1200), common().gram))) == Fraction::of(1, 2));
  CHECK(factor(pasties, makes(plain(Fraction(1), common().litre)), false) == Fraction(1));
  const Page jars("makes: 10 jars of 330 g\n", "  1 kg  fruit\n");
  CHECK(factor(jars, makes(plain(Fraction::of(66, 10), common().kilogram))) == Fraction(2));
  const Page stock("makes: 2.5 l, and about 150 g chicken fat\n", "  1 kg  bones\n");
  CHECK(factor(stock, makes(plain(Fraction(5), common().litre))) == Fraction(2));
  CHECK(factor(stock, makes(plain(Fraction(300), common().gram), "chicken fat")) == Fraction(2));
}
