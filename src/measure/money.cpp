#include "measure/money.hpp"

#include <vector>

#include "data/tables.hpp"
#include "measure/table_text.hpp"

namespace qtn {
namespace {

struct Currency {
  std::string_view code, sign;
  int digits = 2;
};

const std::vector<Currency>& currencies() {
  static const std::vector<Currency> all = [] {
    std::vector<Currency> made;
    table::each_row(data::currencies(), [&](const table::Row& row) {
      made.push_back({row[0], row[1] == "-" ? std::string_view() : row[1], static_cast<int>(table::number(row[2]).floor())});
    });
    return made;
  }();
  return all;
}

bool same_code(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if ((a[i] | 32) != (b[i] | 32)) return false;
  return true;
}

const Currency* find(std::string_view code) {
  for (const Currency& one : currencies())
    if (same_code(one.code, code)) return &one;
  return nullptr;
}

}  // namespace

int money_digits(std::string_view code) {
  const Currency* const one = find(code);
  return one == nullptr ? 2 : one->digits;
}

std::string_view money_sign(std::string_view code) {
  const Currency* const one = find(code);
  return one == nullptr ? std::string_view() : one->sign;
}

bool is_sign_of(std::string_view sign, std::string_view code) { return !sign.empty() && money_sign(code) == sign; }

std::string money_number(const Fraction& value, std::string_view code) {
  if (value.is_lost()) return {};
  const int digits = money_digits(code);
  std::string text = value.decimal(digits);
  if (digits == 0) return text;
  std::size_t point = text.find('.');
  if (point == std::string::npos) point = text.size(), text += '.';
  text.append(static_cast<std::size_t>(digits) - (text.size() - point - 1), '0');
  return text;
}

std::string write_money(const Fraction& value, std::string_view code) {
  const std::string number = money_number(value, code);
  if (number.empty() || code.empty()) return number;
  const std::string_view sign = money_sign(code);
  return sign.empty() ? number + " " + std::string(code) : std::string(sign) + number;
}

}  // namespace qtn
