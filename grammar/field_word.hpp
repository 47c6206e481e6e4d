// Field words as rules: the words of fields.def that may stand at a place, and those that are nearly one.
#pragma once
#include <tao/pegtl.hpp>

#include "diag/nearest.hpp"
#include "syntax/field.hpp"
#include "words/lexicon.hpp"

namespace qtn::grammar {

using namespace tao::pegtl;  // NOLINT: a grammar reads as rules, not as names of a library

// A word or a few, 31 characters at most, and a colon.
struct word_char : sor<ranges<'a', 'z', 'A', 'Z'>, one<'-'>, not_range<'\x00', '\x7F'>> {};
struct colon_form : seq<word_char, rep_max<30, sor<word_char, one<' ', '\t'>>>, one<':'>> {};

// What a field word begins.
enum Opens : unsigned {
  kOpensValue = 1, kOpensPart = 2, kOpensMenu = 4, kOpensKitchen = 8, kOpensList = 16, kOpensSteps = 32, kOpensLog = 64,
  kOpensFacts = 128, kOpensStep = 256, kOpensNote = 512,
  kOpensBlock = kOpensList | kOpensSteps | kOpensLog | kOpensFacts, kOpensAny = 1023,
  kOpensOther = kOpensAny & ~(kOpensStep | kOpensNote),  // ends a block: openers and notes stand inside one
};

inline unsigned opens(const FieldRow& row, unsigned where, bool start) {
  switch (row.shape) {
    case Shape::list: return kOpensList;
    case Shape::steps: return kOpensSteps;
    case Shape::log: return kOpensLog;
    case Shape::facts: return kOpensFacts;
    case Shape::opener: return kOpensStep;
    default: break;
  }
  if (row.field == Field::part) return kOpensPart;
  if (row.field == Field::note && (where & (kSteps | kLog)) != 0) return kOpensNote;
  if (start && row.field == Field::menu) return kOpensMenu;
  if (start && row.field == Field::kitchen) return kOpensKitchen;
  return kOpensValue;
}

// The allowed word that is one letter or swap away, two from seven letters on; the first of the table where several are.
// A line of a block that begins with a verb is a line of the block.
inline const FieldRow* near_miss(std::string_view word, unsigned where, bool head, bool start) {
  if (!head && Lexicon::standard().longest(word, kVerbWord)) return nullptr;
  const FieldRow* best = nullptr;
  int least = word.size() >= 7 ? 3 : 2;
  for (std::string_view known : field_words(where))
    if (start && begins_part(*find_field(known))) continue;
    else if (const int far = distance(word, known, least - 1); far < least) least = far, best = find_field(known);
  return best;
}

template <typename Place, unsigned What, bool Near>
struct field_word {
  using rule_t = field_word;
  using subs_t = empty_list;
  template <typename Input>
  static bool match(Input& in) {
    std::string_view line(in.current(), in.size());
    const std::size_t colon = line.substr(0, 32).find(':');
    memory_input<> form(in.current(), in.end(), "");
    if (colon == std::string_view::npos || !parse<colon_form>(form)) return false;
    std::string_view word = line.substr(0, colon);
    while (word.back() == ' ' || word.back() == '\t') word.remove_suffix(1);
    const FieldRow* row = find_field(word);
    if (row != nullptr && (row->where & Place::where) == 0) return false;
    if (row == nullptr && Near) row = near_miss(word, Place::where, Place::in_head, Place::start);
    if (row == nullptr || (opens(*row, Place::where, Place::start) & What) == 0) return false;
    in.bump_in_this_line(word.size());
    return true;
  }
};

}  // namespace qtn::grammar
