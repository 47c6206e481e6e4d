// The sheet of readings: a line for every reading that the page asks.
#include <doctest/doctest.h>

#include "card/make.hpp"
#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

std::string sheet(const std::string& text, std::optional<StepWay> way = std::nullopt, std::shared_ptr<Kitchen> kitchen = nullptr) {
  Surroundings around;
  around.kitchen = std::move(kitchen);
  const Checked one(text, around);
  CHECK_MESSAGE(!one.report.has_errors(), one.codes());
  Request request;
  request.beside = System::american;
  request.way = way;
  const Adapted adapted = show(one.recipe, request);
  const Card card = make_readings(adapted);
  const auto words = [&](Range32 range) {
    std::string out;
    for (std::uint32_t i = range.first; i < range.first + range.count; ++i) out += card.view(card.runs[i]);
    return out;
  };
  std::string out;
  for (const Grid& grid : card.grids) {
    CHECK(grid.to_fill);
    CHECK(grid.heads.size() == 5);
    for (const std::vector<Range32>& row : grid.rows) out += words(row.at(0)) + " = " + words(row.at(1)) + "\n";
  }
  return out;
}

std::string roast(const std::string& method) {
  return "recipe: Roast\nmeasures: British\noven: conventional\ntake:\n  1.8 kg whole chicken\n  40 g butter\nmethod:\n" + method;
}

}  // namespace

TEST_CASE("core readings with their holds, what is cooled, and what stands cold or hot") {
  CHECK(sheet(roast("  Rub [the butter] over [the chicken] and [roast 1 h 30 min at 200 °C] until the juices run clear and the thickest part [reads 70 °C for 2 min].\n\n"
                    "to keep:\n  [cool at most 90 min to 8 °C] and [keep up to 2 days in the fridge at 4 °C].\n")) ==
        "step 1: the thickest part = 70 °C (158 °F) for 2 min\n"
        "To keep, step 1: cool = 8 °C (46 °F) within 90 min\n"
        "To keep, step 1: keep up to 2 days in the fridge = 4 °C (39 °F)\n"
        "Fridge = at most 8 °C (46 °F)\n"
        "Kept hot, where it stands = at least 63 °C (145 °F)\n");
}

TEST_CASE("the house's own fridges, and a freezer where something is frozen") {
  auto kitchen = std::make_shared<Kitchen>();
  const UnitId celsius = common().celsius;
  kitchen->fridges.push_back({"Larder fridge", Quantity{Fraction(4), Fraction(4), celsius, Manner::plain, false}});
  kitchen->fridges.push_back({"Chest freezer", Quantity{Fraction(-18), Fraction(-18), celsius, Manner::plain, false}});
  CHECK(sheet("recipe: Paste\nmeasures: British\nkeeps: 2 days chilled, 3 months frozen\ntake:\n  200 g butter\nmethod:\n  Beat [the butter].\n", std::nullopt, kitchen) ==
        "Larder fridge = 4 °C (39 °F)\nChest freezer = -18 °C (0 °F)\n");
  CHECK(sheet("recipe: Paste\nmeasures: British\nkeeps: 2 days chilled\ntake:\n  200 g butter\nmethod:\n  Beat [the butter].\n", std::nullopt, kitchen) ==
        "Larder fridge = 4 °C (39 °F)\n");
}

TEST_CASE("American figures for an American kitchen") {
  auto kitchen = std::make_shared<Kitchen>();
  kitchen->law = "US";
  CHECK(sheet(roast("  Rub [the butter] over [the chicken] and [roast 1 h 30 min at 200 °C].\n\nto keep:\n  [keep up to 2 days in the fridge].\n"), std::nullopt, kitchen) ==
        "Fridge = at most 41 °F (5 °C)\nKept hot, where it stands = at least 135 °F (57 °C)\n");
}

TEST_CASE("of two ways of a step the one that is shown") {
  const std::string text = roast("  by hand: Turn [the chicken] with [the butter] over coals, [roast 2 h], until the leg [reads 75 °C].\n\n"
                                 "  by machine: Turn it on the spit, [roast 1 h 30 min], until the breast [reads 74 °C].\n");
  CHECK(sheet(text, StepWay::by_hand) == "step 1: the leg = 75 °C (167 °F)\nKept hot, where it stands = at least 63 °C (145 °F)\n");
  CHECK(sheet(text, StepWay::by_machine) == "step 1: the breast = 74 °C (165 °F)\nKept hot, where it stands = at least 63 °C (145 °F)\n");
  CHECK(sheet(text) == "step 1: the leg = 75 °C (167 °F)\nstep 1: the breast = 74 °C (165 °F)\nKept hot, where it stands = at least 63 °C (145 °F)\n");
}

TEST_CASE("a page that asks for nothing has an empty sheet") {
  CHECK(sheet("recipe: Peas\nmeasures: British\ntake:\n  500 g peas\nmethod:\n  Boil [the peas] [5 min].\n") == "");
}
