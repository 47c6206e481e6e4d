// The words and figures of the trade's table.
#include "card/ledger.hpp"

#include <doctest/doctest.h>

#include "adapt/adapt.hpp"
#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

const char* const kLoaf =
    "recipe: Loaf\nmakes: 1.7 kg\nmeasures: British\ntake: % of strong white flour\n  100 %  strong white flour\n"
    "  66.5 %  water\n  2 %  fine salt\n  1.5 %  fresh yeast\n";

const LedgerRow* row(const LedgerTable& table, std::string_view name) {
  for (const LedgerRow& one : table.rows)
    if (one.name == name) return &one;
  return nullptr;
}

}  // namespace

TEST_CASE("ledger: one number of places in a column") {
  const Checked c(kLoaf);
  const Ledger ledger = make_ledger(c.recipe);
  REQUIRE(ledger.tables.size() == 1);
  const LedgerTable& table = ledger.tables[0];
  CHECK(ledger.edition.empty());
  CHECK(table.title == "Formula");
  CHECK(table.base_name == "flour");
  CHECK(row(table, "strong white flour")->of_base.text == "100.0");
  CHECK(row(table, "water")->of_base.text == "66.5");
  CHECK(row(table, "strong white flour")->grams.text == "1000");
  CHECK(row(table, "fine salt")->grams.exact == Fraction(20));
  CHECK(table.together.grams.text == "1700");
  CHECK(table.together.of_base.text == "170.0");
  CHECK(table.together.of_whole.text == "100.00");
  REQUIRE(table.totals.size() == kInsides);
  CHECK(table.totals[0].name == "hydration");
  CHECK(table.totals[0].of_flour.text == "67.5");  // 66.5, and 69 in a hundred of the yeast
  CHECK(table.notes.empty());
}

TEST_CASE("ledger: another size") {
  const Checked c(kLoaf);
  const Ledger ledger = make_ledger(scale(c.recipe, Fraction::of(3, 2)));
  CHECK(ledger.edition == "1.5 times as written");
  CHECK(row(ledger.tables.at(0), "fine salt")->grams.exact == Fraction(30));
  CHECK(row(ledger.tables.at(0), "fine salt")->of_base.exact == Fraction(2));
}

TEST_CASE("ledger: what is left out is named once") {
  const Checked c(
      "recipe: Scones\nmeasures: British\ntake:\n  500 g  plain flour\n  100 g  butter\n  250 to 300 g  double cream\n"
      "  2  odd fruits\n         icing sugar, to taste\n");
  const Ledger ledger = make_ledger(c.recipe);
  const LedgerTable& table = ledger.tables.at(0);
  CHECK(table.totals[0].name == "hydration (in part)");
  CHECK(table.totals[0].left_out == std::vector<std::string>{"double cream"});
  CHECK(row(table, "odd fruits")->grams.text.empty());
  CHECK(table.notes == std::vector<std::string>{
                           "Left out of all of it, since nobody says what it weighs: odd fruits.",
                           "Counted at the middle of its range: double cream.",
                           "Without an amount: icing sugar.",
                           "Left out of the hydration, fat, sugars and salt, for want of a figure: double cream.",
                       });
}

TEST_CASE("ledger: a list of its own base has no per cent of the flour") {
  const Checked c(
      "recipe: Brine\nmeasures: British\ntake: % of [pork belly + water]\n  2 kg  pork belly\n  1 kg  water\n"
      "  3.5 %  fine salt\n");
  const Ledger ledger = make_ledger(c.recipe);
  const LedgerTable& table = ledger.tables.at(0);
  CHECK(table.base == FormulaBase::named);
  CHECK(table.base_name == "pork belly and water");
  CHECK(table.totals[0].name == "water (in part)");
  CHECK(table.totals[0].of_flour.text.empty());
}
