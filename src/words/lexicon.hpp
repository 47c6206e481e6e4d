// One look for every closed word of the language: unit, count noun, verb, share, number word, place ... The grammar
// asks "is there a word of this class here?"; a unit or a verb stays one row of data.
#pragma once
#include <cstdint>
#include <string_view>

#include "base/fraction.hpp"

namespace qtn {

enum WordClass : std::uint16_t {
  kUnitWord = 1,        // g, tbsp, fl oz, US cup
  kCountNoun = 2,       // clove, tin, pinch: a unit only when a name follows
  kVerbWord = 4,        // bake, knock back
  kPotVerb = 8,         // keep back, take out, strain out, discard, drain
  kNumberWord = 16,     // one .. twelve
  kShareWord = 32,      // half, third, quarters
  kPlaceWord = 64,      // in the fridge, outside
  kKeepPlace = 128,     // chilled, frozen
  kShapeWord = 256,     // round, square
  kUnmeasured = 512,    // to taste, as needed
  kLookAlike = 1024,    // c, T, tbs, L: after a number never a unit and never a name
  kOneWidth = 4096,     // of the shapes those of one width: round, square
  kVerbForm = 2048,     // baking, baked: prose before a bare duration
};

struct LexiconRow {
  std::string_view text;  // as written in the tables, lower case
  std::uint16_t classes = 0;
  std::uint16_t unit = 0;
  std::uint16_t verb = 0;
  bool noun = false;  // a verb form that is as often a thing: see VerbWord::noun
  Fraction value;  // of number and share words
};

struct Found {
  const LexiconRow* row = nullptr;
  std::uint16_t id = 0;     // index of the row, to be stored in a node
  std::uint32_t size = 0;   // bytes of text it covers
  explicit operator bool() const { return row != nullptr; }
};

// Does a count noun only describe the thing behind it? After a number above one it is singular and the thing is plural:
// 2 rib steaks, 4 fillet steaks; but 2 ribs of celery, 2 head lettuce. `behind` begins after the noun.
bool describes(const LexiconRow& noun, std::string_view behind);

class Lexicon {
 public:
  static const Lexicon& standard();
  // The longest word or phrase of one of `classes` that starts at text[0] and that no letter or digit follows.
  Found longest(std::string_view text, unsigned classes) const;
  const LexiconRow& row(std::uint16_t id) const;
  // The same in two steps, for a caller that asks several times at one place.
  struct Word {
    std::uint64_t hash = 0;
    std::uint32_t size = 0;
    std::uint32_t first = 0, last = 0;  // the entries that begin with it
  };
  struct Words {
    Word whole, part;      // with its hyphens, and up to the first
    unsigned classes = 0;  // of all that begins with either: what is asked for beside these is not there
  };
  Words words(std::string_view text) const;
  Found longest(std::string_view text, const Words& words, unsigned classes) const;

 private:
  Lexicon();
  struct Impl;
  const Impl* impl_;
};

// Bytes of the letter that starts at text[at], or 0: ASCII letters and any other character of a word; blanks, dashes,
// fractions, degree signs, arrows and the multiplication sign are none.
int wide_letter_at(std::string_view text, std::size_t at);
inline int letter_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return 0;
  const auto c = static_cast<unsigned char>(text[at]);
  if (c < 0x80) return static_cast<unsigned char>((c | 0x20) - 'a') < 26 ? 1 : 0;
  return wide_letter_at(text, at);
}

}  // namespace qtn
