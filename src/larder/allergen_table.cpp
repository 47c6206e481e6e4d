#include "larder/allergen_table.hpp"

#include <algorithm>

#include "data/tables.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

// One more word in front of a run of words that is read from its end.
std::uint64_t with_word(std::uint64_t run, WordKey word) {
  run = (run ^ word) * 0x9FB21C651E98DF25u;
  return run ^ (run >> 32);
}
constexpr std::uint64_t kNoWords = 0x5851F42D4C957F2Du;

std::uint64_t run_of(std::string_view phrase, std::size_t* longest = nullptr) {
  std::vector<WordKey> words;
  fold_keys(phrase, words);
  if (longest != nullptr) *longest = std::max(*longest, words.size());
  std::uint64_t run = kNoWords;
  for (std::size_t i = words.size(); i-- > 0;) run = with_word(run, words[i]);
  return run;
}

template <class Use>
void each_item(std::string_view list, Use use) {
  while (!list.empty()) use(next_item(list, ','));
}

}  // namespace

struct AllergenTable::Row {
  std::string_view kind, first, second, third, fourth;
};

const AllergenTable& AllergenTable::standard() {
  static const AllergenTable only;
  return only;
}

AllergenTable::AllergenTable() {
  add_foods();
  for (Rows row(data::allergens()); row.next();) add_row({row[0], row[1], row[2], row[3], row[4]});
  // What is made of other things asks for them, so it comes last.
  for (Rows row(data::allergens()); row.next();)
    if (row[0] == "from") add_from(row[1], row[2]);
  for (AllergenEntry& entry : entries_) entry.label &= ~entry.contains;
}

void AllergenTable::add_foods() {
  const Larder& larder = Larder::standard();
  entries_.resize(larder.all().size());
  for (std::uint32_t i = 0; i < larder.all().size(); ++i) {
    const Food& food = larder.all()[i];
    names_.emplace(run_of(food.name, &longest_), i);
    for (const std::string_view other : larder.other_names(food)) names_.emplace(run_of(other, &longest_), i);
  }
}

void AllergenTable::add_row(const Row& row) {
  const auto sum = [&](std::string_view keys) {
    AllergenSet out = 0;
    each_item(keys, [&](std::string_view one) { out |= key(one); });
    return out;
  };
  const auto each_food = [&](std::string_view names, auto change) {
    each_item(names, [&](std::string_view name) {
      const Food* const food = Larder::standard().find(name);
      if (food == nullptr) return;
      AllergenEntry& entry = entries_[static_cast<std::size_t>(food - Larder::standard().all().data())];
      entry.known = true;
      change(entry);
    });
  };
  const auto each_name = [&](std::string_view names, auto change) {
    each_item(names, [&](std::string_view name) { change(own(name)); });
  };
  const AllergenSet set = row.kind == "claim" ? 0 : sum(row.first);
  const auto contains = [set](AllergenEntry& entry) { entry.contains |= set; };
  const auto label = [set](AllergenEntry& entry) { entry.label |= set; };
  if (row.kind == "list") add_list(row);
  else if (row.kind == "contains") each_food(row.second, contains);
  else if (row.kind == "label") each_food(row.second, label);
  else if (row.kind == "none") each_food(row.first, [](AllergenEntry&) {});
  else if (row.kind == "made") each_food(row.first, [](AllergenEntry& entry) { entry.made = true; });
  else if (row.kind == "name contains") each_name(row.second, contains);
  else if (row.kind == "name label") each_name(row.second, label);
  else if (row.kind == "name none") each_name(row.first, [](AllergenEntry&) {});
  else if (row.kind == "like") each_name(row.first, [](AllergenEntry& entry) { entry.thing = false, entry.like = true; });
  else if (row.kind == "plain") each_item(row.first, [&](std::string_view word) { plain_.insert(fold_key(word)); });
  else if (row.kind == "claim") {
    AllergenSet absent = 0;
    each_item(row.first, [&](std::string_view word) { absent |= meant(word); });
    each_name(row.second, [absent](AllergenEntry& entry) { entry.thing = false, entry.absent = absent; });
  }
}

void AllergenTable::add_list(const Row& row) {
  const AllergenSet bit = AllergenSet{1} << list_.size();
  const auto cell = [](std::string_view text) { return text == "-" ? std::string_view() : text; };
  list_.push_back({row.first, cell(row.second), cell(row.third)});
  each_item(row.fourth, [&](std::string_view word) { meanings_.emplace_back(run_of(word), bit); });
}

// "rice" and "milk" are "rice milk", which is what rice is; a name that is known already stays what it is.
void AllergenTable::add_from(std::string_view things, std::string_view words) {
  each_item(words, [&](std::string_view word) {
    const auto found = names_.find(run_of(word));
    AllergenEntry made;
    if (found != names_.end()) made = entries_[found->second];
    made.known = made.own = true;
    each_item(things, [&](std::string_view thing) {
      if (names_.emplace(run_of(std::string(word) + " " + std::string(thing), &longest_), static_cast<std::uint32_t>(entries_.size())).second)
        entries_.push_back(made);
    });
  });
}

// A name that a food has, too, is another thing from here on.
AllergenEntry& AllergenTable::own(std::string_view name) {
  const auto next = static_cast<std::uint32_t>(entries_.size());
  std::uint32_t& index = names_.try_emplace(run_of(name, &longest_), next).first->second;
  if (index != next && entries_[index].own) return entries_[index];
  index = next;
  AllergenEntry& entry = entries_.emplace_back();
  entry.known = entry.own = true;
  return entry;
}

const AllergenEntry* AllergenTable::find(std::span<const WordKey> words, std::size_t& matched) const {
  const AllergenEntry* found = nullptr;
  std::uint64_t run = kNoWords;
  const std::size_t count = std::min(words.size(), longest_);
  for (std::size_t i = 0; i < count; ++i) {
    run = with_word(run, words[words.size() - 1 - i]);
    if (const auto at = names_.find(run); at != names_.end()) found = &entries_[at->second], matched = i + 1;
  }
  return found;
}

AllergenSet AllergenTable::meant(std::string_view word) const {
  AllergenSet out = 0;
  const Run wanted = run_of(word);
  for (const auto& [run, bit] : meanings_)
    if (run == wanted) out |= bit;
  return out;
}

AllergenSet AllergenTable::key(std::string_view key) const {
  for (std::size_t i = 0; i < list_.size(); ++i)
    if (list_[i].key == key) return AllergenSet{1} << i;
  return 0;
}

}  // namespace qtn
