// Lines and clauses that fit nothing: what was found is compared with what cooks write, so that the message can name
// the one thing that is off (semantics 1.5). The first that fits speaks; the last always does.
#include "recipe/builder.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }

// Where "1,5" or "1,500" stands: a comma between two digits.
std::size_t comma_number(std::string_view text) {
  for (std::size_t i = 1; i + 1 < text.size(); ++i)
    if (text[i] == ',' && digit(text[i - 1]) && digit(text[i + 1])) return i;
  return std::string_view::npos;
}

Span number_around(Span where, std::string_view text, std::size_t at) {
  std::size_t begin = at, end = at;
  while (begin > 0 && (digit(text[begin - 1]) || text[begin - 1] == ',' || text[begin - 1] == '.' || text[begin - 1] == '/')) --begin;
  while (end < text.size() && (digit(text[end]) || text[end] == ',' || text[end] == '.' || text[end] == '/')) ++end;
  return {where.begin + static_cast<std::uint32_t>(begin), where.begin + static_cast<std::uint32_t>(end)};
}

bool comma(Reading& in, Span where, std::string_view text) {
  const std::size_t at = comma_number(text);
  if (at == std::string_view::npos) return false;
  const Span span = number_around(where, text, at);
  std::string point(in.slice(span)), none;
  for (char c : point)
    if (c != ',') none += c;
  const std::size_t where_comma = point.find(',');
  point[where_comma] = '.';
  in.report.add(Code::comma_in_number, span, "A comma is not read in a number: " + point + " or " + none + "?")
      .find("`" + std::string(in.slice(span)) + "`").expect("`" + point + "` or `" + none + "`")
      .offer(span, point, "write `" + point + "`").offer(span, none, "write `" + none + "`");
  return true;
}

// 1/2/3, 1.2.3: more than one mark in one number.
bool tangled_number(Reading& in, Span where, std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!digit(text[i]) || (i > 0 && digit(text[i - 1]))) continue;
    std::size_t end = i;
    int marks = 0;
    while (end < text.size() && (digit(text[end]) || ((text[end] == '/' || text[end] == '.') && end + 1 < text.size() && digit(text[end + 1])))) marks += digit(text[end]) ? 0 : 1, ++end;
    if (marks > 1) {
      const Span span{where.begin + static_cast<std::uint32_t>(i), where.begin + static_cast<std::uint32_t>(end)};
      in.report.add(Code::tangled_number, span, "This is not one number.").find("`" + std::string(in.slice(span)) + "`").expect("one fraction (`1/2`), a mixed number (`1 1/2`) or a decimal (`1.5`)");
      return true;
    }
    i = end;
  }
  return false;
}

// 400g/14oz, 400 g / 14 oz
bool slashed_equivalent(Reading& in, Span where, std::string_view text) {
  const auto spaced = [](std::string_view amount) {
    std::size_t cut = 0;
    while (cut < amount.size() && (digit(amount[cut]) || amount[cut] == '.')) ++cut;
    return std::string(amount.substr(0, cut)) + " " + std::string(trim(amount.substr(cut)));
  };
  for (std::size_t i = 1; i + 1 < text.size(); ++i) {
    if (text[i] != '/' || digit(text[i - 1])) continue;
    std::size_t begin = i, end = i + 1;
    while (begin > 0 && text[begin - 1] == ' ') --begin;
    while (begin > 0 && text[begin - 1] != ' ') --begin;
    if (!digit(text[begin]) && begin > 1) {  // the number before a unit
      for (--begin; begin > 0 && text[begin - 1] != ' ';) --begin;
    }
    while (end < text.size() && text[end] == ' ') ++end;
    if (!digit(text[begin]) || end >= text.size() || !digit(text[end])) continue;
    const std::size_t second = end;
    while (end < text.size() && text[end] != ' ') ++end;
    if (digit(text[end - 1]) && end + 1 < text.size())  // its unit behind a blank
      for (++end; end < text.size() && text[end] != ' ';) ++end;
    const std::string mended = spaced(trim(text.substr(begin, i - begin))) + " (" + spaced(text.substr(second, end - second)) + ")";
    const Span span{where.begin + static_cast<std::uint32_t>(begin), where.begin + static_cast<std::uint32_t>(end)};
    in.report.add(Code::slashed_equivalent, span, "Two statements of one amount are joined by a stroke.").find("`" + std::string(in.slice(span)) + "`")
        .expect("`" + mended + "`").fix(span, mended, "write `" + mended + "`");
    return true;
  }
  return false;
}

