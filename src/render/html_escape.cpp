#include "render/html_escape.hpp"

#include <cstdint>

namespace qtn {
namespace {

// The characters come in two pairs that differ by one bit: " and & by 4, < and > by 2.
constexpr bool is_special(char c) {
  return (c & ~4) == '"' || (c & ~2) == '<';
}

constexpr std::uint64_t each_byte(std::uint64_t byte) {
  return byte * 0x0101010101010101u;
}
// Not zero when a byte of `word` is zero (bytes above the first one may be marked wrongly, which does no harm here).
constexpr std::uint64_t zero_bytes(std::uint64_t word) {
  return (word - each_byte(0x01)) & ~word & each_byte(0x80);
}

bool any_special(const char* at) {
  std::uint64_t word = 0;
  std::memcpy(&word, at, sizeof word);
  const std::uint64_t quotes = (word & each_byte(0xfb)) ^ each_byte('"');
  const std::uint64_t angles = (word & each_byte(0xfd)) ^ each_byte('<');
  return (zero_bytes(quotes) | zero_bytes(angles)) != 0;
}

}  // namespace

std::size_t first_special(std::string_view text) {
  std::size_t at = 0;
  while (at + sizeof(std::uint64_t) <= text.size() && !any_special(text.data() + at)) at += sizeof(std::uint64_t);
  while (at < text.size() && !is_special(text[at])) ++at;
  return at;
}

void put_escaped(Ink& ink, std::string_view text) {
  for (;;) {
    const std::size_t clean = first_special(text);
    ink.put(text.substr(0, clean));
    if (clean == text.size()) return;
    switch (text[clean]) {
      case '&':
        ink.mark("&amp;");
        break;
      case '<':
        ink.mark("&lt;");
        break;
      case '>':
        ink.mark("&gt;");
        break;
      default:
        ink.mark("&quot;");
    }
    text.remove_prefix(clean + 1);
  }
}

}  // namespace qtn
