// The example book is sound: no file of it gets an error, a warning or a note.
#include <doctest/doctest.h>

#include "suite/book.hpp"

using namespace qtn;

TEST_CASE("every file of the example book is read without a word") {
  Book book = tests::example_book();
  auto files = tests::example_files();
  CHECK(files.size() >= 20);
  files.push_back("kitchen.qtn");
  for (const std::string& path : files) {
    const Checked* checked = book.file(path);
    REQUIRE(checked != nullptr);
    for (const Diagnostic& problem : checked->report.list()) {
      const auto place = Lines(checked->source.text()).place(problem.span.begin);
      FAIL_CHECK(path << ":" << place.line << " " << row(problem.code).code << " " << problem.message);
    }
  }
}
