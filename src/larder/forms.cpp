// Forms of a food: which row of data/forms.txt the words of a line choose.
#include <algorithm>
#include <vector>

#include "data/tables.hpp"
#include "larder/figures.hpp"
#include "larder/food.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

// Cells of a row of data/forms.txt.
enum Cell : std::size_t { kFood, kWords, kWhere, kDensity, kSmall, kEach };

using Keys = std::vector<WordKey>;

Keys keys_of(std::string_view text) {
  Keys keys;
  fold_keys(text, keys);
  return keys;
}

struct Range {
  std::uint32_t begin = 0, end = 0;
};

struct FormTable {
  std::vector<FoodForm> forms;                // of one food together, in the order of the file
  std::vector<std::vector<Keys>> phrases;  // of each form, the words that choose it
  std::vector<Range> of_food;             // by the food's place in the larder

  FormTable() {
    std::vector<std::pair<std::size_t, Rows>> rows;
    const auto foods = Larder::standard().all();
    for (Rows row(data::forms()); row.next();) {
      const Food* const food = Larder::standard().find(row[kFood]);
      if (food != nullptr && food->name == row[kFood]) rows.emplace_back(food - foods.data(), row);
    }
    std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    of_food.resize(foods.size());
    for (const auto& [food, row] : rows) {
      if (of_food[food].end == 0) of_food[food].begin = static_cast<std::uint32_t>(forms.size());
      add(row);
      of_food[food].end = static_cast<std::uint32_t>(forms.size());
    }
  }

  void add(const Rows& row) {
    FoodForm form;
    form.words = row[kWords];
    form.in_front = row[kWhere] == "in front";
    if (!row[kDensity].empty()) form.density = density_figure(row[kDensity]);
    if (!row[kSmall].empty()) form.density_small = density_figure(row[kSmall]);
    if (!row[kEach].empty()) form.each = each_figure(row[kEach]);
    forms.push_back(form);
    phrases.emplace_back();
    for (std::string_view words = row[kWords]; !words.empty();) phrases.back().push_back(keys_of(next_item(words, ';')));
  }
};

const FormTable& form_table() {
  static const FormTable table;
  return table;
}

// Words of the longest phrase of a form that stands in a text; 0 where none does.
std::size_t most_words(const std::vector<Keys>& phrases, const Keys& text) {
  std::size_t most = 0;
  for (const Keys& phrase : phrases) {
    if (phrase.size() <= most) continue;
    if (std::search(text.begin(), text.end(), phrase.begin(), phrase.end()) != text.end()) most = phrase.size();
  }
  return most;
}

}  // namespace

std::span<const FoodForm> Larder::forms_of(const Food& food) const {
  const auto place = static_cast<std::size_t>(&food - all().data());
  const Range& range = form_table().of_food[place];
  return std::span(form_table().forms).subspan(range.begin, range.end - range.begin);
}

FoodForms Larder::forms(const Food& food, const FoodWords& said) const {
  FoodForms found;
  const std::span<const FoodForm> rows = forms_of(food);
  if (rows.empty()) return found;
  const Keys front = keys_of(said.name), noun = keys_of(said.noun);
  std::vector<Keys> behind;
  for (const std::string_view text : said.behind) behind.push_back(keys_of(text));
  std::size_t volume_words = 0, one_words = 0;
  for (const FoodForm& form : rows) {
    const auto& phrases = form_table().phrases[static_cast<std::size_t>(&form - form_table().forms.data())];
    std::size_t words = most_words(phrases, front);
    if (!form.in_front)
      for (const Keys& text : behind) words = std::max(words, most_words(phrases, text));
    if (form.density.known() && words > volume_words) found.by_volume = &form, volume_words = words;
    words = std::max(words, most_words(phrases, noun));
    if (form.each.known() && words > one_words) found.of_one = &form, one_words = words;
  }
  return found;
}

}  // namespace qtn
