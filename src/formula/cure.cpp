#include "formula/cure.hpp"

#include "data/tables.hpp"
#include "formula/figures.hpp"
#include "measure/table_text.hpp"

namespace qtn {
namespace {

constexpr std::string_view kKinds[] = {"minced", "steeped", "dry", "bacon steeped", "bacon dry", "chilled"};

struct CureTable {
  std::vector<CureLimit> limits;  // in the order of CureKind
  CureWords words;
};

void add_words(std::vector<std::string_view>& to, std::string_view list) {
  while (!list.empty()) to.push_back(table::take_before(list, ','));
}

std::vector<std::string_view>* list_for(CureWords& words, std::string_view row, std::string_view kind) {
  if (row == "words") return kind == "minced" ? &words.minced : kind == "bacon" ? &words.bacon : &words.dry;
  if (row == "steps") return kind == "minced" ? &words.minced_step : &words.dry_step;
  return row == "meat" ? &words.meat : row == "not" ? &words.not_meat : row == "bare" ? &words.bare : nullptr;
}

CureTable read_table() {
  CureTable made;
  for (std::size_t kind = 0; kind < std::size(kKinds); ++kind)
    made.limits.push_back({static_cast<CureKind>(kind), Fraction::lost(), false, "", ""});
  table::each_row(data::curing(), [&](const table::Row& row) {
    if (row[0] == "limit") {
      for (std::size_t kind = 0; kind < std::size(kKinds); ++kind)
        if (row[1] == kKinds[kind])
          made.limits[kind] = {static_cast<CureKind>(kind), table::number(row[2]), row[3] == "least", row[4], row[5]};
    } else if (auto* const list = list_for(made.words, row[0], row[1]); list != nullptr) {
      add_words(*list, row[row.count - 1]);
    }
  });
  return made;
}

const CureTable& cure_table() {
  static const CureTable table = read_table();
  return table;
}

Fraction million() { return Fraction(1'000'000); }

}  // namespace

Fraction nitrite_ppm(const Fraction& cure, const Fraction& share, const Fraction& base) {
  return cure * share * million() / base;
}

Fraction cure_for(const Fraction& ppm, const Fraction& share, const Fraction& base) {
  return ppm * base / (share * million());
}

std::span<const CureLimit> cure_limits() { return cure_table().limits; }
const CureLimit& cure_limit(CureKind kind) { return cure_table().limits[static_cast<std::size_t>(kind)]; }

bool passes(const CureLimit& limit, const Fraction& ppm) {
  if (ppm.is_lost()) return false;
  const Fraction whole(static_cast<std::int64_t>(ppm.nearest()));
  return limit.least ? whole < limit.ppm : whole > limit.ppm;
}

const CureWords& cure_words() { return cure_table().words; }

Fraction salt_for(const Fraction& share, const Fraction& base) { return share * base; }

Fraction salometer_share(const Fraction& degrees) {
  if (degrees < Fraction(0) || degrees > Fraction(100)) return Fraction::lost();
  return degrees * kitchen_figure("salometer degree").low;
}

Fraction salt_in_water(const Fraction& share, const Fraction& water) { return water * share / (Fraction(1) - share); }

}  // namespace qtn
