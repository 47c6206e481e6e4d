// What the log tells of one thing.
#include "recipe/history.hpp"

#include <doctest/doctest.h>

#include "recipe/checked.hpp"

using namespace qtn;

namespace {

// "2026-01-05 6 g > 9 g (0.6 % to 0.9 % of the meat)"; the reason where there is no history.
std::string told(const Checked& one, std::string_view name) {
  Report report;
  const auto history = history_of(one.recipe, name, report);
  if (!history) return report.list().empty() ? "?" : report.list()[0].message;
  std::string out = history->name + " " + history->now + " (" + history->share + ")";
  for (const HistoryRow& row : history->rows) {
    out += "; " + std::string(one.recipe.trials[row.trial].name.substr(5)) + " " + row.before;
    if (row.change != nullptr) out += " > " + row.after;
    if (!row.share.empty()) out += " (" + row.share + ")";
  }
  return out;
}

const Checked kPie(
    "recipe: Pie\nmeasures: British\npart: Filling\ntake:\n  1 kg stewing beef\n  9 g fine salt\n  500 g onions, sliced\nmethod:\n  Stew [everything], [stew 2 h].\n\n"
    "part: Crust\ntake:\n  200 g plain flour\n  2 g fine salt\n  100 g butter\nmethod:\n  Rub [everything] together and lay it on [the Filling], [bake 30 min at 200 °C].\n\n"
    "trial: 2026-01-05\n  [Filling] fine salt  6 g -> 9 g\n  carrots  300 g -> none\n\ntrial: 2026-02-05\n  note: Good.\n\n"
    "trial: 2026-03-05\n  bake  25 min -> 30 min\n");

}  // namespace

TEST_CASE("the history of an ingredient: every trial, what was tasted, its share") {
  REQUIRE_MESSAGE(kPie.report.list().empty(), kPie.codes());
  CHECK(told(kPie, "[Filling] fine salt") ==
        "fine salt, in Filling 9 g (0.9 % of the meat); 01-05 6 g > 9 g (0.6 % to 0.9 % of the meat); 02-05 9 g (0.9 % of the meat); 03-05 9 g (0.9 % of the meat)");
  CHECK(told(kPie, "[Crust] salt") == "fine salt, in Crust 2 g (1 % of the flour); 01-05 2 g (1 % of the flour); 02-05 2 g (1 % of the flour); 03-05 2 g (1 % of the flour)");
}

TEST_CASE("what has gone from the list, and a step, have a history too") {
  CHECK(told(kPie, "carrots") == "carrots none (); 01-05 300 g > none; 02-05 none; 03-05 none");
  CHECK(told(kPie, "bake") == "bake  (); 01-05 25 min; 02-05 25 min; 03-05 25 min > 30 min");
}

TEST_CASE("names that mean nothing, or two things") {
  CHECK(told(kPie, "fine salt") == "`fine salt` could be 2 lines; write the part in brackets in front: `[Filling] fine salt`.");
  CHECK(told(kPie, "onoins") == "`onoins` stands neither in the list nor in the log. Did you mean `onions`?");
  CHECK(told(kPie, "[Lid] salt") == "No part is called `Lid`.");
}
