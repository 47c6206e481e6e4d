#include "larder/allergens.hpp"

#include <algorithm>

#include "larder/allergen_table.hpp"

namespace qtn {
namespace {

struct Reading {
  Brings brings;
  bool odd = false;  // a word that nobody knows
};

Reading read(std::span<const WordKey> keys) {
  const AllergenTable& table = AllergenTable::standard();
  Brings out;
  const AllergenEntry* head = nullptr;
  bool odd = false, like = false;
  for (std::size_t end = keys.size(); end > 0;) {
    std::size_t size = 1;
    const AllergenEntry* const entry = table.find(keys.first(end), size);
    const bool plain = table.is_plain(keys[end - 1]);
    if (entry == nullptr || !entry->known || (plain && size == 1 && end < keys.size())) {
      odd = odd || !plain;
      --end;
      continue;
    }
    if (entry->thing && head == nullptr) head = entry;
    out.contains |= entry->contains, out.label |= entry->label, out.absent |= entry->absent;
    like = like || entry->like;
    end -= size;
  }
  const AllergenSet doubtful = out.contains & (like ? ~AllergenSet{0} : out.absent);
  out.contains &= ~doubtful;
  out.label = (out.label | doubtful) & ~out.contains;
  const bool made = head != nullptr && head->made;
  out.known = head != nullptr && (!odd || made);
  out.see_label = like || out.absent != 0 || (odd && made);
  return {out, odd};
}

}  // namespace

std::span<const AllergenRow> allergen_list() { return AllergenTable::standard().list(); }

AllergenSet allergens_meant(std::string_view word) { return AllergenTable::standard().meant(word); }

AllergenSet allergens_held(std::string_view word) {
  const AllergenSet meant = allergens_meant(word);
  return meant == allergens_meant("nuts") ? AllergenTable::standard().key("nuts") : meant;
}

AllergenSet may_be(AllergenSet set) {
  static const AllergenSet some_nut = AllergenTable::standard().key("nuts"), nuts = AllergenTable::standard().meant("nuts");
  return (set & some_nut) != 0 ? set | nuts : set;
}

Brings brings(std::string_view name) {
  std::vector<WordKey> keys;
  fold_keys(name, keys);
  return brings(name, keys);
}

Brings brings(std::string_view name, std::span<const WordKey> keys) {
  const Reading first = read(keys);
  if (!first.odd || name.find('-') == std::string_view::npos) return first.brings;
  // "beer-battered cod": a word that nobody knows is read by its pieces.
  std::string pieces(name);
  std::replace(pieces.begin(), pieces.end(), '-', ' ');
  std::vector<WordKey> words;
  fold_keys(pieces, words);
  return read(words).brings;
}

}  // namespace qtn
