// The words of a card: names, mentions, prose and the verbs of clauses in the words that were asked for, and in the
// house's own.
#pragma once
#include <vector>

#include "adapt/adapt.hpp"
#include "card/card.hpp"
#include "words/pairs.hpp"

namespace qtn {

// Whose words a page is written in: its own `words:`, else its kitchen's, else those of its measures.
WordsOf words_written(const Recipe& recipe);

// A place in a card that is checked, as the maker wrote it.
struct CheckedWords {
  enum class Kind : std::uint8_t { name, mention, verb } kind = Kind::name;
  std::uint32_t at = 0;  // of a name or a mention its run; of a verb where its clause begins, in Card::text
  Index index = kNone;   // of a name or a mention the line it is of, kNone for a part or another recipe; of a verb the clause
};

// A name of the list, or a mention of the line that is listed so, in the words of a side: what changes without a remark.
// A mention keeps to the words of its line: "the bicarbonate" is "the baking soda" where the list says that.
std::string name_in(std::string_view text, std::string_view listed, const WordsRead& how);

// A listed name that stands among other text ("at most 8 kg stewing beef at a time"), in the words that were asked for.
std::string name_in(std::string_view name, const Adapted& adapted);

// Is there anything to change? Else the maker need not note where checked words stand.
bool wants_wording(const Adapted& adapted);
// Changes the card's text; adds a remark for each pair that is not quite the same thing.
void reword(Card& card, const Adapted& adapted, const std::vector<CheckedWords>& places);

}  // namespace qtn
