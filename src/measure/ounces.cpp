#include "measure/ounces.hpp"

#include <algorithm>

namespace qtn {
namespace {

const Fraction& grams_of(OunceOf ounce) {
  static const Fraction kGrams[kOunces] = {size_of(common().ounce, Dialect::british), Fraction(25), Fraction(30), Fraction::of(125, 4)};
  return kGrams[static_cast<std::size_t>(ounce)];
}

bool is_plain(const Quantity& amount) {
  return !amount.is_lost() && !amount.is_range() && (amount.manner == Manner::plain || amount.manner == Manner::exactly);
}
bool is_ounces(const Quantity& amount) { return amount.unit == common().ounce || amount.unit == common().pound; }
bool is_grams(const Quantity& amount) { return amount.dimension() == Dimension::mass && is_decimal(amount.unit); }

bool fits(const Fraction& grams, const Fraction& ounces, const Fraction& of, bool ounces_follow) {
  const Fraction by_rule = ounces * of, off = (grams - by_rule).abs();
  if (off <= by_rule * Fraction::of(3, 100)) return true;
  if ((grams / Fraction(5)).is_whole() && off <= Fraction::of(5, 2)) return true;
  // Worked out from the grams: 40 g is 1 1/2 oz, to the nearest quarter.
  return ounces_follow && (ounces * Fraction(4)).is_whole() && off <= of * Fraction::of(1, 8) && off <= grams * Fraction::of(1, 10);
}

}  // namespace

std::string name_of(OunceOf ounce) { return grams_of(ounce).decimal(2) + " g"; }

OunceOf first_of(OunceSet set) {
  for (int i = 0; i < kOunces; ++i)
    if (has(set, static_cast<OunceOf>(i))) return static_cast<OunceOf>(i);
  return OunceOf::exact;
}

OunceSet ounces_between(const Quantity& one, const Quantity& other) {
  const Quantity& metric = is_grams(one) ? one : other;
  const Quantity& pounds = is_grams(one) ? other : one;
  if (!is_grams(metric) || !is_ounces(pounds) || !is_plain(one) || !is_plain(other)) return kAnyOunce;
  const Fraction grams = in_base(metric, Dialect::british).low;
  const Fraction ounces = in_base(pounds, Dialect::british).low / grams_of(OunceOf::exact);
  OunceSet set = 0;
  for (int i = 0; i < kOunces; ++i)
    if (fits(grams, ounces, grams_of(static_cast<OunceOf>(i)), is_grams(one))) set = static_cast<OunceSet>(unsigned{set} | 1u << i);
  return set;
}

OunceOf most_of(const std::vector<OunceSet>& sets) {
  OunceOf best = OunceOf::exact;
  std::ptrdiff_t most = -1;
  for (int i = 0; i < kOunces; ++i) {
    const auto one = static_cast<OunceOf>(i);
    const auto count = std::count_if(sets.begin(), sets.end(), [&](OunceSet set) { return has(set, one); });
    if (count > most) most = count, best = one;
  }
  return best;
}

}  // namespace qtn
