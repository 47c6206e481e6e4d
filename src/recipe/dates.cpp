#include "recipe/dates.hpp"

#include <array>
#include <cstdint>

#include "words/fold.hpp"

namespace qtn {
namespace {

struct Date {
  int year = 0, month = 0, day = 0;
};

bool is_leap(int year) { return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0; }

int days_of(int year, int month) {
  constexpr std::array<int, 12> kDays = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && is_leap(year) ? 29 : kDays[static_cast<std::size_t>(month - 1)];
}

bool exists(const Date& date) {
  return date.month >= 1 && date.month <= 12 && date.day >= 1 && date.day <= days_of(date.year, date.month);
}

// Gregorian calendar, counted in eras of 400 years of 146097 days; the year begins in March, so that the leap day is
// its last.
int count(const Date& date) {
  const int year = date.month <= 2 ? date.year - 1 : date.year;
  const int era = (year >= 0 ? year : year - 399) / 400;
  const int of_era = year - era * 400;
  const int of_year = (153 * (date.month + (date.month > 2 ? -3 : 9)) + 2) / 5 + date.day - 1;
  return era * 146097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719468;
}

std::string two(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }

std::string iso(const Date& date) {
  std::string year = std::to_string(date.year);
  year.insert(0, year.size() < 4 ? 4 - year.size() : 0, '0');
  return year + "-" + two(date.month) + "-" + two(date.day);
}

bool is_iso(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (i != 4 && i != 7 && (text[i] < '0' || text[i] > '9')) return false;
  return true;
}

int month_named(std::string_view word) {
  constexpr std::string_view kMonths[] = {"january", "february", "march",     "april",   "may",      "june",
                                          "july",    "august",   "september", "october", "november", "december"};
  for (int i = 0; i < 12; ++i) {
    const std::string_view month = kMonths[i];
    if (word == month || (word.size() >= 3 && word == month.substr(0, word.size()))) return i + 1;
  }
  return 0;
}

// A date in a form that has one reading only: the year first, or the month in letters.
std::optional<Date> other_form(std::string_view text) {
  const std::string lowered = lower(text);
  std::array<std::string_view, 3> words;
  std::size_t found = 0;
  for (std::size_t at = 0; at < lowered.size();) {
    const std::size_t begin = lowered.find_first_not_of(" -/.,", at);
    if (begin == std::string::npos) break;
    at = std::min(lowered.find_first_of(" -/.,", begin), lowered.size());
    if (found == 3) return std::nullopt;
    words[found++] = std::string_view(lowered).substr(begin, at - begin);
  }
  if (found != 3) return std::nullopt;
  const auto number = [](std::string_view word) {
    int value = 0;
    if (word.ends_with("st") || word.ends_with("nd") || word.ends_with("rd") || word.ends_with("th")) word.remove_suffix(2);
    if (word.empty() || word.size() > 4) return -1;
    for (char c : word) {
      if (c < '0' || c > '9') return -1;
      value = value * 10 + (c - '0');
    }
    return value;
  };
  Date date;
  if (words[0].size() == 4) date = {number(words[0]), number(words[1]), number(words[2])};
  else if (const int named = month_named(words[1])) date = {number(words[2]), named, number(words[0])};
  else if (const int first = month_named(words[0])) date = {number(words[2]), first, number(words[1])};
  else return std::nullopt;
  if (date.year < 1000 || !exists(date)) return std::nullopt;
  return date;
}

}  // namespace

std::optional<int> read_date(std::string_view text, Span span, Report& report) {
  if (!is_iso(text)) {
    auto& problem = report.add(Code::date_not_iso, span, "This date is not written as year-month-day.");
    problem.find("`" + std::string(text) + "`").expect("a date such as `2026-02-11`");
    if (const auto date = other_form(text)) problem.fix(span, iso(*date), "write `" + iso(*date) + "`");
    return std::nullopt;
  }
  const auto digits = [&](std::size_t at, std::size_t size) {
    int value = 0;
    for (char c : text.substr(at, size)) value = value * 10 + (c - '0');
    return value;
  };
  const Date date{digits(0, 4), digits(5, 2), digits(8, 2)};
  if (exists(date)) return count(date);
  report.add(Code::impossible_date, span, "The calendar has no such day.")
      .find("`" + std::string(text) + "`")
      .expect(date.month >= 1 && date.month <= 12 ? "a day from 01 to " + std::to_string(days_of(date.year, date.month))
                                                  : "a month from 01 to 12");
  return std::nullopt;
}

std::string write_date(int day) {
  const int shifted = day + 719468;
  const int era = (shifted >= 0 ? shifted : shifted - 146096) / 146097;
  const int of_era = shifted - era * 146097;
  const int year = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
  const int of_year = of_era - (365 * year + year / 4 - year / 100);
  const int shifted_month = (5 * of_year + 2) / 153;
  const int month = shifted_month < 10 ? shifted_month + 3 : shifted_month - 9;
  return iso({year + era * 400 + (month <= 2 ? 1 : 0), month, of_year - (153 * shifted_month + 2) / 5 + 1});
}

}  // namespace qtn
