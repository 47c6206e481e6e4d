// The regular forms of a verb: bake, bakes, baking, baked.
#include "words/irregular.hpp"
#include "words/verbs.hpp"

namespace qtn {
namespace {

bool is_vowel(char c) { return std::string_view("aeiou").find(c) != std::string_view::npos; }

// "chop" but not "cook", "mix" or "simmer": one vowel in the whole word, and one consonant after it.
bool doubles(std::string_view verb) {
  if (verb.size() < 3) return false;
  const char last = verb.back(), vowel = verb[verb.size() - 2];
  if (is_vowel(last) || last == 'w' || last == 'x' || last == 'y' || !is_vowel(vowel)) return false;
  for (std::size_t i = 0; i + 2 < verb.size(); ++i) {
    const bool after_q = verb[i] == 'u' && i > 0 && verb[i - 1] == 'q';
    if ((is_vowel(verb[i]) && !after_q) || static_cast<unsigned char>(verb[i]) >= 0x80) return false;
  }
  return static_cast<unsigned char>(last) < 0x80;
}

bool ends_in_consonant_y(std::string_view verb) {
  return verb.size() > 1 && verb.back() == 'y' && !is_vowel(verb[verb.size() - 2]);
}

std::string one_word(std::string_view verb, VerbForm form) {
  std::string text(verb);
  const bool y = ends_in_consonant_y(verb), e = verb.ends_with('e');
  if (form == VerbForm::third) {
    if (y) return text.replace(text.size() - 1, 1, "ies");
    return text + (takes_es(verb) ? "es" : "s");
  }
  if (doubles(verb)) text.push_back(verb.back());
  if (form == VerbForm::ing) {
    if (verb.ends_with("ie")) return text.replace(text.size() - 2, 2, "ying");
    if (e && !verb.ends_with("ee")) text.pop_back();
    return text + "ing";
  }
  if (y) return text.replace(text.size() - 1, 1, "ied");
  return text + (e ? "d" : "ed");
}

}  // namespace

std::string verb_form(std::string_view verb, VerbForm form) {
  if (form == VerbForm::plain) return std::string(verb);
  const std::size_t end = verb.find(' ');
  std::string text = one_word(verb.substr(0, end), form);
  if (end != std::string_view::npos) text += verb.substr(end);
  return text;
}

}  // namespace qtn
