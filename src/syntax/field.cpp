#include "syntax/field.hpp"

#include <algorithm>
#include <array>

namespace qtn {
namespace {

constexpr FieldRow kRows[] = {
#define QTN_FIELD(name, word, where, shape) {Field::name, word, where, Shape::shape},
#include "grammar/fields.def"
#undef QTN_FIELD
    {Field::none, "", 0, Shape::text},
};

// Letters of two texts without case; a run of blanks is one blank.
bool same_words(std::string_view text, std::string_view word) {
  std::size_t t = 0;
  for (std::size_t w = 0; w < word.size(); ++w, ++t) {
    if (t >= text.size()) return false;
    char c = text[t];
    if (c == '\t') c = ' ';
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c != word[w]) return false;
    if (c == ' ')
      while (t + 1 < text.size() && (text[t + 1] == ' ' || text[t + 1] == '\t')) ++t;
  }
  return t == text.size();
}

}  // namespace

const FieldRow& row(Field field) { return kRows[static_cast<std::size_t>(field)]; }

const FieldRow* find_field(std::string_view text) {
  if (text.empty()) return nullptr;
  for (const FieldRow& known : kRows)
    if ((known.word.empty() ? '\0' : known.word[0]) == (text[0] | 0x20) && same_words(text, known.word)) return &known;
  return nullptr;
}

std::vector<std::string_view> field_words(unsigned where) {
  std::vector<std::string_view> words;
  for (const FieldRow& known : kRows)
    if ((known.where & where) != 0) words.push_back(known.word);
  return words;
}

}  // namespace qtn
