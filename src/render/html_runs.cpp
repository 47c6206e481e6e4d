#include "render/html_runs.hpp"

#include <chrono>

#include "render/layout.hpp"

namespace qtn {
namespace {

// Is it "2026-02-11", a day that there is? Only then may it stand in <time>.
bool is_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  unsigned part[3] = {0, 0, 0};
  for (std::size_t i = 0, field = 0; i < text.size(); ++i) {
    if (i == 4 || i == 7) {
      ++field;
    } else if (text[i] >= '0' && text[i] <= '9') {
      part[field] = part[field] * 10 + static_cast<unsigned>(text[i] - '0');
    } else {
      return false;
    }
  }
  using namespace std::chrono;
  return part[0] > 0 && year_month_day(year(static_cast<int>(part[0])), month(part[1]), day(part[2])).ok();
}

}  // namespace

void HtmlRuns::raw(Range32 range) {
  for (const Run& run : runs_of(card_, range)) words(run);
}

void HtmlRuns::runs(Range32 range, Role own) {
  std::uint16_t link = 0;
  for (const Run& run : runs_of(card_, range)) {
    if (run.link != link) {
      if (link != 0) ink_.mark("</a>");
      link = open_link(run);
    }
    if (run.style != 0) {
      styled(run, own);
    } else {
      dressed(run, own);
    }
  }
  if (link != 0) ink_.mark("</a>");
}

std::uint16_t HtmlRuns::open_link(const Run& run) {
  const std::string_view target = link_of(card_, run);
  if (target.empty()) return 0;
  ink_.mark("<a href=\"");
  put_escaped(ink_, target);
  ink_.mark("\">");
  return run.link;
}

void HtmlRuns::styled(const Run& run, Role own) {
  if (run.style & kStrong) ink_.mark("<strong>");
  if (run.style & kEmphasis) ink_.mark("<em>");
  if (run.style & kCode) ink_.mark("<code>");
  dressed(run, own);
  if (run.style & kCode) ink_.mark("</code>");
  if (run.style & kEmphasis) ink_.mark("</em>");
  if (run.style & kStrong) ink_.mark("</strong>");
}

void HtmlRuns::dressed(const Run& run, Role own) {
  if (run.role == own) return words(run);
  switch (run.role) {
    case Role::text:
    case Role::name:
      return words(run);
    case Role::time:
      return time(run);
    case Role::temperature:
      open("b", "heat", run);
      break;
    case Role::reading:
      open("b", "reading", run);
      break;
    case Role::second:
      open("span", "second", run);
      break;
    case Role::spent:
      open("span", "spent", run);
      break;
    case Role::struck:
      ink_.mark("<s>");
      break;
    case Role::amount:
    case Role::measure:
    case Role::pieces:
      open("span", "amount", run);
      break;
  }
  words(run);
  if (run.role == Role::struck) return ink_.mark("</s>");
  if (run.role == Role::temperature || run.role == Role::reading) return ink_.mark("</b>");
  ink_.mark("</span>");
}

// A long piece is marked, so that it may break.
void HtmlRuns::open(std::string_view element, std::string_view kind, const Run& run) {
  constexpr std::uint32_t kLong = 24;
  ink_.mark("<");
  ink_.put(element);
  ink_.mark(" class=\"");
  ink_.put(kind);
  if (run.size > kLong) ink_.mark(" long");
  ink_.mark("\">");
}

// HTML knows lengths of time in whole minutes, hours and days; a range or a half hour has no <time>.
void HtmlRuns::time(const Run& run) {
  if (run.exact != 0 && run.exact < card_.exacts.size() && open_time(card_.exacts[run.exact])) {
    words(run);
    return ink_.mark("</time>");
  }
  open("b", "time", run);
  words(run);
  ink_.mark("</b>");
}

bool HtmlRuns::open_time(const Quantity& length) {
  const CommonUnits& units = common();
  if (length.is_range() || length.is_lost() || !length.low.is_whole()) return false;
  if (length.low.sign() < 0 || length.low.over() > 99999) return false;
  std::string_view before = "PT", after;
  if (length.unit == units.minute) {
    after = "M";
  } else if (length.unit == units.hour) {
    after = "H";
  } else if (length.unit == units.day) {
    before = "P";
    after = "D";
  } else {
    return false;
  }
  char digits[5];
  std::size_t at = sizeof digits;
  auto rest = static_cast<unsigned>(length.low.over());
  do {
    digits[--at] = static_cast<char>('0' + rest % 10);
    rest /= 10;
  } while (rest != 0);
  ink_.mark("<time datetime=\"");
  ink_.put(before);
  ink_.put({digits + at, sizeof digits - at});
  ink_.put(after);
  ink_.mark("\">");
  return true;
}

void HtmlRuns::date(Range32 range) {
  const bool day = range.count == 1 && is_day(card_.view(card_.runs[range.first]));
  if (day) ink_.mark("<time>");
  raw(range);
  if (day) ink_.mark("</time>");
}

}  // namespace qtn
