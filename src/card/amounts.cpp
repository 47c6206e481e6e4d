// Amounts in a card's own words.
#include "card/maker.hpp"
#include "measure/ladder.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

struct Vulgar {
  std::string_view plain, printed;
};
constexpr Vulgar kVulgar[] = {  // the vulgar fractions of Unicode 15, kitchen ones only
    {"1/2", "½"}, {"1/3", "⅓"}, {"2/3", "⅔"}, {"1/4", "¼"}, {"3/4", "¾"}, {"1/5", "⅕"}, {"2/5", "⅖"}, {"3/5", "⅗"},
    {"4/5", "⅘"}, {"1/6", "⅙"}, {"5/6", "⅚"}, {"1/8", "⅛"}, {"3/8", "⅜"}, {"5/8", "⅝"}, {"7/8", "⅞"},
};

// A fraction that stands alone at `at`, or nothing.
const Vulgar* vulgar_at(std::string_view text, std::size_t at) {
  if (at + 3 > text.size() || text[at + 1] != '/') return nullptr;
  if (at > 0 && (is_digit(text[at - 1]) || text[at - 1] == '/' || text[at - 1] == '.')) return nullptr;
  if (at + 3 < text.size() && (is_digit(text[at + 3]) || text[at + 3] == '/')) return nullptr;
  for (const Vulgar& row : kVulgar)
    if (text.substr(at, 3) == row.plain) return &row;
  return nullptr;
}

// Which system an amount already is in.
System system_of(UnitId unit) {
  const CommonUnits& units = common();
  if (unit == units.ounce || unit == units.pound || unit == units.fluid_ounce || unit == units.pint ||
      unit == units.inch) {
    return System::imperial;
  }
  return unit == units.cup ? System::american : System::metric;
}

}  // namespace

std::string pretty(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Vulgar* const row = vulgar_at(text, at);
    if (row == nullptr) {
      out += text[at++];
      continue;
    }
    if (out.size() > 1 && out.back() == ' ' && is_digit(out[out.size() - 2])) out.pop_back();
    out += row->printed;
    at += row->plain.size();
  }
  return out;
}

bool is_one(std::string_view number) {
  std::size_t digits = 0;
  bool one = true, fraction = false;
  for (std::size_t at = 0; at < number.size(); ++at) {
    const auto byte = static_cast<unsigned char>(number[at]);
    if (is_digit(number[at])) {
      ++digits;
      one = one && number[at] == '1' && digits == 1;
    } else if (byte == 0xC2 || (byte == 0xE2 && number.substr(at, 2) == "\xE2\x85")) {  // ¼ ½ ¾, ⅓ and the like
      fraction = true;
    } else if (byte == '-' || byte == ',' || byte == '.' || number.substr(at, 4) == " to " ||
               number.substr(at, 3) == "\xE2\x80\x93") {
      return false;
    }
  }
  return one && digits + (fraction ? 1 : 0) == 1;
}

std::string_view without_word(std::string_view text, std::string_view word) {
  std::string_view rest = trim(text);
  if (rest.size() <= word.size() || lower(rest.substr(0, word.size())) != word) return rest;
  rest = trim(rest.substr(word.size()));
  if (rest.empty() || rest.front() != ':') return trim(text);
  return trim(rest.substr(1));
}

std::string Maker::amount(const Quantity& amount, Span written) const {
  const Dimension dimension = amount.dimension();
  const bool sized = dimension == Dimension::mass || dimension == Dimension::volume || dimension == Dimension::length;
  if ((as_written() || !(sized || dimension == Dimension::count)) && !written.empty()) {
    return std::string(slice(written));
  }
  if (as_written() || amount.is_lost() || !(sized || dimension == Dimension::count)) return write_plain(amount);
  const Ends base = in_base(amount, recipe_.dialect);
  if (base.low.is_lost() || base.high.is_lost()) return write_plain(amount);
  const System system = adapted_.units == System::written ? system_of(amount.unit) : adapted_.units;
  const CommonUnits& units = common();
  const bool spoonful = amount.unit == units.teaspoon || amount.unit == units.tablespoon || amount.unit == units.pinch;
  const Ladder ladder = ladder_for(dimension, system, recipe_.dialect, spoonful);
  const Fraction within = tolerance(amount.manner, recipe_.tolerance());
  const auto end = [&](const Fraction& exact) {
    std::string text = write(round_on(ladder, exact, within, recipe_.dialect));
    if (dimension != Dimension::count || amount.unit == kNoUnit) return text;
    return text + " " + std::string(write_unit(amount.unit, exact));
  };
  std::string text;
  switch (amount.manner) {
    case Manner::plain: break;
    case Manner::about: text = words_[Label::about]; break;
    case Manner::exactly: text = words_[Label::exactly]; break;
    case Manner::at_least: text = words_[Label::at_least]; break;
    case Manner::at_most: text = words_[Label::at_most]; break;
  }
  const std::string low = end(base.low);
  text += low;
  if (const std::string high = end(base.high); high != low) text.append(words_[Label::to]).append(high);
  return text;
}

}  // namespace qtn
