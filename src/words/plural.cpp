// Plurals made and unmade in phrases that are shown: "bay leaf" and "bay leaves".
#include "words/fold.hpp"
#include "words/irregular.hpp"

namespace qtn {
namespace {

// Where the word that carries the plural stands in a noun phrase.
struct Head {
  std::size_t begin, end;
};

Head head_of(std::string_view noun) {
  Head head{0, 0};
  for (std::size_t at = 0; at < noun.size();) {
    if (const int blank = blank_at(noun, at); blank != 0) {
      at += static_cast<std::size_t>(blank);
      continue;
    }
    const std::size_t end = blank_from(noun, at);
    const std::string_view word = noun.substr(at, end - at);
    if (at != 0 && (word == "of" || word == "in" || word == "on" || word == "with")) break;
    head = {at, end};
    at = end;
  }
  return head;
}

std::string with_head(std::string_view noun, Head head, std::string_view form) {
  std::string text(noun.substr(0, head.begin));
  text += form;
  const char was = noun[head.begin];
  if (was >= 'A' && was <= 'Z' && text[head.begin] >= 'a' && text[head.begin] <= 'z') text[head.begin] = was;
  text += noun.substr(head.end);
  return text;
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (static_cast<unsigned char>(c) & 0x80) != 0;
}

// Case folded and nothing else.
std::string plain_form(std::string_view word) {
  std::string form(word.size() + kSlack, '\0');
  form.resize(fold_case(word, form.data()));
  return form;
}

const Irregular* irregular(std::string form) {
  const std::size_t size = form.size();
  form.append(kSlack, '\0');
  return Irregulars::table().find(key_of(form.data(), size));
}

}  // namespace

std::string plural_of(std::string_view noun) {
  const Head head = head_of(noun);
  if (head.begin == head.end || !is_letter(noun[head.end - 1])) return std::string(noun);
  const std::string_view word = noun.substr(head.begin, head.end - head.begin);
  const std::string form = plain_form(word);
  if (const Irregular* row = irregular(form); row != nullptr) return with_head(noun, head, row->many);
  if (fold_word(word) != form) return std::string(noun);
  const bool vowel_before = form.size() < 2 || std::string_view("aeiou").find(form[form.size() - 2]) < 5;
  std::string_view ending = "s";
  std::string_view stem = word;
  if (form.back() == 'y' && !vowel_before) {
    stem.remove_suffix(1);
    ending = "ies";
  } else if (form.back() != 'o' && takes_es(form)) {
    ending = "es";
  }
  return with_head(noun, head, std::string(stem) + std::string(ending));
}

std::string singular_of(std::string_view noun) {
  const Head head = head_of(noun);
  if (head.begin == head.end) return std::string(noun);
  const std::string_view word = noun.substr(head.begin, head.end - head.begin);
  const std::string form = plain_form(word), folded = fold_word(word);
  if (folded == form) return std::string(noun);
  // Where the plural is only cut off, the writer's own letters stay.
  const bool cut = form.size() == word.size() && form.starts_with(folded);
  return with_head(noun, head, cut ? word.substr(0, folded.size()) : std::string_view(folded));
}

}  // namespace qtn
