// Rounding by the published school-meal guide, a step for each size: data/standard_rounding.txt.
#include <vector>

#include "data/tables.hpp"
#include "measure/ladder.hpp"
#include "measure/ladder_table.hpp"
#include "measure/table_text.hpp"
#include "measure/unit_table.hpp"

namespace qtn {
namespace {

struct Band {
  Fraction limit = Fraction::lost();  // lost: all above
  bool with_limit = false;
  Fraction step, ratio_step;
};
struct Bands {
  std::vector<Band> weight, measure;
};

// "1/4 ounce" in the base unit; cups and spoons are American, as the guide is.
Fraction size(std::string_view text) {
  const Fraction number = table::number(table::take_word(text));
  return number * size_of(unit_table().by_name(text), Dialect::american);
}

Band read_band(const table::Row& row) {
  Band band;
  std::string_view sizes = row[1];
  const std::string_view word = table::take_word(sizes);
  if (word != "above") band.limit = size(sizes);
  band.with_limit = word == "to";
  band.step = size(row[2]);
  band.ratio_step = row[3].empty() ? band.step : size(row[3]);
  return band;
}

const Bands& bands() {
  static const Bands all = [] {
    Bands made;
    table::each_row(data::standard_rounding(), [&](const table::Row& row) {
      (row[0] == "weight" ? made.weight : made.measure).push_back(read_band(row));
    });
    return made;
  }();
  return all;
}

bool within(const Band& band, const Fraction& size) {
  return band.limit.is_lost() || size < band.limit || (band.with_limit && size == band.limit);
}

}  // namespace

Fraction standard_step(Ladder ladder, const Fraction& exact, bool ratio) {
  if (ladder != Ladder::ounces && ladder != Ladder::cups) return Fraction::lost();
  for (const Band& band : ladder == Ladder::ounces ? bands().weight : bands().measure)
    if (within(band, exact.abs())) return ratio ? band.ratio_step : band.step;
  return Fraction::lost();
}

Rounded round_standard(Ladder ladder, const Fraction& exact, bool ratio) {
  Rounded r;
  r.ladder = ladder, r.dialect = Dialect::american;
  r.exact = r.shown = exact;
  r.rung = kByTable, r.ratio = ratio;
  const Fraction step = standard_step(ladder, exact, ratio);
  if (exact.is_lost() || step.is_lost() || exact.is_zero()) return r;
  r.shown = Fraction::of((exact / step).nearest(), 1) * step;
  if (r.shown.is_zero()) r.shown = step;  // never down to nothing
  return r;
}

}  // namespace qtn
