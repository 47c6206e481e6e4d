// Check values that others have published: every row of tests/published/*.tsv, but for files that begin with `# Read by`
// and name another test. Columns, parted by tabs: id, input, expected, tolerance (absolute; 0 is exact), source. Inputs
// read as
//   3 US cup in ml             a conversion; "American: 1 pint in ml" says whose pint
//   factor 25 -> 60            new over old, each a product: "factor 100 x 3.49 -> 80 x 3.49"
//   2 lb times 2.4 in lb       an amount scaled
//   standard 9.13 ounce        rounded by the school-meal guide, in the unit given; "standard ratio" for baked goods
//   round 8 -> square 10       area of a tin over another's; "oblong 9 x 13"
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "measure/convert.hpp"
#include "measure/ladder.hpp"
#include "measure/table_text.hpp"

using namespace qtn;

namespace {

// "1 1/2 lb" leaves " lb".
Fraction take_amount(std::string_view& text) {
  Fraction sum(0);
  bool any = false;
  while (true) {
    std::string_view rest = text;
    std::string_view word = table::take_word(rest);
    const bool minus = !word.empty() && word[0] == '-';
    const Fraction value = table::number(minus ? word.substr(1) : word);
    if (value.is_lost()) break;
    sum += minus ? -value : value;
    any = true;
    text = rest;
  }
  return any ? sum : Fraction::lost();
}

bool take(std::string_view& text, std::string_view front) {
  if (text.substr(0, front.size()) != front) return false;
  text = table::trim(text.substr(front.size()));
  return true;
}

// Cuts `text` at `mark`; what stands before it is returned.
std::string_view cut_at(std::string_view& text, std::string_view mark) {
  const std::size_t at = text.find(mark);
  const std::string_view front = table::trim(text.substr(0, at));
  text = at == std::string_view::npos ? std::string_view() : table::trim(text.substr(at + mark.size()));
  return front;
}

Dialect take_dialect(std::string_view& text) {
  if (take(text, "British:")) return Dialect::british;
  if (take(text, "American:")) return Dialect::american;
  if (take(text, "Australian:")) return Dialect::australian;
  return Dialect::unstated;
}

Fraction product(std::string_view text) {
  Fraction made(1);
  while (!text.empty()) {
    std::string_view one = cut_at(text, " x ");
    made *= take_amount(one);
  }
  return made;
}

Fraction area(std::string_view tin) {
  const bool round = take(tin, "round"), square = take(tin, "square");
  if (!round && !square) return take(tin, "oblong") ? product(tin) : Fraction::lost();
  const Fraction side = product(tin);
  return side * side * (round ? Fraction::of(355, 4 * 113) : Fraction(1));
}

Fraction by_guide(std::string_view text) {
  const bool ratio = take(text, "ratio");
  const Fraction amount = take_amount(text);
  const UnitId id = unit_named(text);
  if (id == kNoUnit) return Fraction::lost();
  const Fraction size = size_of(id, Dialect::american);
  const bool weight = unit(id).dimension == Dimension::mass;
  return round_standard(weight ? Ladder::ounces : Ladder::cups, amount * size, ratio).shown / size;
}

Fraction work_out(std::string_view text) {
  if (take(text, "standard")) return by_guide(text);
  const Dialect dialect = take_dialect(text);
  if (take(text, "factor")) {
    const Fraction before = product(cut_at(text, "->"));
    return product(text) / before;
  }
  if (text.find("->") != std::string_view::npos) {
    const Fraction before = area(cut_at(text, "->"));
    return area(text) / before;
  }
  std::string_view from = cut_at(text, " in ");
  const UnitId to = unit_named(text);
  Fraction amount = take_amount(from);
  std::string_view times = from;
  const UnitId unit = unit_named(cut_at(times, " times "));
  if (!times.empty()) amount *= take_amount(times);
  if (unit == kNoUnit || to == kNoUnit) return Fraction::lost();
  return convert(amount, unit, dialect, to, dialect, Fraction::lost(), Fraction::lost()).value;
}

void check_row(const std::string& line) {
  CAPTURE(line);
  std::string_view rest = line;
  std::string_view columns[5];
  for (std::string_view& column : columns) column = table::take_before(rest, '\t');
  CHECK(!columns[0].empty());
  CHECK(!columns[4].empty());
  const Fraction found = work_out(columns[1]);
  std::string_view expected_text = columns[2];
  const Fraction expected = take_amount(expected_text), allowed = table::number(columns[3]);
  REQUIRE_MESSAGE(!found.is_lost(), columns[1]);
  REQUIRE(!expected.is_lost());
  REQUIRE(!allowed.is_lost());
  CHECK_MESSAGE((found - expected).abs() <= allowed, columns[0], ": ", found.decimal(9), " is not ", columns[2]);
}

}  // namespace

TEST_CASE("published check values") {
  const std::filesystem::path folder = std::filesystem::path(QTN_SOURCE_DIR) / "tests" / "published";
  std::map<std::string, int> rows;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() != ".tsv") continue;
    std::ifstream file(entry.path());
    for (std::string line; std::getline(file, line);) {
      if (line.starts_with("# Read by ")) break;  // rows of another form, for another test
      if (line.empty() || line[0] == '#') continue;
      check_row(line);
      ++rows[entry.path().stem().string()];
    }
  }
  CHECK(rows.size() >= 4);
  CHECK(rows["units"] >= 140);
  CHECK(rows["heat"] >= 50);
  CHECK(rows["scaling"] >= 45);
  CHECK(rows["tins"] >= 10);
}
