#include "measure/table_text.hpp"

namespace qtn::table {

std::string_view trim(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '\r')) text.remove_suffix(1);
  return text;
}

std::string_view take_before(std::string_view& rest, char mark) {
  const std::size_t end = rest.find(mark);
  const std::string_view taken = rest.substr(0, end);
  rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
  return trim(taken);
}

std::string_view take_word(std::string_view& rest) {
  rest = trim(rest);
  return take_before(rest, ' ');
}

Fraction number(std::string_view text) {
  // Eighteen digits fit in 64 bits; no figure in a table is longer.
  constexpr std::size_t kLongest = 18;
  Wide value = 0, under = 1;
  bool decimals = false;
  std::size_t digits = 0;
  if (const std::size_t stroke = text.find('/'); stroke != std::string_view::npos)
    return number(text.substr(0, stroke)) / number(text.substr(stroke + 1));
  for (const char c : text) {
    if (c == '.' && !decimals) {
      decimals = true;
    } else if (c >= '0' && c <= '9' && ++digits <= kLongest) {
      value = value * 10 + (c - '0');
      if (decimals) under *= 10;
    } else {
      return Fraction::lost();
    }
  }
  return digits == 0 ? Fraction::lost() : Fraction::of(value, under);
}

Row split(std::string_view line) {
  Row row;
  while (!line.empty() && row.count < Row::kMost) {
    const std::size_t gap = line.find("  ");
    const std::string_view column = line.substr(0, gap);
    row.columns[row.count++] = column == "-" ? std::string_view() : column;
    line = gap == std::string_view::npos ? std::string_view() : trim(line.substr(gap));
  }
  return row;
}

}  // namespace qtn::table
