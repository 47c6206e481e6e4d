// A question in plain words, cut into its amounts and the words beside each. Private to this room.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/ask.hpp"
#include "measure/quantity.hpp"
#include "measure/tin.hpp"

namespace qtn {

// An amount, the words before it back to the last amount or comma, and those behind it up to the next one. Words are
// in lower case, parted by one blank.
struct Asked {
  Quantity amount;
  std::string before, after;
  std::string written;      // "6.25 %"
  bool opens = false;       // first behind a comma, or in the question
  bool bare() const { return amount.unit == kNoUnit; }
  Dimension dimension() const { return amount.dimension(); }
  // Whole words, of either side.
  bool near(std::string_view word) const;
  bool behind(std::string_view word) const;  // in the words behind it
};

struct Question {
  std::string text;               // as asked, in one line
  std::vector<std::string> words; // lower case, amounts left out
  std::vector<Asked> amounts;
  Dialect dialect = Dialect::unstated;
  bool has(std::string_view word) const;
  bool has_any(std::initializer_list<std::string_view> some) const;
  // The only amount of a dimension; null when there is none or more than one.
  const Asked* only(Dimension dimension) const;
};
// Nothing, with the reason, for an amount that is written so that it could be two (a comma in a number).
std::optional<Question> read_question(const std::string& text, Dialect dialect, std::string& problem);

// Grams of an amount, by the density of what the words behind it name where it is a volume. Lost, with the reason.
Ends weigh(const Question& question, const Asked& asked, std::string& problem);
// °C of a temperature; a difference of temperatures in °C where it is `friction`.
Fraction celsius_of(const Asked& asked);
Fraction celsius_difference(const Asked& asked);
// A size of a tin by the rules of `tin:`; nothing when the text is none.
std::optional<TinSize> tin_size_of(std::string_view text, Dialect dialect);

bool has_word(std::string_view text, std::string_view word);
// Rounded away from a slip: an order up, what may be dangerous and a portion down.
std::string rounded_up(const Fraction& value, int places);
std::string rounded_down(const Fraction& value, int places);
// "65 to 78", or one number where both ends are one.
std::string both(const std::string& low, const std::string& high);

// The formulas, each asked first whether the question is its own (ask.cpp has the table).
bool asks_dough(const Question& question);
std::optional<Sum> answer_dough(const Question& question, std::string& problem);
bool asks_ice(const Question& question);
std::optional<Sum> answer_ice(const Question& question, std::string& problem);
bool asks_percents(const Question& question);
std::optional<Sum> answer_percents(const Question& question, std::string& problem);
bool asks_cure(const Question& question);
std::optional<Sum> answer_cure(const Question& question, std::string& problem);
bool asks_brine(const Question& question);
std::optional<Sum> answer_brine(const Question& question, std::string& problem);
bool asks_salometer(const Question& question);
std::optional<Sum> answer_salometer(const Question& question, std::string& problem);
bool asks_thaw(const Question& question);
std::optional<Sum> answer_thaw(const Question& question, std::string& problem);
bool asks_yield(const Question& question);
std::optional<Sum> answer_yield(const Question& question, std::string& problem);
bool asks_paste(const Question& question);
std::optional<Sum> answer_paste(const Question& question, std::string& problem);
bool asks_label(const Question& question);
std::optional<Sum> answer_label(const Question& question, std::string& problem);
bool asks_tin(const Question& question);
std::optional<Sum> answer_tin(const Question& question, std::string& problem);

// One amount in another unit (ask_convert.cpp). False when the question does not end in a unit.
bool asks_conversion(const std::string& question);
std::optional<Sum> answer_conversion(const std::string& question, Dialect dialect, std::string& problem);

}  // namespace qtn
