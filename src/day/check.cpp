#include "day/check.hpp"

#include <algorithm>

#include "day/board.hpp"
#include "day/lengths.hpp"

namespace qtn {
namespace {

constexpr std::size_t kMostMakings = 200;  // recipes behind recipes; a menu of more is no menu

// All that takes time, end to end, against the shortest of all longest times, in minutes.
struct Reach {
  double all = 0, least_longest = 1e18;
  bool open = false;  // a time by weight, or rounds: as long as may be
};

void reach(const Recipe& recipe, Reach& out, int deep) {
  const auto longest = [&](const Quantity& length) { out.least_longest = std::min(out.least_longest, in_base(length, recipe.dialect).high.approx()); };
  // In one straight line of steps every wait can be followed at once, so that its longest time never pinches.
  bool straight = recipe.parts.size() < 2 && recipe.uses.empty();
  for (const Step& step : recipe.steps) straight = straight && step.kind != StepKindOf::meanwhile;
  for (const Clause& clause : recipe.clauses) {
    if (clause.part == kNone) continue;
    double times = 1;
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
      const Term& term = recipe.terms[t];
      switch (term.role) {
        case TermRole::within: longest(term.amount); break;
        case TermRole::times: times = std::max(1.0, term.amount.high.approx()); break;
        case TermRole::per:
        case TermRole::load: out.open = true; break;
        case TermRole::every: out.least_longest = 0; break;  // the turns lie at fixed distances
        case TermRole::length:
          if (clause.kind == ClauseKind::time && !straight && verb_of(clause).wait) longest(term.amount);
          [[fallthrough]];
        case TermRole::plus:
        case TermRole::between:
          // `each side` is twice as long, `about` a tenth longer: never less than it is.
          if (term.amount.dimension() == Dimension::duration) out.all += 2.2 * times * in_base(term.amount, recipe.dialect).high.approx();
          break;
        default: break;
      }
    }
  }
  const auto keeps = [&](const std::vector<Keep>& all, const std::optional<Quantity>& ready) {
    double most = 0;
    for (const Keep& keep : all)
      if (!keep.once_open) most = std::max(most, in_base(keep.length, recipe.dialect).high.approx());
    if (most > 0) out.least_longest = std::min(out.least_longest, most);
    if (ready) out.all += in_base(*ready, recipe.dialect).high.approx();
  };
  for (const Part& part : recipe.parts) {
    if (part.batch) out.open = true;
    keeps(part.keeps, part.ready_after);
  }
  if (deep > 0) keeps(recipe.keeps, recipe.ready_after);
  constexpr int kDeepest = 8;
  for (const Use& use : recipe.uses) {
    if (use.recipe == nullptr) continue;
    if (deep == kDeepest) out.open = true;
    else reach(*use.recipe, out, deep + 1);
  }
}

bool goes_by_size(const Recipe& recipe) {
  return std::any_of(recipe.terms.begin(), recipe.terms.end(),
                     [](const Term& term) { return term.role == TermRole::per || term.role == TermRole::load; });
}

}  // namespace

bool may_clash(const Recipe& recipe) {
  Reach out;
  reach(recipe, out, 0);
  return out.least_longest < 1e18 && (out.open || !(out.all <= out.least_longest));
}

std::vector<Making> makings_of(const Recipe& recipe, const Adapted* adapted) {
  std::vector<Making> out;
  out.push_back({&recipe, adapted, kNone, {}});
  for (std::size_t i = 0; i < out.size(); ++i) {
    const Recipe& one = *out[i].recipe;
    std::vector<Index> uses;
    for (const Use& use : one.uses) {
      if (use.recipe == nullptr) {
        uses.push_back(kNone);
        continue;
      }
      const auto same = [&](const Making& made) { return made.recipe == use.recipe && made.part == use.part; };
      auto found = std::find_if(out.begin(), out.end(), same);
      if (found == out.end() && out.size() < kMostMakings) {
        out.push_back({use.recipe, nullptr, use.part, {}});
        found = out.end() - 1;
      }
      uses.push_back(found == out.end() ? kNone : static_cast<Index>(found - out.begin()));
    }
    out[i].uses = std::move(uses);
  }
  return out;
}

namespace {

// A menu's dishes, hours and sizes, and whether all its dishes can be made for one table.
void check_table(const Recipe& menu, Report& report) {
  for (const Use& use : menu.uses)
    if (use.recipe == nullptr) return;  // reported; nothing follows from what is not there
  const Board board = board_of(menu, {}, report);
  if (report.has_errors()) return;
  const Clock clock = wind(board.order);
  if (!plan::holds(plan::place(clock.network))) tell_clash(clock, plan::clash_of(clock.network), menu.source, report);
}

}  // namespace

void check_clock(const Recipe& recipe, Report& report) {
  if (recipe.kind == FileKind::menu) return check_table(recipe, report);
  if (!may_clash(recipe)) return;
  for (const Part& part : recipe.parts)
    if (part.in_ring) return;  // reported; none of it can begin
  std::optional<Adapted> adapted;
  if (goes_by_size(recipe)) adapted = show(recipe, {});
  const Clock clock = wind({makings_of(recipe, adapted ? &*adapted : nullptr), 1, std::nullopt});
  if (plan::holds(plan::place(clock.network))) return;
  tell_clash(clock, plan::clash_of(clock.network), recipe.source, report);
}

}  // namespace qtn
