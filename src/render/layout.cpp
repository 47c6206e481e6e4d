#include "render/layout.hpp"

namespace qtn {
namespace {

constexpr char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
}

bool is_word(std::string_view text, std::string_view word) {
  if (text.size() != word.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (lower(text[i]) != word[i]) return false;
  }
  return true;
}

}  // namespace

bool may_link(std::string_view target) {
  if (target.empty()) return false;
  // Browsers drop control characters inside an address and read \ as /, so neither may hide what it is.
  for (char c : target) {
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f || c == '\\') return false;
  }
  if (target.front() == ' ' || target.back() == ' ' || target.substr(0, 2) == "//") return false;
  const std::size_t mark = target.find_first_of(":/?#");
  if (mark == std::string_view::npos || target[mark] != ':') return true;
  const std::string_view scheme = target.substr(0, mark);
  return is_word(scheme, "https") || is_word(scheme, "http") || is_word(scheme, "mailto");
}

std::string_view link_of(const Card& card, const Run& run) {
  if (run.link == 0 || run.link >= card.links.size()) return {};
  const std::string_view target = card.links[run.link];
  return may_link(target) ? target : std::string_view();
}

}  // namespace qtn
