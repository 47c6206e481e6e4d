// The only file that asks for zones: Hinnant's date library, over the system's own database.
#include "day/hours.hpp"

#include <date/tz.h>

#include <stdexcept>

namespace qtn {
namespace {

using std::chrono::minutes;

date::local_time<minutes> local(Minute wall) { return date::local_time<minutes>{minutes{wall}}; }
Minute whole(std::chrono::seconds time) { return std::chrono::floor<minutes>(time).count(); }

const date::time_zone& rules_of(const void* rules) { return *static_cast<const date::time_zone*>(rules); }

std::string two(std::int64_t number) { return (number < 10 ? "0" : "") + std::to_string(number); }

// `size` digits at a place; -1 where there are others.
int digits(std::string_view text, std::size_t at, std::size_t size) {
  int value = 0;
  for (std::size_t i = at; i < at + size; ++i) {
    if (i >= text.size() || text[i] < '0' || text[i] > '9') return -1;
    value = value * 10 + (text[i] - '0');
  }
  return value;
}

}  // namespace

std::optional<Hours> Hours::of(const std::string& zone) {
  Hours hours;
  if (zone.empty()) return hours;
  try {
    hours.rules_ = date::locate_zone(zone);
  } catch (const std::runtime_error&) {
    return std::nullopt;
  }
  hours.zone_ = zone;
  return hours;
}

Minute Hours::gone(Minute wall, Fit* fit) const {
  if (fit != nullptr) *fit = Fit::once;
  if (rules_ == nullptr) return wall;
  const date::local_info info = rules_of(rules_).get_info(local(wall));
  if (fit != nullptr && info.result == date::local_info::nonexistent) *fit = Fit::never;
  if (fit != nullptr && info.result == date::local_info::ambiguous) *fit = Fit::twice;
  return wall - whole(info.first.offset);
}

Minute Hours::wall(Minute gone) const {
  if (rules_ == nullptr) return gone;
  const date::sys_info info = rules_of(rules_).get_info(date::sys_time<minutes>{minutes{gone}});
  return gone + whole(info.offset);
}

std::optional<int> read_clock(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos || colon == 0 || colon > 2 || text.size() != colon + 3) return std::nullopt;
  const int hour = digits(text, 0, colon), minute = digits(text, colon + 1, 2);
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59) return std::nullopt;
  return hour * 60 + minute;
}

std::optional<Minute> read_wall(std::string_view text) {
  if (text.size() < 15 || text[4] != '-' || text[7] != '-' || (text[10] != ' ' && text[10] != 'T')) return std::nullopt;
  const int year = digits(text, 0, 4), month = digits(text, 5, 2), day = digits(text, 8, 2);
  const auto clock = read_clock(text.substr(11));
  if (year < 0 || month < 0 || day < 0 || !clock) return std::nullopt;
  const date::year_month_day whole_day = date::year{year} / month / day;
  if (!whole_day.ok()) return std::nullopt;
  return std::chrono::duration_cast<minutes>(date::local_days{whole_day}.time_since_epoch()).count() + *clock;
}

Minute day_begin(Minute wall) {
  const Minute into = ((wall % 1440) + 1440) % 1440;
  return wall - into;
}

std::string write_clock(Minute wall) {
  const Minute of_day = wall - day_begin(wall);
  return two(of_day / 60) + ":" + two(of_day % 60);
}

std::string write_wall(Minute wall) {
  const date::year_month_day day{date::floor<date::days>(local(wall))};
  std::string year = std::to_string(static_cast<int>(day.year()));
  year.insert(0, year.size() < 4 ? 4 - year.size() : 0, '0');
  return year + "-" + two(static_cast<unsigned>(day.month())) + "-" + two(static_cast<unsigned>(day.day())) + " " + write_clock(wall);
}

std::string write_day(Minute wall) {
  constexpr const char* kDays[] = {"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"};
  constexpr const char* kMonths[] = {"January", "February", "March",     "April",   "May",      "June",
                                     "July",    "August",   "September", "October", "November", "December"};
  const auto days = date::floor<date::days>(local(wall));
  const date::year_month_day day{days};
  return std::string(kDays[date::weekday{days}.c_encoding()]) + " " + std::to_string(static_cast<unsigned>(day.day())) + " " +
         kMonths[static_cast<unsigned>(day.month()) - 1] + " " + std::to_string(static_cast<int>(day.year()));
}

}  // namespace qtn
