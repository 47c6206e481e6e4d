// Salt and curing salt in meat. Shares are fractions of 1, never bare per cents: 6.25 in the place of 6.25 % is a
// hundred-fold error. Weights are grams, on the green (raw, uncured) weight of the meat.
#pragma once
#include <span>
#include <string_view>
#include <vector>

#include "base/fraction.hpp"

namespace qtn {

// Parts per million of nitrite from so much cure that holds `share` of it; `base` is the meat, or meat and pickle.
Fraction nitrite_ppm(const Fraction& cure, const Fraction& share, const Fraction& base);
// So much cure brings the meat to so many parts per million.
Fraction cure_for(const Fraction& ppm, const Fraction& share, const Fraction& base);

enum class CureKind : std::uint8_t { minced, steeped, dry, bacon_steeped, bacon_dry, chilled };
struct CureLimit {
  CureKind kind;
  Fraction ppm;
  bool least = false;     // a least, not a most
  std::string_view what;  // "sausage and other minced meat"
  std::string_view source;
};
std::span<const CureLimit> cure_limits();
const CureLimit& cure_limit(CureKind kind);
// Past the limit? The limits are printed in whole ppm, so that is how they are compared: 156.25 stands for 156.
bool passes(const CureLimit& limit, const Fraction& ppm);

// Word lists of data/curing.txt, in lower case: what tells minced meat, bacon or a dry cure, what a raw meat is called,
// and what is not one after all ("beef stock").
struct CureWords {
  std::vector<std::string_view> minced, bacon, dry;  // in names and titles
  std::vector<std::string_view> minced_step, dry_step;
  std::vector<std::string_view> meat, not_meat, bare;
};
const CureWords& cure_words();

// Salt for a share of the base; the base is what it is reckoned on, itself not in it.
Fraction salt_for(const Fraction& share, const Fraction& base);
// The share of salt, by weight, in a brine of so many salometer degrees; lost() beyond saturated.
Fraction salometer_share(const Fraction& degrees);
// Salt to dissolve in so much water for a brine of that share of its whole weight.
Fraction salt_in_water(const Fraction& share, const Fraction& water);

}  // namespace qtn
