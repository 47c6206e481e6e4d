// The log against the list: it is checked, so that it can be trusted (semantics part 8, Trials).
#include <algorithm>

#include "recipe/dates.hpp"
#include "recipe/logs.hpp"
#include "recipe/phases.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

// One thing that the log changes, followed from the newest trial back. `expected` is what the next older trial must
// have arrived at: the list's own amount, then each trial's old one.
struct Thing {
  Index line = kNone, clause = kNone;
  std::vector<std::string> name;  // of a thing that the recipe no longer has
  Index part = kNone;
  bool seen = false;
  std::optional<Quantity> expected;
  Span where;              // of what is expected
  Index last_log = kNone;  // the trial that spoke of it last
};

// One side of a change: `eggs 3 -> 150 g tofu` is eggs that went and tofu that came.
struct Event {
  Change* change;
  std::string_view name;
  std::optional<Quantity> before, after;
  Span before_span, after_span;
  Index part = kNone;
  Index log = kNone;
  bool came = false;  // the half of a replacement that came
};

class TrialCheck {
 public:
  TrialCheck(Recipe& recipe, int today, bool by_page, Report& report)
      : recipe_(recipe), today_(today), by_page_(by_page), report_(report) {}

  void run() {
    order();
    for (Index i : order_) {
      Log& log = recipe_.trials[i];
      if (today_ != 0 && log.day != kNoDay && log.day > today_)
        future(log, i);
      for (Change& change : log.changes) read(change, i);
    }
    stand();
  }

 private:
  void order() {
    order_ = newest_first(recipe_);
    if (by_page_)
      for (Index i = 0; i < order_.size(); ++i) order_[i] = static_cast<Index>(order_.size()) - 1 - i;
    // A trial without a day has no place in the order, so breaks would be found where there are none.
    dated_ = std::none_of(recipe_.trials.begin(), recipe_.trials.end(), [](const Log& log) { return log.day == kNoDay; });
  }

  void future(const Log& log, Index at) {
    auto& problem = report_.add(Code::future_date, span_of(recipe_, log.name), "This trial is dated after today.")
                        .find("`" + std::string(log.name) + "`").expect("a day up to `" + write_date(today_) + "`");
    if (at + 1 < recipe_.trials.size() && recipe_.trials[at + 1].day < log.day)
      problem.also(span_of(recipe_, recipe_.trials[at + 1].name), "the next trial on the page is of an earlier day");
  }

  void read(Change& change, Index log) {
    Index part = kNone;
    if (!change.part.empty()) {
      part = part_named(recipe_, change.part);
      if (part == kNone) return report_no_part(recipe_, change, report_);
    }
    if (change.before && change.after && change.replacement.empty() &&
        same_amount(*change.before, *change.after, recipe_.dialect) && change.before->manner == change.after->manner)
      report_.add(Code::no_change, {change.before_span.begin, change.after_span.end}, "Old and new are the same.")
          .find("`" + std::string(recipe_.slice({change.before_span.begin, change.after_span.end})) + "`")
          .expect("two amounts that differ, or no line");
    Event event{&change, change.name, change.before, change.after, change.before_span, change.after_span, part, log, false};
    if (change.replacement.empty()) return follow(event);
    Event came = event;
    came.name = change.replacement;
    came.before.reset();
    came.came = true;
    event.after.reset();
    follow(came);
    follow(event);
  }

  void follow(const Event& event) {
    Thing* const thing = thing_of(event);
    if (thing == nullptr || !dated_) return;
    if (thing->last_log == event.log) {
      report_.add(Code::changed_twice, event.change->span, "`" + std::string(event.name) + "` is changed twice in this trial.")
          .expect("one line for each thing, from what it was to what it became");
      return;
    }
    compare(*thing, event);
    thing->seen = true;
    thing->expected = event.before;
    thing->where = event.before_span;
    thing->last_log = event.log;
  }

  void compare(const Thing& thing, const Event& event) {
    if (thing.seen) {
      const bool same = thing.expected && event.after ? same_amount(*thing.expected, *event.after, recipe_.dialect)
                                                      : !thing.expected && !event.after;
      if (!same) chain_break(thing, event);
      return;
    }
    if (thing.line != kNone) {
      if (!list_has(recipe_, recipe_.lines[thing.line], event.after, event.change->after_as)) list_differs(event, recipe_.lines[thing.line]);
    } else if (thing.clause == kNone && event.after && !disturbed()) {
      Change named = *event.change;
      if (event.came) named.name = event.name, named.name_span = span_of(recipe_, event.name);
      report_unknown(recipe_, named, report_);
    }
  }

