// Who brings what, and on which days: `flour, oats; Tuesdays and Fridays; 2 days ahead`.
#include <array>

#include "recipe/kitchen_reader.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::array<std::string_view, 7> kDays = {"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"};
constexpr unsigned kAllDays = 0x7F, kWorkdays = 0x1F;

// "tuesday", "tuesdays", "tue": its place in the week; -1 for any other word.
int day_named(std::string_view word) {
  for (std::size_t i = 0; i < kDays.size(); ++i) {
    const std::string_view day = kDays[i];
    if (word == day || (word.size() == day.size() + 1 && word.starts_with(day) && word.back() == 's')) return static_cast<int>(i);
    if (word.size() >= 3 && word.size() <= 5 && day.starts_with(word)) return static_cast<int>(i);
  }
  return -1;
}

std::vector<std::string_view> words_in(std::string_view text) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (end > 0) out.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

// "Tuesdays", "Monday to Friday", "every day but Sunday": days of the week as bits; nothing when the words say anything else.
std::optional<unsigned> days_in(std::string_view text) {
  unsigned days = 0;
  bool but = false, until = false;
  int last = -1;
  for (const std::string_view word : words_in(text)) {
    const int day = day_named(word);
    if (word == "every" || word == "day" || word == "daily" || word == "weekdays") {
      if (word == "day" || word == "daily") days = kAllDays;
      if (word == "weekdays") days = kWorkdays;
    } else if (word == "but" || word == "except") {
      but = true;
    } else if (word == "to" && last >= 0) {
      until = true;
    } else if (day >= 0) {
      const unsigned bit = 1U << day;
      if (but) days &= ~bit;
      else if (days == kAllDays) days = bit;  // every Tuesday is no every day
      else days |= bit;
      if (until)
        for (int i = last; i != day; i = (i + 1) % 7) days |= 1U << i;
      last = day, until = false;
    } else if (word != "and" && word != "on") {
      return std::nullopt;
    }
  }
  if (days == 0 || until) return std::nullopt;
  return days;
}

// "2 days ahead", "order a day ahead" in small numbers; 0 when it is none.
int days_ahead(std::string_view text) {
  std::vector<std::string_view> words = words_in(text);
  if (!words.empty() && (words.front() == "order" || words.front() == "ordered")) words.erase(words.begin());
  if (words.size() != 3 || (words[1] != "days" && words[1] != "day") || (words[2] != "ahead" && words[2] != "before")) return 0;
  if (words[0] == "a" || words[0] == "one") return 1;
  if (words[0] == "two") return 2;
  int number = 0;
  for (const char c : words[0]) {
    if (c < '0' || c > '9') return 0;
    number = std::min(number * 10 + (c - '0'), 365);
  }
  return number;
}

}  // namespace

void KitchenReader::supplier(Span name, const std::vector<Cell>& cells) {
  Supplier mine;
  mine.name = in_.slice(name);
  Span when{};
  bool behind = false;  // behind the first `;`
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const Cell& cell = cells[i];
    if (i > 0 && in_.slice({cells[i - 1].span.end, cell.span.begin}).find(';') != std::string_view::npos) behind = true;
    said(cell.word, cell.span);
    if (const int ahead = days_ahead(cell.word); ahead > 0) {
      mine.ahead = ahead;
      continue;
    }
    const auto days = days_in(cell.word);
    if (!behind && !days) {
      brings(cell, mine);
      continue;
    }
    if (days) mine.days |= *days;
    when = when.empty() ? cell.span : Span{when.begin, cell.span.end};
  }
  mine.when = in_.slice(when);
  kitchen_.suppliers.push_back(std::move(mine));
}

void KitchenReader::brings(const Cell& cell, Supplier& mine) {
  const auto folded = fold_name(cell.text);
  for (const Supplier& other : kitchen_.suppliers)
    for (const std::string_view food : other.foods)
      if (fold_name(food) == folded) {
        const auto at = static_cast<std::uint32_t>(food.data() - in_.source.text().data());
        report_.add(Code::food_of_two_suppliers, cell.span, quoted(cell.text) + " is brought by " + std::string(other.name) + " too.")
            .find(quoted(cell.text)).also({at, at + static_cast<std::uint32_t>(food.size())}, "here first")
            .expect("each thing with one supplier; the order goes to the first");
        mine.foods.push_back(cell.text);
        return;
      }
  mine.foods.push_back(cell.text);
}

}  // namespace qtn
