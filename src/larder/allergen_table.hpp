// data/allergens.txt as it is looked up: names of foods, and words of names, each with what it brings.
#pragma once
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>
#include <vector>

#include "larder/allergens.hpp"

namespace qtn {

struct AllergenEntry {
  AllergenSet contains = 0, label = 0;
  AllergenSet absent = 0;  // "gluten-free": promised away
  bool known = false;      // a row says something of it
  bool made = false;       // sold made up
  bool thing = true;       // false: a word beside a thing, "vegan" or "substitute"
  bool like = false;       // "substitute": the label alone tells what the thing beside it brings
  bool own = false;        // a name of allergens.txt, not one that a food has
};

class AllergenTable {
 public:
  static const AllergenTable& standard();
  // The entry of the most words that end there, and how many they are; null where there is none.
  const AllergenEntry* find(std::span<const WordKey> words, std::size_t& matched) const;
  bool is_plain(WordKey word) const { return plain_.contains(word); }
  AllergenSet meant(std::string_view word) const;  // "gluten": all that it means
  AllergenSet key(std::string_view key) const;     // "nuts": that row alone
  std::span<const AllergenRow> list() const { return list_; }

 private:
  using Run = std::uint64_t;  // of words, read from their end
  struct Row;
  AllergenTable();
  void add_foods();
  void add_row(const Row& row);
  void add_list(const Row& row);
  void add_from(std::string_view things, std::string_view words);
  AllergenEntry& own(std::string_view name);

  std::vector<AllergenRow> list_;
  std::vector<std::pair<Run, AllergenSet>> meanings_;
  std::vector<AllergenEntry> entries_;             // first those of Larder::all(), in its order
  std::unordered_map<Run, std::uint32_t> names_;   // of entries_
  std::unordered_set<WordKey> plain_;
  std::size_t longest_ = 0;                        // words in the longest name
};

}  // namespace qtn
