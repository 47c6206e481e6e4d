#include "formula/label.hpp"

#include <vector>

#include "data/tables.hpp"
#include "measure/table_text.hpp"

namespace qtn {
namespace {

enum class Kind { household, ounce, fluid, metric, none };

struct Band {
  Kind kind;
  Fraction from;  // household: in teaspoons; else in the unit itself
  Fraction steps[2];
  UnitId unit;    // that the steps are of; of metric ones none, they stay what they are
  std::string_view source;
};

// A label's spoons to a spoon and to a cup; lost for what is no household measure.
Fraction teaspoons_in(UnitId id) {
  const CommonUnits& c = common();
  const std::string_view name = unit(id).name;
  if (id == c.cup || name == "US cup" || name == "US legal cup") return Fraction(48);
  if (id == c.tablespoon || name == "US tablespoon" || name == "label tablespoon") return Fraction(3);
  if (id == c.teaspoon || name == "US teaspoon" || name == "label teaspoon") return Fraction(1);
  return Fraction::lost();
}

Kind kind_of(UnitId id) {
  const CommonUnits& c = common();
  if (!teaspoons_in(id).is_lost()) return Kind::household;
  if (id == c.ounce) return Kind::ounce;
  if (id == c.fluid_ounce || unit(id).name == "US fluid ounce") return Kind::fluid;
  return id == c.gram || id == c.millilitre ? Kind::metric : Kind::none;
}

Kind kind_named(std::string_view name) {
  return name == "household" ? Kind::household : name == "ounce" ? Kind::ounce : name == "fluid" ? Kind::fluid : Kind::metric;
}

const std::vector<Band>& bands() {
  static const std::vector<Band> all = [] {
    std::vector<Band> made;
    table::each_row(data::label_rounding(), [&](const table::Row& row) {
      Band band{kind_named(row[0]), Fraction(0), {Fraction::lost(), Fraction::lost()}, kNoUnit, row[4]};
      std::string_view from = row[1], steps = row[2];
      band.from = table::number(table::take_word(from));
      if (band.kind == Kind::household) band.from *= teaspoons_in(unit_named(from));
      for (Fraction& step : band.steps) step = steps.empty() ? Fraction::lost() : table::number(table::take_word(steps));
      if (!row[3].empty()) band.unit = unit_named(row[3]);
      made.push_back(band);
    });
    return made;
  }();
  return all;
}

}  // namespace

OnLabel on_label(const Fraction& value, UnitId id) {
  OnLabel out;
  const Kind kind = kind_of(id);
  if (value.is_lost() || value.sign() < 0 || kind == Kind::none) return out;
  const bool household = kind == Kind::household;
  const Fraction size = household ? value * teaspoons_in(id) : value;
  for (const Band& band : bands()) {
    if (band.kind != kind || size < band.from) continue;
    const Fraction in_unit = household ? size / teaspoons_in(band.unit) : size;
    for (const Fraction& step : band.steps) {
      if (step.is_lost()) continue;
      const Fraction near = Fraction::of((in_unit / step).nearest(), 1) * step;
      const bool nearer = out.value.is_lost() || (near - in_unit).abs() < (out.value - in_unit).abs() ||
                          ((near - in_unit).abs() == (out.value - in_unit).abs() && near > out.value);
      if (nearer) out.value = near;
    }
    out.unit = band.unit == kNoUnit ? id : band.unit;
    out.source = band.source;
    break;
  }
  return out;
}

}  // namespace qtn
