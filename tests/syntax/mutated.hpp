// Recipes of the example book, and the same with a few edits at random places.
#pragma once
#include <doctest/doctest.h>

#include <random>

#include "files.hpp"

namespace qtn::tests {

inline std::vector<std::string> seeds() {
  std::vector<std::string> out;
  for (const auto& path : below("examples", ".qtn")) out.push_back(slurp(path));
  REQUIRE(out.size() >= 12);
  return out;
}

inline std::string mutated(const std::vector<std::string>& books, std::mt19937& random) {
  static const std::string pieces[] = {"[", "]", "(", ")", ":", "\n", "\n\n", "take:\n", "method:\n", "part: X\n", " to ", "1/2", "½", "%", "per kg of [", "°C",
                                       "meanwhile:", "`", "\\", "# x\n", "->", "\xC2\xA0", "\xFF", std::string(1, '\0'), "400 g", ", from ", "each ", "\r\n", "trial: 2026-01-01\n",
                                       "note:", "metohd:\n", "film:\n", "\t", "](x)", "menu: X\n", "kitchen: X\n", "ovens:\n"};
  std::string text = books[random() % books.size()];
  for (int edits = 1 + static_cast<int>(random() % 6); edits > 0 && !text.empty(); --edits) {
    const std::size_t at = random() % text.size();
    switch (random() % 4) {
      case 0: text.erase(at, random() % 20); break;
      case 1: text.insert(at, pieces[random() % std::size(pieces)]); break;
      case 2: text[at] = static_cast<char>(random()); break;
      default: text.insert(at, text.substr(random() % text.size(), random() % 40)); break;
    }
  }
  return text;
}

}  // namespace qtn::tests
