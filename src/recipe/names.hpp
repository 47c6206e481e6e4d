// Names of lists, parts and used recipes, and what a mention means (semantics 3.1). Private to this room.
#pragma once
#include <span>

#include "recipe/recipe.hpp"

namespace qtn {

// Is this word what a name of these words is of: its last one, or the one before of, in, on, with or for (leg of lamb)?
bool is_head(std::span<const WordKey> name, WordKey word);

class Names {
 public:
  explicit Names(const Recipe& recipe);
  struct Answer {
    std::vector<Target> found;   // one: resolved; none; several: a tie
    bool last_word_differs = false;
  };
  // What `text` means in a part (kNone: after the dish). Lines of the part first, then parts, then uses.
  Answer ask(std::string_view text, Index part) const;
  // Exactly one listed name, part or recipe, word for word: full names come before any other reading (part 11).
  bool whole_name(std::string_view text, Index part, Target& out) const;
  // Every listed name that may be meant at a place, for suggestions.
  std::vector<std::string_view> known(Index part) const;
  // Parts that list a matching line, other than `part`.
  std::vector<Index> parts_listing(std::string_view text, Index part) const;
  std::string_view name_of(const Target& target) const;

 private:
  struct Entry {
    Slice keys;
    Target target;
    bool measured = true;
  };
  void add(std::string_view name, const Target& target, std::vector<Entry>& out);
  bool matches(const Entry& entry, std::span<const WordKey> words) const;
  void by_preparation(Slice lines, std::span<const WordKey> words) const;
  bool equals(const Entry& entry, std::span<const WordKey> words) const;
  bool begins_with(WordKey word) const;
  std::span<const WordKey> keys_of(const Entry& entry) const { return {keys_.data() + entry.keys.first, entry.keys.count}; }
  Answer choose(std::vector<const Entry*>& kept, std::span<const WordKey> words) const;

  const Recipe& recipe_;
  std::vector<WordKey> keys_;
  std::vector<Entry> lines_;           // in the order of the parts
  std::vector<Slice> lines_of_part_;   // into lines_
  std::vector<Entry> parts_, uses_;
  mutable std::vector<WordKey> words_;             // of the latest question
  mutable std::vector<const Entry*> candidates_;  // and what it may mean
};

}  // namespace qtn
