// Text that stays the same words in CommonMark: backslashes where a character would be read as a mark, and only there.
#pragma once
#include <string>
#include <string_view>

namespace qtn {

// Anywhere in a line. Line ends, tabs and control characters become blanks.
void append_markdown(std::string& out, std::string_view text);
// `code`, in a fence of backticks that the code does not hold.
void append_code_span(std::string& out, std::string_view text);
// What stands in the round brackets of a link; for targets that may_link() lets through.
void append_destination(std::string& out, std::string_view target);
// The line from `from` to the end of `out` is the content of one block: drops blanks before it, and stops it from
// opening another block ("1.", "#", "- ").
void guard_block(std::string& out, std::size_t from);
// A heading: as above, and a # at its end stays.
void guard_heading(std::string& out, std::size_t from);

// May marks of emphasis (* or **) stand around `core`, a written text without blanks at its ends, between these two
// neighbours (' ' at the ends of a block)? Says no where in doubt: the words matter more than their weight.
bool can_emphasize(char before, std::string_view core, char after);

}  // namespace qtn