// 2lb3oz, 1 h 30, 1:30
bool run_together(Reading& in, Span where, std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && !digit(text[at])) ++at;
  const std::size_t first = at;
  while (at < text.size() && digit(text[at])) ++at;
  const std::string hours(text.substr(first, at - first));
  if (hours.empty()) return false;
  const auto minutes_at = [&](std::size_t i) { return i + 1 < text.size() && digit(text[i]) && digit(text[i + 1]) && (i + 2 >= text.size() || (!digit(text[i + 2]) && letter_at(text, i + 2) == 0)); };
  std::size_t minutes = std::string_view::npos;
  if (at < text.size() && text[at] == ':' && minutes_at(at + 1)) minutes = at + 1;
  else {
    std::size_t unit = at;
    while (unit < text.size() && text[unit] == ' ') ++unit;
    if (unit < text.size() && text[unit] == 'h' && unit + 1 < text.size() && text[unit + 1] == ' ' && minutes_at(unit + 2) && text.substr(unit + 4, 2) != " m" && text.substr(unit + 4, 1) != "m") minutes = unit + 2;
  }
  if (minutes != std::string_view::npos) {
    const Span span{where.begin + static_cast<std::uint32_t>(first), where.begin + static_cast<std::uint32_t>(minutes + 2)};
    const std::string mended = hours + " h " + std::string(text.substr(minutes, 2)) + " min";
    if (first >= 3 && text.substr(first - 3, 3) == "at ") {
      in.report.add(Code::time_form, span, "A step has no time of day.").find("`" + std::string(in.slice(span)) + "`")
          .expect("how long it takes; a menu's `serve:` says when the meal is");
      return true;
    }
    in.report.add(Code::time_form, span, "A time of hours and minutes names both.").find("`" + std::string(in.slice(span)) + "`").expect("`" + mended + "`")
        .fix(span, mended, "write `" + mended + "`");
    return true;
  }
  if (at + 1 < text.size() && (text[at] == 'x' || text[at] == 'X') && text[at + 1] == ' ') {  // 2x 400 g
    const Span span{where.begin + static_cast<std::uint32_t>(first), where.begin + static_cast<std::uint32_t>(at) + 1};
    in.report.add(Code::run_together, span, "A count and its `x` run into each other.").find("`" + std::string(in.slice(span)) + "`")
        .expect("`" + hours + " x`").fix(span, hours + " x", "write `" + hours + " x`");
    return true;
  }
  // a unit straight before a digit
  std::size_t letters = at;
  while (letters < text.size() && letter_at(text, letters) != 0) ++letters;
  if (letters == at || letters >= text.size() || !digit(text[letters])) return false;
  std::size_t end = letters;
  while (end < text.size() && digit(text[end])) ++end;
  const std::size_t second_unit = end;
  while (end < text.size() && letter_at(text, end) != 0) ++end;
  const std::string mended(trim(hours + " " + std::string(text.substr(at, letters - at)) + " " + std::string(text.substr(letters, second_unit - letters)) + " " +
                                std::string(text.substr(second_unit, end - second_unit))));
  const Span span{where.begin + static_cast<std::uint32_t>(first), where.begin + static_cast<std::uint32_t>(end)};
  in.report.add(Code::run_together, span, "Two amounts run into each other.").find("`" + std::string(in.slice(span)) + "`").expect("`" + mended + "`")
      .fix(span, mended, "write `" + mended + "`");
  return true;
}

