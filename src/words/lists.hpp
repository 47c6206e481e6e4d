// Small closed lists of words that the reader of recipes needs. Rows live in data/words.txt.
#pragma once
#include <cstdint>
#include <span>
#include <string_view>

#include "base/fraction.hpp"

namespace qtn {

enum class WordList : std::uint8_t {
  share,       // half, thirds; value: the share
  number,      // one, a dozen; value: the number
  place,       // "in the fridge": where a clause says it happens; value: the bits of Takes
  keep_place,  // chilled, frozen: where a thing keeps
  shape,       // round, basin: of a tin
  unmeasured,  // "to taste": what a line without an amount must say; see is_unmeasured()
  thing,       // "baking sheet": the name of a thing in which a verb's form is no verb
};

struct ListWord {
  std::string_view text;  // lower case; may be several words
  WordList list;
  Fraction value;  // 0 where a list has no values
};

// All rows of one list, sorted by text.
std::span<const ListWord> list_words(WordList list);
// The row with this text, lower case; nullptr when there is none.
const ListWord* list_word(WordList list, std::string_view text);
// "to taste", "as needed", or "for ..." and anything. Lower case.
bool is_unmeasured(std::string_view text);

}  // namespace qtn
