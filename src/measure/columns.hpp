// Tables whose columns are parted by two or more blanks. Private to this room.
#pragma once
#include <array>
#include <string_view>

#include "base/fraction.hpp"

namespace qtn {

class Columns {
 public:
  explicit Columns(std::string_view text) : rest_(text) {}
  bool next();  // to the next row; false at the end
  std::string_view operator[](std::size_t at) const { return at < count_ ? cells_[at] : std::string_view{}; }

 private:
  std::string_view rest_;
  std::array<std::string_view, 8> cells_;
  std::size_t count_ = 0;
};

// Cuts the next item off a list and trims it; the list is empty after the last.
std::string_view cut(std::string_view& list, char separator);
// "3", "25.4", "45359237/100000"; lost() for anything else.
Fraction read_fraction(std::string_view text);

}  // namespace qtn
