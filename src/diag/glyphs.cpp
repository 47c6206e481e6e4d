#include "diag/glyphs.hpp"

#include <algorithm>
#include <iterator>

namespace qtn {
namespace {

struct Range {
  char32_t first, last;
};

// Marks that sit on the letter before them, for the scripts a recipe is likely to quote, with the joiners and the
// variation selectors. Unicode 14, categories Mn and Me.
constexpr Range kMarks[] = {
    {0x300, 0x36F},   {0x483, 0x489},   {0x591, 0x5BD},   {0x5BF, 0x5BF},     {0x5C1, 0x5C2},   {0x5C4, 0x5C5},
    {0x5C7, 0x5C7},   {0x610, 0x61A},   {0x64B, 0x65F},   {0x670, 0x670},     {0x6D6, 0x6DC},   {0x6DF, 0x6E4},
    {0x6E7, 0x6E8},   {0x6EA, 0x6ED},   {0x900, 0x902},   {0x93A, 0x93A},     {0x93C, 0x93C},   {0x941, 0x948},
    {0x94D, 0x94D},   {0x951, 0x957},   {0x962, 0x963},   {0xE31, 0xE31},     {0xE34, 0xE3A},   {0xE47, 0xE4E},
    {0x1160, 0x11FF}, {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF}, {0x200C, 0x200D},   {0x20D0, 0x20F0}, {0x302A, 0x302D},
    {0x3099, 0x309A}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}, {0xE0100, 0xE01EF},
};

// Two columns wide: Unicode 14, East Asian Width W and F (UAX #11), joined across unassigned places.
constexpr Range kWide[] = {
    {0x1100, 0x115F},   {0x231A, 0x231B},   {0x2329, 0x232A},   {0x23E9, 0x23EC},   {0x23F0, 0x23F0},
    {0x23F3, 0x23F3},   {0x25FD, 0x25FE},   {0x2614, 0x2615},   {0x2648, 0x2653},   {0x267F, 0x267F},
    {0x2693, 0x2693},   {0x26A1, 0x26A1},   {0x26AA, 0x26AB},   {0x26BD, 0x26BE},   {0x26C4, 0x26C5},
    {0x26CE, 0x26CE},   {0x26D4, 0x26D4},   {0x26EA, 0x26EA},   {0x26F2, 0x26F3},   {0x26F5, 0x26F5},
    {0x26FA, 0x26FA},   {0x26FD, 0x26FD},   {0x2705, 0x2705},   {0x270A, 0x270B},   {0x2728, 0x2728},
    {0x274C, 0x274C},   {0x274E, 0x274E},   {0x2753, 0x2755},   {0x2757, 0x2757},   {0x2795, 0x2797},
    {0x27B0, 0x27B0},   {0x27BF, 0x27BF},   {0x2B1B, 0x2B1C},   {0x2B50, 0x2B50},   {0x2B55, 0x2B55},
    {0x2E80, 0x303E},   {0x3041, 0x3247},   {0x3250, 0x4DBF},   {0x4E00, 0xA4C6},   {0xA960, 0xA97C},
    {0xAC00, 0xD7A3},   {0xF900, 0xFAD9},   {0xFE10, 0xFE19},   {0xFE30, 0xFE6B},   {0xFF01, 0xFF60},
    {0xFFE0, 0xFFE6},   {0x16FE0, 0x1B2FB}, {0x1F004, 0x1F004}, {0x1F0CF, 0x1F0CF}, {0x1F18E, 0x1F18E},
    {0x1F191, 0x1F19A}, {0x1F200, 0x1F320}, {0x1F32D, 0x1F335}, {0x1F337, 0x1F37C}, {0x1F37E, 0x1F393},
    {0x1F3A0, 0x1F3CA}, {0x1F3CF, 0x1F3D3}, {0x1F3E0, 0x1F3F0}, {0x1F3F4, 0x1F3F4}, {0x1F3F8, 0x1F43E},
    {0x1F440, 0x1F440}, {0x1F442, 0x1F4FC}, {0x1F4FF, 0x1F53D}, {0x1F54B, 0x1F54E}, {0x1F550, 0x1F567},
    {0x1F57A, 0x1F57A}, {0x1F595, 0x1F596}, {0x1F5A4, 0x1F5A4}, {0x1F5FB, 0x1F64F}, {0x1F680, 0x1F6C5},
    {0x1F6CC, 0x1F6CC}, {0x1F6D0, 0x1F6D2}, {0x1F6D5, 0x1F6DF}, {0x1F6EB, 0x1F6EC}, {0x1F6F4, 0x1F6FC},
    {0x1F7E0, 0x1F7F0}, {0x1F90C, 0x1F93A}, {0x1F93C, 0x1F945}, {0x1F947, 0x1F9FF}, {0x1FA70, 0x1FAF6},
    {0x20000, 0x3FFFD},
};

// C0, DEL and C1; soft hyphen; direction marks; invisible spaces and operators; line ends of other systems; byte
// order mark; annotation marks; tags. U+200C and U+200D stay, since scripts and joined pictures need them.
constexpr Range kHidden[] = {
    {0x0, 0x1F},      {0x7F, 0x9F},     {0xAD, 0xAD},     {0x61C, 0x61C},   {0x180E, 0x180E}, {0x200B, 0x200B},
    {0x200E, 0x200F}, {0x2028, 0x202E}, {0x2060, 0x206F}, {0xFEFF, 0xFEFF}, {0xFFF9, 0xFFFB}, {0xE0000, 0xE007F},
};

template <std::size_t N>
bool in(const Range (&table)[N], char32_t code) {
  const auto after = std::upper_bound(std::begin(table), std::end(table), code,
                                      [](char32_t value, const Range& range) { return value < range.first; });
  return after != std::begin(table) && code <= std::prev(after)->last;
}

void append(std::string& out, char32_t code) {
  const auto byte = [&](char32_t value) { out.push_back(static_cast<char>(static_cast<unsigned char>(value))); };
  if (code < 0x80) return byte(code);
  if (code < 0x800) {
    byte(0xC0 | (code >> 6));
  } else {
    if (code < 0x10000) {
      byte(0xE0 | (code >> 12));
    } else {
      byte(0xF0 | (code >> 18));
      byte(0x80 | ((code >> 12) & 0x3F));
    }
    byte(0x80 | ((code >> 6) & 0x3F));
  }
  byte(0x80 | (code & 0x3F));
}

}  // namespace

