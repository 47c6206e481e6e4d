// The cases of grammar/corpus/*.txt: texts and the tree that each must give, one written beside the other.
//   === title
//   text
//   ---
//   (file ...)
#pragma once
#include <algorithm>

#include "files.hpp"

namespace qtn::tests {

struct Case {
  std::string title, text, tree;
};

inline std::vector<Case> read_cases(const std::string& all) {
  std::vector<Case> cases;
  std::size_t at = 0;
  while ((at = all.find("=== ", at)) != std::string::npos) {
    const std::size_t title_end = all.find('\n', at), middle = all.find("\n---\n", title_end);
    const std::size_t next = std::min(all.find("\n=== ", middle), all.size());
    Case one{all.substr(at + 4, title_end - at - 4), all.substr(title_end + 1, middle - title_end), all.substr(middle + 5, next - middle - 5)};
    while (!one.tree.empty() && one.tree.back() == '\n') one.tree.pop_back();
    cases.push_back(std::move(one));
    at = next;
  }
  return cases;
}

}  // namespace qtn::tests
