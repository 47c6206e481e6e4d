// Tree tests: every text of grammar/corpus/*.txt gives the tree that stands beside it.
#include <doctest/doctest.h>

#include "cases.hpp"
#include "syntax/tree.hpp"

using namespace qtn;

TEST_CASE("every text of the corpus gives the tree that stands beside it") {
  int count = 0;
  for (const auto& path : tests::below("grammar/corpus", ".txt")) {
    std::string blessed;
    for (const tests::Case& one : tests::read_cases(tests::slurp(path))) {
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
