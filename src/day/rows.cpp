// The rows of a run sheet, in the order of their hours.
#include <algorithm>
#include <set>

#include "day/lengths.hpp"
#include "day/table.hpp"
#include "day/say.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

bool shown(const Doing& doing) {
  return doing.what == Doing::What::clause || doing.what == Doing::What::work;
}

// The words between two places of a sentence, amounts as this size has them: the adapted text of each term in place of
// the written one.
std::string words_between(const Making& making, Index step, Span span) {
  const Recipe& recipe = *making.recipe;
  std::vector<std::pair<Span, std::string>> changes;  // of the text, in order
  const Slice clauses = recipe.steps[step].clauses;
  for (Index c = clauses.first; c < clauses.end(); ++c) {
    const Clause& clause = recipe.clauses[c];
    if (clause.span.begin < span.begin || clause.span.end > span.end) continue;
    changes.push_back({{clause.span.begin, clause.span.begin + 1}, ""});
    changes.push_back({{clause.span.end - 1, clause.span.end}, ""});
    if (making.adapted == nullptr) continue;
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
      const Shown& now = making.adapted->terms[t];
      const Span written = recipe.terms[t].span;
      if (now.changed && !now.text.empty() && written.begin >= clause.span.begin && written.end <= clause.span.end)
        changes.push_back({written, now.text});
    }
  }
  std::stable_sort(changes.begin(), changes.end(), [](const auto& a, const auto& b) { return a.first.begin < b.first.begin; });
  std::string text;
  std::uint32_t at = span.begin;
  for (const auto& [place, now] : changes) {
    if (place.begin < at) continue;
    text += recipe.slice({at, place.begin});
    text += now;
    at = place.end;
  }
  text += recipe.slice({at, span.end});
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\\' && i + 1 < text.size()) continue;  // a plain bracket
    if (c == '*' || c == '`') continue;              // the writer's emphasis
    const bool blank = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (!blank) out += c;
    else if (!out.empty() && out.back() != ' ') out += ' ';
  }
  return out;
}

// Without the words that only join it to what stands beside it.
std::string without_joints(std::string text) {
  constexpr std::string_view kJoints[] = {"and", "then", "and then", "before"};
  const auto mark = [](char c) { return c == ' ' || c == ',' || c == ';' || c == '.'; };
  for (bool again = true; again;) {
    again = false;
    while (!text.empty() && mark(text.back())) text.pop_back();
    while (!text.empty() && mark(text.front())) text.erase(0, 1);
    for (const std::string_view joint : kJoints) {
      if (text.size() > joint.size() && text.ends_with(joint) && mark(text[text.size() - joint.size() - 1])) text.resize(text.size() - joint.size()), again = true;
      if (text.size() > joint.size() && lower(text).starts_with(joint) && mark(text[joint.size()])) text.erase(0, joint.size()), again = true;
    }
  }
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

// What is done each day for weeks is one row, not one a day.
void fold_turns(const Clock& clock, std::vector<DayRow>& rows) {
  constexpr Minute kApart = 12 * 60;
  const auto next_turn = [&](const DayRow& first, std::size_t at) {
    const Doing &one = clock.doings[first.activity], &other = clock.doings[rows[at].activity];
    return other.making == one.making && other.clause == one.clause && one.clause != kNone && other.round > one.round;
  };
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (clock.doings[rows[i].activity].rounds < 3) continue;
    std::vector<std::size_t> turns{i};
    for (std::size_t j = i + 1; j < rows.size(); ++j)
      if (next_turn(rows[i], j)) turns.push_back(j);
    if (turns.size() < 3) continue;
    const Minute every = rows[turns[1]].begin - rows[i].begin;
    bool even = every >= kApart;
    for (std::size_t t = 1; t < turns.size(); ++t) even = even && rows[turns[t]].begin - rows[turns[t - 1]].begin == every;
    if (!even) continue;
    rows[i].times = static_cast<int>(turns.size()), rows[i].every = every;
    const std::string& words = rows[i].words;
    rows[i].words = words.substr(0, words.rfind(" (")) + " (" + std::to_string(turns.size()) + " times, the last on " +
                    write_day(rows[turns.back()].begin) + ")";
    for (std::size_t t = turns.size(); t-- > 1;) rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(turns[t]));
  }
}

std::string round_words(const Doing& doing) {
  if (doing.rounds < 2) return "";
  return " (" + std::to_string(doing.round + 1) + " of " + std::to_string(doing.rounds) + ")";
}

}  // namespace

