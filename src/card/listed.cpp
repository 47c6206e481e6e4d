#include "card/listed.hpp"

#include "measure/ladder.hpp"
#include "measure/money.hpp"

namespace qtn {

void SheetWriter::table(std::span<const Column> columns, const Rows& rows, bool last_is_total) {
  Grid grid;
  grid.last_is_total = last_is_total, grid.narrow = true;
  grid.rows.resize(rows.size());
  for (std::size_t i = 0; i < columns.size(); ++i) {
    bool says = i == 0;
    for (const auto& row : rows) says = says || !row[i].empty();
    if (!says) continue;
    grid.heads.push_back(caption(columns[i].head));
    grid.sums.push_back(columns[i].sum);
    for (std::size_t r = 0; r < rows.size(); ++r) grid.rows[r].push_back(rows[r][i]);
    grid.last_under = i + 1 == columns.size();
  }
  Section& section = card_.parts.back();
  if (section.grids.empty()) section.grids.first = static_cast<std::uint32_t>(card_.grids.size());
  ++section.grids.count;
  card_.grids.push_back(std::move(grid));
}

std::string in_words(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text;
}

std::string to_buy(const Purchase& line, const Kitchen* kitchen) {
  const Measure& measure = line.measure;
  if (measure.dimension == Dimension::count)
    return write_measure({Fraction::of(measure.amount.ceil(), 1), measure.dimension, measure.noun});
  if (measure.dimension != Dimension::mass && measure.dimension != Dimension::volume) return write_measure(measure);
  const Dialect dialect = kitchen != nullptr ? kitchen->dialect : Dialect::unstated;
  const System system = dialect == Dialect::american ? System::american : System::metric;
  const Ladder ladder = ladder_for(measure.dimension, system, dialect, line.spoonful);
  const Fraction finest = kitchen != nullptr ? kitchen->finest : Fraction(1);
  return write(rounded_up(round_on(ladder, measure.amount, Fraction::of(1, 20), dialect, finest)));
}

std::string say_price(const HousePrice& price, const Kitchen& kitchen) {
  const std::string money = write_money(price.money, kitchen.currency);
  if (price.pack.unit == kNoUnit && price.pack.low == Fraction(1)) return money + " each";
  if (price.loose) return money + " per " + std::string(write_unit(price.pack.unit, price.pack.low));
  return money + " per " + in_print(write_plain(price.pack));
}

std::string say_day(int day) { return write_wall(static_cast<Minute>(day) * 1440).substr(0, 10); }

Quantity quantity_of(const Measure& measure) {
  const UnitId unit = measure.dimension == Dimension::mass     ? common().gram
                      : measure.dimension == Dimension::volume ? common().millilitre
                                                               : measure.noun;
  return {measure.amount, measure.amount, unit, Manner::plain, false};
}

}  // namespace qtn
