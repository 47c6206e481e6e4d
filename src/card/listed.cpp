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

namespace {

// On the steps of what the house measures with.
Rounded on_ladder(const Measure& measure, bool spoonful, const Kitchen* kitchen, const Fraction& tolerance) {
  const Dialect dialect = kitchen != nullptr ? kitchen->dialect : Dialect::unstated;
  const System system = dialect == Dialect::american ? System::american : System::metric;
  const Fraction finest = kitchen != nullptr ? kitchen->finest : Fraction(1);
  return round_on(ladder_for(measure.dimension, system, dialect, spoonful), measure.amount, tolerance, dialect, finest);
}
bool is_weighed_or_poured(const Measure& measure) { return measure.dimension == Dimension::mass || measure.dimension == Dimension::volume; }

}  // namespace

std::string to_buy(const Purchase& line, const Kitchen* kitchen) {
  const Measure& measure = line.measure;
  if (measure.dimension == Dimension::count)
    return write_measure({Fraction::of(measure.amount.ceil(), 1), measure.dimension, measure.noun});
  return is_weighed_or_poured(measure) ? write(rounded_up(on_ladder(measure, line.spoonful, kitchen, Fraction::of(1, 20)))) : write_measure(measure);
}

std::string in_house(const Measure& measure, bool spoonful, const Kitchen* kitchen) {
  const bool american = kitchen != nullptr && kitchen->dialect == Dialect::american;
  const bool spoons = spoonful && measure.dimension == Dimension::volume;
  if (measure.amount.is_lost() || measure.amount.is_zero() || !is_weighed_or_poured(measure) || !(american || spoons)) return write_measure(measure);
  return write(on_ladder(measure, spoonful, kitchen, Fraction::of(1, 50)));
}

std::string say_price(const HousePrice& price, const Kitchen& kitchen) {
  const std::string money = write_money(price.money, kitchen.currency);
  if (price.pack.unit == kNoUnit && price.pack.low == Fraction(1)) return money + " each";
  const bool one_thing = price.pack.dimension() == Dimension::count && price.pack.low == Fraction(1);
  if (price.loose || one_thing) return money + " per " + std::string(write_unit(price.pack.unit, price.pack.low));
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
