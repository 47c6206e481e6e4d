// The house's own words, looked at together: a card says one for the other, once and one way.
#include <algorithm>

#include "larder/food.hpp"
#include "recipe/kitchen_reader.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

// The food of exactly this name; null where the table knows it only by the end of its name.
const Food* food_called(std::string_view name) {
  const Food* const food = Larder::standard().find(name);
  if (food == nullptr) return nullptr;
  const auto folded = fold_name(name);
  if (fold_name(food->name) == folded) return food;
  for (const std::string_view other : Larder::standard().other_names(*food))
    if (fold_name(other) == folded) return food;
  return nullptr;
}

}  // namespace

void KitchenReader::house_words() {
  struct HouseWord {
    std::vector<std::string> name, word;
    Span name_span, word_span;
    bool seen = false;
  };
  std::vector<HouseWord> lines;
  for (const Kitchen::Fact& fact : kitchen_.facts)
    if (fact.block == Field::house_words) lines.push_back({fold_name(in_.slice(fact.name)), fold_name(in_.slice(fact.value)), fact.name, fact.value});
  const auto line_of = [&](const std::vector<std::string>& name) {
    return std::find_if(lines.begin(), lines.end(), [&](const HouseWord& line) { return line.name == name; });
  };
  bool ring = false;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    // A line leads to the one whose name is its word. A line that an earlier walk came by is in no new ring.
    std::vector<std::size_t> way;
    for (auto at = lines.begin() + static_cast<std::ptrdiff_t>(i); at != lines.end() && !at->seen; at = line_of(at->word)) {
      at->seen = true;
      way.push_back(static_cast<std::size_t>(at - lines.begin()));
    }
    const auto back = way.empty() ? lines.end() : line_of(lines[way.back()].word);
    const auto first = back == lines.end() ? way.end() : std::find(way.begin(), way.end(), static_cast<std::size_t>(back - lines.begin()));
    if (first == way.end()) continue;
    ring = true;
    const HouseWord& line = lines[*first];
    const bool itself = first + 1 == way.end();
    Diagnostic& problem = report_.add(Code::house_words_ring, line.word_span,
                                      itself ? quoted(in_.slice(line.name_span)) + " is to be said for itself."
                                             : quoted(in_.slice(line.name_span)) + " comes back to itself by way of other words.");
    problem.find(quoted(in_.slice(line.word_span))).expect("a word that is said for it and is not replaced in its turn");
    for (auto next = first + 1; next != way.end(); ++next) problem.also(lines[*next].word_span, "and on from here");
  }
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string_view name = in_.slice(lines[i].name_span), word = in_.slice(lines[i].word_span);
    const Food* const food = Larder::standard().find(name);
    for (std::size_t j = 0; j < i && !ring; ++j) {
      if (lines[j].word != lines[i].word || lines[j].name == lines[i].name) continue;
      const Food* const other = Larder::standard().find(in_.slice(lines[j].name_span));
      if (food != nullptr && food == other) continue;
      report_.add(Code::house_word_shared, lines[i].word_span, quoted(word) + " is said for two things.").find(quoted(word))
          .also(lines[j].word_span, "the other is here").expect("a word for each");
      break;
    }
    const Food* const called = food_called(word);
    if (called != nullptr && food != nullptr && called != food)
      report_.add(Code::house_word_of_another, lines[i].word_span, quoted(word) + " is the name of something else than " + quoted(name) + ".")
          .find(quoted(word)).expect("a word that no other ingredient has");
  }
}

}  // namespace qtn
