#include "card/prose_signs.hpp"

#include <cstddef>

namespace qtn {
namespace {

// The number of "&#57344;" or "&#xE000;" from its # on; 0 when there is none.
unsigned entity_number(std::string_view text) {
  std::size_t at = 1;
  const bool hex = at < text.size() && (text[at] == 'x' || text[at] == 'X');
  if (hex) ++at;
  unsigned value = 0;
  for (std::size_t digits = 0; at < text.size() && digits < 8; ++at, ++digits) {
    const char c = text[at];
    unsigned digit = 16;
    if (c >= '0' && c <= '9') digit = static_cast<unsigned>(c - '0');
    else if (hex && c >= 'a' && c <= 'f') digit = static_cast<unsigned>(c - 'a') + 10;
    else if (hex && c >= 'A' && c <= 'F') digit = static_cast<unsigned>(c - 'A') + 10;
    if (digit == 16) break;
    value = value * (hex ? 16 : 10) + digit;
  }
  return value;
}

}  // namespace

void Signs::avoid(std::string_view text) {
  for (std::size_t at = text.find(kLead); at < text.size(); at = text.find(kLead, at + 1)) {
    if (at + 2 >= text.size()) break;
    used_.set((static_cast<unsigned>(text[at + 1]) & 0x3Fu) << 6 | (static_cast<unsigned>(text[at + 2]) & 0x3Fu));
    any_ = true;
  }
  for (std::size_t at = text.find("&#"); at < text.size(); at = text.find("&#", at + 2)) {
    const unsigned value = entity_number(text.substr(at + 1));
    if (value < 0xE000 || value > 0xEFFF) continue;
    used_.set(value - 0xE000);
    any_ = true;
  }
}

bool Signs::choose() {
  unsigned line = 0, own = 1;
  if (any_) {
    while (line < used_.size() && used_[line]) ++line;
    own = line + 1;
    while (own < used_.size() && used_[own]) ++own;
    if (own >= used_.size()) return false;
  }
  spell(line_, line);
  spell(own_, own);
  return true;
}

void Signs::spell(char* to, unsigned index) const {
  to[0] = kLead;
  to[1] = static_cast<char>(0x80u | index >> 6);
  to[2] = static_cast<char>(0x80u | (index & 0x3Fu));
}

}  // namespace qtn
