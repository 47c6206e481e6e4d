#include "recipe/strength.hpp"

#include <algorithm>

#include "formula/cure.hpp"
#include "recipe/makes.hpp"
#include "recipe/phases.hpp"
#include "recipe/pot.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

FoldedCureWords::List folded(const std::vector<std::string_view>& words) {
  FoldedCureWords::List out;
  for (std::string_view word : words) out.push_back(fold_word(word));
  std::sort(out.begin(), out.end());
  return out;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// The first run of a number in a text: "6.25".
std::string_view number_in(std::string_view text) {
  const std::size_t from = text.find_first_of("0123456789");
  if (from == std::string_view::npos) return {};
  std::size_t end = from;
  while (end < text.size() && (is_digit(text[end]) || ((text[end] == '.' || text[end] == '/') && end + 1 < text.size() && is_digit(text[end + 1])))) ++end;
  return text.substr(from, end - from);
}

bool names_a_cure(std::string_view name) {
  const std::string folded = lower(name);
  // By other names of the trade: a cure of any of them is sold in more than one strength.
  for (const std::string_view word : {"curing salt", "nitrite", "prague powder", "instacure", "insta cure", "insta-cure", "cure #1", "cure no. 1", "cure #2", "cure no. 2"})
    if (folded.find(word) != std::string::npos) return true;
  return false;
}

void check_cure_line(const Recipe& recipe, const TakeLine& line, const Tail& strength, Report& report) {
  const Span at = line.amount_span.empty() ? line.name_span : line.amount_span;
  const char* how = nullptr;
  if (!line.measured()) how = "is not weighed out";
  else if (line.fixed) how = "is fixed, so that a larger or smaller batch has too little or too much of it";
  else if (line.gently) how = "scales gently, so that a large batch has too little of it";
  if (how == nullptr) return;
  report.add(Code::cure_out_of_step, at, "This curing salt " + std::string(how) + ".")
      .expect("a weight that scales with the meat: `2.5 g curing salt, " + std::string(recipe.slice(strength.amount_span)) + " nitrite`")
      .find("`" + std::string(recipe.slice(line.span)) + "`");
}

}  // namespace

const FoldedCureWords& folded_cure_words() {
  static const FoldedCureWords all = [] {
    const CureWords& words = cure_words();
    return FoldedCureWords{folded(words.minced),      folded(words.bacon),    folded(words.dry),  folded(words.minced_step),
                           folded(words.dry_step),    folded(words.meat),     folded(words.not_meat), folded(words.bare)};
  }();
  return all;
}

bool among(const std::string& folded, const FoldedCureWords::List& list) { return std::binary_search(list.begin(), list.end(), folded); }

bool has_one_of(std::string_view text, const FoldedCureWords::List& list) {
  std::string word;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const char c = i < text.size() ? text[i] : ' ';
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || static_cast<unsigned char>(c) >= 0x80) {
      word += c;
      continue;
    }
    if (!word.empty() && among(fold_word(word), list)) return true;
    word.clear();
  }
  return false;
}

bool is_bare_strength(std::string_view text) {
  text = trim(text);
  const std::string folded = lower(text);
  const std::string_view number = number_in(text);
  if (number.empty()) return false;
  const std::size_t behind = static_cast<std::size_t>(number.data() - text.data()) + number.size();
  const bool first = number.data() == text.data();
  if (first && behind < text.size() && blank_at(text, behind) != 0) {
    const std::vector<std::string> words = fold_name(text.substr(behind));
    if (words.size() == 1 || words.size() == 2) return among(words.back(), folded_cure_words().bare);
  }
  // Of nitrite nothing that looks like a figure is passed over.
  return folded.find("nitrite") != std::string::npos || folded.find("nitrate") != std::string::npos;
}

std::string bare_strength_expected(std::string_view text) {
  const std::string_view number = number_in(text);
  std::string name;
  for (std::string_view word : cure_words().bare)
    if (lower(text).find(word) != std::string::npos && word.size() > name.size()) name = word;
  return "`" + std::string(number) + " % " + name + "`, or `" + std::string(number) + " ppm " + name + "`";
}

bool is_raw_meat(const TakeLine& line) {
  const auto meant = [](std::string_view name) {
    const std::vector<std::string> words = fold_name(name);
    if (words.empty() || among(words.back(), folded_cure_words().not_meat)) return false;
    return std::any_of(words.begin(), words.end(), [](const std::string& word) { return among(word, folded_cure_words().meat); });
  };
  if (line.food != nullptr && line.food->liquid) return false;
  return meant(line.name);
}

void check_strength_lines(const Recipe& recipe, Report& report) {
  for (const TakeLine& line : recipe.lines) {
    bool nitrite = false;
    for (Index t = line.tails.first; t < line.tails.end(); ++t) {
      const Tail& tail = recipe.tails[t];
      if (tail.kind != TailKind::strength || !tail.amount) continue;
      if (in_base(*tail.amount, recipe.dialect).high > Fraction(1))
        report.add(Code::strength_over_all, tail.amount_span, "This is more than all of it.")
            .expect("a share of at most 100 %")
            .find("`" + std::string(recipe.slice(tail.span)) + "`");
      if (!is_nitrite(tail.name)) continue;
      nitrite = true;
      check_cure_line(recipe, line, tail, report);
    }
    if (nitrite || line.given || !names_a_cure(line.name) || recipe.parts[line.part].disturbed || line.target.kind != TargetKind::none) continue;
    if (const std::string_view number = number_in(line.name); number.find('.') != std::string_view::npos) {  // curing salt (6.25)
      const std::string figure(number);
      report.add(Code::bare_strength, line.name_span, "This strength is not read: a share is written behind a comma, as a number, `%` or `ppm`, and what it is of.")
          .expect("`" + figure + " % nitrite`, or `" + figure + " ppm nitrite`")
          .find("`" + std::string(line.name) + "`");
      continue;
    }
    report.add(Code::cure_strength_unsaid, line.name_span, "The `" + std::string(line.name) + "` does not say how much nitrite it has.")
        .expect("its strength as on the packet, behind a comma: `6.25 % nitrite`, `5.88 % nitrite`")
        .find("`" + std::string(recipe.slice(line.span)) + "`");
  }
}

}  // namespace qtn
