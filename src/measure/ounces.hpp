// How many grams an author counts to the ounce. Print knows four ways (S4-70 to S4-73); each holds by itself, two in one
// recipe do not.
#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "measure/quantity.hpp"

namespace qtn {

enum class OunceOf : std::uint8_t { exact, g25, g30, g31 };  // 28.35 g, 25 g, 30 g, 31.25 g
inline constexpr int kOunces = 4;
std::string name_of(OunceOf ounce);  // "28.35 g"

// A set of them, one bit each.
using OunceSet = std::uint8_t;
inline constexpr OunceSet kAnyOunce = (1u << kOunces) - 1;
inline bool has(OunceSet set, OunceOf ounce) { return (unsigned{set} >> static_cast<unsigned>(ounce) & 1u) != 0; }
OunceOf first_of(OunceSet set);  // of a set that is not empty

// Which of them two statements of one weight can come from, when they were rounded as print rounds them: within 3 %, the
// grams to the nearest 5, or, where ounces follow grams, these to the nearest quarter. Empty where none fits, and kAnyOunce where the two are not grams beside ounces or one of
// them is a range or stated loosely.
OunceSet ounces_between(const Quantity& one, const Quantity& other);

// The way that most of these sets allow; the first of them in the order above where several do.
OunceOf most_of(const std::vector<OunceSet>& sets);

}  // namespace qtn
