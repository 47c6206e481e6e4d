// Tree tests: grammar/corpus/*.txt holds texts and the tree that each must give, one written beside the other.
//   === title
//   text
//   ---
//   (file ...)
#include <doctest/doctest.h>

#include "files.hpp"
#include "syntax/tree.hpp"

using namespace qtn;

namespace {

struct Case {
  std::string title, text, tree;
};

std::vector<Case> read_cases(const std::string& all) {
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

}  // namespace

TEST_CASE("every text of the corpus gives the tree that stands beside it") {
  int count = 0;
  for (const auto& path : tests::below("grammar/corpus", ".txt")) {
    std::string blessed;
    for (const Case& one : read_cases(tests::slurp(path))) {
      ++count;
      const Source source(one.title, one.text);
      const Tree tree = parse(source);
      const std::string got = dump(tree, source.text());
      blessed += "=== " + one.title + "\n" + one.text + "---\n" + got + "\n\n";
      INFO(path.filename().string() << ": " << one.title);
      if (!tests::blessing()) CHECK(got == one.tree);
    }
    if (tests::blessing()) tests::spill(path, blessed);
  }
  CHECK(count >= 60);
}
