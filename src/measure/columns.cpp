#include "measure/columns.hpp"

namespace qtn {
namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

}  // namespace

std::string_view cut(std::string_view& list, char separator) {
  const std::size_t at = list.find(separator);
  const std::string_view item = trimmed(list.substr(0, at));
  list = at == std::string_view::npos ? std::string_view() : list.substr(at + 1);
  return item;
}

bool Columns::next() {
  while (!rest_.empty()) {
    std::string_view line = cut(rest_, '\n');
    if (line.empty() || line.front() == '#') continue;
    count_ = 0;
    while (!line.empty() && count_ < cells_.size()) {
      const std::size_t gap = line.find("  ");
      cells_[count_++] = trimmed(line.substr(0, gap));
      line = gap == std::string_view::npos ? std::string_view() : trimmed(line.substr(gap));
    }
    return true;
  }
  return false;
}

Fraction read_fraction(std::string_view text) {
  Wide over = 0, under = 1;
  bool point = false, slash = false;
  Wide below = 0;
  if (text.empty()) return Fraction::lost();
  for (char c : text) {
    if (c == '.' && !point) point = true;
    else if (c == '/' && !slash) slash = true;
    else if (c < '0' || c > '9') return Fraction::lost();
    else if (slash) below = below * 10 + (c - '0');
    else {
      over = over * 10 + (c - '0');
      if (point) under *= 10;
    }
  }
  return slash ? Fraction::of(over, below) : Fraction::of(over, under);
}

}  // namespace qtn
