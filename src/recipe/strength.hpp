// What a line says of strengths and of curing salt, and what is wrong with it by itself. Private to this room.
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

// The word lists of data/curing.txt, folded as names are compared.
struct FoldedCureWords {
  using List = std::vector<std::string>;  // sorted
  List minced, bacon, dry, minced_step, dry_step, meat, not_meat, bare;
};
const FoldedCureWords& folded_cure_words();
bool among(const std::string& folded, const FoldedCureWords::List& list);
// Has a text one of the words?
bool has_one_of(std::string_view text, const FoldedCureWords::List& list);

// The page's own lines: shares above all there is, cures that do not follow the meat, cures of a strength nobody says.
void check_strength_lines(const Recipe& recipe, Report& report);
// "6.25 nitrite" where `6.25 % nitrite` was meant; also "nitrite 6.25 %", which is not read as a strength.
bool is_bare_strength(std::string_view text);
// What to write in its place, of the number in it.
std::string bare_strength_expected(std::string_view text);

}  // namespace qtn
