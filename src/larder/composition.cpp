#include "larder/composition.hpp"

#include "data/tables.hpp"
#include "larder/figures.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

enum Cell : std::size_t { kName, kWater, kFat, kSugars, kSodium, kSource, kNote };

// In 100 g, to grams in one.
Fraction share(std::string_view cell) {
  return plain_number(cell) / Fraction(100);
}

// Labels count salt as two and a half times the sodium [EU1169, Annex I]. Sodium is in milligrams.
Fraction salt_share(std::string_view cell) {
  return cell == "salt" ? Fraction(1) : plain_number(cell) * Fraction::of(5, 2 * 1000 * 100);
}

class Table {
 public:
  Table() : rows_(Larder::standard().all().size()), listed_(rows_.size(), false) {
    const Larder& larder = Larder::standard();
    for (Rows rows(data::composition()); rows.next();) {
      const Food* const food = larder.find(rows[kName]);
      if (food == nullptr) continue;
      const std::size_t at = place(*food);
      rows_[at] = {share(rows[kWater]),       share(rows[kFat]), share(rows[kSugars]),
                   salt_share(rows[kSodium]), rows[kSource],     rows[kNote]};
      listed_[at] = true;
    }
  }
  const Composition* of(const Food& food) const {
    const std::size_t at = place(food);
    return at < rows_.size() && listed_[at] ? &rows_[at] : nullptr;
  }

 private:
  static std::size_t place(const Food& food) {
    return static_cast<std::size_t>(&food - Larder::standard().all().data());
  }
  std::vector<Composition> rows_;
  std::vector<bool> listed_;
};

}  // namespace

const Composition* composition_of(const Food& food) {
  static const Table table;
  return table.of(food);
}

}  // namespace qtn
