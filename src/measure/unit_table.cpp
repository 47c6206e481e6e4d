#include "measure/unit_table.hpp"

#include <algorithm>

#include "data/tables.hpp"
#include "measure/table_text.hpp"

namespace qtn {
namespace {

constexpr std::string_view kDimensionWords[] = {"ratio", "mass",        "volume",     "count",    "length",
                                                "area",  "temperature", "difference", "duration", "money"};
constexpr std::string_view kDialectWords[kDialects] = {"unstated", "british", "american", "australian"};

Dimension dimension_named(std::string_view word) {
  const auto* const found = std::find(std::begin(kDimensionWords), std::end(kDimensionWords), word);
  if (found == std::end(kDimensionWords)) return Dimension::count;
  return static_cast<Dimension>(found - std::begin(kDimensionWords));
}

// Takes a dialect's word off the front of a size; -1 when the size is everybody's.
int take_dialect(std::string_view& text) {
  std::string_view rest = text;
  const std::string_view word = table::take_word(rest);
  for (int d = 0; d < kDialects; ++d) {
    if (word != kDialectWords[d]) continue;
    text = rest;
    return d;
  }
  return -1;
}

// Sizes of one row: "1/16 pound", "british 1 metric cup; american 1 US cup", "1/8 teaspoon; unstated …".
void read_sizes(std::string_view text, const UnitTable& so_far, Fraction (&size)[kDialects]) {
  for (Fraction& each : size) each = Fraction::lost();
  bool unstated = false;
  while (!text.empty()) {
    std::string_view clause = table::take_before(text, ';');
    const int only = take_dialect(clause);
    const Fraction times = table::number(table::take_word(clause));
    const Unit* const of = clause.empty() ? nullptr : &so_far.units[so_far.by_name(clause)];
    for (int d = 0; d < kDialects; ++d) {
      if (only < 0 || only == d) size[d] = of != nullptr ? times * of->size[d] : times;
    }
    unstated = unstated || only <= 0;
  }
  // Dialects that agree leave nothing to be stated.
  if (!unstated && size[1] == size[2] && size[2] == size[3]) size[0] = size[1];
}

Unit read_unit(const table::Row& row, const UnitTable& so_far) {
  Unit made;
  made.name = row[0];
  std::string_view symbols = row[1];
  made.symbol = table::take_before(symbols, ',');
  made.symbols = symbols.empty() ? made.symbol : table::trim(symbols);
  made.dimension = dimension_named(row[2]);
  read_sizes(row[3], so_far, made.size);
  std::string_view flags = row[4];
  while (!flags.empty()) {
    const std::string_view flag = table::take_before(flags, ',');
    made.counted = made.counted || flag == "counted";
    made.informal = made.informal || flag == "informal";
    made.decimal = made.decimal || flag == "decimal";
  }
  made.source = row[6];
  return made;
}

UnitTable read_table() {
  UnitTable made;
  made.units.reserve(160);
  made.words.reserve(512);
  table::each_row(data::units(), [&](const table::Row& row) {
    const UnitId id = static_cast<UnitId>(made.units.size());
    made.units.push_back(read_unit(row, made));
    std::string_view words = row[5];
    while (!words.empty()) made.words.push_back({table::take_before(words, ','), id});
  });
  std::sort(made.words.begin(), made.words.end(), [](const UnitWord& a, const UnitWord& b) { return a.text < b.text; });
  return made;
}

}  // namespace

UnitId UnitTable::by_word(std::string_view folded) const {
  const auto at = std::lower_bound(words.begin(), words.end(), folded,
                                   [](const UnitWord& word, std::string_view text) { return word.text < text; });
  return at != words.end() && at->text == folded ? at->unit : kNoUnit;
}

UnitId UnitTable::by_name(std::string_view name) const {
  for (std::size_t i = 0; i < units.size(); ++i) {
    if (units[i].name == name) return static_cast<UnitId>(i);
  }
  return kNoUnit;
}

const UnitTable& unit_table() {
  static const UnitTable table = read_table();
  return table;
}

}  // namespace qtn
