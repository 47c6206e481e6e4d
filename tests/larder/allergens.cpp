// The tables of allergens and of raw foods against the larder, and names that only end in a known one.
#include <doctest/doctest.h>

#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "data/tables.hpp"
#include "larder/allergens.hpp"
#include "words/rows.hpp"

using namespace qtn;

namespace {

AllergenSet of(std::string_view word) { return allergens_meant(word); }

// Is this the whole name of a row of foods.txt?
bool whole_name(std::string_view name) {
  const Food* const food = Larder::standard().find(name);
  if (food == nullptr) return false;
  if (fold_name(food->name) == fold_name(name)) return true;
  for (const std::string_view other : Larder::standard().other_names(*food))
    if (fold_name(other) == fold_name(name)) return true;
  return false;
}

// "almonds, milk"
AllergenSet keys(std::string_view words) {
  AllergenSet out = 0;
  for (; !words.empty() && words != "-";) {
    const std::string_view word = next_item(words, ',');
    REQUIRE_MESSAGE(allergens_held(word) != 0u, word);
    out |= allergens_held(word);
  }
  return out;
}

}  // namespace

TEST_CASE("every food is in the table of allergens, and every name of the table is a food") {
  for (const Food& food : Larder::standard().all()) CHECK_MESSAGE(brings(food.name).known, food.name);
  std::map<std::string_view, std::string_view> rows_of_none;
  for (Rows row(data::allergens()); row.next();) {
    const bool none = row[0] == "none", pair = row[0] == "contains" || row[0] == "label";
    if (!none && !pair && row[0] != "made") continue;
    for (std::string_view foods = row[pair ? 2 : 1]; !foods.empty();) {
      const std::string_view name = next_item(foods, ',');
      CHECK_MESSAGE(whole_name(name), name);
      const Brings found = brings(name);
      if (none) CHECK_MESSAGE((found.contains | found.label) == 0u, name);
      if (pair) CHECK_MESSAGE((found.contains | found.label) != 0u, name);
    }
    if (!pair) continue;
    for (std::string_view keys = row[1]; !keys.empty();) CHECK_MESSAGE(of(next_item(keys, ',')) != 0u, row[1]);
  }
}

TEST_CASE("a name is searched to its front") {
  CHECK(brings("almond milk").contains == of("almonds"));
  CHECK(brings("peanut butter").contains == of("peanuts"));
  CHECK(brings("cold unsalted butter").contains == of("milk"));
  CHECK_FALSE(brings("cold unsalted butter").see_label);
  CHECK(brings("almond clouds").contains == of("almonds"));
  CHECK_FALSE(brings("almond clouds").known);
  CHECK(brings("truffle butter").see_label);
  CHECK(brings("vegan butter").contains == 0u);
  CHECK(brings("vegan butter").label == of("milk"));
  CHECK(brings("prawn crackers").contains == of("crustaceans"));
  CHECK(brings("crab apple jelly").contains == 0u);
  CHECK(brings("celeriac").contains == of("celery"));
  CHECK(of("gluten") == (of("wheat") | of("rye") | of("barley") | of("oats")));
  CHECK(of("gravel") == 0u);
}

TEST_CASE("a name brings what it says, and nothing that it only sounds like") {
  std::ifstream in(std::string(QTN_SOURCE_DIR) + "/tests/larder/allergen_names.tsv");
  int names = 0;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> cells;
    std::istringstream row(line);
    for (std::string cell; std::getline(row, cell, '\t');) cells.push_back(cell);
    REQUIRE_MESSAGE(cells.size() == 4, line);
    CAPTURE(line);
    const Brings found = brings(cells[0]);
    ++names;
    CHECK(found.known == (cells[1] != "?"));
    if (cells[1] != "?") CHECK(found.contains == keys(cells[1]));
    CHECK((keys(cells[2]) & ~found.label) == 0u);
    CHECK((keys(cells[3]) & (found.contains | found.label)) == 0u);
    if (cells[1] == "-" && cells[2] == "-") CHECK((found.contains | found.label) == 0u);
  }
  CHECK(names >= 180);
}

TEST_CASE("rows of names are whole") {
  for (Rows row(data::allergens()); row.next();) {
    if (row[0] == "list") continue;
    const std::size_t at = row[0].starts_with("name c") || row[0].starts_with("name l") || row[0] == "from" ? 2 : 1;
    for (std::string_view names = row[at]; !names.empty();) CHECK_MESSAGE(!next_item(names, ',').empty(), row[at]);
    if (!row[0].starts_with("name ") || at == 1) continue;
    for (std::string_view keys = row[1]; !keys.empty();) CHECK_MESSAGE(of(next_item(keys, ',')) != 0u, row[1]);
  }
}

TEST_CASE("a nut that nobody names may be any of them") {
  CHECK((may_be(brings("mixed nuts").contains) & of("cashews")) != 0u);
  CHECK((may_be(brings("mixed nuts").contains) & of("peanuts")) == 0u);
  CHECK(may_be(of("almonds")) == of("almonds"));
  CHECK((of("nuts") & brings("mixed nuts").contains) != 0u);
  CHECK((of("shellfish") & brings("squid").contains) != 0u);
  CHECK((of("dairy") & brings("ghee").contains) != 0u);
}

TEST_CASE("a promise in a name covers what it names and nothing else") {
  CHECK(brings("gluten-free soy sauce").absent == of("gluten"));
  CHECK(brings("gluten-free soy sauce").contains == of("soya"));
  CHECK(brings("butter substitute").absent == 0u);
  CHECK(brings("butter substitute").see_label);
  CHECK(brings("lactose-free cream").contains == of("milk"));
}
