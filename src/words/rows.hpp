// Reads the tables of src/data: a row a line, cells between upright bars, and from '#' to the line's end a comment.
#pragma once
#include <array>
#include <cstddef>
#include <string_view>

namespace qtn {

class Rows {
 public:
  explicit Rows(std::string_view text) : rest_(text) {}
  bool next();  // to the next row that is not blank; false at the end
  // A cell of the row without the blanks around it; empty where the row has fewer.
  std::string_view operator[](std::size_t at) const { return at < count_ ? cells_[at] : std::string_view{}; }
  std::size_t size() const { return count_; }

 private:
  std::string_view rest_;
  std::array<std::string_view, 8> cells_;
  std::size_t count_ = 0;
};

// Cuts the next item off a list and trims it; the list is empty after the last.
std::string_view next_item(std::string_view& list, char separator);

}  // namespace qtn
