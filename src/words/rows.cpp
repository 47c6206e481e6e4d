#include "words/rows.hpp"

#include "words/fold.hpp"

namespace qtn {

std::string_view next_item(std::string_view& list, char separator) {
  const std::size_t end = list.find(separator);
  const std::string_view item = trim(list.substr(0, end));
  list = end == std::string_view::npos ? std::string_view{} : list.substr(end + 1);
  return item;
}

bool Rows::next() {
  while (!rest_.empty()) {
    const std::size_t end = rest_.find('\n');
    std::string_view line = rest_.substr(0, end);
    rest_ = end == std::string_view::npos ? std::string_view{} : rest_.substr(end + 1);
    line = trim(line.substr(0, line.find('#')));
    if (line.empty()) continue;
    count_ = 0;
    while (!line.empty() && count_ < cells_.size()) cells_[count_++] = next_item(line, '|');
    return true;
  }
  count_ = 0;
  return false;
}

}  // namespace qtn
