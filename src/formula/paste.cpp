#include "formula/paste.hpp"

#include "formula/figures.hpp"
#include "measure/tin.hpp"

namespace qtn {
namespace {

// Grams in a cubic millimetre.
Fraction density() { return kitchen_figure("paste density").low / Fraction(1000); }

Fraction round_area(std::int64_t across) {
  TinSize round;
  round.shape = TinShape::round, round.across = Fraction(across);
  return top_of(round);
}

}  // namespace

Fraction paste_covers(const Fraction& grams, const Fraction& thick) { return grams / density() / thick; }
Fraction paste_for(const Fraction& area, const Fraction& thick) { return area * thick * density(); }
Fraction paste_thickness(const Fraction& grams, const Fraction& area) { return grams / density() / area; }

Fraction widest_round(const Fraction& area) {
  if (area.is_lost() || area.sign() <= 0) return Fraction::lost();
  std::int64_t low = 0, high = 1'000'000;  // a kilometre of pastry is enough
  while (low + 1 < high) {
    const std::int64_t middle = low + (high - low) / 2;
    (round_area(middle) <= area ? low : high) = middle;
  }
  return Fraction(low);
}

}  // namespace qtn