Glyph glyph_at(std::string_view text, std::size_t at) {
  constexpr Glyph kDamaged{0xFFFD, 1};
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(at);
  if (lead < 0x80) return {lead, 1};
  const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || at + size > text.size()) return kDamaged;
  char32_t code = lead & (0xFFu >> (size + 1));
  for (std::size_t i = at + 1; i < at + size; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return kDamaged;
    code = (code << 6) | (byte(i) & 0x3Fu);
  }
  const bool longer_than_needed = (size == 3 && code < 0x800) || (size == 4 && code < 0x10000);
  if (longer_than_needed || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) return kDamaged;
  return {code, size};
}

bool is_hidden(char32_t code) {
  if (code >= 0x20 && code < 0x7F) return false;
  return in(kHidden, code);
}

int columns(char32_t code) {
  if (code < 0x300) return 1;
  if (in(kMarks, code)) return 0;
  return in(kWide, code) ? 2 : 1;
}

Shown show(char32_t code) {
  Shown shown{{}, 1};
  if (!is_hidden(code)) {
    append(shown.text, code);
    shown.columns = columns(code);
  } else if (code < 0x20) {
    append(shown.text, 0x2400 + code);  // the pictures of the control characters
  } else if (code == 0x7F) {
    append(shown.text, 0x2421);
  } else {
    constexpr char kDigits[] = "0123456789ABCDEF";
    std::string digits;
    for (char32_t rest = code; rest != 0; rest >>= 4) digits.insert(digits.begin(), kDigits[rest & 15]);
    while (digits.size() < 4) digits.insert(digits.begin(), '0');
    shown.text = "<U+" + digits + ">";
    shown.columns = static_cast<int>(shown.text.size());
  }
  return shown;
}

std::string visible(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Glyph glyph = glyph_at(text, at);
    if (glyph.code >= 0x20 && glyph.code < 0x7F) {
      out.push_back(text[at]);
    } else {
      out += show(glyph.code).text;
    }
    at += glyph.bytes;
  }
  return out;
}

int columns_of(std::string_view shown) {
  int sum = 0;
  for (std::size_t at = 0; at < shown.size();) {
    const Glyph glyph = glyph_at(shown, at);
    sum += columns(glyph.code);
    at += glyph.bytes;
  }
  return sum;
}

}  // namespace qtn
