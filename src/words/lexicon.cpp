#include "words/lexicon.hpp"

#include <algorithm>
#include <cstring>
#include <string>
#include <vector>

#include "measure/unit.hpp"
#include "words/fold.hpp"
#include "words/lists.hpp"
#include "words/verbs.hpp"

namespace qtn {
namespace {

// What cooks write after a number and each reads in a way of their own (semantics A7, A8). Case counts.
constexpr std::string_view kLookAlikes[] = {"c",  "C",  "t",  "T",   "m",   "M",   "L",   "G",   "H",     "S",
                                            "tb", "Tb", "TB", "tbs", "Tbs", "TBS", "pts", "ltr", "tblsp", "gr",
                                            "gm", "gms", "ozs"};

constexpr std::size_t kLongestWord = 31;

char fold(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

constexpr std::uint64_t kNoLetters = 0xcbf29ce484222325u;

// The word that starts a text, in lower case: letters, and hyphens between letters; and the same up to its first hyphen.
Lexicon::Words first_words(std::string_view text) {
  Lexicon::Words out;
  std::uint64_t hash = kNoLetters;
  bool hyphen = false;
  std::size_t at = 0;
  while (at < text.size() && at <= kLongestWord) {
    const int size = letter_at(text, at);
    if (size == 0) {
      if (text[at] != '-' || letter_at(text, at + 1) == 0) break;
      if (!hyphen) out.part = {hash, static_cast<std::uint32_t>(at)};
      hyphen = true;
    }
    const std::size_t end = at + static_cast<std::size_t>(std::max(size, 1));
    for (; at < end; ++at) hash = (hash ^ static_cast<unsigned char>(fold(text[at]))) * 0x100000001b3u;
  }
  out.whole = {hash, static_cast<std::uint32_t>(at > kLongestWord ? 0 : at)};
  if (!hyphen) out.part = out.whole;
  return out;
}

bool is_thin(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

// Bytes of `text` that `phrase` covers, with any blanks between its words; 0 when it is not there.
std::uint32_t covers(std::string_view text, std::string_view phrase, bool exact_case) {
  std::size_t at = 0;
  for (char c : phrase) {
    if (at >= text.size()) return 0;
    if (c == ' ') {
      if (!is_thin(text[at])) return 0;
      while (at < text.size() && is_thin(text[at])) ++at;
      continue;
    }
    if ((exact_case ? text[at] : fold(text[at])) != c) return 0;
    ++at;
  }
  if (at < text.size() && (letter_at(text, at) != 0 || (text[at] >= '0' && text[at] <= '9'))) return 0;
  return static_cast<std::uint32_t>(at);
}

}  // namespace

struct Lexicon::Impl {
  struct Entry {
    std::uint64_t hash;
    std::uint16_t row;
  };
  std::vector<LexiconRow> rows;
  struct Group {  // the entries of one first word
    std::uint64_t hash = 0;
    std::uint32_t first = 0, last = 0;
    unsigned classes = 0;
  };
  std::vector<Entry> entries;  // by hash of the first word, longer phrases first
  std::vector<Group> groups;   // by the hash's low bits, else the next free place
  std::uint64_t mask = 0;

  void add(std::string_view text, WordClass word_class, std::uint16_t unit, std::uint16_t verb, const Fraction& value) {
    rows.push_back({text, word_class, unit, verb, false, value});
  }

  void load() {
    rows.push_back({});  // row 0: nothing
    for (const UnitWord& word : unit_words())
      add(word.text, qtn::unit(word.unit).counted ? kCountNoun : kUnitWord, word.unit, 0, Fraction());
    for (const VerbWord& word : verb_words()) add_verb(word);
    for (std::string_view text : kLookAlikes) add(text, kLookAlike, 0, 0, Fraction());
    add_list(WordList::number, kNumberWord);
    add_list(WordList::share, kShareWord);
    add_list(WordList::place, kPlaceWord);
    add_list(WordList::keep_place, kKeepPlace);
    add_list(WordList::shape, kShapeWord);
    for (LexiconRow& row : rows)
      if (row.classes == kShapeWord && row.value == Fraction(1)) row.classes |= kOneWidth;
    add_list(WordList::unmeasured, kUnmeasured);
    index();
  }

  // A clause opens with the verb itself, or with its third person (the pot "reads 78 °C"); other forms are prose.
  void add_verb(const VerbWord& word) {
    const Verb& verb = qtn::verb(word.verb);
    const bool pot = verb.deed >= Deed::keep_back;
    if (word.form == VerbForm::past) return;  // "covered", "chopped" say how a thing is, not what is done for how long
    if (word.form != VerbForm::plain && verb.deed != Deed::reading)
      add(word.text, kVerbForm, 0, word.verb, Fraction());
    else
      add_plain_verb(word, pot);
    rows.back().noun = word.noun;
  }

  void add_plain_verb(const VerbWord& word, bool pot) {
    add(word.text, pot ? kPotVerb : kVerbWord, 0, word.verb, Fraction());
    if (pot) rows.back().classes |= kVerbWord;
    rows.back().classes |= kVerbForm;
  }

  void add_list(WordList list, WordClass word_class) {
    for (const ListWord& word : list_words(list)) {
      if (list == WordList::number && (word.text == "a" || word.text == "an")) continue;
      add(word.text, word_class, 0, 0, word.value);
    }
  }

  void index() {
    for (std::size_t i = 1; i < rows.size(); ++i)
      entries.push_back({first_words(rows[i].text).whole.hash, static_cast<std::uint16_t>(i)});
    std::uint64_t size = 1;
    while (size < entries.size() * 2) size *= 2;
    mask = size - 1;
    std::sort(entries.begin(), entries.end(), [&](const Entry& a, const Entry& b) {
      if (a.hash != b.hash) return a.hash < b.hash;
      if (rows[a.row].text.size() != rows[b.row].text.size()) return rows[a.row].text.size() > rows[b.row].text.size();
      return a.row < b.row;
    });
    groups.resize(size);
    for (std::uint32_t i = 0; i < entries.size(); ++i) {
      Group& group = groups[slot_of(entries[i].hash)];
      if (group.last == 0) group = {entries[i].hash, i, i, 0};
      group.last = i + 1;
      group.classes |= rows[entries[i].row].classes;
    }
  }

  // Where a first word has its group, or would have it.
  std::size_t slot_of(std::uint64_t hash) const {
    std::size_t slot = hash & mask;
    while (groups[slot].last != 0 && groups[slot].hash != hash) slot = (slot + 1) & mask;
    return slot;
  }

  unsigned place(Word& word) const {
    const Group& group = groups[slot_of(word.hash)];
    word.first = group.first, word.last = group.last;
    return group.classes;
  }

  Found look(std::string_view text, const Word& word, unsigned classes) const {
    for (std::uint32_t i = word.first; i < word.last; ++i) {
      const LexiconRow& row = rows[entries[i].row];
      if ((row.classes & classes) == 0) continue;
      const bool exact = row.text.size() == 1 || (row.classes & kLookAlike) != 0;
      if (const std::uint32_t size = covers(text, row.text, exact)) return {&row, entries[i].row, size};
    }
    return {};
  }
};

Lexicon::Lexicon() {
  auto* impl = new Impl;  // lives as long as the program
  impl->load();
  impl_ = impl;
}

const Lexicon& Lexicon::standard() {
  static const Lexicon lexicon;
  return lexicon;
}

Found Lexicon::longest(std::string_view text, unsigned classes) const {
  return longest(text, words(text), classes);
}

Lexicon::Words Lexicon::words(std::string_view text) const {
  Words out = first_words(text);
  if (out.whole.size == 0) return out;
  const bool parted = out.part.size != out.whole.size;
  out.classes = impl_->place(out.whole);
  if (parted) out.classes |= impl_->place(out.part);
  return out;
}

Found Lexicon::longest(std::string_view text, const Words& words, unsigned classes) const {
  if ((words.classes & classes) == 0) return {};
  if (Found found = impl_->look(text, words.whole, classes)) return found;
  return words.part.size == words.whole.size ? Found{} : impl_->look(text, words.part, classes);
}

bool describes(const LexiconRow& noun, std::string_view behind) {
  const Unit& counted = qtn::unit(noun.unit);
  if (counted.dimension != Dimension::count || !(counted.size[0] == Fraction(1)) || noun.text != counted.name) return false;
  const std::string_view thing = trim(behind.substr(0, behind.find_first_of(",;:([])\n")));
  const std::string_view first = thing.substr(0, thing.find(' '));
  for (const std::string_view word : {"of", "for", "per", "at", "to"})
    if (first == word) return false;
  return !thing.empty() && singular_of(thing) != thing;
}

const LexiconRow& Lexicon::row(std::uint16_t id) const { return impl_->rows[id]; }

int wide_letter_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) -> unsigned { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  const unsigned c = byte(at);
  if (c == 0xC2) return 0;  // blanks, degree, fractions, signs; its two letters (ª º) are not words
  if (c == 0xC3) return byte(at + 1) == 0x97 || byte(at + 1) == 0xB7 ? 0 : 2;  // × ÷
  if (c == 0xE2) return 0;  // dashes, quotes, fractions, arrows, scales
  if (c < 0xC2) return 0;   // no character begins here
  return c < 0xE0 ? 2 : c < 0xF0 ? 3 : c < 0xF5 ? 4 : 0;
}

}  // namespace qtn
