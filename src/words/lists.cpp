#include "words/lists.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "data/tables.hpp"
#include "words/rows.hpp"
#include "words/verbs.hpp"

namespace qtn {
namespace {

constexpr std::string_view kLists[] = {"share", "number", "place", "keep", "shape", "unmeasured", "thing"};
constexpr std::size_t kListCount = std::size(kLists);

std::int64_t whole(std::string_view digits) {
  std::int64_t number = 0;
  for (const char c : digits) number = number * 10 + (c - '0');
  return number;
}

Fraction value_of(WordList list, std::string_view cell) {
  if (list == WordList::place) {
    std::uint8_t bits = 0;
    while (!cell.empty()) bits |= takes_named(next_item(cell, ','));
    return bits;
  }
  if (cell.empty()) return 0;
  const std::size_t slash = cell.find('/');
  return Fraction::of(whole(cell.substr(0, slash)), slash == std::string_view::npos ? 1 : whole(cell.substr(slash + 1)));
}

struct Table {
  std::array<std::vector<ListWord>, kListCount> lists;
  Table() {
    for (Rows rows(data::words()); rows.next();) {
      const auto at = static_cast<std::size_t>(std::find(kLists, kLists + kListCount, rows[0]) - kLists);
      if (at == kListCount) continue;
      const auto list = static_cast<WordList>(at);
      const Fraction value = value_of(list, rows[2]);
      for (std::string_view texts = rows[1]; !texts.empty();)
        lists[at].push_back({next_item(texts, ','), list, value});
    }
    for (auto& list : lists)
      std::sort(list.begin(), list.end(), [](const ListWord& a, const ListWord& b) { return a.text < b.text; });
  }
};

const Table& table() {
  static const Table only;
  return only;
}

}  // namespace

std::span<const ListWord> list_words(WordList list) { return table().lists[static_cast<std::size_t>(list)]; }

const ListWord* list_word(WordList list, std::string_view text) {
  const auto words = list_words(list);
  const auto at = std::lower_bound(words.begin(), words.end(), text,
                                   [](const ListWord& word, std::string_view wanted) { return word.text < wanted; });
  return at != words.end() && at->text == text ? &*at : nullptr;
}

bool is_unmeasured(std::string_view text) {
  return (text.starts_with("for ") && text.size() > 4) || list_word(WordList::unmeasured, text) != nullptr;
}

}  // namespace qtn
