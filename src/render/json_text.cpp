#include "render/json_text.hpp"

namespace qtn {
namespace {

// Length of the well-formed UTF-8 character that begins here; 0 when there is none (Unicode, table 3-7).
std::size_t character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  const auto follows = [&](std::size_t i, unsigned low = 0x80, unsigned high = 0xbf) {
    return byte(i) >= low && byte(i) <= high;
  };
  const unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  if (lead >= 0xc2 && lead <= 0xdf) return follows(1) ? 2 : 0;
  if (lead >= 0xe0 && lead <= 0xef) {
    const bool second = follows(1, lead == 0xe0 ? 0xa0 : 0x80, lead == 0xed ? 0x9f : 0xbf);
    return second && follows(2) ? 3 : 0;
  }
  if (lead >= 0xf0 && lead <= 0xf4) {
    const bool second = follows(1, lead == 0xf0 ? 0x90 : 0x80, lead == 0xf4 ? 0x8f : 0xbf);
    return second && follows(2) && follows(3) ? 4 : 0;
  }
  return 0;
}

void append_control(std::string& out, unsigned char byte) {
  constexpr std::string_view kHex = "0123456789abcdef";
  switch (byte) {
    case '\n':
      out += "\\n";
      return;
    case '\t':
      out += "\\t";
      return;
    case '\r':
      out += "\\r";
      return;
    default:
      out += "\\u00";
      out += kHex[byte >> 4];
      out += kHex[byte & 15];
  }
}

}  // namespace

void append_json_string(std::string& out, std::string_view text) {
  out += '"';
  while (!text.empty()) {
    const std::size_t size = character(text);
    const auto byte = static_cast<unsigned char>(text.front());
    if (size == 0) {
      out += "\xef\xbf\xbd";
    } else if (byte == '"' || byte == '\\') {
      out += '\\';
      out += text.front();
    } else if (byte < 0x20 || byte == 0x7f) {
      append_control(out, byte);
    } else {
      out += text.substr(0, size);
    }
    text.remove_prefix(size == 0 ? 1 : size);
  }
  out += '"';
}

}  // namespace qtn