std::string sheet_words(const Clock& clock, Number activity) {
  const Doing& doing = clock.doings[activity];
  if (doing.what == Doing::What::serving) return "Serve";
  if (!shown(doing)) return "";
  const Making& making = clock.makings[doing.making];
  // Of a sentence of several times each row says its own: from behind the time before it up to the one after it.
  Span span = doing.sentence;
  const Recipe& recipe = *making.recipe;
  for (const Doing& other : clock.doings) {
    // Work in front of it in the sentence has a row of its own.
    if (doing.what == Doing::What::clause && other.what == Doing::What::work && other.making == doing.making && other.sentence.begin == doing.sentence.begin)
      span.begin = std::max(span.begin, other.sentence.end);
    if (doing.what != Doing::What::clause || other.what != Doing::What::clause || other.making != doing.making) continue;
    if (other.sentence.begin != doing.sentence.begin || other.clause == doing.clause) continue;
    if (other.clause < doing.clause) {
      Index last = other.clause;  // and its signs: `until it reads 63 °C`
      for (Index c = other.clause + 1; c < doing.clause; ++c)
        if (recipe.clauses[c].kind == ClauseKind::reading || recipe.clauses[c].kind == ClauseKind::temperature) last = c;
      span.begin = std::max(span.begin, recipe.clauses[last].span.end);
    }
    else span.end = std::min(span.end, recipe.clauses[other.clause].span.begin);
  }
  const Clause* const clause = doing.clause != kNone ? &recipe.clauses[doing.clause] : nullptr;
  const Term* const between = clause != nullptr ? term_of(recipe, *clause, TermRole::between) : nullptr;
  if (between == nullptr || doing.rounds < 2) return without_joints(words_between(making, doing.step, span)) + round_words(doing);
  // `turn 6 times, chill 30 min between` is rows of turning and of chilling.
  if (doing.between) return without_joints(std::string(doing.verb->name) + " " + words_of(recipe, between->span)) + round_words(doing);
  std::string words = words_between(making, doing.step, {span.begin, term_of(recipe, *clause, TermRole::times)->span.begin});
  std::erase(words, '[');
  return without_joints(words + " " + words_between(making, doing.step, {clause->span.end, span.end})) + round_words(doing);
}

std::string name_of(const Clock& clock, Number activity) {
  const Doing& doing = clock.doings[activity];
  const Recipe& recipe = clock.recipe_of(doing);
  const bool named = doing.part != kNone && !recipe.parts[doing.part].unnamed;
  const std::string of = named ? std::string(recipe.parts[doing.part].name) : std::string(recipe.title);
  if (doing.what == Doing::What::serving) return std::string(recipe.title) + " at table";
  if (doing.what == Doing::What::clause && doing.verb != nullptr && doing.verb != &verb(kNoVerb))
    return "`" + std::string(doing.verb->name) + "` of " + of;
  return "the work at " + of;
}

Minute Table::at(const plan::Spot& spot, bool longest) const {
  // In ticks of the clock: the point is whole ticks of the problem.
  const Ticks point = plan.times[spot.point] * (posed.per_minute == 1 ? posed.clock_ticks : 1);
  const Ticks ticks = point + (longest ? spot.high : spot.low);
  const Ticks over = posed.clock_ticks;
  const Minute gone = ticks >= 0 ? ticks / over : -((-ticks + over - 1) / over);
  return order.hours.wall(gone);
}

Minute Table::wall(Ticks moment) const {
  const Ticks over = posed.per_minute;
  return order.hours.wall(moment > 0 ? (moment + over - 1) / over : moment / over);
}

void write_rows(const Table& table, Day& day) {
  const Clock& clock = table.clock;
  std::set<std::string> keys;
  for (Number i = 0; i < clock.doings.size(); ++i) {
    const Doing& doing = clock.doings[i];
    if (!shown(doing)) continue;
    const Recipe& recipe = clock.recipe_of(doing);
    DayRow row;
    row.activity = i;
    const plan::Spot &begin = table.posed.placed.begins[i], &end = table.posed.placed.ends[i];
    row.begin = table.at(begin);
    row.end = table.at(end), row.least_end = table.at(end, false);
    if (const auto from = waits_from(table, i)) row.least_end = *from + (row.end - row.begin), row.begin = *from;
    const bool stretched = doing.guessed && begin.point != end.point;
    const Fraction busy = doing.busy.is_lost() ? Fraction(table.order.work) : doing.busy;
    if (stretched || doing.turn) row.end = row.least_end = row.begin + static_cast<Minute>(busy.ceil());
    row.guessed = doing.guessed || (doing.turn && doing.busy.is_lost());
    const Number job = table.posed.job_of[i];
    if (job != kNothing) {
      const plan::Job& one = table.posed.problem.jobs[job];
      row.hands = one.hands;
      row.watched = !one.hands && doing.verb != nullptr && (doing.verb->attention != Attention::none || one.ring || one.oven) && !doing.overnight;
      if (table.plan.cook_of[job] != kNothing) row.cook = static_cast<int>(table.plan.cook_of[job]);
      if (one.oven && job < table.plan.oven_of.size() && table.plan.oven_of[job] != kNothing) row.oven = static_cast<int>(table.plan.oven_of[job]);
    }
    row.place = doing.place;
    row.dish = recipe.title;
    if (doing.part != kNone && !recipe.parts[doing.part].unnamed) row.part = recipe.parts[doing.part].name;
    row.words = sheet_words(clock, i);
    row.why = waits_from(table, i) ? "at once after the step before" : why_no_later(table, i);
    // A key says the dish, which making of it, the part, and the step by its number; two turns of one step are told apart.
    const Index first = recipe.parts[doing.part].steps.first;
    const auto before = clock.makings.begin() + static_cast<std::ptrdiff_t>(doing.making);
    const auto making = 1 + std::count_if(clock.makings.begin(), before, [&](const Making& one) { return one.recipe->title == recipe.title; });
    const std::string key = row.dish + (making > 1 ? " (" + std::to_string(making) + ")" : "") + (row.part.empty() ? "" : "/" + row.part) + "/" + std::to_string(doing.step - first + 1);
    row.key = key;
    for (int n = 2; !keys.insert(row.key).second; ++n) row.key = key + "." + std::to_string(n);
    day.rows.push_back(std::move(row));
  }
  fold_turns(clock, day.rows);
  std::stable_sort(day.rows.begin(), day.rows.end(), [](const DayRow& a, const DayRow& b) {
    return a.begin != b.begin ? a.begin < b.begin : a.end < b.end;
  });
}

