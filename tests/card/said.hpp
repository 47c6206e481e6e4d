// Prose written into a card by hand, and the card's runs as one line of text that shows their styles.
#pragma once
#include <string>
#include <vector>

#include "card/prose.hpp"

namespace qtn::test {

// Runs of blanks and line ends as one, none at the ends.
inline std::string single_blanks(std::string_view text) {
  std::string out;
  for (char c : text) {
    const bool blank = c == ' ' || c == '\n' || c == '\t' || c == '\r';
    if (!blank) out += c;
    else if (!out.empty() && out.back() != ' ') out += ' ';
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

struct Written {
  Card card;
  Range32 range;

  std::string text() const {
    std::string all;
    for (std::uint32_t i = 0; i < range.count; ++i) all += card.view(card.runs[range.first + i]);
    return all;
  }
  // /emphasis/, #strong#, `code`, <text=target>.
  std::string marked() const {
    std::string all;
    std::uint8_t style = 0;
    std::uint16_t link = 0;
    const auto turn = [&](std::uint8_t to, std::uint16_t into) {
      if ((style ^ to) & kCode && style & kCode) all += '`';
      if ((style ^ to) & kStrong && style & kStrong) all += '#';
      if ((style ^ to) & kEmphasis && style & kEmphasis) all += '/';
      if (link != into && link != 0) all += '=' + card.links[link] + '>';
      if (link != into && into != 0) all += '<';
      if ((style ^ to) & kEmphasis && to & kEmphasis) all += '/';
      if ((style ^ to) & kStrong && to & kStrong) all += '#';
      if ((style ^ to) & kCode && to & kCode) all += '`';
      style = to;
      link = into;
    };
    for (std::uint32_t i = 0; i < range.count; ++i) {
      const Run& run = card.runs[range.first + i];
      turn(run.style, run.link);
      all += card.view(run);
    }
    turn(0, 0);
    return all;
  }
  int count_own() const {
    int count = 0;
    for (std::uint32_t i = 0; i < range.count; ++i) count += card.runs[range.first + i].role == Role::name;
    return count;
  }
  std::string clean() const {
    Written copy = *this;
    qtn::clean(copy.card);
    return copy.text();
  }
};

inline Written text_of(std::string_view text) {
  Written said;
  Writer out(said.card);
  Prose prose(out);
  out.begin();
  prose.write(text);
  said.range = out.end();
  return said;
}

// A step in pieces; "[0]" is a clause and writes {0}. A piece is cut at its line ends, as the reader of files does.
inline Written step_of(const std::vector<std::string>& pieces) {
  Written said;
  Writer out(said.card);
  Prose prose(out);
  std::vector<Fragment> fragments;
  struct Own : OwnFragments {
    Own(Writer& to, const std::vector<Fragment>& all) : out(to), fragments(all) {}
    void write_own(std::size_t fragment) override {
      const std::string_view name = fragments[fragment].text;
      out.add("{" + std::string(name.substr(1, name.size() - 2)) + "}", Role::name);
    }
    Writer& out;
    const std::vector<Fragment>& fragments;
  } own(out, fragments);
  bool line_start = false;
  for (const std::string& piece : pieces) {
    if (piece.size() == 3 && piece.front() == '[' && piece.back() == ']') {
      fragments.push_back({piece, true, line_start, false});
      line_start = false;
      continue;
    }
    std::string_view rest = piece;
    for (std::size_t end = rest.find('\n'); ; end = rest.find('\n')) {
      const std::string_view line = rest.substr(0, end);
      if (!line.empty()) {
        fragments.push_back({line, false, line_start, first_mark(line) < line.size()});
        line_start = false;
      }
      if (end == std::string_view::npos) break;
      line_start = true;
      rest.remove_prefix(end + 1);
    }
  }
  out.begin();
  prose.write(fragments, own);
  said.range = out.end();
  return said;
}

}  // namespace qtn::test
