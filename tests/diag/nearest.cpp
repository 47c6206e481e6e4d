#include "diag/nearest.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <vector>

using namespace qtn;

namespace {

constexpr std::string_view kWords[] = {
    "recipe",       "makes",        "serves",
    "measures",     "words",        "oven",
    "source",       "keeps",        "part",
    "take",         "method",       "gram",
    "kilogram",     "ounce",        "pound",
    "pint",         "gallon",       "litre",
    "millilitre",   "teaspoon",     "knob",
    "pinch",        "tablespoon",   "dessertspoon",
    "hour",         "minute",       "Celsius",
    "rest",         "chill",        "bake",
    "simmer",       "knead",        "whisk",
    "fold",         "blanch",       "braise",
    "roast",        "poach",        "butter",
    "lard",         "plain flour",  "caster sugar",
    "double cream", "leek",         "onion",
    "carrot",       "parsnip",      "nutmeg",
    "cinnamon",     "white pepper", "farmhouse cheddar",
    "shallot",      "currants",     "treacle",
    "suet",         "oatmeal",      "barley",
    "mackerel",     "samphire",     "gooseberry",
};

// The n-th misspelling of a word: drop, double, swap with the next, or replace a letter.
std::string misspelt(std::string_view word, std::size_t n) {
  std::string wrong(word);
  const std::size_t at = (n * 7 + word.size()) % (word.size() - 1);
  switch (n % 4) {
    case 0:
      wrong.erase(at, 1);
      break;
    case 1:
      wrong.insert(at, 1, wrong[at]);
      break;
    case 2:
      std::swap(wrong[at], wrong[at + 1]);
      break;
    default:
      wrong[at] = "abcdefghijklmnopqrstuvwxyz"[(word.size() + at + 7 * n) % 26];
      break;
  }
  return wrong;
}

}  // namespace

TEST_CASE("distance counts a swap once and has no case") {
  CHECK(distance("lard", "lard", 3) == 0);
  CHECK(distance("LARD", "lard", 3) == 0);
  CHECK(distance("CRÈME", "crème", 3) == 0);
  CHECK(distance("creme", "crème", 3) == 1);
  CHECK(distance("buttre", "butter", 3) == 1);
  CHECK(distance("", "lard", 9) == 4);
  CHECK(distance("lard", "flour", 9) == 4);
  CHECK(distance("ca", "abc", 9) == 3);  // alignment: a letter that was swapped is not touched again
  CHECK(distance("lard", "flour", 2) == 3);
  CHECK(distance("lard", "double cream", 2) == 3);
  CHECK(distance(std::string(100, 'x'), std::string(100, 'x'), 2) == 3);
}

TEST_CASE("the plain definition agrees on many pairs") {
  const auto slow = [](std::string_view a, std::string_view b) {
    std::vector<std::vector<int>> d(a.size() + 1, std::vector<int>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i)
      for (std::size_t j = 0; j <= b.size(); ++j) {
        if (i == 0 || j == 0) {
          d[i][j] = static_cast<int>(i + j);
          continue;
        }
        d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
        if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
          d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
      }
    return d[a.size()][b.size()];
  };
  std::uint32_t state = 3;
  for (int round = 0; round < 3000; ++round) {
    std::string words[2];
    for (std::string& word : words) {
      state = state * 1664525u + 1013904223u;
      for (std::uint32_t i = 0, n = (state >> 10) % 9; i < n; ++i) word += "abc"[(state >> (i * 2 + 8)) % 3];
    }
    const int truth = slow(words[0], words[1]);
    for (int most = 0; most < 6; ++most) CHECK(distance(words[0], words[1], most) == std::min(truth, most + 1));
  }
}

TEST_CASE("at least nine in ten of 200 misspellings find their word first") {
  int tried = 0, right = 0;
  for (std::size_t n = 0; tried < 200; ++n)
    for (const std::string_view word : kWords) {
      if (tried == 200) break;
      const std::string wrong = misspelt(word, n);
      if (std::find(std::begin(kWords), std::end(kWords), wrong) != std::end(kWords)) continue;
      ++tried;
      const auto found = nearest(wrong, kWords);
      if (!found.empty() && found.front() == word) ++right;
    }
  INFO(right << " of " << tried);
  CHECK(std::size(kWords) == 60);
  CHECK(right * 10 >= tried * 9);
}

TEST_CASE("what is offered, and in what order") {
  using Words = std::vector<std::string_view>;
  constexpr std::string_view units[] = {"g", "kg", "mg", "ml", "tsp", "tbsp", "tsp"};
  CHECK(nearest("tps", units) == Words{"tsp"});
  CHECK(nearest("x", units).empty());
  CHECK(nearest("", units).empty());
  CHECK(nearest("gg", units, 3) == Words{"g", "kg", "mg"});
  CHECK(nearest("gg", units, 2) == Words{"g", "kg"});
  CHECK(nearest("gg", units, 0).empty());
  CHECK(nearest("completely different", units).empty());
  CHECK(nearest(std::string(1000, 'g'), units).empty());
}

TEST_CASE("the question") {
  const auto ask = [](std::vector<std::string_view> words) { return did_you_mean(words); };
  CHECK(ask({}).empty());
  CHECK(ask({"tsp"}) == "Did you mean `tsp`?");
  CHECK(ask({"tsp", "tbsp"}) == "Did you mean `tsp` or `tbsp`?");
  CHECK(ask({"a", "b", "c"}) == "Did you mean `a`, `b` or `c`?");
}
