#include "formula/figures.hpp"

#include <vector>

#include "data/tables.hpp"
#include "measure/table_text.hpp"

namespace qtn {
namespace {

const std::vector<KitchenFigure>& figures() {
  static const std::vector<KitchenFigure> table = [] {
    std::vector<KitchenFigure> made;
    table::each_row(data::formulas(), [&](const table::Row& row) {
      const Fraction low = table::number(row[1]), high = table::number(row[2]);
      made.push_back({row[0], low, high.is_lost() ? low : high, row[3], row[3].substr(0, 11) == "from memory"});
    });
    return made;
  }();
  return table;
}

}  // namespace

const KitchenFigure& kitchen_figure(std::string_view name) {
  static const KitchenFigure none{"", Fraction::lost(), Fraction::lost(), "", false};
  for (const KitchenFigure& one : figures())
    if (one.name == name) return one;
  return none;
}

}  // namespace qtn
