// A scaled recipe, weighed again, has the strengths of the one as written, whatever the factor.
#include <doctest/doctest.h>

#include "recipe/phases.hpp"
#include "tests/adapt/by_hand.hpp"

using namespace qtn;

TEST_CASE("scaling by k leaves every strength unchanged, and every curing salt within its limit") {
  const adapt_tests::Page page("measures: British\nmakes: 1.5 kg\n",
                               "  1 kg   beef silverside\n  450 ml  cider vinegar, 5 % acid\n  2.5 g  curing salt, 6.25 % nitrite\n  40 g   fine salt\n",
                               "[the silverside] [the vinegar] [the curing salt] [the fine salt] [at least 1.4 % acid] [loses 10 %] [at most 130 ppm nitrite]");
  REQUIRE(page.recipe.found_strengths.size() == 2);
  REQUIRE(page.recipe.parts[0].makeup.strengths.size() == 2);
  for (const Fraction& k : {Fraction::of(1, 7), Fraction::of(1, 2), Fraction(3), Fraction::of(10, 3), Fraction(250)}) {
    Recipe scaled = scale(page.recipe, k);
    Report said;
    weigh_pot(scaled, said);
    CHECK(said.list().size() == page.report.list().size());
    REQUIRE(scaled.found_strengths.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
      CHECK(scaled.found_strengths[i].share.low == page.recipe.found_strengths[i].share.low);
      CHECK(scaled.found_strengths[i].share.high == page.recipe.found_strengths[i].share.high);
      CHECK(scaled.parts[0].makeup.strengths[i].share.low == page.recipe.parts[0].makeup.strengths[i].share.low);
    }
    CHECK(scaled.parts[0].weight_low == page.recipe.parts[0].weight_low * k);
  }
}
