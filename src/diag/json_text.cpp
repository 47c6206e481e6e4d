#include "diag/json_text.hpp"

#include <fmt/format.h>

#include <iterator>
#include <nlohmann/json.hpp>

#include "diag/glyphs.hpp"

namespace qtn {

std::string json_text(const nlohmann::ordered_json& value, int indent) {
  const std::string raw = value.dump(indent, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
  std::string out;
  out.reserve(raw.size());
  for (std::size_t at = 0; at < raw.size();) {
    const Glyph glyph = glyph_at(raw, at);
    // Below 0x20 there is only the layout here: inside strings it is escaped already.
    if (glyph.code < 0x20 || !is_hidden(glyph.code)) {
      out.append(raw, at, glyph.bytes);
    } else if (glyph.code < 0x10000) {
      fmt::format_to(std::back_inserter(out), "\\u{:04x}", static_cast<unsigned>(glyph.code));
    } else {
      const unsigned rest = static_cast<unsigned>(glyph.code) - 0x10000;
      fmt::format_to(std::back_inserter(out), "\\u{:04x}\\u{:04x}", 0xD800 + (rest >> 10), 0xDC00 + (rest & 0x3FF));
    }
    at += glyph.bytes;
  }
  return out;
}

}  // namespace qtn
