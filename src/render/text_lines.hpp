// Words set in lines of 72 columns, without any markup characters.
#pragma once
#include <string>
#include <string_view>

#include "card/card.hpp"

namespace qtn {

inline constexpr std::size_t kColumns = 72;

// The words of a range. Inside an amount, a time or a temperature a blank becomes kHeld, so that it is not broken over
// two lines; control characters become blanks; the target of a link follows its words.
inline constexpr char kHeld = '\x1f';
std::string plain_words(const Card& card, Range32 range);

// Text without control characters: each becomes a blank.
std::string plain_text(std::string_view text);

// Columns that a text takes on a screen, counted in characters.
std::size_t width_of(std::string_view text);

// Appends `words` in lines, the first where `out` stands at column `indent`, the others indented by as much; ends the
// last line. A word too long for a line stands alone in one.
void append_lines(std::string& out, std::string_view words, std::size_t indent);

}  // namespace qtn
