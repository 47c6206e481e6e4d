// A tin's sizes in the reader's measures.
#include "adapt/by_hand.hpp"

using namespace qtn;
using namespace qtn::adapt_tests;

namespace {

std::string in(const std::string& tin, System system) {
  const Page page("measures: British\ntin: " + tin + "\n", "  100 g  plain flour\n");
  REQUIRE(page.recipe.tin.has_value());
  return tin_in(page.recipe, *page.recipe.tin, system);
}

}  // namespace

TEST_CASE("a tin in inches and in centimetres, and what a basin holds") {
  CHECK(in("23 cm round, 3 cm deep", System::american) == "9 in, 1⅛ in deep");
  CHECK(in("22 x 30 cm, 6 cm deep", System::imperial) == "8½ x 12 in, 2⅜ in deep");
  CHECK(in("9 x 13 in, 2 in deep", System::metric) == "23 x 33 cm, 5 cm deep");
  CHECK(in("24 cm ring, 8 cm hole, 9 cm deep", System::american) == "9½ in, 3⅛ in hole, 3½ in deep");
  CHECK(in("1.2 l basin", System::imperial) == "2 pints 2 fl oz");
  CHECK(in("23 cm round", System::metric) == "");
  CHECK(in("23 cm round", System::written) == "");
  CHECK(in("9 in round", System::american) == "");
}
