// Bytes as a person sees them in a terminal: code points, how many columns each takes, and a harmless form for
// those that would move the cursor, turn the writing round or not show at all. Independent of any locale.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace qtn {

struct Glyph {
  char32_t code;      // U+FFFD for a byte that is not UTF-8
  std::size_t bytes;  // 1 to 4; a damaged byte stands alone
};
Glyph glyph_at(std::string_view text, std::size_t at);  // at < text.size()

// Control, direction and zero-width characters: never sent to a terminal as they are.
bool is_hidden(char32_t code);
// 0 for a combining mark, 2 for an East Asian wide character or a picture, else 1. Not for hidden ones.
int columns(char32_t code);

struct Shown {
  std::string text;
  int columns;
};
// What is printed for one glyph: itself, a control picture such as ␛, or <U+202E>.
Shown show(char32_t code);

std::string visible(std::string_view text);  // the whole text, every glyph shown
int columns_of(std::string_view shown);      // of a text that went through visible()

// Lines of at most `width` columns, broken at spaces and kept line ends; a short `quoted` phrase stays in one piece.
// Each line is visible text without the spaces it was broken at.
std::vector<std::string> wrap(std::string_view text, int width);

}  // namespace qtn
