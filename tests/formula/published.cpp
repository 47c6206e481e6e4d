// Check values of the kitchen formulas that others have published: every row of tests/published/formulas/*.tsv, in the
// columns of tests/measure/published.cpp. Inputs are a word and numbers, `F` and `lb` forms converted here:
//   water F 80 flour 65 room 75 friction 35      dough water in °F; `ferment 70` for a fourth temperature
//   ice W T D                                    of W at T °C for D °C; ice F W T D in °F; melting F, as °F of water
//   bought E Y · edible B Y · yield E B · portions A P
//   ppm CURE SHARE BASE · cure PPM SHARE BASE · salt SHARE BASE · share SALT BASE · salometer D · salt water SHARE W
//   thaw British|American|water KG low|high      in hours
//   holds round ACROSS DEEP | square | oblong     tins in inches, in US cups
//   over KIND PPM                                1 where the limit is passed
//   paste covers G MM · paste for AREA MM · widest AREA
// A sixth column begins with DISAGREE or SLIP and the figure that was not taken, then says why; that figure must differ
// from ours.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "formula/cure.hpp"
#include "formula/dough.hpp"
#include "formula/figures.hpp"
#include "formula/paste.hpp"
#include "formula/store.hpp"
#include "measure/convert.hpp"
#include "measure/table_text.hpp"
#include "measure/tin.hpp"

using namespace qtn;

namespace {

struct Words {
  explicit Words(std::string_view text) {
    while (!(text = table::trim(text)).empty()) all.push_back(table::take_word(text));
  }
  bool is(std::size_t i, std::string_view word) const { return i < all.size() && all[i] == word; }
  Fraction number(std::size_t i) const {
    if (i >= all.size()) return Fraction::lost();
    const bool minus = all[i].size() > 1 && all[i][0] == '-';
    const Fraction value = table::number(minus ? all[i].substr(1) : all[i]);
    return minus ? -value : value;
  }
  Fraction after(std::string_view word) const {
    for (std::size_t i = 0; i < all.size(); ++i)
      if (all[i] == word) return number(i + 1);
    return Fraction::lost();
  }
  std::vector<std::string_view> all;
};

Fraction celsius(const Fraction& fahrenheit) { return to_celsius(fahrenheit, common().fahrenheit); }

Fraction water(const Words& in) {
  DoughHeat heat{celsius(in.number(2)), celsius(in.after("flour")), celsius(in.after("room")),
                 in.after("friction") * Fraction::of(5, 9), {}};
  if (const Fraction ferment = in.after("ferment"); !ferment.is_lost()) heat.ferment = celsius(ferment);
  return from_celsius(water_for(heat), common().fahrenheit);
}

Fraction ice(const Words& in) {
  if (!in.is(1, "F")) return ice_in(in.number(1), in.number(2), in.number(3));
  return ice_in(in.number(2), celsius(in.number(3)), celsius(in.number(4)));
}

Fraction thawing(const Words& in) {
  const ThawPlace place = in.is(1, "water") ? ThawPlace::cold_water : ThawPlace::fridge;
  const Thawing time = thaw(in.number(2) * Fraction(1000), place, in.is(1, "American"));
  return (in.is(3, "low") ? time.low : time.high) / Fraction(60);
}

// round ACROSS DEEP, square SIDE DEEP, oblong A B DEEP, in inches.
TinSize tin(const Words& in) {
  const Fraction inch = Fraction::of(254, 10);
  TinSize out;
  const bool oblong = in.is(1, "oblong");
  out.shape = in.is(1, "round") ? TinShape::round : oblong ? TinShape::rectangle : TinShape::square;
  out.across = in.number(2) * inch;
  if (oblong) out.along = in.number(3) * inch;
  out.deep = in.number(oblong ? 4 : 3) * inch;
  return out;
}

Fraction over(const Words& in) {
  for (const CureLimit& limit : cure_limits()) {
    constexpr std::string_view kNames[] = {"minced", "steeped", "dry", "bacon-steeped", "bacon-dry", "chilled"};
    if (in.is(1, kNames[static_cast<std::size_t>(limit.kind)])) return Fraction(passes(limit, in.number(2)) ? 1 : 0);
  }
  return Fraction::lost();
}

Fraction work_out(const Words& in) {
  const Fraction a = in.number(1), b = in.number(2), c = in.number(3);
  if (in.is(0, "water")) return water(in);
  if (in.is(0, "ice")) return ice(in);
  if (in.is(0, "thaw")) return thawing(in);
  if (in.is(0, "over")) return over(in);
  if (in.is(0, "melting")) return kitchen_figure("ice melting").low * Fraction::of(9, 5);
  if (in.is(0, "bought")) return bought_for(a, b);
  if (in.is(0, "edible")) return edible_of(a, b);
  if (in.is(0, "yield")) return yield_of(a, b);
  if (in.is(0, "portions")) return portions_in(a, b);
  if (in.is(0, "ppm")) return nitrite_ppm(a, b, c);
  if (in.is(0, "cure")) return cure_for(a, b, c);
  if (in.is(0, "salt") && in.is(1, "water")) return salt_in_water(b, c);
  if (in.is(0, "salt")) return salt_for(a, b);
  if (in.is(0, "share")) return percents_of({a}, b)[0];
  if (in.is(0, "salometer")) return salometer_share(a);
  if (in.is(0, "holds")) return held_by(tin(in)) / size_of(unit_named("us cup"), Dialect::unstated);
  if (in.is(0, "widest")) return widest_round(a);
  if (in.is(0, "paste")) return in.is(1, "for") ? paste_for(b, c) : paste_covers(b, c);
  return Fraction::lost();
}

void check_row(const std::string& line) {
  CAPTURE(line);
  std::string_view rest = line;
  std::string_view columns[6];
  for (std::string_view& column : columns) column = table::take_before(rest, '\t');
  CHECK(!columns[4].empty());
  const Fraction found = work_out(Words(columns[1]));
  const Fraction expected = Words(columns[2]).number(0), allowed = table::number(columns[3]);
  REQUIRE_MESSAGE(!found.is_lost(), columns[1]);
  REQUIRE(!expected.is_lost());
  REQUIRE(!allowed.is_lost());
  CHECK_MESSAGE((found - expected).abs() <= allowed, columns[0], ": ", found.decimal(9), " is not ", columns[2]);
  if (columns[5].empty()) return;
  const Words remark(columns[5]);
  CHECK((remark.is(0, "SLIP") || remark.is(0, "DISAGREE")));
  REQUIRE(!remark.number(1).is_lost());
  CHECK_MESSAGE((found - remark.number(1)).abs() > allowed, columns[0], ": no longer differs from ", columns[5]);
}

}  // namespace

TEST_CASE("published check values of the kitchen formulas") {
  const std::filesystem::path folder = std::filesystem::path(QTN_SOURCE_DIR) / "tests" / "published" / "formulas";
  int rows = 0, slips = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    std::ifstream file(entry.path());
    for (std::string line; std::getline(file, line);) {
      if (line.empty() || line[0] == '#') continue;
      check_row(line);
      ++rows;
      slips += line.find("\tSLIP ") != std::string::npos ? 1 : 0;
    }
  }
  CHECK(rows >= 80);
  CHECK(slips >= 3);
}
