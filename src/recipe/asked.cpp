#include "recipe/asked.hpp"

#include <algorithm>

#include "recipe/equivalents.hpp"
#include "recipe/makes.hpp"

namespace qtn {
namespace {

const TakeLine* line_of(const Recipe& recipe, const Target& target) {
  const bool line = target.kind == TargetKind::line || target.kind == TargetKind::aside;
  return line ? &recipe.lines[target.index] : nullptr;
}

bool counted(const Recipe& recipe, const Target& target) {
  if (const TakeLine* const line = line_of(recipe, target)) {
    const bool count = line->basis == Basis::amount && line->written.dimension() == Dimension::count;
    return !line->measured() || line->house_measure || line->pack || count;
  }
  if (target.kind != TargetKind::part) return true;  // what another file makes may be counted
  const auto& makes = makes_of(recipe, target.index);
  const auto count = [](const Made& made) { return made.amount.dimension() == Dimension::count; };
  return makes.empty() || std::any_of(makes.begin(), makes.end(), count);
}

bool plain_fraction(std::string_view text) {
  std::size_t at = text.find_first_of("0123456789");
  while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
  return at < text.size() && (text[at] == '/' || text.substr(at, 3) == "⁄");
}

// A bare number of what is weighed or measured is a share of it (3/2 of the milk); of what is counted only a plain
// fraction is one, since 1 1/2 of the eggs are so many eggs. Pieces of the dish itself are none: [24 straws].
bool is_share(const Recipe& recipe, const Clause& clause, const Mention& mention) {
  const Term& asked = recipe.terms[mention.term];
  const Target& target = mention.target;
  if (asked.amount.is_lost() || target.kind == TargetKind::none) return false;
  if (target.kind == TargetKind::part && target.index == clause.part) return false;
  if (asked.amount.dimension() == Dimension::ratio) return true;
  if (asked.amount.unit != kNoUnit) return false;
  return asked.amount.high < Fraction(1) || plain_fraction(recipe.slice(asked.span)) || !counted(recipe, target);
}

// `told`: the amount whose share was found to be too large; said once, however many names it has.
void share(Recipe& recipe, Mention& mention, Index& told, Report& report) {
  Term& asked = recipe.terms[mention.term];
  asked.role = TermRole::share;
  if (asked.amount.is_lost()) return;
  const Fraction one = asked.amount.unit == kNoUnit ? Fraction(1) : size_of(asked.amount.unit, recipe.dialect);
  const bool over = asked.amount.high * one > Fraction(1);
  mention.share = (over ? asked.amount.high : asked.amount.low) * one;
  mention.about = mention.about || asked.amount.manner == Manner::about;
  if (!over || told == mention.term) return;
  told = mention.term;
  report.add(Code::share_over_whole, asked.span, "This share is more than the whole.")
      .find("`" + std::string(recipe.slice(asked.span)) + "`").expect("a share of at most all of it");
}

// [100 g (3 1/2 oz) of the cheddar]: what the parenthesis says, against the amount before it.
void restated(const Recipe& recipe, const Clause& clause, Report& report) {
  const Term& first = recipe.terms[clause.terms.first];
  if (first.role != TermRole::use && first.role != TermRole::pieces && first.role != TermRole::share) return;
  const TakeLine* const line =
      clause.mentions.count == 1 ? line_of(recipe, recipe.mentions[clause.mentions.first].target) : nullptr;
  for (Index i = clause.terms.first + 1; i < clause.terms.end() && recipe.terms[i].role == TermRole::equivalent; ++i)
    check_restated(recipe, {first.amount, first.span, recipe.terms[i].amount, recipe.terms[i].span}, line, report);
}

}  // namespace

void settle_asked(Recipe& recipe, const Clause& clause, Report& report) {
  Index told = kNone;
  for (Index i = clause.mentions.first; i < clause.mentions.end(); ++i) {
    Mention& mention = recipe.mentions[i];
    if (mention.term == kNone) continue;
    if (mention.taking == Taking::amount && is_share(recipe, clause, mention)) mention.taking = Taking::share;
    if (mention.taking == Taking::share) share(recipe, mention, told, report);
  }
  if (clause.terms.count != 0) restated(recipe, clause, report);
}

}  // namespace qtn
