// Is there enough paste? Areas worked out by hand: 230 mm round, 30 mm deep is 41548 + 21677 = 63225 mm².
#include <doctest/doctest.h>

#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

Checked tart(const std::string& grams, const std::string& method, const std::string& tin = "23 cm round, 3 cm deep", const std::string& take = "  [Paste]\n") {
  return Checked("recipe: Tart\nmeasures: British\n" + (tin.empty() ? "" : "tin: " + tin + "\n") + "\npart: Paste\ntake:\n  " + grams +
                 " g  plain flour\nmethod:\n  Mix [the flour].\n\npart: Case\ntake:\n" + take + "method:\n  " + method + "\n");
}

}  // namespace

TEST_CASE("paste: what a tin wants at 3 mm is 227.6 g") {
  const std::string method = "Roll [the Paste] to [3 mm] and line the tin.";
  CHECK(tart("228", method).codes() == "");
  const Checked thin = tart("227", method);
  CHECK(thin.codes() == "paste_short");
  CHECK(!thin.report.has_errors());
  CHECK(thin.at(thin.problem(Code::paste_short)) == "3 mm");
  const Checked half = tart("114", method);
  CHECK(half.problem(Code::paste_short)->message == "114 g of Paste at this thickness covers 317 cm², and the floor and sides of the tin want 632 cm².");
  CHECK(half.problem(Code::paste_short)->expected == "114 g more, or rolled to 1.5 mm");
  CHECK(half.problem(Code::paste_short)->found.find("from memory") != std::string::npos);
}

TEST_CASE("paste: half of it, an amount of it, with trimmings") {
  CHECK(tart("400", "Roll [half the Paste] to [3 mm] and line the tin. [the rest of the Paste]", "23 cm round, 3 cm deep", "  400 g  [Paste]\n").codes() == "paste_short");
  CHECK(tart("500", "Roll [half the Paste] to [3 mm] and line the tin. [the rest of the Paste]", "23 cm round, 3 cm deep", "  500 g  [Paste]\n").codes() == "");
  CHECK(tart("240", "Roll [the Paste] to [3 mm] and line the tin.", "23 cm round, 3 cm deep", "  210 g  [Paste], and 10 % for trimmings\n").problem(Code::paste_short) == nullptr);
  CHECK(tart("240", "Roll [the Paste] to [3 mm] and line the tin.", "23 cm round, 3 cm deep", "  200 g  [Paste], and 10 % for trimmings\n").problem(Code::paste_short) != nullptr);
}

TEST_CASE("paste: silent where it is not rolled to line a tin") {
  CHECK(tart("50", "Roll [the Paste] to [3 mm] and cut a lid.").codes() == "");
  CHECK(tart("50", "Line the tin with baking paper. Roll [the Paste] to [3 mm].").codes() == "");
  CHECK(tart("50", "Roll [the Paste] to [3 mm].\n\n  Line the tin with baking paper and bake it.").codes() == "");
  CHECK(tart("50", "Roll [the Paste] to [3 mm].\n\n  Line the tin with it.").codes() == "paste_short");
  CHECK(tart("50", "Cut [the Paste] [3 mm] thick and line the tin.").codes() == "");
  CHECK(tart("50", "Roll [the Paste] to [3 mm] and line the tin.", "").codes() == "");
  CHECK(tart("50", "Roll [the Paste] to [3 mm] and line the tin.", "23 cm round").codes() == "");
  CHECK(tart("50", "Roll [the Paste] to [3 mm] and line the tin.", "1.2 l basin").codes() == "");
  CHECK(tart("50", "Take [the Paste]. Roll it out to [3 mm] and line the dish with it.").codes() == "paste_short");
}
