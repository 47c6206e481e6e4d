// Which allergens by law a listed thing brings. The lists of the EU and the UK and of the United States are kept apart:
// a key such as "wheat" says how each of them calls its group, or that one of them has none. Rows and their sources:
// data/allergens.txt.
#pragma once
#include <cstdint>
#include <span>
#include <string_view>

#include "larder/food.hpp"

namespace qtn {

using AllergenSet = std::uint32_t;  // bit i: row i of allergen_list()

struct AllergenRow {
  std::string_view key;       // "wheat"
  std::string_view european;  // "cereals containing gluten"; empty where the list has no such group
  std::string_view american;  // "wheat"
};
std::span<const AllergenRow> allergen_list();
// The keys that a word of a kitchen file or a menu means: "gluten" is four of them. None: it is on no list.
AllergenSet allergens_meant(std::string_view word);

struct Brings {
  AllergenSet contains = 0;
  AllergenSet label = 0;   // made things bring them often: the label decides
  bool known = false;      // false: the table does not know the thing, and the sets are what its words tell
  bool see_label = false;  // a made thing with a word before its name that nobody knows
};
// What a listed name brings: "almond milk", "truffle butter". A name that only ends in a known one ("peanut brittle
// biscuits") is searched word by word; what is promised ("vegan butter") goes under the label.
Brings brings(std::string_view name);
Brings brings(std::span<const WordKey> words);  // the same for a name that is folded already

}  // namespace qtn
