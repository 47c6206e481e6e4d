// The sentences of a step: where one ends, and which clauses stand in it.
#pragma once
#include <string_view>
#include <vector>

#include "recipe/recipe.hpp"

namespace qtn {

// A full stop, `!` or `?` before a blank and a capital or a bracket, or at the end of the text.
bool ends_sentence(std::string_view text, std::size_t at);

struct Sentence {
  Span span;      // without the blanks around it
  Slice clauses;  // of Recipe::clauses
};
std::vector<Sentence> sentences_of(const Recipe& recipe, const Step& step);

}  // namespace qtn
