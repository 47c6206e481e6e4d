#include "render/markdown_escape.hpp"

#include <algorithm>

namespace qtn {
namespace {

constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || is_digit(c);
}
constexpr bool is_control(char c) {
  return static_cast<unsigned char>(c) < 0x20 || c == 0x7f;
}
constexpr bool is_blank(char c) {
  return c == ' ';
}
constexpr bool is_ascii(char c) {
  return static_cast<unsigned char>(c) < 0x80;
}
constexpr bool is_mark(char c) {
  return !is_letter(c) && !is_blank(c) && is_ascii(c);
}

// Characters that mean something anywhere in a line. An & does only before a letter or a #.
bool needs_backslash(std::string_view text, std::size_t at) {
  switch (text[at]) {
    case '\\':
    case '*':
    case '_':
    case '`':
    case '[':
    case ']':
    case '<':
      return true;
    case '&':
      return at + 1 < text.size() ? is_letter(text[at + 1]) || text[at + 1] == '#' : true;
    default:
      return false;
  }
}

// Blanks of Unicode, beside which a mark of emphasis is no mark: no-break space, the spaces of a printer, U+3000.
bool is_wide_blank(std::string_view three) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(three[i]); };
  if (three.size() < 3) return false;
  if (byte(0) == 0xe2 && byte(1) == 0x80) return byte(2) <= 0x8a || byte(2) == 0xaf;
  return three.substr(0, 3) == "\xe2\x81\x9f" || three.substr(0, 3) == "\xe1\x9a\x80" ||
         three.substr(0, 3) == "\xe3\x80\x80";
}
bool begins_blank(std::string_view text) {
  return is_blank(text.front()) || text.substr(0, 2) == "\xc2\xa0" || is_wide_blank(text.substr(0, 3));
}
bool ends_blank(std::string_view text) {
  const std::size_t size = text.size();
  return is_blank(text.back()) || (size >= 2 && text.substr(size - 2) == "\xc2\xa0") ||
         (size >= 3 && is_wide_blank(text.substr(size - 3)));
}

// Beside an edge that is no letter, CommonMark wants a blank or a mark outside.
bool edge_holds(char inside, char outside) {
  return is_letter(inside) || is_blank(outside) || is_mark(outside);
}

}  // namespace

void append_markdown(std::string& out, std::string_view text) {
  std::size_t from = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool control = is_control(text[at]);
    if (!control && !needs_backslash(text, at)) continue;
    out.append(text, from, at - from);
    out += control ? ' ' : '\\';
    from = control ? at + 1 : at;
  }
  out.append(text, from, text.size() - from);
}

void append_code_span(std::string& out, std::string_view text) {
  if (text.empty()) return;
  std::size_t longest = 0, current = 0;
  bool solid = false;
  for (char c : text) {
    current = c == '`' ? current + 1 : 0;
    longest = std::max(longest, current);
    solid = solid || !(is_blank(c) || is_control(c));
  }
  const auto edge = [](char c) { return c == '`' || is_blank(c) || is_control(c); };
  const bool padded = solid && (edge(text.front()) || edge(text.back()));
  out.append(longest + 1, '`');
  if (padded) out += ' ';
  for (char c : text) out += is_control(c) ? ' ' : c;
  if (padded) out += ' ';
  out.append(longest + 1, '`');
}

void append_destination(std::string& out, std::string_view target) {
  constexpr std::string_view kHex = "0123456789ABCDEF", kTaken = " <>()[]\\`\"{}|^";
  for (char c : target) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '&') {
      out += "&amp;";
    } else if (kTaken.find(c) != std::string_view::npos) {
      out += '%';
      out += kHex[byte >> 4];
      out += kHex[byte & 15];
    } else {
      out += c;
    }
  }
}

void guard_block(std::string& out, std::size_t from) {
  std::size_t first = from;
  while (first < out.size() && is_blank(out[first])) ++first;
  out.erase(from, first - from);
  if (from == out.size()) return;
  const auto at = [&](std::size_t i) { return from + i < out.size() ? out[from + i] : ' '; };
  std::size_t digits = 0;
  switch (at(0)) {
    case '#':
    case '>':
    case '~':
    case '=':
      out.insert(from, 1, '\\');
      return;
    case '+':
    case '-':
      if (is_blank(at(1)) || at(1) == '-') out.insert(from, 1, '\\');
      return;
    default:
      while (is_digit(at(digits))) ++digits;
      if (digits > 0 && (at(digits) == '.' || at(digits) == ')') && is_blank(at(digits + 1))) {
        out.insert(from + digits, 1, '\\');
      }
  }
}

void guard_heading(std::string& out, std::size_t from) {
  guard_block(out, from);
  while (out.size() > from && is_blank(out.back())) out.pop_back();
  if (out.size() <= from || out.back() != '#') return;
  // A run of # that begins the line already has its backslash.
  const std::size_t last = out.size() - 1;
  if (last == from || out[last - 1] != '\\') out.insert(last, 1, '\\');
}

bool can_emphasize(char before, std::string_view core, char after) {
  if (core.empty() || begins_blank(core) || ends_blank(core)) return false;
  return edge_holds(core.front(), before) && edge_holds(core.back(), after);
}

}  // namespace qtn