  void chain_break(const Thing& thing, const Event& event) {
    const std::string older(recipe_.slice(event.after_span)), newer(recipe_.slice(thing.where));
    report_.add(Code::chain_break, thing.where,
                "This trial starts from `" + newer + "`, but the one before it arrived at `" + older + "`.")
        .find("`" + newer + "`").expect("`" + older + "`, or a trial between the two that tells the change")
        .also(event.after_span, "the trial of " + std::string(recipe_.trials[event.log].name) + " arrived here");
  }

  // Something could not be read, so that what is not found may stand there.
  bool disturbed() const {
    return std::any_of(recipe_.parts.begin(), recipe_.parts.end(), [](const Part& part) { return part.disturbed; });
  }

  // Either the list or the log was forgotten; only the cook knows which.
  void list_differs(const Event& event, const TakeLine& line) {
    if (recipe_.parts[line.part].disturbed) return;  // the line itself was reported
    const auto& changes = recipe_.trials[event.log].changes;
    const auto again = [&](const Change& one) { return &one != event.change && fold_name(one.name) == fold_name(event.name); };
    if (std::any_of(changes.begin(), changes.end(), again)) return;  // changed twice, which is said of the second
    const bool written = line.measured() && !line.amount_span.empty();
    const std::string tasted = event.after ? std::string(recipe_.slice(event.after_span)) : "none";
    const std::string listed = written ? std::string(recipe_.slice(line.amount_span)) : "no amount";
    auto& problem = report_.add(Code::list_differs, event.after_span,
                                "The newest trial of `" + std::string(event.name) + "` arrived at `" + tasted +
                                    "`, but the list has " + (written ? "`" + listed + "`." : "no amount of it."));
    problem.find("`" + tasted + "`").expect(written ? "`" + listed + "`, as in the list" : "the list and the log to agree");
    problem.also(written ? line.amount_span : line.name_span, "the list");
    if (!written || !event.after) return;
    problem.offer(line.amount_span, tasted, "write `" + tasted + "` in the list");
    problem.offer(event.after_span, listed, "write `" + listed + "` in the trial");
  }

  // ---- which thing ------------------------------------------------------------------------------------------------
  Thing* thing_of(const Event& event) {
    // A line's name always beats a verb (T5); what has gone from the list is known by its own name.
    const LineMatch match = lines_named(recipe_, event.part, event.name);
    std::vector<std::string> name = fold_name(event.name);
    for (Thing& thing : things_)
      if (thing.line == kNone && thing.clause == kNone && thing.name == name && thing.part == event.part) return &thing;
    const bool gone = !event.after && !match.exact;
    if (match.lines.size() > 1 && !gone) {
      report_several(recipe_, *event.change, match.lines, report_);
      return nullptr;
    }
    if (match.lines.size() == 1 && !gone) return of_line(event, match.lines[0]);
    if (!event.came && is_verb_word(recipe_, event.name)) return of_clause(event);
    return &things_.emplace_back(Thing{kNone, kNone, std::move(name), event.part, false, {}, {}, kNone});
  }

  Thing* of_line(const Event& event, Index line) {
    if (!kinds_fit(recipe_, *event.change, false, report_)) return nullptr;
    if (!event.came) event.change->target = {TargetKind::line, line, recipe_.lines[line].part};
    for (Thing& thing : things_)
      if (thing.line == line) return &thing;
    return &things_.emplace_back(Thing{line, kNone, {}, kNone, false, {}, {}, kNone});
  }

  std::optional<Quantity> expected_of(Index clause, Dimension dimension) const {
    for (const Thing& thing : things_)
      if (thing.clause == clause && thing.seen && (!thing.expected || thing.expected->dimension() == dimension))
        return thing.expected;
    const Index term = term_of(recipe_, recipe_.clauses[clause], dimension);
    if (term == kNone) return std::nullopt;
    return recipe_.terms[term].amount;
  }

