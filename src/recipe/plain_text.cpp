// A file that is no plain text: bytes that no letter of UTF-8 has, or none at all. Said once, at the first of them.
#include <cstring>

#include "diag/glyphs.hpp"
#include "recipe/phases.hpp"

namespace qtn {
namespace {

// Eight letters of plain English at once: no byte above 0x7F and none that is 0.
bool plain_eight(const char* at) {
  std::uint64_t bytes = 0;
  std::memcpy(&bytes, at, sizeof bytes);
  constexpr std::uint64_t kHigh = 0x8080808080808080u, kOnes = 0x0101010101010101u;
  return ((bytes | (bytes - kOnes)) & kHigh) == 0;
}

bool damaged(const Glyph& glyph) { return glyph.code == 0 || (glyph.code == 0xFFFD && glyph.bytes == 1); }

}  // namespace

void check_text(const Source& source, Report& report) {
  const std::string_view text = source.text();
  std::size_t first = text.size(), count = 0;
  for (std::size_t at = 0; at < text.size();) {
    if (at + 8 <= text.size() && plain_eight(text.data() + at)) {
      at += 8;
      continue;
    }
    const Glyph glyph = glyph_at(text, at);
    if (damaged(glyph)) {
      if (count++ == 0) first = at;
    }
    at += glyph.bytes;
  }
  if (count == 0) return;
  const auto begin = static_cast<std::uint32_t>(first);
  const bool nothing = text[first] == '\0';
  report.add(Code::not_text, {begin, begin + 1}, nothing ? "Here stands a byte that is no letter." : "This letter is not written in UTF-8.")
      .find(std::to_string(count) + (count == 1 ? " such byte" : " such bytes")).expect("a file saved as plain text in UTF-8");
}

}  // namespace qtn
