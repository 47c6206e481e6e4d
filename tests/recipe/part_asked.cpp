// More of a part than it comes to; numbers in names.
#include <doctest/doctest.h>

#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

std::string codes(const std::string& first, const std::string& step, const std::string& asked) {
  return Checked("recipe: Slices\n\npart: Crumble\n" + first + "method:\n  " + step + "\n\npart: Slices\ntake:\n  " + asked +
                 "  [Crumble]\nmethod:\n  Scatter [the Crumble].\n").codes();
}
const char* const kList = "take:\n  100 g  plain flour\n  60 g  butter\n";
const char* const kRub = "Rub [the butter] into [the flour].";

}  // namespace

TEST_CASE("more of a part is taken than it comes to") {
  CHECK(codes(kList, kRub, "250 g") == "part_short");
  CHECK(codes(kList, kRub, "160 g") == "");
  CHECK(codes(kList, kRub, "165 g") == "");  // within what the house rounds by
  CHECK(codes(kList, kRub, "about 175 g") == "");
  CHECK(codes(kList, kRub, "100 g") == "");  // what is left over is no slip
  CHECK(codes("makes: 160 g\n" + std::string(kList), kRub, "250 g") == "part_short");
}

TEST_CASE("what grows in the pan, or follows what is asked, is not short") {
  CHECK(codes("take:\n  100 g  long-grain rice\n  water, for boiling\n", "Put [the rice] in [the water].", "250 g") == "");
  CHECK(codes("take:\n  100 g  long-grain rice\n", "Boil [the rice] [12 min].", "250 g") == "");
  CHECK(codes("take: % of plain flour\n  100 %  plain flour\n  60 %  butter\n", kRub, "250 g") == "");
}

TEST_CASE("a number that says which sort is no second amount") {
  const auto line = [](const std::string& text) { return Checked("recipe: X\ntake:\n  1 kg  pork shoulder\n  " + text + "\n").codes(); };
  CHECK(line("2.4 g  curing salt no. 1, 6.25 % nitrite") == "");
  CHECK(line("2.4 g  curing salt No 1, 6.25 % nitrite") == "");
  CHECK(line("3  eggs 2") == "one_line_one_thing");
}