// Is anything baked for which no step of its page heats an oven?
static bool unlit(const plan::Problem& problem) {
  return std::any_of(problem.jobs.begin(), problem.jobs.end(), [](const plan::Job& job) { return job.oven && !job.heats && job.goes_on == kNothing; });
}

// Does an oven have to change its heat between two bakes that no step heats it for?
static bool unlike_heats(const plan::Problem& problem) {
  for (const plan::Job& one : problem.jobs)
    for (const plan::Job& other : problem.jobs)
      if (one.oven && other.oven && !one.heats && one.goes_on == kNothing && std::abs(one.heat - other.heat) > problem.ovens.tolerance) return true;
  return false;
}

// "One oven of 2 shelves", "2 ovens of 2 shelves", "2 ovens, of 2 and 3 shelves".
static std::string ovens_said(const std::vector<int>& shelves) {
  const auto many = [](int count) { return count == 1 ? std::string("one shelf") : std::to_string(count) + " shelves"; };
  std::string out = shelves.size() == 1 ? "One oven" : std::to_string(shelves.size()) + " ovens";
  if (std::equal(shelves.begin() + 1, shelves.end(), shelves.begin())) return out + " of " + many(shelves.front());
  out += ", ";
  for (std::size_t i = 0; i < shelves.size(); ++i) out += (i == 0 ? "of " : i + 1 == shelves.size() ? " and " : ", ") + std::to_string(shelves[i]);
  return out + " shelves";
}

void write_assumptions(const Table& table, Day& day) {
  const auto say = [&](std::string text) { day.assumptions.push_back(std::move(text)); };
  const bool any_guess = std::any_of(day.rows.begin(), day.rows.end(), [](const DayRow& row) { return row.guessed; });
  if (any_guess)
    say("A step without a written time is shown as " + say_length(table.order.work, 1) + " and marked ≈.");
  bool hands = false, oven = false, ring = false, kept = false, chance = false, sign = false;
  for (const plan::Job& job : table.posed.problem.jobs) hands = hands || job.hands, oven = oven || job.oven, ring = ring || job.ring;
  for (const plan::Job& job : table.posed.problem.jobs)
    kept = kept || (table.order.ovens > 1 && job.one_oven != kNothing && &job != &table.posed.problem.jobs[job.one_oven]);
  for (Number i = 0; i < table.clock.doings.size(); ++i) {
    chance = chance || table.clock.network.activities[i].length.chance;
    sign = sign || (table.clock.doings[i].sign && table.clock.doings[i].guessed);
  }
  if (chance) say("Where the food decides how long, the plan holds for the longest time written.");
  if (sign) say("What is done when a thermometer says so has no written time, and the thermometer goes before this sheet.");
  if (hands) say((table.order.cooks == 1 ? "One cook" : std::to_string(table.order.cooks) + " cooks") + std::string(", and nobody does two things at once."));
  if (oven)
    say(ovens_said(table.order.shelves_of_ovens()) + "; what bakes at one heat, to 5 °C, shares an oven, and each dish takes one shelf, on however many trays.");
  if (kept) say("A dish stays in the oven that is heated for it, until its recipe heats one again.");
  if (oven && table.order.heats_in > 0) say("An oven that has to change its heat takes " + say_length(table.order.heats_in, 1) + ", unless a step heats it.");
  else if (unlike_heats(table.posed.problem)) say("An oven is taken to change its heat at once; `heats in 25 min` in the kitchen's `ovens:` says how long it takes.");
  if (oven && unlit(table.posed.problem))
    say(table.order.heats_in > 0 ? "Where no step heats the oven, light it " + say_length(table.order.heats_in, 1) + " before it is wanted." : "Where no step heats the oven, light it in time.");
  if (ring && table.order.rings > 0) say("The hob has " + std::to_string(table.order.rings) + " rings; each pan takes one.");
  if (!table.order.nights)
    say("Nobody works in the kitchen between " + write_clock(table.order.night_from) + " and " + write_clock(table.order.night_to) + ".");
  if (table.clock.rounded) say("A time too fine for the clock was rounded, least times up and longest times down.");
}

}  // namespace qtn
