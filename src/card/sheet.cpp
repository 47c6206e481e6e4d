#include "card/sheet.hpp"

#include <algorithm>
#include <map>

#include "card/sheet_drawing.hpp"
#include "card/writer.hpp"
#include "day/say.hpp"

namespace qtn {
namespace {

std::string iso(Minute wall) {
  std::string text = write_wall(wall);
  text[10] = 'T';
  return text;
}

class SheetMaker {
 public:
  SheetMaker(const Board& board, const Day& day, const Words& words) : board_(board), day_(day), words_(words), out_(card_) {}

  Card run() {
    card_.language = words_.language;
    card_.title = plain(board_.title);
    const bool other_size = !(board_.factor == Fraction(1));
    card_.edition = plain(std::string(words_[Caption::run_sheet]) + (other_size ? ", " + size_in_words(board_.factor, words_) : ""));
    card_.notes_heading = plain(words_[Caption::notes]);
    first_ = day_.end;
    for (const Served& one : day_.served) first_ = std::min(first_, one.wall);
    card_.serving = {iso(first_), day_.hours.zone().empty() ? "" : iso(day_.hours.gone(first_)) + "Z", day_.revision};
    facts();
    hours();
    notes();
    card_.drawing = drawing_of(day_, board_.title, words_[Caption::serve]);
    clean(card_);
    return std::move(card_);
  }

 private:
  Range32 plain(std::string_view text) { return out_.line(text); }

  void fact(FactKind kind, Caption caption, const std::string& value) {
    Fact one;
    one.kind = static_cast<std::uint16_t>(kind);
    one.label = plain(words_[caption]);
    one.value = plain(value);
    card_.facts.push_back(one);
    ++card_.head.count;
  }

  void facts() {
    // Dishes of one hour in one line.
    std::map<Minute, std::string> tables;
    for (const Served& one : day_.served) {
      std::string& line = tables[one.wall];
      line += (line.empty() ? "" : ", ") + one.dish;
      if (one.hot && one.waits > 0) line += " (ready " + say_length(one.waits, 1) + " before)";
    }
    for (const auto& [wall, dishes] : tables)
      fact(FactKind::serve, Caption::serve, write_clock(wall) + ", " + write_day(wall) + ": " + dishes);
    fact(FactKind::begin, Caption::begin, write_clock(day_.begin) + ", " + write_day(day_.begin));
    fact(FactKind::hands_on, Caption::hands_on, say_length(day_.hands_on, 1));
    fact(FactKind::waiting, Caption::waiting, say_length(day_.waiting, 1));
    fact(FactKind::whole, Caption::whole_time, say_length(day_.whole, 1));
    std::string proof = day_.proven ? "no better one exists under what it rests on" : "the best that was found in the time allowed";
    for (const std::string& one : day_.short_of) proof += ". " + one;
    fact(FactKind::proof, Caption::proof, proof);
  }

  // As a cook counts: days before, the evening before, the hours, the last of them.
  std::string heading(Minute wall) const {
    const Minute days = (day_begin(first_) - day_begin(wall)) / 1440;
    const Minute of_day = wall - day_begin(wall);
    const std::string date = ", " + write_day(wall);
    if (days > 1) return say_number(days) + " days before" + date;
    if (days == 1) return (of_day < 12 * 60 ? "The morning before" : of_day < 17 * 60 ? "The afternoon before" : "The evening before") + date;
    if (wall >= first_) return later(wall) + (days < 0 ? date : "");
    if (first_ - wall <= 20) return "The last twenty minutes";
    if (first_ - wall <= 60) return "The last hour";
    return (of_day < 12 * 60 ? "In the morning" : of_day < 17 * 60 ? "In the afternoon" : "In the evening") + (days == 0 ? date : "");
  }

  // Behind the first serving: while they eat, unless the next table is hours away.
  std::string later(Minute wall) const {
    constexpr Minute kMeal = 2 * 60;  // between two courses of one meal: common practice, no source
    Minute before = first_, next = -1;
    bool serving = false;
    for (const Served& one : day_.served) {
      serving = serving || one.wall == wall;
      if (one.wall < wall) before = std::max(before, one.wall);
      else if (one.wall > wall && (next < 0 || one.wall < next)) next = one.wall;
    }
    if (serving && (wall == first_ || wall - before > kMeal)) return "At table";
    return next >= 0 && next - before > kMeal ? "For the table at " + write_clock(next) : "While they eat";
  }

  static std::string say_number(Minute days) {
    constexpr const char* kWords[] = {"Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten"};
    return days >= 2 && days <= 10 ? kWords[days - 2] : std::to_string(days);
  }

  void hours() {
    struct Line {
      Minute begin;
      const DayRow* row;
      const Served* served;
    };
    std::vector<Line> lines;
    for (const DayRow& row : day_.rows) lines.push_back({row.begin, &row, nullptr});
    for (const Served& one : day_.served) lines.push_back({one.wall, nullptr, &one});
    std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) {
      return a.begin != b.begin ? a.begin < b.begin : (a.served != nullptr) < (b.served != nullptr);
    });
    std::string last;
    for (const Line& line : lines) {
      const std::string now = heading(line.begin);
      if (now != last || card_.parts.empty()) {
        Section section;
        section.title = plain(now);
        section.hours.first = static_cast<std::uint32_t>(card_.hours.size());
        card_.parts.push_back(section);
        last = now;
      }
      line.row != nullptr ? hour(*line.row) : serving(*line.served);
      ++card_.parts.back().hours.count;
    }
  }

