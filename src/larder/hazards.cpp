#include "larder/hazards.hpp"

#include <algorithm>
#include <array>
#include <unordered_map>

#include "data/tables.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

constexpr std::array<std::string_view, 18> kNames{"",         "poultry", "minced", "offal",       "beef",   "pork",  "bacon", "fish",  "shellfish",
                                                  "molluscs", "egg",     "rice",   "cooked rice", "cooked", "beans", "flour", "honey", "curing salt"};

// What one word says of a name.
struct Told {
  // The row that makes it such a food, alone or at the name's end: its number in the table, the first counts; 0: none does.
  std::uint8_t alone = 0, last = 0;
  Hazard alone_kind = Hazard::none, last_kind = Hazard::none;
  bool never = false, never_last = false, smoked_raw = false, behind = false, cure = false;  // cure: such a name begins with it
};

struct HazardTable {
  std::vector<Hazard> of_food;
  std::unordered_map<WordKey, Told> words;
  using Together = std::vector<std::vector<WordKey>>;
  Together ready, cures;

  HazardTable() {
    of_food.resize(Larder::standard().all().size());
    std::uint8_t rank = 0;
    for (Rows row(data::hazards()); row.next();) {
      const std::string_view what = row[0];
      if (what == "word" || what == "last") add_kind(what == "word", ++rank, named(row[1]), row[2]);
      else if (what == "never") each_word(row[1], [](Told& word) { word.never = true; });
      else if (what == "never last") each_word(row[1], [](Told& word) { word.never_last = true; });
      else if (what == "smoked raw") each_word(row[1], [](Told& word) { word.smoked_raw = true; });
      else if (what == "ready" || what == "cures") add_together(what == "ready" ? ready : cures, row[1]);
      else add_foods(named(what), row[1]);
    }
    for (const std::string_view number : {"#1", "#2"}) cures.push_back({fold_key("cure"), fold_key(number)});  // '#' is a comment in a table
    for (const std::vector<WordKey>& name : cures) words[name.front()].cure = true;
    each_word("with, without, on, off, in, from", [](Told& word) { word.behind = true; });
  }

  static Hazard named(std::string_view name) {
    const auto at = std::find(kNames.begin(), kNames.end(), name);
    return at == kNames.end() ? Hazard::none : static_cast<Hazard>(at - kNames.begin());
  }

  void add_foods(Hazard kind, std::string_view foods) {
    const Larder& larder = Larder::standard();
    while (!foods.empty())
      if (const Food* const food = larder.find(next_item(foods, ','))) of_food[static_cast<std::size_t>(food - larder.all().data())] = kind;
  }

  template <class Change>
  void each_word(std::string_view list, Change change) {
    while (!list.empty()) change(words[fold_key(next_item(list, ','))]);
  }

  void add_kind(bool alone, std::uint8_t rank, Hazard kind, std::string_view list) {
    each_word(list, [&](Told& word) {
      if (alone) word.alone = rank, word.alone_kind = kind;
      else word.last = rank, word.last_kind = kind;
    });
  }

  static void add_together(Together& all, std::string_view list) {
    while (!list.empty()) {
      all.emplace_back();
      fold_keys(next_item(list, ','), all.back());
    }
  }

  const Told* told(WordKey word) const {
    const auto at = words.find(word);
    return at == words.end() ? nullptr : &at->second;
  }

  static bool has_one(std::span<const WordKey> name, const Together& all) {
    return std::any_of(all.begin(), all.end(), [&](const std::vector<WordKey>& together) { return std::search(name.begin(), name.end(), together.begin(), together.end()) != name.end(); });
  }

  Hazard by_words(std::span<const WordKey> name) const {
    static const WordKey kSmoked = fold_key("smoked");
    std::uint8_t best = 0;
    Hazard kind = Hazard::none;
    bool behind = false, smoked = false, smoked_raw = false;
    const Told* end = nullptr;  // of the name's last word before "with" and the like
    for (const WordKey key : name) {
      const Told* const word = told(key);
      smoked = smoked || key == kSmoked;
      behind = behind || (word != nullptr && word->behind);
      if (!behind) end = word;
      if (word == nullptr) continue;
      if (word->cure && has_one(name, cures)) return Hazard::curing_salt;
      if (word->never) return Hazard::none;
      smoked_raw = smoked_raw || word->smoked_raw;
      if (!behind && word->alone != 0 && (best == 0 || word->alone < best)) best = word->alone, kind = word->alone_kind;
    }
    if (best == 0 || (smoked && !smoked_raw) || (end != nullptr && end->never_last)) return Hazard::none;
    return end != nullptr && end->last != 0 && end->last < best ? end->last_kind : kind;
  }
};

const HazardTable& hazard_table() {
  static const HazardTable table;
  return table;
}

}  // namespace

std::string_view name_of(Hazard hazard) { return kNames[static_cast<std::size_t>(hazard)]; }

Hazard hazard_of(const Food* food) {
  return food == nullptr ? Hazard::none : hazard_table().of_food[static_cast<std::size_t>(food - Larder::standard().all().data())];
}

Hazard hazard_of(const Food* food, std::span<const WordKey> name) {
  Hazard kind = food == nullptr ? hazard_table().by_words(name) : hazard_of(food);
  if (food != nullptr && (kind == Hazard::beef || kind == Hazard::minced)) {  // tuna steaks, chicken sausages
    const Hazard told = hazard_table().by_words(name);
    if (told == Hazard::poultry || told == Hazard::fish || told == Hazard::shellfish || (told == Hazard::pork && kind == Hazard::beef)) kind = told;
  }
  const bool animal = kind >= Hazard::poultry && kind <= Hazard::egg;
  return animal && HazardTable::has_one(name, hazard_table().ready) ? Hazard::none : kind;
}

bool spoils(Hazard hazard) {
  switch (hazard) {
    case Hazard::none:
    case Hazard::egg:
    case Hazard::flour:
    case Hazard::beans:
    case Hazard::honey:
    case Hazard::curing_salt:
      return false;
    default:
      return true;
  }
}

}  // namespace qtn
