// Letters beyond ASCII: case and accents of Latin-1 and Latin Extended-A. Private to this room.
#pragma once
#include <cstddef>
#include <string_view>

namespace qtn {

// Writes `text` in lower case to `out` and returns how much was written, never more than text.size().
std::size_t lower_letters(std::string_view text, char* out);
// The same, and a letter with its combining accent becomes one letter, and typographic apostrophes and hyphens plain.
std::size_t fold_letters(std::string_view text, char* out);

}  // namespace qtn