  void times(Hour& hour, Minute begin, Minute end) {
    hour.from = time(begin);
    if (end != begin) hour.until = time(end, day_name(begin, end));
    hour.from_wall = iso(begin), hour.until_wall = iso(end);
    if (day_.hours.zone().empty()) return;
    hour.from_utc = iso(day_.hours.gone(begin)) + "Z", hour.until_utc = iso(day_.hours.gone(end)) + "Z";
  }

  // Of an end on another day: "Sun", and where that could be another week, "5 Dec".
  static std::string day_name(Minute begin, Minute end) {
    const Minute days = (day_begin(end) - day_begin(begin)) / 1440;
    const std::string day = write_day(end);  // "Saturday 5 December 2026"
    if (days == 0) return "";
    if (days < 7) return day.substr(0, 3);
    const std::size_t number = day.find(' ') + 1, month = day.find(' ', number) + 1;
    return day.substr(number, month - number) + day.substr(month, 3);
  }

  Range32 time(Minute wall, const std::string& other_day = {}) {
    out_.begin();
    out_.add(write_clock(wall), Role::time);
    if (!other_day.empty()) out_.put(" " + other_day);
    return out_.end();
  }

  void hour(const DayRow& row) {
    Hour hour;
    hour.kind = row.hands ? Hour::Kind::hands : row.watched ? Hour::Kind::watched : Hour::Kind::waits;
    times(hour, row.begin, row.end);
    const bool several = day_.served.size() > 1 || board_.order.makings.size() > 1;
    const bool own = row.part.empty() || row.part == row.dish;
    hour.name = plain(own ? row.dish : several ? row.dish + ", " + row.part : row.part);
    hour.words = plain(row.words);
    hour.who = plain(who(row));
    hour.why = out_.spoken(row.why);
    const std::string by = who(row);
    hour.aside = out_.spoken(by + (by.empty() || row.why.empty() ? "" : "; ") + row.why);
    hour.rough = row.guessed;
    hour.times = row.times, hour.every = static_cast<int>(row.every);
    hour.key = row.key;
    card_.hours.push_back(std::move(hour));
  }

  std::string who(const DayRow& row) const {
    std::string out;
    const auto add = [&](const std::string& one) { out += (out.empty() ? "" : ", ") + one; };
    if (row.cook >= 0 && day_.cooks > 1) add("cook " + std::to_string(row.cook + 1));
    if (row.oven >= 0 && day_.ovens > 1) add("oven " + std::to_string(row.oven + 1));
    if (row.least_end < row.end && !row.guessed) add("done from " + write_clock(row.least_end));
    return out;
  }

  void serving(const Served& served) {
    Hour hour;
    hour.kind = Hour::Kind::serving;
    times(hour, served.wall, served.wall);
    hour.name = plain(served.dish);
    hour.words = plain("Serve");
    hour.key = served.dish + "/serve";
    const auto same = [&](const Hour& one) { return one.key.starts_with(hour.key); };
    if (const auto before = std::count_if(card_.hours.begin(), card_.hours.end(), same); before != 0) hour.key += "." + std::to_string(before + 1);  // a dish twice
    card_.hours.push_back(std::move(hour));
  }

  void remark(Remark::Kind kind, const std::string& text) { card_.remarks.push_back({kind, plain(text)}); }

  void notes() {
    for (const std::string& one : day_.cautions) remark(Remark::Kind::caution, one);
    for (const MadeOnce& one : board_.shared) {
      std::string text = std::string(words_[Caption::made_once]) + ": " + one.name + ", ";
      for (std::size_t i = 0; i < one.portions.size(); ++i) text += (i == 0 ? "" : ", ") + one.portions[i];
      text += one.over.empty() ? "; nothing is left over." : "; over and above that: " + one.over + ".";
      remark(Remark::Kind::note, text);
    }
    for (const std::string& one : board_.apart)
      remark(Remark::Kind::note, one + " is made twice: once for the table, so that it comes there hot, and once for what else takes it.");
    for (const std::string& one : board_.unsized)
      remark(Remark::Kind::note, "How much of " + one + " is needed cannot be worked out; it is planned at the size that it is written in.");
    if (!day_.earlier.empty()) remark(Remark::Kind::note, std::string(words_[Caption::can_wait]) + ": " + day_.earlier + ". All else can wait until the hour above.");
    if (!day_.alone.empty()) {
      std::string text = std::string(words_[Caption::by_itself]) + ": ";
      for (std::size_t i = 0; i < day_.alone.size(); ++i) text += (i == 0 ? "" : "; ") + day_.alone[i];
      remark(Remark::Kind::note, text + ".");
    }
    if (!day_.assumptions.empty()) {
      std::string text = std::string(words_[Caption::rests_on]) + ": ";
      for (std::size_t i = 0; i < day_.assumptions.size(); ++i) text += (i == 0 ? "" : " ") + day_.assumptions[i];
      remark(Remark::Kind::note, text);
    }
    for (const std::string& one : day_.moved) remark(Remark::Kind::watch, std::string(words_[Caption::changed]) + ": " + one + ".");
  }

  const Board& board_;
  const Day& day_;
  const Words& words_;
  Card card_;
  Writer out_;
  Minute first_ = 0;
};

}  // namespace

Card make_sheet(const Board& board, const Day& day, const Words& words) { return SheetMaker(board, day, words).run(); }

}  // namespace qtn
