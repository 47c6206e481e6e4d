// Costs and orders that others have worked out: every row of tests/published/order/*.tsv. Inputs read as
//   cost PRICES | LINES        what a recipe of these lines costs at these prices, parted by `;`
//   packs PRICE | LINE         how many packs are bought
//   order N | LINE in UNIT     what is bought for N times the line
//   price C serves N at S %    the price of a portion whose food is that share of it
//   within P at S %            what the food may cost at a price
//   allow S % on C             a cost with an allowance
// A sixth column begins with DISAGREE and the figure that was not taken, which must differ from ours.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

#include "formula/price.hpp"
#include "measure/table_text.hpp"
#include "order/ordered.hpp"

using namespace qtn;

namespace {

std::string lines_of(std::string_view parted) {
  std::string out;
  while (!parted.empty()) {
    const std::string_view one = table::take_before(parted, ';');
    out += (out.empty() ? "" : "\n  ") + std::string(one);
  }
  return out;
}

Fraction percent(std::string_view text) { return table::number(table::trim(text.substr(0, text.find('%')))) / Fraction(100); }

struct PublishedCost {
  std::string_view cells[6];
};

Fraction answer(std::string_view input) {
  const std::string_view verb = table::take_word(input);
  if (verb == "within" || verb == "price" || verb == "allow") {
    const std::string_view first = table::take_word(input);
    if (verb == "allow") {
      const std::size_t on = input.find("on ");
      return with_allowance(table::number(table::trim(input.substr(on + 3))), percent(first));
    }
    const Fraction share = percent(input.substr(input.find("at ") + 3));
    if (verb == "within") return cost_within(table::number(first), share);
    std::string_view rest = input.substr(input.find("serves ") + 7);
    return price_for(table::number(first) / table::number(table::take_word(rest)), share);
  }
  std::string_view behind = input;
  const std::string_view before = table::take_before(behind, '|');
  if (verb == "order") {
    const std::size_t in = behind.rfind(" in ");
    const UnitId unit = unit_named(table::trim(behind.substr(in + 4)));
    const Ordered one({}, list(std::string(table::trim(behind.substr(0, in)))), table::number(before));
    REQUIRE_MESSAGE(!one.report.has_errors(), input);
    return one.bought().deliveries.at(0).lines.at(0).measure.amount / size_of(unit, Dialect::british);
  }
  const Ordered one("currency: USD\nmeasures: British\nprices:\n  " + lines_of(before) + "\n", list(lines_of(behind)));
  REQUIRE_MESSAGE(!one.report.has_errors(), input);
  if (verb == "packs") return one.bought().deliveries.at(0).lines.at(0).packs;
  CHECK_MESSAGE(one.costs().no_price.empty(), input);
  return one.costs().cost;
}

}  // namespace

TEST_CASE("costs and orders in print") {
  int rows = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(QTN_SOURCE_DIR) / "tests/published/order")) {
    std::ifstream file(entry.path());
    for (std::string line; std::getline(file, line);) {
      if (line.empty() || line[0] == '#') continue;
      ++rows;
      std::string_view rest = line;
      PublishedCost row;
      for (std::string_view& cell : row.cells) cell = table::take_before(rest, '\t');
      INFO(line);
      const Fraction got = answer(row.cells[1]), expected = table::number(row.cells[2]), room = table::number(row.cells[3]);
      CHECK_MESSAGE((got - expected).abs() <= room, got.decimal(6));
      CHECK_FALSE(row.cells[4].empty());
      if (!row.cells[5].starts_with("DISAGREE")) continue;
      std::string_view remark = row.cells[5];
      table::take_word(remark);
      const Fraction other = table::number(table::take_word(remark));
      CHECK_FALSE(other.is_lost());
      CHECK((got - other).abs() > Fraction::of(1, 1000));
    }
  }
  CHECK(rows >= 38);
}
