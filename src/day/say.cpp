#include "day/say.hpp"

namespace qtn {

std::string say_length(Ticks ticks, Ticks per_minute) {
  const Ticks minutes = (ticks + per_minute - 1) / per_minute;
  const auto part = [](Ticks count, const char* unit) { return std::to_string(count) + " " + unit; };
  const Ticks days = minutes / 1440, hours = minutes / 60;
  if (days >= 2 && minutes % 1440 == 0) return part(days, "days");
  std::string out;
  if (days >= 3) {
    out = part(days, "days");
    if (minutes % 1440 / 60 != 0) out += " " + part(minutes % 1440 / 60, "h");
    return out;
  }
  if (hours > 0) out = part(hours, "h");
  if (minutes % 60 != 0 || hours == 0) out += (out.empty() ? "" : " ") + part(minutes % 60, "min");
  return out;
}

std::string words_of(const Recipe& recipe, Span span) {
  std::string_view text = recipe.slice(span);
  if (text.size() >= 2 && text.front() == '[' && text.back() == ']') text = text.substr(1, text.size() - 2);
  std::string out;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (!blank) out += c;
    else if (!out.empty() && out.back() != ' ') out += ' ';
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

}  // namespace qtn
