#include "render/text_lines.hpp"

#include "render/layout.hpp"

namespace qtn {
namespace {

constexpr bool is_held(Role role) {
  switch (role) {
    case Role::amount:
    case Role::second:
    case Role::time:
    case Role::temperature:
    case Role::reading:
    case Role::measure:
    case Role::pieces:
    case Role::spent:
      return true;
    case Role::text:
    case Role::name:
    case Role::struck:
      break;
  }
  return false;
}

// Control characters, those in two bytes (U+0080 to U+009F) too: a terminal would obey them.
void append_plain(std::string& out, std::string_view text, bool held) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto byte = static_cast<unsigned char>(text[at]);
    const bool wide = byte == 0xc2 && at + 1 < text.size() && static_cast<unsigned char>(text[at + 1]) < 0xa0;
    if (wide) ++at;
    if (wide || byte <= 0x20 || byte == 0x7f) {
      out += held ? kHeld : ' ';
    } else {
      out += text[at];
    }
  }
}

void append_target(std::string& out, std::string_view target, std::size_t words_from) {
  if (target.empty() || std::string_view(out).substr(words_from) == target) return;
  out += " (";
  append_plain(out, target, false);
  out += ')';
}

}  // namespace

std::string plain_words(const Card& card, Range32 range) {
  std::string out;
  std::uint16_t link = 0;
  std::size_t link_from = 0;
  std::string_view target;
  bool struck = false;
  for (const Run& run : runs_of(card, range)) {
    if (struck && run.role != Role::struck) out += ')';
    if (run.link != link) {
      append_target(out, target, link_from);
      link = run.link;
      link_from = out.size();
      target = link_of(card, run);
    }
    if (!struck && run.role == Role::struck) out += kLeftOut;
    struck = run.role == Role::struck;
    // A long piece must break somewhere.
    append_plain(out, card.view(run), is_held(run.role) && run.size < kColumns / 2);
  }
  if (struck) out += ')';
  append_target(out, target, link_from);
  return out;
}

std::string plain_text(std::string_view text) {
  std::string out;
  append_plain(out, text, false);
  return out;
}

std::size_t width_of(std::string_view text) {
  std::size_t width = 0;
  for (char c : text) width += (static_cast<unsigned char>(c) & 0xc0) != 0x80;
  return width;
}

void append_lines(std::string& out, std::string_view words, std::size_t indent) {
  std::size_t column = indent;
  bool first = true;
  for (std::size_t at = 0; at < words.size();) {
    if (words[at] == ' ') {
      ++at;
      continue;
    }
    const std::size_t end = std::min(words.find(' ', at), words.size());
    const std::string_view word = words.substr(at, end - at);
    const std::size_t width = width_of(word);
    if (!first && column + 1 + width > kColumns) {
      out += '\n';
      out.append(indent, ' ');
      column = indent;
      first = true;
    }
    if (!first) out += ' ';
    column += width + (first ? 0 : 1);
    first = false;
    for (char c : word) out += c == kHeld ? ' ' : c;
    at = end;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  out += '\n';
}

}  // namespace qtn
