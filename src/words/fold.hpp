// Words as names are compared: without case, without plural (semantics 3.1).
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace qtn {

// One word in lower case and singular: "Leaves" -> "leaf", "tomatoes" -> "tomato", "molasses" -> "molasses".
// ASCII and Latin letters with accents are folded by case; accents are kept, and a letter followed by a combining
// accent is the same as the letter that has it. A typographic apostrophe is a plain one. Irregulars: data/plurals.txt.
std::string fold_word(std::string_view word);
// A name cut into folded words at blanks; a hyphen joins inside a word and is dropped at its ends; "the" and "all" in
// front are dropped.
// Each key is a 64-bit hash of the folded word; equal words have equal keys, and a caller that must be sure against
// crafted collisions compares fold_word() of both. The keys are added to `out`, which is not cleared.
using WordKey = std::uint64_t;
void fold_keys(std::string_view name, std::vector<WordKey>& out);
WordKey first_key(std::string_view name);  // of the first word alone; 0 for a name without one
WordKey fold_key(std::string_view word);  // the same for one word
std::vector<std::string> fold_name(std::string_view name);
// "1 egg" but "2 eggs": the plural of an English noun phrase, and back. The word that changes is the last one, or the
// one before "of", "in", "on" or "with": "legs of lamb". A phrase that already is what is asked for comes back as it is.
std::string plural_of(std::string_view noun);
std::string singular_of(std::string_view noun);
// Case only: "Fl Oz" -> "fl oz".
std::string lower(std::string_view text);
bool same_letters(std::string_view a, std::string_view b);  // lower(a) == lower(b)
// Is a Unicode blank (space, tab, U+00A0, U+202F) at text[at]? How many bytes it takes, or 0.
int blank_at(std::string_view text, std::size_t at);
std::string_view trim(std::string_view text);

}  // namespace qtn
