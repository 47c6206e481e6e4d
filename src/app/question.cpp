// A question cut into amounts and words. Tolerant of order and of little words; never of an amount that could be two.
#include "app/question.hpp"

#include <algorithm>

#include "measure/table_text.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::size_t kLongest = 2000;  // a question, not a file

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80 || c == '\'' || c == '-';
}

struct Vulgar {
  std::string_view sign;
  Fraction value;
};
const std::vector<Vulgar>& vulgars() {
  static const std::vector<Vulgar> all = {{"½", Fraction::of(1, 2)}, {"¼", Fraction::of(1, 4)}, {"¾", Fraction::of(3, 4)},
                                          {"⅓", Fraction::of(1, 3)}, {"⅔", Fraction::of(2, 3)}, {"⅛", Fraction::of(1, 8)}};
  return all;
}

class Cutter {
 public:
  Cutter(const std::string& text, Dialect dialect, std::string& problem) : text_(text), problem_(problem) { out_.dialect = dialect; }

  std::optional<Question> run() {
    out_.text = text_;
    while (at_ < text_.size()) {
      if (blank() || comma() || amount()) continue;
      if (!problem_.empty()) return std::nullopt;
      word();
    }
    close();
    return std::move(out_);
  }

 private:
  bool starts(std::string_view sign) const { return text_.compare(at_, sign.size(), sign) == 0; }
  char here(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }

  bool blank() {
    const int size = blank_at(text_, at_);
    at_ += static_cast<std::size_t>(size);
    return size != 0;
  }

  bool comma() {
    const char c = here();
    if (c != ',' && c != ';' && c != ':' && c != '?' && !(c == '.' && !is_digit(here(1)))) return false;
    ++at_;
    close();
    return true;
  }

  // What follows does not belong to the amount before.
  void close() {
    open_ = false;
    before_.clear();
  }

  void word() {
    const std::size_t from = at_;
    while (at_ < text_.size() && is_letter(text_[at_])) ++at_;
    if (at_ == from) ++at_;  // a sign that means nothing here
    std::string one = lower(std::string_view(text_).substr(from, at_ - from));
    if (!is_letter(text_[from])) return;
    out_.words.push_back(one);
    if (one == "and" || one == "plus" || one == "with") return close();
    std::string& to = open_ ? out_.amounts.back().after : before_;
    to += (to.empty() ? "" : " ") + one;
    if (open_) before_ += (before_.empty() ? "" : " ") + one;
  }

  Fraction plain_number() {
    const std::size_t from = at_;
    while (is_digit(here())) ++at_;
    if (here() == '.' && is_digit(here(1)))
      for (++at_; is_digit(here());) ++at_;
    if (here() == '/' && is_digit(here(1)))
      for (++at_; is_digit(here());) ++at_;
    if (here() == ',' && is_digit(here(1))) {
      problem_ = "A comma is not read in numbers, since `" + text_.substr(from, at_ - from + 2) + "` could be a decimal or thousands: write 1.5 or 1500.";
      return Fraction::lost();
    }
    return table::number(std::string_view(text_).substr(from, at_ - from));
  }

  bool vulgar(Fraction& value) {
    for (const Vulgar& one : vulgars()) {
      if (!starts(one.sign)) continue;
      at_ += one.sign.size();
      value += one.value;
      return true;
    }
    return false;
  }

  bool fraction_ahead() const {
    const std::size_t stroke = text_.find_first_not_of("0123456789", at_);
    return stroke != std::string::npos && stroke > at_ && text_[stroke] == '/' && stroke + 1 < text_.size() && is_digit(text_[stroke + 1]);
  }

  // "1 1/2", "1½", "-5".
  bool number(Fraction& value) {
    const std::size_t from = at_;
    const bool minus = (here() == '-' && is_digit(here(1))) || starts("−");
    if (minus) at_ += here() == '-' ? 1u : 3u;
    value = Fraction(0);
    if (!vulgar(value)) {
      if (!is_digit(here())) return at_ = from, false;
      value = plain_number();
      if (value.is_lost()) return false;
      const std::size_t end = at_;
      while (blank()) continue;
      if (!vulgar(value)) {
        if (value.is_whole() && fraction_ahead()) value += plain_number();
        else at_ = end;
      }
    }
    if (minus) value = -value;
    return true;
  }

