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

// Rows by the first letter of their word.
constexpr std::uint8_t kNoRow = 255;
constexpr std::size_t kMostOfALetter = 12;
constexpr auto make_letters() {
  std::array<std::array<std::uint8_t, kMostOfALetter>, 26> out{};
  for (auto& rows : out)
    for (auto& row : rows) row = kNoRow;
  for (std::size_t i = 0; i + 1 < std::size(kRows); ++i)
    for (auto& row : out[static_cast<std::size_t>(kRows[i].word[0] - 'a')])
      if (row == kNoRow) {
        row = static_cast<std::uint8_t>(i);
        break;
      }
  return out;
}
constexpr auto kByLetter = make_letters();

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
  const int letter = (text[0] | 0x20) - 'a';
  if (letter < 0 || letter >= 26) return nullptr;
  for (std::uint8_t i : kByLetter[static_cast<std::size_t>(letter)]) {
    if (i == kNoRow) break;
    if (same_words(text, kRows[i].word)) return &kRows[i];
  }
  return nullptr;
}

std::vector<std::string_view> field_words(unsigned where) {
  std::vector<std::string_view> words;
  for (const FieldRow& known : kRows)
    if ((known.where & where) != 0) words.push_back(known.word);
  return words;
}

}  // namespace qtn
