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

// Parts and rates stay what they are: `sugar  3 -> 2` in a list of parts is 2 parts.
void set_amount(TakeLine& line, const Change& change) {
  const Quantity& amount = *change.after;
  const Dimension dimension = amount.dimension();
  const bool keeps_basis = (line.basis == Basis::parts || line.basis == Basis::rate) && dimension == line.written.dimension();
  if (change.after_as == Counted::parts) line.basis = Basis::parts;
  else if (!keeps_basis) line.basis = dimension == Dimension::ratio ? Basis::percent : Basis::amount;
  line.written = line.amount = amount;
  line.amount_span = change.after_span;
  line.pack.reset();
  line.stated.count = 0;
  line.house_measure = change.after_as == Counted::house;
}

void apply_to_line(Recipe& recipe, const Change& change, Index at) {
  TakeLine& line = recipe.lines[at];
  if (!change.after) {
    line.struck = true;
    return;
  }
  if (change.replacement.empty()) return set_amount(line, change);
  // A name after the new amount puts another thing in its place, as an `or` line would.
  TakeLine other = line;
  set_amount(other, change);
  other.name = change.replacement;
  other.name_span = span_of(recipe, change.replacement);
  other.tails.count = 0;
  know_food(recipe, other);
  other.alternative = true;
  other.parent = at;
  const Index part = line.part;
  insert_line(recipe, part, other);
  recipe.lines[at].chosen = recipe.parts[part].lines.end() - 1;
}

}  // namespace

Index home_of(const Recipe& recipe, const Change& change) {
  if (!change.part.empty()) return part_named(recipe, change.part);
  Index home = kNone;
  for (Index i = 0; i < recipe.parts.size(); ++i) {
    if (!recipe.parts[i].has_list) continue;
    if (home != kNone) return recipe.dish;
    home = i;
  }
  return home == kNone ? recipe.dish : home;
}

namespace {

void come_in(Recipe& recipe, const Change& change) {
  const Index part = home_of(recipe, change);
  if (part >= recipe.parts.size()) return;
  TakeLine line;
  line.part = part;
  line.name = change.replacement.empty() ? change.name : change.replacement;
  line.name_span = line.span = span_of(recipe, line.name);
  line.added = true;
  set_amount(line, change);
  know_food(recipe, line);
  insert_line(recipe, part, std::move(line));
}

void apply(Recipe& recipe, const Change& change) {
  // check_variants() said which; positions move as lines come in, so the line is found again by its name.
  if (change.target.kind != TargetKind::line) return apply_change(recipe, change, kNone);
  const Index part = change.part.empty() ? kNone : part_named(recipe, change.part);
  const LineMatch match = lines_named(recipe, part, change.name);
  if (!match.lines.empty()) apply_change(recipe, change, match.lines.front());
}

}  // namespace

void apply_change(Recipe& recipe, const Change& change, Index line) {
  if (line != kNone) return apply_to_line(recipe, change, line);
  if (change.clause == kNone) {
    if (!change.before && change.after) come_in(recipe, change);
    return;
  }
  const Index term = term_of(recipe, recipe.clauses[change.clause], change.after->dimension());
  if (term == kNone) return;
  if (!recipe.terms[term].changed) recipe.terms[term].stood = recipe.terms[term].span;
  recipe.terms[term].amount = *change.after;
  recipe.terms[term].span = change.after_span;
  recipe.terms[term].changed = true;
}

std::optional<Recipe> variant_of(const Recipe& recipe, std::string_view variant, Report& report) {
  for (const Log& log : recipe.variants) {
    if (folded(log.name) != folded(variant)) continue;
    Recipe copy = recipe;
    for (const Change& change : log.changes) apply(copy, change);
    copy.trials.clear();  // they are the recipe's own, and so are its versions: each starts from the recipe
    copy.variants.clear();
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
    copy.standing = {};  // what was tasted is the recipe with its first line
    return copy;
  }
  return std::nullopt;
}

}  // namespace qtn
