// Which kitchen a file on disk is read with: found by its first field, in its own folder or above.
#include <doctest/doctest.h>

#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "cli/files.hpp"
#include "cli/library.hpp"

using namespace qtn;
namespace fs = std::filesystem;

namespace {

struct Shelf {
  fs::path top = fs::temp_directory_path() / ("quartern-kitchens-" + std::to_string(::getpid()));
  Shelf() { fs::remove_all(top); }
  ~Shelf() { fs::remove_all(top); }
  Shelf(const Shelf&) = delete;
  Shelf& operator=(const Shelf&) = delete;
  std::string put(const std::string& path, const std::string& text) const {
    fs::create_directories((top / path).parent_path());
    std::ofstream(top / path, std::ios::binary) << text;
    return (top / path).string();
  }
};

std::string codes(const Named& file) {
  std::string out;
  for (const Diagnostic& one : file.checked->report.list()) out += (out.empty() ? "" : " ") + std::string(row(one.code).code);
  return out;
}

const std::string kSoup = "recipe: Soup\ntake:\n  1 pint stock\nmethod:\n  Warm [the stock] [5 min].\n";
const std::string kHouse = "kitchen: Saltmarsh House\nmeasures: British\n";

}  // namespace

TEST_CASE("a kitchen is known by its first field, whatever the file is called") {
  for (const std::string opening : {"", "# ours since 1988\n\n", "\xEF\xBB\xBF", "\r\n  \r\n", "  "}) {
    const Shelf shelf;
    shelf.put("house-rules.qtn", opening + kHouse);
    const std::string soup = shelf.put("soups/winter/soup.qtn", kSoup);
    const Place place = place_of(soup);
    CHECK(place.root == shelf.top.string());
    REQUIRE(place.kitchens == std::vector<std::string>{"house-rules.qtn"});
    const Library library({soup});
    REQUIRE(library.files().size() == 1);
    CHECK_MESSAGE(codes(library.files()[0]) == "", opening);
    CHECK(library.files()[0].checked->recipe->dialect == Dialect::british);
  }
}

TEST_CASE("the name alone makes no kitchen, and remarks without end are no first field") {
  const Shelf shelf;
  shelf.put("kitchen.qtn", "recipe: Kitchen supper\n" + kHouse);
  std::string remarks;
  while (remarks.size() < 100000) remarks += "# and so on\n";
  shelf.put("long.qtn", remarks + kHouse);
  shelf.put("empty.qtn", "");
  shelf.put("notes.txt", kHouse);
  const std::string soup = shelf.put("soup.qtn", kSoup);
  CHECK(place_of(soup).kitchens.empty());
  CHECK(place_of(soup).root == shelf.top.string());
}

TEST_CASE("the nearest folder with a kitchen is the book") {
  const Shelf shelf;
  shelf.put("kitchen.qtn", kHouse);
  shelf.put("annexe/rules.qtn", "kitchen: The annexe\nmeasures: American\n");
  const std::string near = shelf.put("annexe/soups/soup.qtn", kSoup), far = shelf.put("soup.qtn", kSoup);
  CHECK(place_of(near).root == (shelf.top / "annexe").string());
  CHECK(Library({near}).files()[0].checked->recipe->dialect == Dialect::american);
  CHECK(Library({far}).files()[0].checked->recipe->dialect == Dialect::british);
  const Library all({shelf.top.string()});
  for (const Named& file : all.files())
    CHECK(codes(file) == (file.checked->kind == FileKind::kitchen ? "Q709" : ""));
}

TEST_CASE("two kitchens in one folder are told at both, whether the call names them or not") {
  const Shelf shelf;
  shelf.put("a-rules.qtn", kHouse);
  shelf.put("kitchen.qtn", kHouse);
  const std::string soup = shelf.put("soups/soup.qtn", kSoup);
  CHECK(place_of(soup).kitchens == std::vector<std::string>{"kitchen.qtn", "a-rules.qtn"});
  for (const std::string& call : {soup, shelf.top.string()}) {
    const Library library({call});
    REQUIRE(library.files().size() == 3);
    for (const Named& file : library.files()) {
      CHECK(codes(file) == (file.checked->kind == FileKind::kitchen ? "Q712" : ""));
      CHECK(file.asked == (call != soup || file.checked->kind != FileKind::kitchen));
    }
  }
}

TEST_CASE("what cannot be read of the kitchen is told whatever the call names") {
  const Shelf shelf;
  shelf.put("kitchen.qtn", kHouse + "ovens:\n  range  9 wheels\n");
  const std::string soup = shelf.put("soup.qtn", kSoup);
  const Library library({soup});
  REQUIRE(library.files().size() == 2);
  CHECK(codes(library.files()[0]) == "Q742");
  CHECK_FALSE(library.files()[0].asked);
  // One that only warns says so when it is checked itself.
  shelf.put("kitchen.qtn", kHouse);
  CHECK(Library({soup}).files().size() == 1);
}
