// Versions of a checked recipe: a variant's arrow lines, an `or` line chosen by name (semantics part 9).
#include "recipe/logs.hpp"
#include "recipe/phases.hpp"

namespace qtn {
namespace {

std::string folded(std::string_view text) { return lower(trim(text)); }

// Puts a line at the end of a part's list; every index behind it moves on by one.
void insert_line(Recipe& recipe, Index part, TakeLine line) {
  const Index at = recipe.parts[part].lines.end();
  const auto move = [&](Index& index) {
    if (index != kNone && index >= at) ++index;
  };
  for (TakeLine& one : recipe.lines) move(one.parent), move(one.chosen);
  const auto move_target = [&](Target& target) {
    if (target.kind == TargetKind::line || target.kind == TargetKind::aside) move(target.index);
  };
  for (Target& member : recipe.set_members) move_target(member);
  for (Mention& mention : recipe.mentions) move_target(mention.target);
  for (Log& log : recipe.trials)
    for (Change& change : log.changes) move_target(change.target);
  for (Index p = 0; p < recipe.parts.size(); ++p) {
    if (p == part) ++recipe.parts[p].lines.count;
    else if (recipe.parts[p].lines.first >= at) ++recipe.parts[p].lines.first;
  }
  recipe.lines.insert(recipe.lines.begin() + at, std::move(line));
}

void set_amount(TakeLine& line, const Quantity& amount, Span span) {
  line.written = line.amount = amount;
  line.amount_span = span;
  line.pack.reset();
  line.stated.count = 0;
  line.basis = unit(amount.unit).dimension == Dimension::ratio ? Basis::percent : Basis::amount;
}

void apply_to_line(Recipe& recipe, const Change& change, Index at) {
  TakeLine& line = recipe.lines[at];
  if (!change.after) {
    line.struck = true;
    return;
  }
  if (change.replacement.empty()) return set_amount(line, *change.after, change.after_span);
  // A name after the new amount puts another thing in its place, as an `or` line would.
  TakeLine other = line;
  set_amount(other, *change.after, change.after_span);
  other.name = change.replacement;
  other.name_span = span_of(recipe, change.replacement);
  other.food = Larder::standard().find(other.name);
  other.tails.count = 0;
  other.alternative = true;
  other.parent = at;
  const Index part = line.part;
  insert_line(recipe, part, other);
  recipe.lines[at].chosen = recipe.parts[part].lines.end() - 1;
}

void apply(Recipe& recipe, const Change& change) {
  const Index part = change.part.empty() ? kNone : part_named(recipe, change.part);
  const LineMatch match = lines_named(recipe, part, change.name);
  if (!match.lines.empty()) return apply_to_line(recipe, change, match.lines.front());
  if (!change.before && change.after) {
    TakeLine line;
    line.part = part == kNone ? recipe.dish : part;
    line.name = change.name;
    line.name_span = line.span = change.name_span;
    line.food = Larder::standard().find(line.name);
    line.added = true;
    set_amount(line, *change.after, change.after_span);
    return insert_line(recipe, line.part, std::move(line));
  }
  if (!change.after) return;
  for (Index c : clauses_of(recipe, part, change.name)) {
    const Index term = term_of(recipe, recipe.clauses[c], change.after->dimension());
    if (term == kNone || (change.before && !same_amount(recipe.terms[term].amount, *change.before, recipe.dialect))) continue;
    recipe.terms[term].amount = *change.after;
    recipe.terms[term].span = change.after_span;
    recipe.terms[term].changed = true;
    return;
  }
}

}  // namespace

std::optional<Recipe> variant_of(const Recipe& recipe, std::string_view variant, Report& report) {
  for (const Log& log : recipe.variants) {
    if (folded(log.name) != folded(variant)) continue;
    Recipe copy = recipe;
    for (const Change& change : log.changes) apply(copy, change);
    copy.trials.clear();  // they are the recipe's own
    copy.version = log.name;
    settle(copy, 0, report);
    return copy;
  }
  return std::nullopt;
}

std::optional<Recipe> with_alternative(const Recipe& recipe, std::string_view name, Report& report) {
  for (Index i = 0; i < recipe.lines.size(); ++i) {
    const TakeLine& line = recipe.lines[i];
    if (!line.alternative || line.parent == kNone || folded(line.name) != folded(name)) continue;
    Recipe copy = recipe;
    copy.lines[line.parent].chosen = i;
    copy.version = line.name;
    settle(copy, 0, report);
    return copy;
  }
  return std::nullopt;
}

}  // namespace qtn
