#include "adapt/text.hpp"

#include <algorithm>

namespace qtn {
namespace {

bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

// What stands behind the last figure: "ml" of "≈ 200 ml", nothing of "gas 4". Figures are digits and the signs
// ½ ¼ ¾ (C2 BC to BE) and ⅓ … ⅞ (E2 85 90 to 9E).
std::string_view unit_behind(std::string_view text) {
  std::size_t at = text.size();
  const auto figure_ends = [&] {
    const auto byte = [&](std::size_t back) { return at >= back ? static_cast<unsigned char>(text[at - back]) : 0u; };
    if (byte(1) >= '0' && byte(1) <= '9') return true;
    if (byte(2) == 0xC2 && byte(1) >= 0xBC && byte(1) <= 0xBE) return true;
    return byte(3) == 0xE2 && byte(2) == 0x85 && byte(1) >= 0x90 && byte(1) <= 0x9E;
  };
  while (at > 0 && !figure_ends()) --at;
  text.remove_prefix(at);
  if (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  return text;
}

// "4 lb 8 oz", "1 h 45 min": the last unit is not the only one.
bool is_compound(std::string_view text, std::string_view last_unit) {
  text.remove_suffix(last_unit.size());
  return std::any_of(text.begin(), text.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

std::string_view manner_word(Manner manner) {
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

// The unit that a card writes first for this value, as measure/ladder_write.cpp chooses it.
UnitId unit_of(const Rounded& r) {
  const CommonUnits& c = common();
  const auto from = [&](UnitId large, UnitId small) { return r.shown >= size_of(large, r.dialect) ? large : small; };
  const auto quarters = [&](UnitId of) { return (r.shown * Fraction(4) / size_of(of, r.dialect)).is_whole(); };
  switch (r.ladder) {
    case Ladder::grams:
      return from(c.kilogram, c.gram);
    case Ladder::ounces:
      return from(c.pound, c.ounce);
    case Ladder::millilitres:
      return from(c.litre, c.millilitre);
    case Ladder::cups:
      return r.shown * Fraction(4) >= size_of(c.cup, r.dialect) ? c.cup : from(c.tablespoon, c.teaspoon);
    case Ladder::pints:
      return quarters(c.pint) ? c.pint : from(c.pint, c.fluid_ounce);
    case Ladder::spoons:
      return from(c.tablespoon, c.teaspoon);
    case Ladder::minutes:
      return c.minute;
    case Ladder::celsius:
      return c.celsius;
    case Ladder::fahrenheit:
      return c.fahrenheit;
    case Ladder::gas:
      return c.gas;
    case Ladder::things:
      return kNoUnit;
    case Ladder::centimetres:
      return from(c.centimetre, c.millimetre);
    case Ladder::inches:
      return c.inch;
  }
  return kNoUnit;
}

}  // namespace

// 1 1/2 is 1½ in print, where there is such a sign; the amount stays the page's own.
std::string in_print(std::string_view written) {
  std::string text(written);
  const auto digit = [&](std::size_t at) { return at < text.size() && text[at] >= '0' && text[at] <= '9'; };
  for (std::size_t slash = text.find('/'); slash != std::string::npos; slash = text.find('/', slash + 1)) {
    std::size_t first = slash, last = slash + 1;
    while (first > 0 && digit(first - 1)) --first;
    while (digit(last)) ++last;
    const bool stands_alone = (first == 0 || text[first - 1] == ' ' || text[first - 1] == '-') &&
                              (last == text.size() || (text[last] != '/' && text[last] != '.'));
    if (!stands_alone || slash - first > 2 || slash - first == 0 || last - slash > 3 || last - slash == 1) continue;
    const int over = std::stoi(text.substr(first, slash - first));
    const int under = std::stoi(text.substr(slash + 1, last - slash - 1));
    if (over == 0 || under == 0 || over >= under) continue;
    const std::string sign = write_number(Fraction::of(over, under), true, false);
    if (sign.find('/') != std::string::npos) continue;
    if (first > 1 && digit(first - 2)) --first;  // 1-1/2 is read as one and a half too
    text.replace(first, last - first, sign);
    slash = first;
  }
  return text;
}

Shown as_written(const Recipe& recipe, Span span, const Quantity& exact) {
  Shown shown;
  shown.exact = exact;
  const std::string_view text = recipe.slice(span);
  std::size_t at = 0;  // nearly every amount stands as it is to be shown
  while (at < text.size() &&
         !(is_blank(text[at]) && (text[at] != ' ' || at + 1 == text.size() || is_blank(text[at + 1]))))
    ++at;
  shown.text = text.substr(0, at);
  for (; at < text.size(); ++at) {
    if (!is_blank(text[at]))
      shown.text += text[at];
    else if (!shown.text.empty() && shown.text.back() != ' ')
      shown.text += ' ';
  }
  if (!shown.text.empty() && shown.text.back() == ' ') shown.text.pop_back();
  if (shown.text.find('/') != std::string::npos) shown.text = in_print(shown.text);
  return shown;
}

Shown from_text(std::string text, const Quantity& exact) {
  Shown shown;
  shown.text = std::move(text);
  shown.exact = exact;
  shown.changed = true;
  return shown;
}

std::string join_range(const std::string& low, const std::string& high) {
  if (low == high) return low;
  const std::string_view a = unit_behind(low), b = unit_behind(high);
  // "cup" and "cups" are one unit.
  const bool one_unit =
      b.substr(0, a.size()) == a && b.size() <= a.size() + 2 && !is_compound(low, a) && !is_compound(high, b);
  std::string text = one_unit ? low.substr(0, low.size() - a.size()) : low;
  while (text.back() == ' ') text.pop_back();
  return text + " to " + high;
}

Shown from_rounded(const Quantity& amount, const Rounded& low, const Rounded& high) {
  Shown shown;
  shown.changed = true;
  shown.rough = low.rough || high.rough;
  shown.exact = amount;
  shown.exact.unit = unit_of(high);
  const Fraction size = size_of(shown.exact.unit, high.dialect);
  shown.exact.low = low.exact / size;
  shown.exact.high = high.exact / size;
  shown.text = write(low);
  if (amount.is_range()) {
    Rounded top = high;
    top.rough = false;  // one ≈ in front is enough
    shown.text = join_range(shown.text, write(top));
    if (shown.rough && !low.rough) shown.text.insert(0, "≈ ");
  }
  // "About" says what ≈ says, and what is rough is not exact.
  if (shown.rough && amount.manner == Manner::about) shown.text.erase(0, std::string_view("≈ ").size());
  if (!shown.rough || amount.manner != Manner::exactly) shown.text.insert(0, manner_word(amount.manner));
  return shown;
}

}  // namespace qtn
