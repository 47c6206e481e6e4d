#include "recipe/formula_ranges.hpp"

#include <algorithm>
#include <iterator>

#include "data/tables.hpp"
#include "larder/figures.hpp"
#include "words/fold.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

enum Cell : std::size_t { kKind, kKnownBy, kOf, kUsual, kLeast, kMost, kSource };

Fraction share(std::string_view cell) {
  return plain_number(cell) / Fraction(100);
}

FormulaRange range_of(const Rows& row) {
  constexpr std::string_view kOfWords[] = {"water", "fat", "sugars", "salt", "yeast", "eggs"};
  FormulaRange out;
  out.kind = row[kKind];
  for (std::string_view rest = row[kKnownBy]; !rest.empty();) {
    const std::string_view mark = next_item(rest, ',');
    if (mark == "yeast") out.yeast = true;
    if (mark.starts_with("flour ")) out.flour = share(mark.substr(6));
    if (mark.starts_with('"')) out.words = fold_name(mark.substr(1, mark.size() - 2));
  }
  out.of_word = row[kOf];
  const auto of = std::find(std::begin(kOfWords), std::end(kOfWords), row[kOf]);
  out.of = static_cast<Measured>(std::distance(std::begin(kOfWords), of));
  out.usual = share(row[kUsual]), out.least = share(row[kLeast]), out.most = share(row[kMost]);
  out.source = row[kSource];
  return out;
}

}  // namespace

const std::vector<FormulaRange>& formula_ranges() {
  static const std::vector<FormulaRange> all = [] {
    std::vector<FormulaRange> out;
    for (Rows rows(data::formula_ranges()); rows.next();) out.push_back(range_of(rows));
    return out;
  }();
  return all;
}

}  // namespace qtn
