// Money: an exact number of a currency, written once with the digits that the currency has.
#pragma once
#include <string>
#include <string_view>

#include "base/fraction.hpp"

namespace qtn {

// Digits behind the point: 2 for GBP, 0 for JPY; 2 where the code is not in data/currencies.txt.
int money_digits(std::string_view code);
// "£", "€"; empty where the currency has none here.
std::string_view money_sign(std::string_view code);
// Does this sign stand for that currency? "$" does for several.
bool is_sign_of(std::string_view sign, std::string_view code);
// "£1.95", "1.95 CHF"; without a code the bare number. Rounded half up, once, here.
std::string write_money(const Fraction& value, std::string_view code);
// The number alone: "1.95".
std::string money_number(const Fraction& value, std::string_view code);

}  // namespace qtn
