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
// The same of a thing that contains it: "nuts" is the row of a nut that nobody names.
AllergenSet allergens_held(std::string_view word);
// What a set may turn out to be: the row "nuts" is a nut that nobody names, so it may be any of them.
AllergenSet may_be(AllergenSet set);

struct Brings {
  AllergenSet contains = 0;
  AllergenSet label = 0;   // made things bring them often: the label decides
  AllergenSet absent = 0;  // its name promises that they are not in it: "vegan butter"; they are under the label
  bool known = false;      // false: some of its words are in no row, and the sets are what the others tell
  bool see_label = false;  // a made thing with a word before its name that nobody knows, or with a promise in it
};
// What a listed name brings: every word of it is read, the longest names first, so that "almond milk" is no milk and "tuna
// mayonnaise" is fish and eggs.
Brings brings(std::string_view name);
Brings brings(std::string_view name, std::span<const WordKey> words);  // the same where it is folded already

}  // namespace qtn
