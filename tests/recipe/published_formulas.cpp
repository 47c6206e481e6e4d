// Bakers' formulas that others have published: every row of tests/published/formulas.tsv. Its head tells the columns.
#include <doctest/doctest.h>

#include <fstream>
#include <string>
#include <vector>

#include "measure/table_text.hpp"
#include "recipe/formula.hpp"
#include "tests/files.hpp"
#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

std::string_view cut(std::string_view& text, std::string_view mark) {
  const std::size_t at = text.find(mark);
  const std::string_view front = table::trim(text.substr(0, at));
  text = at == std::string_view::npos ? std::string_view() : table::trim(text.substr(at + mark.size()));
  return front;
}

std::string recipe_of(std::string_view& input) {
  const std::string_view makes = cut(input, "|"), head = cut(input, "|");
  std::string text = "recipe: Published\n" + (makes.empty() ? "" : "makes: " + std::string(makes) + "\n");
  text += "measures: American\ntake: " + std::string(head) + "\n";
  for (std::string_view lines = cut(input, "|"); !lines.empty();) text += "  " + std::string(cut(lines, ";")) + "\n";
  return text;
}

Fraction weight(const Formula& formula, std::string_view name) {
  if (name == "sum") return formula.whole;
  for (const FormulaLine& line : formula.lines)
    if (line.name == name) return line.grams;
  return Fraction::lost();
}

Fraction answer(const Checked& checked, std::string_view asked) {
  if (std::string_view code = asked; cut(code, "notes of").empty() && !code.empty()) {
    int notes = 0;
    for (const Diagnostic& one : checked.report.list()) notes += row(one.code).code == code ? 1 : 0;
    return Fraction(notes);
  }
  const std::vector<Formula> all = formulas_of(checked.recipe);
  if (all.size() != 1) return Fraction::lost();
  std::string_view unit = asked;
  if (const std::string_view name = cut(unit, " in "); !unit.empty())
    return weight(all[0], name) / size_of(unit_named(unit), Dialect::american);
  return weight(all[0], cut(asked, " of flour")) / all[0].flour * Fraction(100);
}

void check_row(std::string_view rest) {
  std::string_view columns[5];
  for (std::string_view& column : columns) column = table::take_before(rest, '\t');
  INFO(std::string(columns[0]) << " " << std::string(columns[1]));
  REQUIRE(!columns[4].empty());
  std::string_view asked = columns[1];
  const Checked checked(recipe_of(asked));
  REQUIRE(checked.report.errors() == 0);
  const Fraction found = answer(checked, asked), printed = table::number(columns[2]);
  std::string_view allowed = columns[3];
  const bool slip = allowed.starts_with("not ");
  if (slip) allowed.remove_prefix(4);
  REQUIRE(!found.is_lost());
  REQUIRE(!printed.is_lost());
  const Fraction off = (found - printed).abs(), limit = table::number(allowed);
  CHECK_MESSAGE((slip ? off >= limit : off <= limit), found.decimal(6), " beside ", columns[2]);
}

}  // namespace

TEST_CASE("published formulas") {
  std::ifstream file(tests::root() / "tests/published/formulas.tsv");
  int rows = 0;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    check_row(line);
    ++rows;
  }
  CHECK(rows >= 65);
}
