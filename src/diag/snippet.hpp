// One line of a source as it is drawn: tabs opened, every glyph visible, a line longer than the page cut around the
// place. Knows columns and nothing of colours or gutters.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "base/source.hpp"

namespace qtn {

class Snippet {
 public:
  // `line` is the line of `text` without its end, `place` what must be seen of it; `width` at least 20 columns.
  Snippet(std::string_view text, Span line, Span place, int width);

  const std::string& text() const { return text_; }
  struct Carets {
    int at;     // columns before the first caret
    int count;  // at least 1
  };
  // Under the part of `place` on this line that is drawn; one caret where it is empty.
  Carets carets(Span place) const;
  bool shows(Span place) const;  // its start is on the drawn part of this line

 private:
  // A glyph with the marks on it.
  struct Cell {
    Span bytes;
    std::string text;
    int column;
    int columns;
  };
  void read(std::string_view text, Span place, int width);
  std::size_t first_cell(Span place, int width) const;
  void draw(std::size_t first, int width);
  Span clip(Span place) const;
  int end_column() const { return cells_.empty() ? 0 : cells_.back().column + cells_.back().columns; }

  Span line_;
  bool more_left_ = false, more_right_ = false;
  std::vector<Cell> cells_;  // after the constructor: the drawn ones, columns as drawn
  std::string text_;
};

}  // namespace qtn
