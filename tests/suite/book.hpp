// Checking whole files in tests: the example book's kitchen, files from memory.
#pragma once
#include <map>
#include <string>

#include "book/book.hpp"
#include "files.hpp"

namespace qtn::tests {

// A book over the example folder, with some files replaced by other texts.
inline Book example_book(std::map<std::string, std::string> instead = {}) {
  Book book([instead = std::move(instead)](const std::string& path) -> std::optional<std::string> {
    if (const auto found = instead.find(path); found != instead.end()) return found->second;
    const auto file = root() / "examples" / path;
    if (!std::filesystem::is_regular_file(file)) return std::nullopt;
    return slurp(file);
  });
  book.set_kitchen("kitchen.qtn");
  return book;
}

// The example files that are recipes or menus, by their path in the book.
inline std::vector<std::string> example_files() {
  std::vector<std::string> out;
  for (const auto& path : below("examples", ".qtn"))
    if (path.filename() != "kitchen.qtn") out.push_back(std::filesystem::relative(path, root() / "examples").generic_string());
  return out;
}

}  // namespace qtn::tests
