#include "words/letters.hpp"

namespace qtn {
namespace {

struct Accent {
  unsigned mark;              // U+03xx, a combining accent
  std::string_view bases;     // lower-case letters that take it
  std::u16string_view whole;  // and what each becomes
};

constexpr Accent kAccents[] = {
    {0x300, "aeiou", u"àèìòù"},       {0x301, "aceilnorsuyz", u"áćéíĺńóŕśúýź"}, {0x302, "aceghijosuwy", u"âĉêĝĥîĵôŝûŵŷ"},
    {0x303, "ainou", u"ãĩñõũ"},       {0x304, "aeiou", u"āēīōū"},               {0x306, "aegiou", u"ăĕğĭŏŭ"},
    {0x307, "cegz", u"ċėġż"},         {0x308, "aeiouy", u"äëïöüÿ"},             {0x30A, "au", u"åů"},
    {0x30B, "ou", u"őű"},             {0x30C, "cdenrstz", u"čďěňřšťž"},         {0x327, "cgklnrst", u"çģķļņŗşţ"},
    {0x328, "aeiu", u"ąęįų"},
};

// The one letter for `base` and the accent `mark`, or 0.
unsigned compose(char base, unsigned mark) {
  for (const Accent& accent : kAccents)
    if (accent.mark == mark) {
      const std::size_t at = accent.bases.find(base);
      return at == std::string_view::npos ? 0 : accent.whole[at];
    }
  return 0;
}

unsigned lower_latin(unsigned letter) {
  if (letter >= 0xC0 && letter <= 0xDE) return letter == 0xD7 ? letter : letter + 0x20;
  if (letter < 0x100 || letter > 0x17F) return letter;
  if (letter == 0x130) return 'i';
  if (letter == 0x178) return 0xFF;
  // Capital and small stand in pairs, the capital on an even number, but on an odd one in two stretches.
  const bool odd = (letter >= 0x139 && letter <= 0x148) || (letter >= 0x179 && letter <= 0x17E);
  const bool paired = odd || letter <= 0x137 || (letter >= 0x14A && letter <= 0x177);
  if (!paired || letter == 0x131) return letter;
  return (letter % 2 == 1) == odd ? letter + 1 : letter;
}

char lower_ascii(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c; }

unsigned byte_at(std::string_view text, std::size_t at) {
  return at < text.size() ? static_cast<unsigned char>(text[at]) : 0;
}

// Letters of this file all take one or two bytes.
char* put(char* out, unsigned letter) {
  if (letter < 0x80) {
    *out++ = static_cast<char>(letter);
    return out;
  }
  *out++ = static_cast<char>(0xC0 | (letter >> 6));
  *out++ = static_cast<char>(0x80 | (letter & 0x3F));
  return out;
}

std::size_t convert(std::string_view text, char* const first, bool folding) {
  char* out = first;
  for (std::size_t at = 0; at < text.size();) {
    const unsigned lead = byte_at(text, at), next = byte_at(text, at + 1);
    if (lead >= 0xC3 && lead <= 0xCD && (next & 0xC0) == 0x80) {
      const unsigned letter = ((lead & 0x1F) << 6) | (next & 0x3F);
      const unsigned whole = folding && letter >= 0x300 && out != first ? compose(out[-1], letter) : 0;
      if (whole != 0) --out;
      out = put(out, whole != 0 ? whole : lower_latin(letter));
      at += 2;
      continue;
    }
    const unsigned last = byte_at(text, at + 2);
    if (folding && lead == 0xE2 && next == 0x80 && (last == 0x99 || last == 0x90 || last == 0x91)) {
      *out++ = last == 0x99 ? '\'' : '-';
      at += 3;
      continue;
    }
    *out++ = lower_ascii(text[at++]);
  }
  return static_cast<std::size_t>(out - first);
}

}  // namespace

std::size_t lower_letters(std::string_view text, char* out) { return convert(text, out, false); }
std::size_t fold_letters(std::string_view text, char* out) { return convert(text, out, true); }

}  // namespace qtn
