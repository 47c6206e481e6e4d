#include <algorithm>
#include <array>

#include "data/tables.hpp"
#include "larder/figures.hpp"
#include "larder/food.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

// Cells of a row of data/foods.txt.
enum Cell : std::size_t { kNames, kFlags, kDensity, kSmall, kEach, kNote };

constexpr std::size_t kSlots = 4096;  // three times the names there are

// One more word in front of a run of words that is read from its end.
std::uint64_t with_word(std::uint64_t run, WordKey word) {
  run = (run ^ word) * 0x9FB21C651E98DF25u;
  return run ^ (run >> 32);
}
constexpr std::uint64_t kNoWords = 0x5851F42D4C957F2Du;

struct Egg {
  std::string_view dialect, size;
  Figure weight;
};

std::string_view key_of(Dialect dialect) {
  constexpr std::string_view kKeys[] = {"", "british", "american", "australian"};
  return kKeys[static_cast<std::size_t>(dialect)];
}

}  // namespace

struct Larder::Impl {
  struct Names {
    std::uint32_t begin = 0, american = 0, end = 0;  // in `others`
  };
  struct Slot {
    std::uint64_t run = 0;  // of a name's words; 0 where the slot is free
    std::uint32_t food = 0;
  };

  Impl() {
    for (Rows rows(data::foods()); rows.next();) add(rows);
    for (Rows rows(data::eggs()); rows.next();) eggs.push_back({rows[0], rows[1], egg_figure(rows[2])});
  }

  void add(const Rows& row) {
    Food food;
    std::string_view american = row[kNames];
    std::string_view british = next_item(american, '/');
    food.name = next_item(british, ';');
    for (std::string_view flags = row[kFlags]; !flags.empty();) {
      const std::string_view flag = next_item(flags, ',');
      food.liquid = food.liquid || flag == "liquid";
      food.raw_risk = food.raw_risk || flag == "raw";
      food.seasoning = food.seasoning || flag == "seasoning";
    }
    if (!row[kDensity].empty()) food.density = density_figure(row[kDensity]);
    if (!row[kSmall].empty()) food.density_small = density_figure(row[kSmall]);
    if (!row[kEach].empty()) food.each = each_figure(row[kEach]);
    food.note = row[kNote];
    foods.push_back(food);
    names.push_back(add_names(food.name, british, american));
  }

  Names add_names(std::string_view name, std::string_view british, std::string_view american) {
    Names range;
    range.begin = static_cast<std::uint32_t>(others.size());
    index(name);
    while (!british.empty()) index(others.emplace_back(next_item(british, ',')));
    range.american = static_cast<std::uint32_t>(others.size());
    while (!american.empty()) index(others.emplace_back(next_item(american, ',')));
    range.end = static_cast<std::uint32_t>(others.size());
    return range;
  }

  void index(std::string_view name) {
    keys.clear();
    fold_keys(name, keys);
    longest = std::max(longest, keys.size());
    std::uint64_t run = kNoWords;
    for (std::size_t i = keys.size(); i-- > 0;) run = with_word(run, keys[i]);
    std::size_t at = run % kSlots;
    while (slots[at].run != 0 && slots[at].run != run) at = (at + 1) % kSlots;
    if (slots[at].run == 0) slots[at] = {run, static_cast<std::uint32_t>(foods.size() - 1)};
  }

  const Food* at_run(std::uint64_t run) const {
    for (std::size_t at = run % kSlots; slots[at].run != 0; at = (at + 1) % kSlots)
      if (slots[at].run == run) return &foods[slots[at].food];
    return nullptr;
  }

  const Names& names_of(const Food& food) const { return names[static_cast<std::size_t>(&food - foods.data())]; }

  std::vector<Food> foods;
  std::vector<Names> names;
  std::vector<std::string_view> others;
  std::vector<Egg> eggs;
  std::array<Slot, kSlots> slots{};
  std::size_t longest = 0;    // words in the longest name
  std::vector<WordKey> keys;  // for building only
};

Larder::Larder() {
  static const Impl impl;
  impl_ = &impl;
}

const Larder& Larder::standard() {
  static const Larder only;
  return only;
}

const Food* Larder::find(std::string_view name) const {
  thread_local std::vector<WordKey> keys;  // kept, so that looking up allocates nothing
  keys.clear();
  fold_keys(name, keys);
  return find(keys);
}

const Food* Larder::find(std::span<const WordKey> words, std::size_t* matched) const {
  const Food* found = nullptr;
  std::uint64_t run = kNoWords;
  // Longer runs are read later, so the last hit is the longest.
  const std::size_t count = std::min(words.size(), impl_->longest);
  for (std::size_t i = 0; i < count; ++i) {
    run = with_word(run, words[words.size() - 1 - i]);
    const Food* const food = impl_->at_run(run);
    if (food == nullptr) continue;
    found = food;
    if (matched != nullptr) *matched = i + 1;
  }
  return found;
}

const Food* Larder::named(std::string_view name) const {
  const Food* const food = find(name);
  if (food == nullptr) return nullptr;
  const auto wanted = fold_name(name);
  if (fold_name(food->name) == wanted) return food;
  for (const std::string_view other : other_names(*food))
    if (fold_name(other) == wanted) return food;
  return nullptr;
}

const Figure* Larder::egg(std::string_view size, Dialect dialect) const {
  const std::string wanted = lower(trim(size));
  for (const Egg& egg : impl_->eggs)
    if (egg.dialect == key_of(dialect) && egg.size == wanted) return &egg.weight;
  return nullptr;
}

std::span<const std::string_view> Larder::other_names(const Food& food) const {
  const Impl::Names& range = impl_->names_of(food);
  return std::span(impl_->others).subspan(range.begin, range.end - range.begin);
}

std::string_view Larder::american_name(const Food& food) const {
  const Impl::Names& range = impl_->names_of(food);
  return range.american == range.end ? std::string_view{} : impl_->others[range.american];
}

std::span<const Food> Larder::all() const { return impl_->foods; }

}  // namespace qtn
