#include <algorithm>

#include "diag/glyphs.hpp"

namespace qtn {
namespace {

// Fills lines word by word.
class Filler {
 public:
  Filler(int width, std::vector<std::string>& lines) : width_(width), lines_(lines) {}

  void word(std::string_view text) {
    const int size = columns_of(text);
    if (used_ != 0 && used_ + 1 + size > width_) end_line();
    if (size > width_) return long_word(text);
    if (used_ != 0) line_.push_back(' '), ++used_;
    line_ += text;
    used_ += size;
  }
  void end_line() {
    lines_.push_back(std::move(line_));
    line_.clear();
    used_ = 0;
  }

 private:
  // Longer than a line: cut where the line ends.
  void long_word(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
      const Glyph glyph = glyph_at(text, at);
      const int size = columns(glyph.code);
      if (used_ + size > width_) end_line();
      line_ += text.substr(at, glyph.bytes);
      used_ += size;
      at += glyph.bytes;
    }
  }

  int width_;
  std::vector<std::string>& lines_;
  std::string line_;
  int used_ = 0;
};

// Where the word that starts at `at` ends. A quoted phrase is one word when it takes no more than half a line.
std::size_t word_end(std::string_view text, std::size_t at, int width) {
  while (at < text.size() && text[at] != ' ') {
    if (text[at] == '`') {
      const std::size_t close = text.find('`', at + 1);
      if (close != text.npos && columns_of(text.substr(at, close + 1 - at)) <= width / 2) at = close;
    }
    ++at;
  }
  return at;
}

}  // namespace

std::vector<std::string> wrap(std::string_view text, int width) {
  std::vector<std::string> lines;
  Filler filler(width, lines);
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t line_end = std::min(text.find('\n', from), text.size());
    std::string paragraph(text.substr(from, line_end - from));
    for (char& c : paragraph)
      if (c == '\t') c = ' ';
    paragraph = visible(paragraph);
    for (std::size_t at = 0; at < paragraph.size();) {
      if (paragraph[at] == ' ') {
        ++at;
        continue;
      }
      const std::size_t end = word_end(paragraph, at, width);
      filler.word(std::string_view(paragraph).substr(at, end - at));
      at = end;
    }
    filler.end_line();
    from = line_end + 1;
  }
  return lines;
}

}  // namespace qtn
