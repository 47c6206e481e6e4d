// Reads the tables of src/data as text: lines, columns, lists, exact numbers. It knows no units.
#pragma once
#include <array>
#include <cstddef>
#include <string_view>

#include "base/fraction.hpp"

namespace qtn::table {

std::string_view trim(std::string_view text);
// Takes what stands before `mark` off the front of `rest` (all of it when there is none), trimmed.
std::string_view take_before(std::string_view& rest, char mark);
// Takes one word off the front of `rest`.
std::string_view take_word(std::string_view& rest);
// "3", "2.5", "45359237/100000"; lost() when it is no number.
Fraction number(std::string_view text);

// One line's columns, parted by two or more blanks. "-" is an empty column.
struct Row {
  static constexpr std::size_t kMost = 8;
  std::array<std::string_view, kMost> columns;
  std::size_t count = 0;
  std::string_view operator[](std::size_t i) const { return columns[i]; }
};
Row split(std::string_view line);

// Calls use(Row) for every line that is neither blank nor a comment.
template <class Use>
void each_row(std::string_view text, Use use) {
  while (!text.empty()) {
    const std::string_view line = take_before(text, '\n');
    if (!line.empty() && line[0] != '#') use(split(line));
  }
}

}  // namespace qtn::table
