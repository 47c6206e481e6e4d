// Numbers and quantities as text: plainly, as a cook types them, or prettily, as a card shows them.
#include <iterator>

#include "measure/quantity.hpp"

namespace qtn {
namespace {

struct Vulgar {
  int over, under;
  std::string_view sign;
};
constexpr Vulgar kVulgar[] = {{1, 2, "½"}, {1, 3, "⅓"}, {2, 3, "⅔"}, {1, 4, "¼"}, {3, 4, "¾"},
                              {1, 5, "⅕"}, {2, 5, "⅖"}, {3, 5, "⅗"}, {4, 5, "⅘"}, {1, 6, "⅙"},
                              {5, 6, "⅚"}, {1, 8, "⅛"}, {3, 8, "⅜"}, {5, 8, "⅝"}, {7, 8, "⅞"}};

std::string_view vulgar(const Fraction& part) {
  for (const Vulgar& v : kVulgar) {
    if (part.over() == v.over && part.under() == v.under) return v.sign;
  }
  return {};
}

// How many decimals write this exactly; -1 when none do, or too many to be read.
int exact_places(const Fraction& value) {
  constexpr int kMost = 12;
  int twos = 0, fives = 0;
  Wide under = value.under();
  for (; under % 2 == 0; under /= 2) ++twos;
  for (; under % 5 == 0; under /= 5) ++fives;
  const int places = twos > fives ? twos : fives;
  if (under != 1 || places > kMost) return -1;
  return (value * Fraction::of(Wide{1'000'000'000'000}, 1)).is_lost() ? -1 : places;
}

// More decimals for smaller numbers, so that a shown value is never far from the exact one.
int shown_places(const Fraction& size) {
  if (size >= Fraction(100)) return 1;
  if (size >= Fraction(1)) return 2;
  return size >= Fraction::of(1, 10) ? 3 : 4;
}

std::string mixed(const Fraction& size, std::string_view sign_of_part) {
  const Wide whole = size.floor();
  const Fraction part = size - Fraction::of(whole, 1);
  std::string text = whole != 0 || part.is_zero() ? to_text(whole) : std::string();
  if (part.is_zero()) return text;
  if (!sign_of_part.empty()) return text.append(sign_of_part);
  if (!text.empty()) text += ' ';
  return text + part.exact();
}

std::string pretty_size(const Fraction& size, bool decimal) {
  constexpr Wide kSmallest = 16;  // nobody measures seventeenths
  const std::string_view sign = vulgar(size - Fraction::of(size.floor(), 1));
  const bool odd = sign.empty() && size.under() > kSmallest;
  return decimal || odd ? size.decimal(shown_places(size)) : mixed(size, sign);
}

std::string plain_size(const Fraction& size, bool decimal) {
  const int places = decimal ? exact_places(size) : -1;
  return places >= 0 ? size.decimal(places) : mixed(size, {});
}

std::string_view lead(Manner manner) {
  switch (manner) {
    case Manner::about:
      return "about ";
    case Manner::exactly:
      return "exactly ";
    case Manner::at_least:
      return "at least ";
    case Manner::at_most:
      return "at most ";
    case Manner::plain:
      break;
  }
  return {};
}

// Hours that are no halves read better with their minutes.
std::string hours_and_minutes(const Fraction& hours) {
  const Wide whole = hours.floor();
  const std::string rest = plain_size((hours - Fraction::of(whole, 1)) * Fraction(60), false) + " min";
  return whole == 0 ? rest : to_text(whole) + " h " + rest;
}

}  // namespace

std::string write_number(const Fraction& value, bool pretty, bool decimal) {
  if (value.is_lost()) return "?";
  const std::string size = pretty ? pretty_size(value.abs(), decimal) : plain_size(value.abs(), decimal);
  if (value.sign() >= 0) return size;
  return (pretty ? "−" : "-") + size;
}

std::string write_times(const Fraction& factor) {
  const bool vulgar = !factor.is_lost() && factor.under() <= 4;
  if (vulgar) return write_number(factor, true, false);
  const std::string decimal = factor.decimal(2);
  return (factor * Fraction(100)).is_whole() ? decimal : "about " + decimal;
}

std::string_view write_unit(UnitId id, const Fraction& number) {
  const bool one = !number.is_zero() && number.abs() <= Fraction(1);
  return one ? unit(id).symbol : unit(id).symbols;
}

bool is_decimal(UnitId id) {
  return unit(id).decimal;
}

std::string write_plain(const Quantity& quantity) {
  const bool gas = quantity.unit == common().gas;
  const bool decimal = is_decimal(quantity.unit);
  std::string text(lead(quantity.manner));
  if (quantity.unit == common().hour && !quantity.is_range() && quantity.low.under() > 2)
    return text + hours_and_minutes(quantity.low);
  if (gas) text += "gas ";
  text += write_number(quantity.low, false, decimal);
  if (quantity.is_range()) text += " to " + write_number(quantity.high, false, decimal);
  const std::string_view sign = gas ? std::string_view() : write_unit(quantity.unit, quantity.high);
  if (!sign.empty()) (text += ' ') += sign;
  if (quantity.fan) text += " fan";
  return text;
}

}  // namespace qtn
