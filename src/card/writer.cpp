#include "card/writer.hpp"

#include <algorithm>
#include <limits>

namespace qtn {

void Writer::add(std::string_view text, Role role, std::uint32_t exact) {
  if (text.empty()) return;
  const std::uint32_t begin = size(card_.text);
  card_.text.append(text);
  if (role == Role::text && card_.runs.size() > first_) {
    Run& last = card_.runs.back();
    if (last.role == Role::text && last.style == style && last.link == link) {
      last.size += size(text);
      return;
    }
  }
  card_.runs.push_back({begin, size(text), role, style, link, exact});
}

void Writer::add(std::string_view text, Role role, const Quantity& exact) {
  if (text.empty()) return;
  std::uint32_t at = 0;
  if (!exact.is_lost() && !(exact.low.is_zero() && exact.high.is_zero() && exact.unit == kNoUnit)) {
    at = size(card_.exacts);
    card_.exacts.push_back(exact);
  }
  add(text, role, at);
}

void Writer::collapsed(std::string_view text, Role role) {
  const auto is_blank = [](char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t'; };
  // Most texts hold single blanks only and are copied whole.
  std::size_t at = 0;
  for (; at < text.size(); ++at) {
    if (static_cast<unsigned char>(text[at]) > ' ' || !is_blank(text[at])) continue;
    if (text[at] != ' ' || at + 1 == text.size() || is_blank(text[at + 1])) break;
  }
  if (at == text.size()) return add(text, role, 0);
  const std::uint32_t begin = size(card_.text);
  std::string joined(text.substr(0, at));
  for (; at < text.size(); ++at) {
    if (!is_blank(text[at])) joined += text[at];
    else if (joined.empty() || joined.back() != ' ') joined += ' ';
  }
  if (begin > 0 && joined.front() == ' ' && ends_in_blank()) joined.erase(0, 1);
  add(joined, role, 0);
}

Range32 Writer::spoken(std::string_view text) {
  begin();
  for (bool code = false; !text.empty(); code = !code) {
    const std::size_t at = std::min(text.find('`'), text.size());
    style = code ? kCode : 0;
    collapsed(text.substr(0, at), Role::text);
    text.remove_prefix(std::min(at + 1, text.size()));
  }
  style = 0;
  return end();
}

bool Writer::ends_in_blank() const { return !empty() && card_.text.back() == ' '; }

void Writer::blank() {
  if (!empty() && !ends_in_blank()) put(" ");
}

Range32 Writer::end() {
  while (!empty() && card_.runs.back().role == Role::text && card_.text.back() == ' ') {
    card_.text.pop_back();
    if (--card_.runs.back().size == 0) card_.runs.pop_back();
  }
  return {first_, size(card_.runs) - first_};
}

std::uint16_t Writer::add_link(std::string_view target) {
  if (card_.links.size() > std::numeric_limits<std::uint16_t>::max()) return 0;
  card_.links.emplace_back(target);
  return static_cast<std::uint16_t>(card_.links.size() - 1);
}

Writer::Mark Writer::mark() const {
  return {card_.text.size(), card_.runs.size(), card_.links.size(), card_.exacts.size(),
          card_.runs.empty() ? Run() : card_.runs.back()};
}

void Writer::take_back(const Mark& mark) {
  card_.text.resize(mark.text);
  card_.runs.resize(mark.runs);
  card_.links.resize(mark.links);
  card_.exacts.resize(mark.exacts);
  if (!card_.runs.empty()) card_.runs.back() = mark.last;
  style = 0;
  link = 0;
}

}  // namespace qtn
