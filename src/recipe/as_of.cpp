// The amounts of an earlier day: what later trials changed is undone, the newest first (semantics part 8, Trials).
#include <algorithm>

#include "recipe/dates.hpp"
#include "recipe/logs.hpp"
#include "recipe/phases.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

Change turned(const Change& change) {
  Change back = change;
  std::swap(back.before, back.after);
  std::swap(back.before_as, back.after_as);
  std::swap(back.before_span, back.after_span);
  return back;
}

// The one line that bears this name and stands in the list of this moment; kNone: none, or several.
Index line_of(const Recipe& recipe, std::string_view name, Index part) {
  const auto wanted = fold_name(name);
  Index found = kNone;
  for (Index i = 0; i < recipe.lines.size(); ++i) {
    const TakeLine& line = recipe.lines[i];
    const bool other = line.alternative && (line.parent == kNone || recipe.lines[line.parent].chosen != i);
    if (other || line.given || line.struck || (part != kNone && line.part != part) || fold_name(line.name) != wanted) continue;
    if (found != kNone) return kNone;
    found = i;
  }
  return found;
}

bool is_step(const std::optional<Quantity>& amount) {
  if (!amount) return false;
  const Dimension dimension = amount->dimension();
  return dimension == Dimension::duration || dimension == Dimension::temperature || dimension == Dimension::length;
}

// A line whose name holds the words of the change, where none bears it.
Index line_like(const Recipe& recipe, std::string_view name, Index part) {
  if (const Index exact = line_of(recipe, name, part); exact != kNone) return exact;
  LineMatch match = lines_named(recipe, part, name);
  std::erase_if(match.lines, [&](Index i) { return recipe.lines[i].struck || recipe.lines[i].alternative; });
  return match.lines.size() == 1 ? match.lines[0] : kNone;
}

bool undo(Recipe& recipe, const Change& change) {
  const Index part = change.part.empty() ? kNone : part_named(recipe, change.part);
  Change back = turned(change);
  if (change.clause != kNone) {
    if (!back.after) return false;
    apply_change(recipe, back, kNone);
    return true;
  }
  if (is_step(change.before) || is_step(change.after)) return false;  // of a step that the method does not have any more
  if (change.replacement.empty()) {
    const Index line = change.after ? line_like(recipe, change.name, part) : kNone;
    if (change.after && line == kNone) return false;
    back.target = {};
    apply_change(recipe, back, line);
    return true;
  }
  // Another thing came in its place: that one is replaced by what was there before.
  const Index line = line_like(recipe, change.replacement, part);
  if (line == kNone || !back.after) return false;
  back.name = change.replacement, back.replacement = change.name;
  apply_change(recipe, back, line);
  return true;
}

std::string named(const Recipe& recipe, const Change& change) { return "`" + std::string(recipe.slice(change.span)) + "`"; }

}  // namespace

std::optional<Recipe> as_of(const Recipe& recipe, int day, Report& report) {
  const std::vector<Index> order = newest_first(recipe);
  if (order.empty()) {
    report.add(Code::no_trial_yet, {}, "This recipe has no trial, so its amounts have only ever been what they are now.")
        .expect("a recipe with a log: `trial: 2026-02-11`");
    return std::nullopt;
  }
  const Log& first = recipe.trials[order.back()];
  if (day < first.day) {
    report.add(Code::no_trial_yet, span_of(recipe, first.name), "On " + write_date(day) + " nobody had tried this recipe yet; the first trial is of " + std::string(first.name) + ".")
        .find("`" + std::string(first.name) + "`").expect("that day, or a later one");
    return std::nullopt;
  }
  Recipe copy = recipe;
  for (Index i : order) {
    const Log& log = recipe.trials[i];
    if (log.day <= day) break;
    for (const Change& change : log.changes) {
      if (undo(copy, change)) continue;
      auto& problem = report.add(Code::cannot_undo, change.span, named(recipe, change) + ", of " + std::string(log.name) + ", cannot be undone: what it changed is not in the recipe any more, or stands there twice.");
      problem.find(named(recipe, change)).expect("a change whose line or step stands in the list and the method of today");
      return std::nullopt;
    }
  }
  std::erase_if(copy.trials, [&](const Log& log) { return log.day > day; });
  copy.variants.clear();  // they start from the amounts of today
  copy.as_of = day;
  for (Log& log : copy.trials)
    for (Change& change : log.changes) change.target = {}, change.clause = kNone;
  Report found;
  settle(copy, 0, found);
  bool sound = true;
  for (const Diagnostic& one : found.list()) {
    if (one.severity != Severity::error) continue;
    sound = false;
    report.add(Code::cannot_undo, one.span, "The amounts of " + write_date(day) + " do not hold: " + one.message).expect(one.expected);
  }
  if (!sound) return std::nullopt;
  return copy;
}

}  // namespace qtn
