#include "larder/allergens.hpp"

#include <unordered_set>

#include "data/tables.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

struct OfFood {
  AllergenSet contains = 0, label = 0;
  bool known = false, made = false;
};

struct AllergenTable {
  std::vector<AllergenRow> list;
  std::vector<std::pair<WordKey, AllergenSet>> meanings;
  std::vector<OfFood> of_food;
  std::unordered_set<WordKey> plain, claims;

  AllergenTable() {
    of_food.resize(Larder::standard().all().size());
    for (Rows row(data::allergens()); row.next();) {
      if (row[0] == "list") add_list(row);
      else if (row[0] == "plain" || row[0] == "claim") add_words(row[0] == "plain" ? plain : claims, row[1]);
      else if (row[0] == "contains") each_food(row[2], [&](OfFood& food) { food.contains |= bits(row[1]); });
      else if (row[0] == "label") each_food(row[2], [&](OfFood& food) { food.label |= bits(row[1]); });
      else if (row[0] == "none") each_food(row[1], [](OfFood&) {});
      else if (row[0] == "made") each_food(row[1], [](OfFood& food) { food.made = true; });
    }
    for (OfFood& food : of_food) food.label &= ~food.contains;
  }

  void add_list(const Rows& row) {
    const AllergenSet bit = AllergenSet{1} << list.size();
    list.push_back({row[1], row[2] == "-" ? std::string_view() : row[2], row[3] == "-" ? std::string_view() : row[3]});
    for (std::string_view words = row[4]; !words.empty();) meanings.emplace_back(whole_key(next_item(words, ',')), bit);
  }

  static void add_words(std::unordered_set<WordKey>& set, std::string_view words) {
    while (!words.empty()) set.insert(fold_key(next_item(words, ',')));
  }

  AllergenSet bits(std::string_view keys) const {
    AllergenSet out = 0;
    while (!keys.empty()) {
      const std::string_view key = next_item(keys, ',');
      for (std::size_t i = 0; i < list.size(); ++i)
        if (list[i].key == key) out |= AllergenSet{1} << i;
    }
    return out;
  }

  template <class Change>
  void each_food(std::string_view names, Change change) {
    while (!names.empty())
      if (const Food* const food = Larder::standard().find(next_item(names, ','))) {
        of_food[static_cast<std::size_t>(food - Larder::standard().all().data())].known = true;
        change(of_food[static_cast<std::size_t>(food - Larder::standard().all().data())]);
      }
  }

  // One key of a whole phrase, so that "Brazil nuts" and "nuts" differ.
  static WordKey whole_key(std::string_view phrase) {
    std::vector<WordKey> keys;
    fold_keys(phrase, keys);
    WordKey out = 0;
    for (const WordKey key : keys) out = out * 0x9FB21C651E98DF25u + key;
    return out;
  }
};

const AllergenTable& allergen_table() {
  static const AllergenTable table;
  return table;
}

}  // namespace

std::span<const AllergenRow> allergen_list() { return allergen_table().list; }

AllergenSet allergens_meant(std::string_view word) {
  AllergenSet out = 0;
  const WordKey wanted = AllergenTable::whole_key(word);
  for (const auto& [key, bit] : allergen_table().meanings)
    if (key == wanted) out |= bit;
  return out;
}

Brings brings(std::string_view name) {
  std::vector<WordKey> keys;
  fold_keys(name, keys);
  return brings(keys);
}

Brings brings(std::span<const WordKey> keys) {
  const AllergenTable& table = allergen_table();
  const Food* const first = Larder::standard().all().data();
  Brings out;
  bool claimed = false, odd = false, made = false;
  for (std::size_t end = keys.size(); end > 0;) {
    std::size_t size = 1;
    const Food* const food = Larder::standard().find(keys.first(end), &size);
    const WordKey word = keys[end - 1];
    if (food != nullptr && !(end < keys.size() && size == 1 && table.plain.contains(word))) {
      const OfFood& row = table.of_food[static_cast<std::size_t>(food - first)];
      out.contains |= row.contains, out.label |= row.label;
      if (end == keys.size()) out.known = row.known, made = row.made;
      end -= size;
      continue;
    }
    if (table.claims.contains(word)) claimed = true;
    else if (!table.plain.contains(word)) odd = true;
    --end;
  }
  if (claimed) out.label |= out.contains, out.contains = 0, out.see_label = true;
  out.label &= ~out.contains;
  out.see_label = out.see_label || (odd && made);
  return out;
}

}  // namespace qtn
