// The trade's table in its two outputs: columns stand, nothing in a name reaches the terminal or breaks the JSON.
#include "render/ledger.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "render/text_lines.hpp"

using namespace qtn;

namespace {

LedgerFigure figure(std::string text, Fraction exact) {
  return {std::move(text), exact};
}

Ledger sample() {
  Ledger ledger;
  ledger.title = "Loaf \x1b[31m \"red\"";
  LedgerTable table;
  table.title = "Formula";
  table.base = FormulaBase::flour;
  table.base_name = "flour";
  table.rows.push_back({"crème \x07 flour", figure("100.0", Fraction(100)), figure("100", Fraction(100)),
                        figure("66.67", Fraction::of(200, 3)), false});
  table.rows.push_back({"an ingredient with a name that is far too long for any column", figure("50.0", Fraction(50)),
                        figure("50", Fraction(50)), figure("33.33", Fraction::of(100, 3)), true});
  table.rows.push_back({"odd fruit", {}, {}, {}, false});
  table.together = {"together", figure("150.0", Fraction(150)), figure("150", Fraction(150)),
                    figure("100.00", Fraction(100)), false};
  table.totals.push_back({"hydration (in part)", figure("1.0", Fraction(1)), figure("1.0", Fraction(1)),
                          figure("0.7", Fraction::of(2, 3)), {"odd \"fruit\""}});
  table.notes = {"Left out: odd \"fruit\"."};
  ledger.tables.push_back(table);
  return ledger;
}

}  // namespace

TEST_CASE("ledger as text: figures end in one column, and no control character is printed") {
  std::string out;
  render_ledger_text(sample(), out);
  CHECK(out.find('\x1b') == std::string::npos);
  CHECK(out.find('\x07') == std::string::npos);
  const std::size_t ruled = out.find("  ---"), rule = out.find('\n', ruled) - ruled;
  std::size_t figures = 0;
  for (std::size_t at = 0; at < out.size();) {
    const std::size_t end = out.find('\n', at);
    const std::string line = out.substr(at, end - at);
    at = end + 1;
    if (!line.ends_with(" %")) continue;
    ++figures;
    CHECK_MESSAGE(width_of(line) == rule, line);
  }
  CHECK(figures == 4);
  CHECK(out.find("odd fruit") != std::string::npos);
  CHECK(out.find("   ?\n") != std::string::npos);  // nobody says what it weighs
}

TEST_CASE("ledger as JSON: read back, exact values beside the printed") {
  std::string out;
  render_ledger_json(sample(), out);
  const auto json = nlohmann::json::parse(out);
  CHECK(json["title"] == "Loaf \x1b[31m \"red\"");
  const auto& table = json["tables"][0];
  CHECK(table["base"] == "flour");
  CHECK(table["lines"][0]["ofWhole"]["exact"] == "200/3");
  CHECK(table["lines"][1]["taken"] == true);
  CHECK_FALSE(table["lines"][2].contains("grams"));
  CHECK(table["totals"][0]["leftOut"][0] == "odd \"fruit\"");
  CHECK(table["notes"][0] == "Left out: odd \"fruit\".");
}
