// The tables of allergens and of raw foods against the larder, and names that only end in a known one.
#include <doctest/doctest.h>

#include <map>
#include <set>

#include "data/tables.hpp"
#include "larder/allergens.hpp"
#include "larder/hazards.hpp"
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
  CHECK(brings("almond croissants").contains == of("almonds"));
  CHECK_FALSE(brings("almond croissants").known);
  CHECK_FALSE(brings("xanthan gum").known);
  CHECK(brings("truffle butter").see_label);
  CHECK(brings("vegan butter").contains == 0u);
  CHECK(brings("vegan butter").label == of("milk"));
  CHECK(brings("prawn crackers").contains == of("crustaceans"));
  CHECK(brings("crab apple jelly").contains == 0u);
  CHECK(brings("celeriac").contains == of("celery"));
  CHECK(of("gluten") == (of("wheat") | of("rye") | of("barley") | of("oats")));
  CHECK(of("gravel") == 0u);
}