  // The longest known unit here, up to three words; its length goes past it.
  UnitId unit_here() {
    const std::size_t from = at_;
    while (blank()) continue;
    if (here() == '%') return ++at_, common().percent;
    for (std::string_view degree : {"°", "º", ""}) {
      if (!starts(degree)) continue;
      std::size_t ahead = degree.size();
      while (!degree.empty() && here(ahead) == ' ') ++ahead;
      const char scale = here(ahead);
      if ((scale != 'C' && scale != 'F') || is_letter(here(ahead + 1)) || is_digit(here(ahead + 1))) continue;
      at_ += ahead + 1;
      return scale == 'C' ? common().celsius : common().fahrenheit;
    }
    UnitId best = kNoUnit;
    std::size_t end = at_, best_end = from;
    for (int words = 0; words < 3 && end < text_.size(); ++words) {
      while (end < text_.size() && is_letter(text_[end])) ++end;
      const std::string name = text_.substr(at_, end - at_);
      const UnitId found = name == "in" ? kNoUnit : named(name);
      if (found != kNoUnit) best = found, best_end = end;
      if (end >= text_.size() || text_[end] != ' ') break;
      ++end;
    }
    at_ = best_end;
    return best;
  }

  static UnitId named(const std::string& name) {
    const std::string folded = name.size() > 1 ? lower(name) : name;
    if (folded == "per cent" || folded == "percent") return common().percent;
    const UnitId found = unit_named(folded);
    return found != kNoUnit && (qtn::unit(found).counted || qtn::unit(found).informal) ? kNoUnit : found;
  }

  // "2 lb 3 oz": a smaller unit of the same kind right behind.
  void more_units(Quantity& amount) {
    while (true) {
      const std::size_t from = at_;
      while (blank()) continue;
      Fraction value;
      if (!is_digit(here()) || !number(value)) return void(at_ = from);
      const UnitId next = unit_here();
      const Fraction size = size_of(next, out_.dialect), whole = size_of(amount.unit, out_.dialect);
      if (next == kNoUnit || qtn::unit(next).dimension != amount.dimension() || !(size < whole)) return void(at_ = from);
      amount.low += value * size / whole;
      amount.high = amount.low;
    }
  }

  bool amount() {
    const std::size_t from = at_;
    Quantity amount;
    if (!number(amount.low)) return false;
    amount.high = amount.low;
    amount.unit = unit_here();
    if (amount.unit == kNoUnit || amount.dimension() == Dimension::temperature) range(amount);
    if (amount.unit != kNoUnit && amount.dimension() != Dimension::temperature && !amount.is_range()) more_units(amount);
    out_.amounts.push_back({amount, before_, "", std::string(trim(text_.substr(from, at_ - from))), !open_ && before_.empty()});
    before_.clear();
    open_ = true;
    return true;
  }

  // "6 to 7 kg": a bare number that a second with a unit follows. "20 °C to 5 °C" stays two points.
  void range(Quantity& amount) {
    if (amount.unit != kNoUnit) return;
    const std::size_t from = at_;
    while (blank()) continue;
    const bool to = starts("to ") || starts("–") || (here() == '-' && is_digit(here(1)));
    if (!to) return void(at_ = from);
    at_ += starts("to ") || starts("–") ? 3u : 1u;
    while (blank()) continue;
    Fraction high;
    if (!number(high)) return void(at_ = from);
    amount.high = high;
    amount.unit = unit_here();
  }

  const std::string& text_;
  std::string& problem_;
  Question out_;
  std::string before_;
  std::size_t at_ = 0;
  bool open_ = false;
};

}  // namespace

bool has_word(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    const bool opens = at == 0 || text[at - 1] == ' ';
    const std::size_t end = at + word.size();
    if (opens && (end == text.size() || text[end] == ' ')) return true;
  }
  return false;
}

bool Asked::near(std::string_view word) const { return has_word(before, word) || has_word(after, word); }
bool Asked::behind(std::string_view word) const { return has_word(after, word); }

bool Question::has(std::string_view word) const { return std::find(words.begin(), words.end(), word) != words.end(); }
bool Question::has_any(std::initializer_list<std::string_view> some) const {
  return std::any_of(some.begin(), some.end(), [&](std::string_view word) { return has(word); });
}

const Asked* Question::only(Dimension dimension) const {
  const Asked* found = nullptr;
  for (const Asked& one : amounts) {
    if (one.dimension() != dimension) continue;
    if (found != nullptr) return nullptr;
    found = &one;
  }
  return found;
}

std::optional<Question> read_question(const std::string& text, Dialect dialect, std::string& problem) {
  if (text.size() > kLongest) return problem = "A question is a line or two.", std::nullopt;
  std::string plain = text;
  for (std::size_t at = plain.find("’"); at != std::string::npos; at = plain.find("’", at)) plain.replace(at, 3, "'");
  return Cutter(plain, dialect, problem).run();
}

}  // namespace qtn
