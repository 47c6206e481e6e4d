// Ratios that cannot be cooked from: each names the lines at fault, and one mistake is told once.
#include <doctest/doctest.h>

#include "recipe/linear.hpp"
#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

std::string list(const std::string& lines, const std::string& makes = "") {
  return "recipe: Test\nmeasures: British\n" + (makes.empty() ? "" : "makes: " + makes + "\n") + lines;
}

// The lines of the page that a problem points at, its own first.
std::string lines_of(const Checked& c, Code code) {
  const Diagnostic* const problem = c.problem(code);
  if (problem == nullptr) return "none";
  const Lines places(c.source->text());
  std::string text = std::to_string(places.place(problem->span.begin).line);
  for (const Label& label : problem->labels) text += " " + std::to_string(places.place(label.span.begin).line);
  return text;
}

}  // namespace

TEST_CASE("bad ratios: a percentage without a base") {
  const Checked c(list("take:\n  500 g  plain flour\n  50 %  butter\n"));
  CHECK(c.codes() == "percent_without_base");
  CHECK(lines_of(c, Code::percent_without_base) == "5");
}

TEST_CASE("bad ratios: a share of itself") {
  for (const char* share : {"50 %", "100 %"}) {
    const Checked c(list("take:\n  500 g  plain flour\n  " + std::string(share) + " of [the butter]  butter\n"));
    CHECK(c.codes() == "share_of_itself");
    CHECK(c.problem(Code::share_of_itself)->message == "The butter is a share of itself.");
    CHECK(lines_of(c, Code::share_of_itself) == "5");
    CHECK(c.amount("butter") == "?");
  }
  const Checked base(list("take: % of butter\n  500 g  plain flour\n  50 %  butter\n"));
  REQUIRE(base.codes() == "only_zero_fits");
  CHECK(base.problem(Code::only_zero_fits)->found == "what the shares are of adds up to 50 %, and should to 100 %");
}

TEST_CASE("bad ratios: a ring of shares names all its lines") {
  const Checked c(
      list("take:\n  50 % of [the sugar]  butter\n  50 % of [the milk]  sugar\n  50 % of [the butter]  milk\n"));
  CHECK(c.codes() == "only_zero_fits");
  CHECK(lines_of(c, Code::only_zero_fits) == "4 5 6");
}

TEST_CASE("bad ratios: a ring of parts is told once") {
  const Checked c(
      "recipe: Test\n\npart: Sponge\ntake: % of flour\n  100 %  plain flour\n  30 %  [Dough]\nmethod:\n  Mix "
      "[everything].\n\npart: Dough\ntake: % of flour\n  100 %  plain flour\n  30 %  [Sponge]\nmethod:\n  Mix "
      "[everything].\n");
  CHECK(c.codes() == "part_ring");
}

TEST_CASE("bad ratios: parts with nothing to anchor them") {
  const Checked c(list("take: parts\n  3 parts  olive oil\n  1 part  vinegar\n"));
  CHECK(c.codes() == "ratios_open");
  CHECK(lines_of(c, Code::ratios_open) == "4 5");
}

TEST_CASE("bad ratios: two anchors that disagree") {
  const Checked makes(list("take: % of plain flour\n  500 g  plain flour\n  50 %  butter\n  20 %  water\n", "1 kg"));
  CHECK(makes.codes() == "makes_off");
  CHECK(lines_of(makes, Code::makes_off) == "3 5");  // `makes:`, and the line that fixes the size
  const Checked stated(list("take: % of plain flour\n  100 % (500 g)  plain flour\n  50 % (300 g)  butter\n"));
  CHECK(stated.codes() == "ratios_clash");
  CHECK(lines_of(stated, Code::ratios_clash) == "5 4");
  const Checked twice(list("take: % of plain flour\n  100 %  plain flour\n  50 %  butter\n", "1 kg, 3 pieces of 400 g"));
  CHECK(twice.codes() == "makes_off");
}

TEST_CASE("bad ratios: a yield of nothing, or of less") {
  const std::string lines = "take: % of plain flour\n  100 %  plain flour\n  50 %  butter\n";
  for (const char* makes : {"0 kg", "0 pieces of 390 g", "3 pieces of 0 g"}) {
    const Checked c(list(lines, makes));
    CHECK(c.codes() == "zero_amount");
    CHECK(lines_of(c, Code::zero_amount) == "3");
    CHECK(c.report.has_errors());
  }
  CHECK(Checked(list(lines, "-1 kg")).codes() == "below_zero");
  CHECK(Checked("recipe: Test\nserves: 0\ntake:\n  100 g  plain flour\n").codes() == "zero_amount");
}

TEST_CASE("bad ratios: the flour of a ferment counts in all flour") {
  const Checked c(
      "recipe: Loaf\nmakes: 1.7 kg\n\npart: Ferment\ntake: % of strong white flour\n  100 %  strong white flour\n"
      "  60 %  water\nmethod:\n  Mix [everything].\n\npart: Dough\ntake: % of all flour\n  30 %  [Ferment]\n"
      "  100 %  wholemeal flour\n  50 %  water\nmethod:\n  Mix [everything].\n");
  REQUIRE(c.codes() == "only_zero_fits");  // once, and of the dough
  CHECK(c.problem(Code::only_zero_fits)->found ==
        "what the shares are of adds up to 118.75 %, and should to 100 %; the flour inside what is taken counts too");
}

TEST_CASE("bad ratios: less bought than goes in") {
  const Checked c(list("take:\n  550 g  leeks, from 400 g\n"));
  REQUIRE(c.codes() == "bought_under_weight");
  CHECK(c.at(c.problem(Code::bought_under_weight)) == "400 g");
  CHECK(c.problem(Code::bought_under_weight)->labels.size() == 1);
  CHECK(Checked(list("take:\n  2  egg yolks, from 1 egg\n")).codes() == "bought_under_weight");
  for (const char* sound : {"400 g  leeks, from 550 g", "6  egg yolks, from 6 eggs", "500 g  leeks, from about 490 g",
                            "400 g  cooked rice, from 150 g", "400 g  haricot beans, soaked, from 200 g",
                            "400 g  chickpeas, from 180 g dried chickpeas", "300 g  breadcrumbs, from 1 loaf"})
    CHECK_MESSAGE(Checked(list("take:\n  " + std::string(sound) + "\n")).codes() == "", sound);
}

TEST_CASE("linear: only what takes part in a clash is named") {
  Linear system;
  const auto x = system.unknown(), y = system.unknown(), z = system.unknown();
  // y = z + 2 and x = y, whatever z is.
  CHECK(system.add({{z, Fraction(1)}}, Fraction(1), 1, z) == Linear::Outcome::added);
  CHECK(system.add({{y, Fraction(1)}, {z, Fraction(-1)}}, Fraction(2), 2, y) == Linear::Outcome::added);  // y = z + 2
  CHECK(system.add({{x, Fraction(1)}, {y, Fraction(-1)}}, Fraction(0), 3, x) == Linear::Outcome::added);  // x = y
  // x - z = 5: only the second and third say otherwise; the first is no matter.
  CHECK(system.add({{x, Fraction(1)}, {z, Fraction(-1)}}, Fraction(5), 4, x) == Linear::Outcome::clash);
  CHECK(system.clashing() == std::vector<std::uint32_t>{2, 3});
  CHECK(system.add({{x, Fraction(1)}}, Fraction(4), 5, x) == Linear::Outcome::clash);
  CHECK(system.clashing() == std::vector<std::uint32_t>{1, 2, 3});
}
