// Looks into the words of a listed name. Private to this room.
#pragma once
#include <string_view>

#include "words/fold.hpp"

namespace qtn {

inline bool starts_with_word(std::string_view text, std::string_view word) {
  return text.size() > word.size() && lower(text.substr(0, word.size())) == word && text[word.size()] == ' ';
}

// Where " word " stands in a text, or npos.
inline std::size_t find_word(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(' '); at != std::string_view::npos; at = text.find(' ', at + 1)) {
    const std::string_view rest = text.substr(at + 1);
    if (rest.size() > word.size() && rest[word.size()] == ' ' && rest.substr(0, word.size()) == word) return at;
  }
  return std::string_view::npos;
}

// The blank before "to taste", "for frying" and the like at the end of a name that lacks its comma, or npos.
inline std::size_t unmeasured_at(std::string_view name) {
  const std::string folded = lower(name);
  for (std::string_view tail : {" to taste", " to serve", " to finish", " as needed", " as required"})
    if (folded.size() > tail.size() && folded.compare(folded.size() - tail.size(), tail.size(), tail) == 0) return folded.size() - tail.size();
  return find_word(folded, "for");
}

// A number that stands by itself inside a name: "eggs plus 1 yolk"; not "2 7-inch tortillas".
// "curing salt no. 1": the number says which sort, and is no second amount.
inline bool is_sort(std::string_view front) {
  if (!front.empty() && front.back() == '.') front.remove_suffix(1);
  const std::size_t size = front.size();
  return size > 3 && front[size - 3] == ' ' && (front[size - 2] == 'n' || front[size - 2] == 'N') && front[size - 1] == 'o';
}
inline bool has_number_word(std::string_view name) {
  for (std::size_t i = 1; i < name.size(); ++i)
    if (name[i] >= '0' && name[i] <= '9' && name[i - 1] == ' ') {
      std::size_t j = i;
      while (j < name.size() && name[j] >= '0' && name[j] <= '9') ++j;
      if (j == name.size() && is_sort(name.substr(0, i - 1))) continue;
      if (j >= name.size() || name[j] != '-') return true;
    }
  return false;
}

}  // namespace qtn
