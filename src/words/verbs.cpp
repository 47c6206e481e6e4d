#include "words/verbs.hpp"

#include <algorithm>
#include <vector>

#include "data/tables.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

// Cells of a row of data/verbs.txt.
enum Cell : std::size_t { kName, kTakes, kHands, kRange, kMarks, kForms, kSpellings };

Attention attention_named(std::string_view word) {
  if (word == "throughout") return Attention::throughout;
  if (word == "start") return Attention::start;
  return word == "ends" ? Attention::ends : Attention::none;
}

struct DeedName {
  std::string_view name;
  Deed deed;
};
constexpr DeedName kDeeds[] = {
    {"reading", Deed::reading},     {"tasting", Deed::tasting},     {"weighing", Deed::weighing},
    {"use within", Deed::use_within}, {"reducing", Deed::reducing},   {"keep back", Deed::keep_back},
    {"take out", Deed::take_out},   {"discard", Deed::discard},     {"strain out", Deed::strain_out},
    {"drain", Deed::drain},
};

VerbForm form_of(std::string_view text) {
  const std::string_view first = text.substr(0, text.find(' '));
  if (first.ends_with("ing")) return VerbForm::ing;
  return first.ends_with('s') ? VerbForm::third : VerbForm::past;
}

class Table {
 public:
  Table() {
    text_.reserve(32 * 1024);
    verbs_.push_back({"work", static_cast<std::uint8_t>(Takes::hands)});
    for (Rows rows(data::verbs()); rows.next();) add(rows);
    // The words are views of one text, made when it has stopped growing.
    words_.reserve(made_.size());
    for (const Made& made : made_)
      words_.push_back({std::string_view(text_).substr(made.begin, made.size), made.verb, made.form, made.noun});
    made_ = {};
    std::sort(words_.begin(), words_.end(), [](const VerbWord& a, const VerbWord& b) { return a.text < b.text; });
  }
  std::vector<Verb> verbs_;
  std::vector<VerbWord> words_;

 private:
  struct Made {
    std::size_t begin, size;
    VerbId verb;
    VerbForm form;
    bool noun;
  };

  void add(const Rows& row) {
    Verb verb;
    verb.name = row[kName];
    verb.attention = attention_named(row[kHands]);
    verb.takes = takes_named(row[kTakes]);
    if (verb.attention != Attention::none) verb.takes |= static_cast<std::uint8_t>(Takes::hands);
    verb.range = row[kRange] == "cook" ? Range::cook : Range::food;
    bool noun = false, bare = false;
    for (std::string_view marks = row[kMarks]; !marks.empty();) {
      const std::string_view mark = next_item(marks, ',');
      noun = noun || mark == "noun";
      bare = bare || mark == "one form";
      verb.wait = verb.wait || mark == "wait";
      verb.heats = verb.heats || mark == "heats";
      verb.moist = verb.moist || mark == "moist";
      verb.spoils = verb.spoils || mark == "spoils";
      verb.cools = verb.cools || mark == "cools";
      verb.heats_oven = verb.heats_oven || mark == "heats the oven";
      for (const DeedName& deed : kDeeds)
        if (deed.name == mark) verb.deed = deed.deed;
    }
    verbs_.push_back(verb);
    add_forms(verb.name, row[kForms], noun, bare);
    for (std::string_view others = row[kSpellings]; !others.empty();) add_forms(next_item(others, ','), {}, noun, bare);
  }

  void add_forms(std::string_view name, std::string_view listed, bool noun, bool bare) {
    put(name, VerbForm::plain, noun);
    if (bare) return;
    if (listed.empty()) {
      for (const VerbForm form : {VerbForm::third, VerbForm::ing, VerbForm::past}) put(verb_form(name, form), form, noun);
    } else {
      while (!listed.empty()) {
        const std::string_view text = next_item(listed, ',');
        put(text, form_of(text), noun);
      }
    }
  }

  void put(std::string_view text, VerbForm form, bool noun) {
    const bool described = form == VerbForm::past || (noun && form != VerbForm::ing);
    made_.push_back({text_.size(), text.size(), static_cast<VerbId>(verbs_.size() - 1), form, described});
    text_ += text;
  }

  std::string text_;
  std::vector<Made> made_;
};

const Table& table() {
  static const Table only;
  return only;
}

}  // namespace

std::uint8_t takes_named(std::string_view word) {
  Takes takes = Takes::nothing;
  if (word == "hands") takes = Takes::hands;
  if (word == "oven") takes = Takes::oven;
  if (word == "hob") takes = Takes::hob;
  if (word == "fridge") takes = Takes::fridge;
  if (word == "freezer") takes = Takes::freezer;
  return static_cast<std::uint8_t>(takes);
}

const Verb& verb(VerbId id) { return table().verbs_[id]; }
VerbId verb_count() { return static_cast<VerbId>(table().verbs_.size()); }
std::span<const VerbWord> verb_words() { return table().words_; }

}  // namespace qtn