  // The clause of that verb and amount: what it is now, or what newer trials say it was then.
  Thing* of_clause(const Event& event) {
    Change& change = *event.change;
    if (!kinds_fit(recipe_, change, true, report_)) return nullptr;
    if (!event.after) return nullptr;  // a step that was left out leaves nothing to compare with
    std::vector<Index> fitting;
    const auto all = clauses_of(recipe_, event.part, event.name);
    for (Index i : all) {
      const auto expected = expected_of(i, event.after->dimension());
      if (expected && same_amount(*expected, *event.after, recipe_.dialect)) fitting.push_back(i);
    }
    if (fitting.size() == 1) return clause_thing(change, fitting[0], event.after->dimension());
    // The one step of its verb, told of before: then the break is between the two trials.
    if (fitting.empty() && all.size() == 1)
      for (Thing& thing : things_)
        if (thing.clause == all[0] && thing.seen && thing.expected && thing.expected->dimension() == event.after->dimension())
          return &thing;
    if (fitting.size() > 1) {
      auto& problem = report_.add(Code::change_of_several, change.name_span,
                                  std::to_string(fitting.size()) + " steps `" + std::string(change.name) + " " +
                                      std::string(recipe_.slice(event.after_span)) + "`.");
      problem.expect("the part in brackets in front, or amounts that tell the steps apart");
      for (Index i : fitting) problem.also(recipe_.clauses[i].span, "this one");
      return nullptr;
    }
    no_such_step(event, all);
    return nullptr;
  }

  void no_such_step(const Event& event, const std::vector<Index>& all) {
    const Change& change = *event.change;
    if (disturbed()) return;
    if (all.empty()) return report_unknown(recipe_, change, report_);
    const std::string after(recipe_.slice(event.after_span));
    auto& problem = report_.add(Code::list_differs, event.after_span,
                                "No step that says `" + std::string(change.name) + "` has `" + after + "`.");
    problem.find("`" + after + "`").expect("the time or temperature that a clause of the method has now");
    for (Index i : all) problem.also(recipe_.clauses[i].span, "a step of this verb");
    if (all.size() > 1) return;
    const Index term = term_of(recipe_, recipe_.clauses[all[0]], event.after->dimension());
    if (term == kNone || recipe_.terms[term].span.empty()) return;
    const std::string now(recipe_.slice(recipe_.terms[term].span));
    problem.offer(recipe_.terms[term].span, after, "write `" + after + "` in the step");
    problem.offer(event.after_span, now, "write `" + now + "` in the trial");
  }

  Thing* clause_thing(Change& change, Index clause, Dimension dimension) {
    change.clause = clause;
    for (Thing& thing : things_)
      if (thing.clause == clause && (!thing.expected || thing.expected->dimension() == dimension)) return &thing;
    return &things_.emplace_back(Thing{kNone, clause, {}, kNone, false, {}, {}, kNone});
  }

  // At least three trials after the last change, each without one, as the trade's handbooks define it.
  void stand() {
    TrialStanding& standing = recipe_.standing;
    standing = {};
    for (Index i : order_) {
      if (!recipe_.trials[i].changes.empty()) {
        if (standing.alike == 0) standing.untasted = i;
        break;
      }
      if (recipe_.trials[i].day != kNoDay) ++standing.alike;
    }
    if (!order_.empty()) standing.tried = standing.alike >= 3 ? Tried::standardized : Tried::tried;
  }

  Recipe& recipe_;
  int today_;
  bool by_page_;  // the order of the page, whatever the dates say
  Report& report_;
  std::vector<Index> order_;
  bool dated_ = true;
  std::vector<Thing> things_;
};

}  // namespace

namespace {

bool breaks(const Report& report) {
  return std::any_of(report.list().begin(), report.list().end(),
                     [](const Diagnostic& one) { return one.code == Code::chain_break || one.code == Code::list_differs; });
}

}  // namespace

void check_trials(Recipe& recipe, int today, Report& report) {
  const PageOrder order = page_order(recipe, today);
  if (order.down == kNone) {
    TrialCheck(recipe, today, false, report).run();
  } else {  // a log may run from its newest trial down; what speaks against it is a chain that holds the other way only
    Report by_date, by_page;
    TrialCheck(recipe, today, false, by_date).run();
    if (breaks(by_date)) TrialCheck(recipe, today, true, by_page).run();
    const bool contradiction = breaks(by_date) && !by_page.has_errors();
    report.append(contradiction ? by_page : by_date);
    if (contradiction || (order.up && !breaks(by_date))) report_order(recipe, order.down, contradiction, report);
  }
  share_changes(recipe);
  check_variants(recipe, report);
}

}  // namespace qtn