// 3 2 lb chickens, 1 400 g tin tomatoes
bool missing_times(Reading& in, Span line, std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && digit(text[at])) ++at;
  if (at == 0 || at + 1 >= text.size() || text[at] != ' ' || !digit(text[at + 1])) return false;
  const Span gap{line.begin + static_cast<std::uint32_t>(at), line.begin + static_cast<std::uint32_t>(at) + 1};
  const std::string mended = std::string(text.substr(0, at)) + " x" + std::string(text.substr(at));
  in.report.add(Code::missing_times, {line.begin, gap.end}, "A count and a size need an `x` between them.").find("`" + std::string(text) + "`")
      .expect("`" + mended + "`").fix(gap, " x ", "write `" + mended + "`");
  return true;
}

// - 100 g butter
bool list_mark(Reading& in, Span line, std::string_view text) {
  for (std::string_view mark : {"-", "*", "•", "–", "·"}) {
    if (text.substr(0, mark.size()) != mark || blank_at(text, mark.size()) == 0) continue;
    std::size_t end = mark.size();
    while (blank_at(text, end) != 0) end += static_cast<std::size_t>(blank_at(text, end));
    if (end == text.size()) return false;
    const auto at = [&](std::size_t byte) { return line.begin + static_cast<std::uint32_t>(byte); };
    in.report.add(Code::list_mark, {line.begin, at(mark.size())}, "A line of the list begins with its amount.")
        .find("`" + std::string(mark) + "`").expect("`" + std::string(text.substr(end)) + "`").fix({line.begin, at(end)}, "", "leave the mark out");
    return true;
  }
  return false;
}

// [chill min 2 h], [chill 2 h or more], [chill 2 h+]
bool least_time(Reading& in, Span where, std::string_view text) {
  std::size_t first = 0;
  while (first < text.size() && !digit(text[first])) ++first;
  if (first == text.size()) return false;
  std::size_t begin = first, end = text.size();
  std::string_view says;
  const std::string folded = lower(text);
  for (std::string_view word : {"min ", "min. ", "minimum ", "max ", "max. ", "maximum "})
    if (first >= word.size() && folded.compare(first - word.size(), word.size(), word) == 0) begin = first - word.size(), says = word;
  for (std::string_view word : {"+", " or more", " or longer", " at least"})
    if (says.empty() && folded.size() > first + word.size() && folded.compare(folded.size() - word.size(), word.size(), word) == 0) end -= word.size(), says = word;
  if (says.empty()) return false;
  const Span all{where.begin + static_cast<std::uint32_t>(begin), where.end};
  const std::string mended = (says.substr(0, 2) == "ma" ? "at most " : "at least ") + std::string(text.substr(first, end - first));
  in.report.add(Code::minimum_behind, all, "A least or greatest time is said in words before it.").find("`" + std::string(in.slice(all)) + "`")
      .expect("`" + mended + "`").fix(all, mended, "write `" + mended + "`");
  return true;
}

// [core temp 75C], [internal temperature 75 °C]
bool core_reading(Reading& in, Span clause, std::string_view text) {
  const std::string folded = lower(text);
  if (folded.find("temp") == std::string::npos && folded.find("internal") == std::string::npos) return false;
  std::size_t at = 0;
  while (at < text.size() && !digit(text[at])) ++at;
  std::size_t end = at;
  while (end < text.size() && digit(text[end])) ++end;
  if (end == at || (lower(trim(text.substr(end))) != "c" && trim(text.substr(end)) != "°C" && trim(text.substr(end)) != "°F" && lower(trim(text.substr(end))) != "f")) return false;
  const char scale = text.back() == 'F' || text.back() == 'f' ? 'F' : 'C';
  const std::string mended = "[reads " + std::string(text.substr(at, end - at)) + " °" + scale + "]";
  in.report.add(Code::unreadable_clause, clause, "What a thermometer shows is said with `reads`.").find("`" + std::string(in.slice(clause)) + "`")
      .expect("`" + mended + "`").fix(clause, mended, "write `" + mended + "`");
  return true;
}

// [cook a further 30 min]
bool another_while(Reading& in, Span where, std::string_view text) {
  const std::string folded = lower(text);
  for (std::string_view words : {"for a further ", "a further ", "for another ", "another "}) {
    const std::size_t at = folded.find(words);
    if (at == std::string::npos || at + words.size() >= text.size() || !digit(text[at + words.size()])) continue;
    const Span span{where.begin + static_cast<std::uint32_t>(at), where.begin + static_cast<std::uint32_t>(at + words.size())};
    const std::string mended = "[" + std::string(text.substr(0, at)) + std::string(text.substr(at + words.size())) + "]";
    in.report.add(Code::unreadable_clause, span, "A time stands in its bracket by itself.").find("`" + std::string(trim(in.slice(span))) + "`")
        .expect("`" + mended + "`").fix(span, "", "write `" + mended + "`");
    return true;
  }
  return false;
}

