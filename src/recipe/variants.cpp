// Versions against the recipe they start from: each arrow line must find what it changes, and find it as it says.
#include <algorithm>

#include "recipe/logs.hpp"

namespace qtn {
namespace {

class VariantCheck {
 public:
  VariantCheck(Recipe& recipe, Report& report) : recipe_(recipe), report_(report) {
    for (const Part& part : recipe.parts) disturbed_ = disturbed_ || part.disturbed;
  }

  void run(Log& log) {
    for (std::size_t i = 0; i < log.changes.size(); ++i) {
      Change& change = log.changes[i];
      Index part = kNone;
      if (!change.part.empty()) {
        part = part_named(recipe_, change.part);
        if (part == kNone) {
          report_no_part(recipe_, change, report_);
          continue;
        }
      }
      resolve(change, part);
      for (std::size_t j = 0; j < i; ++j)
        if (same_thing(log.changes[j], change))
          report_.add(Code::changed_twice, change.span, "`" + std::string(change.name) + "` is changed twice in this version.")
              .also(log.changes[j].span, "the first is here").expect("one line for each thing");
    }
  }

 private:
  static bool same_thing(const Change& a, const Change& b) {
    if (a.clause != kNone || b.clause != kNone) return a.clause == b.clause && a.after && b.after && a.after->dimension() == b.after->dimension();
    if (a.target.kind == TargetKind::line || b.target.kind == TargetKind::line)
      return a.target.kind == b.target.kind && a.target.index == b.target.index;
    return fold_name(a.name) == fold_name(b.name) && a.part == b.part;
  }

  void resolve(Change& change, Index part) {
    const LineMatch match = lines_named(recipe_, part, change.name);
    // What comes in anew is no other line that happens to hold its words.
    const bool comes_in = !change.before && !match.exact;
    if (match.lines.size() > 1 && !comes_in) return report_several(recipe_, change, match.lines, report_);
    if (match.lines.size() == 1 && !comes_in) return of_line(change, match.lines[0]);
    if (is_verb_word(recipe_, change.name)) return of_clause(change, part);
    if (change.before && !disturbed_) report_unknown(recipe_, change, report_);
    if (!change.before) kinds_fit(recipe_, change, false, report_);
  }

  void of_line(Change& change, Index at) {
    const TakeLine& line = recipe_.lines[at];
    change.target = {TargetKind::line, at, line.part};
    if (!kinds_fit(recipe_, change, false, report_)) return;
    if (recipe_.parts[line.part].disturbed || list_has(recipe_, line, change.before, change.before_as)) return;
    const bool written = line.measured() && !line.amount_span.empty();
    const std::string listed = written ? "`" + std::string(recipe_.slice(line.amount_span)) + "`" : "no amount of it";
    auto& problem = report_.add(Code::version_old_differs, change.before_span,
                                "This version starts from `" + std::string(recipe_.slice(change.before_span)) +
                                    "`, and the list has " + listed + ".");
    problem.also(written ? line.amount_span : line.name_span, "the list").expect(written ? listed : "`none` before the arrow");
    if (written)
      problem.offer(change.before_span, std::string(recipe_.slice(line.amount_span)), "write " + listed + " before the arrow");
  }

  void of_clause(Change& change, Index part) {
    if (!change.after) {
      report_.add(Code::version_drops_step, change.span, "A version cannot leave out a step.")
          .expect("another time or temperature");
      return;
    }
    if (!kinds_fit(recipe_, change, true, report_) || disturbed_) return;
    const auto all = clauses_of(recipe_, part, change.name);
    if (all.empty()) return report_unknown(recipe_, change, report_);
    const auto fitting = clauses_with(recipe_, all, change.before);
    if (fitting.size() == 1) {
      change.clause = fitting[0];
      return;
    }
    if (fitting.empty()) return no_such_step(change, all);
    auto& problem = report_.add(Code::change_of_several, change.name_span,
                                std::to_string(fitting.size()) + " steps `" + std::string(change.name) + " " +
                                    std::string(recipe_.slice(change.before_span)) + "`.");
    problem.expect("the part in brackets in front, or amounts that tell the steps apart");
    for (Index i : fitting) problem.also(recipe_.clauses[i].span, "this one");
  }

  void no_such_step(const Change& change, const std::vector<Index>& all) {
    const std::string before(recipe_.slice(change.before_span));
    auto& problem = report_.add(Code::version_old_differs, change.before_span,
                                "No step that says `" + std::string(change.name) + "` has `" + before + "`.");
    problem.find("`" + before + "`").expect("the time or temperature that the clause has");
    for (Index i : all) problem.also(recipe_.clauses[i].span, "a step of this verb");
    if (all.size() != 1 || !change.before) return;
    const Index term = term_of(recipe_, recipe_.clauses[all[0]], change.before->dimension());
    if (term == kNone || recipe_.terms[term].span.empty()) return;
    const std::string now(recipe_.slice(recipe_.terms[term].span));
    problem.offer(change.before_span, now, "write `" + now + "` before the arrow");
  }

  Recipe& recipe_;
  Report& report_;
  bool disturbed_ = false;
};

}  // namespace

std::vector<Index> clauses_with(const Recipe& recipe, const std::vector<Index>& clauses,
                                const std::optional<Quantity>& amount) {
  std::vector<Index> found;
  if (!amount) return found;
  for (Index i : clauses) {
    const Index term = term_of(recipe, recipe.clauses[i], amount->dimension());
    if (term != kNone && same_amount(recipe.terms[term].amount, *amount, recipe.dialect)) found.push_back(i);
  }
  return found;
}

void check_variants(Recipe& recipe, Report& report) {
  for (Log& log : recipe.variants) VariantCheck(recipe, report).run(log);
}

}  // namespace qtn