bool colon_in_line(Reading& in, Span line, std::string_view text) {
  const std::size_t at = text.find(':');
  if (at == std::string_view::npos) return false;
  const std::string word(trim(text.substr(0, at)));
  auto& problem = in.report.add(Code::colon_in_list, {line.begin, line.begin + static_cast<std::uint32_t>(at) + 1}, "A name in the list holds no colon.");
  problem.find("`" + word + ":`").expect("an amount and a name; fields such as `makes:` stand above `take:`");
  return true;
}

}  // namespace

void explain_bad_line(Reading& in, Span line, bool in_menu) {
  const std::string_view text = in.slice(line);
  if (list_mark(in, line, text) || comma(in, line, text) || tangled_number(in, line, text) || slashed_equivalent(in, line, text) || missing_times(in, line, text) ||
      run_together(in, line, text) || colon_in_line(in, line, text))
    return;
  if (text.find('[') != std::string_view::npos && text.find(']') == std::string_view::npos) {
    const auto at = static_cast<std::uint32_t>(text.find('['));
    in.report.add(Code::open_bracket, {line.begin + at, line.begin + at + 1}, "This bracket is not closed.").expect("a `]` behind the name");
    return;
  }
  const bool only_amount = !text.empty() && digit(text[0]);
  in.report.add(Code::unreadable_line, line, only_amount ? "No name follows this amount, or the amount is written in a way that is not read."
                                                         : "This line of the list is not read.")
      .find("`" + std::string(text) + "`")
      .expect(in_menu ? "how much of which dish: `24 portions [Beetroot salad]`" : "an amount, a name, and after a comma what is done to it: `400 g leeks, sliced`");
}

void explain_bad_clause(Reading& in, Span clause) {
  const Span inner{clause.begin + 1, clause.end - 1};
  const std::string_view text = in.slice(inner);
  if (trim(text).empty()) {
    in.report.add(Code::empty_bracket, clause, "This bracket is empty.").expect("a name, a time or a temperature, or no bracket");
    return;
  }
  if (comma(in, inner, text) || tangled_number(in, inner, text) || run_together(in, inner, text)) return;
  const std::string folded = lower(text);
  for (std::string_view vague : {"most of ", "a little of ", "some of ", "a bit of "})
    if (folded.find(vague) != std::string::npos) {
      in.report.add(Code::vague_share, clause, "`" + std::string(trim(text)) + "` does not say how much.")
          .expect("a share or an amount, or the words without brackets");
      return;
    }
  const std::size_t then = text.find(", then ");
  if (then != std::string_view::npos) {
    const std::string mended = "[" + std::string(text.substr(0, then)) + "], then [" + std::string(text.substr(then + 7)) + "]";
    in.report.add(Code::two_clauses, clause, "Two clauses stand in one bracket.").find("`" + std::string(in.slice(clause)) + "`").expect("a bracket for each")
        .fix(clause, mended, "write `" + mended + "`");
    return;
  }
  if (least_time(in, inner, text) || core_reading(in, clause, text) || another_while(in, inner, text)) return;
  const Found verb = Lexicon::standard().longest(trim(text), kVerbWord);
  auto& problem = in.report.add(Code::unreadable_clause, clause, verb ? "After `" + std::string(verb.row->text) + "` this clause is not read."
                                                                      : "This clause is not read.");
  problem.find("`" + std::string(in.slice(clause)) + "`")
      .expect(verb ? "a time, a temperature or a place, each said once: `[" + std::string(verb.row->text) + " 20 min at 190 °C]`"
                   : "a name of the list, an amount of one, an action with its time, a temperature or a measure")
      .offer(clause, "\\" + std::string(in.slice(clause)), "write `\\[` if it is only prose");
}

}  // namespace qtn
