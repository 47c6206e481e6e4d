// What a change of the log is as a share of what it goes into. The log is walked from the newest trial back, so that each
// share is of the meat, the flour or the whole as they were then.
#include <algorithm>

#include "recipe/formula.hpp"
#include "recipe/logs.hpp"
#include "recipe/makes.hpp"
#include "recipe/phases.hpp"
#include "recipe/strength.hpp"

namespace qtn {
namespace {

// One thing of a part: a line of the list, or what a trial has taken out of it.
struct Weight {
  Index line = kNone;
  std::vector<std::string> name;  // of what has gone
  Fraction grams = Fraction::lost();
  bool flour = false, meat = false;
};

struct Bowl {  // of a part
  std::vector<Weight> weights;
  bool whole = true;  // everything in it could be weighed
  ShareOf base = ShareOf::nothing;
};

Fraction sum(const Bowl& bowl, ShareOf of) {
  Fraction grams;
  for (const Weight& one : bowl.weights)
    if (of == ShareOf::whole || (of == ShareOf::flour ? one.flour : one.meat)) grams += one.grams;
  return grams;
}

class Shares {
 public:
  explicit Shares(Recipe& recipe) : recipe_(recipe), bowls_(recipe.parts.size()) {
    const std::vector<Formula> formulas = formulas_of(recipe);
    for (Index p = 0; p < recipe.parts.size(); ++p)
      for (const Formula& formula : formulas)
        if (!formula.overall && formula.name.data() == recipe.parts[p].name.data()) fill(bowls_[p], formula);
  }

  LineShare of_line(Index line) const {
    if (recipe_.lines[line].basis == Basis::percent) return {};  // a share already
    const Bowl& bowl = bowls_[recipe_.lines[line].part];
    for (const Weight& one : bowl.weights)
      if (one.line == line) return part_of_base(bowl, &one, false);
    return {};
  }

  void run() {
    for (Index i : newest_first(recipe_)) {
      Log& log = recipe_.trials[i];
      for (Change& change : log.changes) change.share = {}, weigh(change, true);
      for (const Change& change : log.changes) undo(change);
      for (Change& change : log.changes) weigh(change, false);
    }
  }

 private:
  // Meat is what a filling is seasoned by; a dough by its flour, which is a tenth of the part at least, as in `ratios`.
  void fill(Bowl& bowl, const Formula& formula) {
    bowl.whole = formula.not_weighed.empty();
    for (const FormulaLine& line : formula.lines) {
      if (line.line == kNone && line.grams.is_lost()) bowl.whole = false;
      Weight one{line.line, {}, line.grams, line.flour, false};
      if (line.line != kNone) one.meat = is_raw_meat(recipe_.lines[line.line]);
      bowl.weights.push_back(std::move(one));
    }
    const Fraction all = sum(bowl, ShareOf::whole), flour = sum(bowl, ShareOf::flour), meat = sum(bowl, ShareOf::meat);
    const bool has_meat = std::any_of(bowl.weights.begin(), bowl.weights.end(), [](const Weight& one) { return one.meat; });
    const bool dough = flour.sign() > 0 && (all.is_lost() || flour * Fraction(10) >= all);
    if (has_meat && (!dough || meat >= flour)) bowl.base = ShareOf::meat;
    else bowl.base = dough ? ShareOf::flour : ShareOf::whole;
  }

  Index part_of(const Change& change) const {
    if (change.target.kind == TargetKind::line) return recipe_.lines[change.target.index].part;
    if (change.clause != kNone) return kNone;
    if (!change.part.empty()) return part_named(recipe_, change.part);
    // What has gone stood in the only list, or nobody knows where.
    const auto listed = [](const Part& part) { return part.has_list; };
    return std::count_if(recipe_.parts.begin(), recipe_.parts.end(), listed) == 1 ? home_of(recipe_, change) : kNone;
  }

  Weight* weight_of(const Change& change, Bowl& bowl) {
    const bool line = change.target.kind == TargetKind::line;
    const std::vector<std::string> name = line ? std::vector<std::string>() : fold_name(change.name);
    for (Weight& one : bowl.weights)
      if (line ? one.line == change.target.index : one.line == kNone && one.name == name && !name.empty()) return &one;
    return nullptr;
  }

  // A share already: 2 % of the flour is not said again as such.
  static bool is_share(const Change& change) {
    const auto ratio = [](const std::optional<Quantity>& amount) { return amount && amount->dimension() == Dimension::ratio; };
    return ratio(change.before) || ratio(change.after);
  }

  // `gone`: there is none of it, and that is a share of nothing.
  static LineShare part_of_base(const Bowl& bowl, const Weight* here, bool gone) {
    ShareOf of = bowl.base;
    // What the base is made of is told as a share of everything.
    if (here != nullptr && (of == ShareOf::flour ? here->flour : of == ShareOf::meat && here->meat)) of = ShareOf::whole;
    if ((here == nullptr && !gone) || (of == ShareOf::whole && !bowl.whole)) return {};
    const Fraction share = gone ? Fraction() : here->grams / sum(bowl, of);
    return share.is_lost() ? LineShare{} : LineShare{of, share};
  }

  void weigh(Change& change, bool after) {
    const Index part = part_of(change);
    if (part >= bowls_.size() || !change.replacement.empty()) return;
    Bowl& bowl = bowls_[part];
    const Weight* const here = weight_of(change, bowl);
    const bool gone = after ? !change.after : !change.before;
    auto [of, share] = part_of_base(bowl, here, gone);
    if (is_share(change)) of = ShareOf::nothing;
    if (after) change.share.of = of, change.share.after = share;
    else if (change.share.of != of) change.share = {};
    else change.share.before = share;
  }

  void undo(const Change& change) {
    const Index part = part_of(change);
    if (part >= bowls_.size()) return;
    Bowl& bowl = bowls_[part];
    Weight* here = weight_of(change, bowl);
    if (!change.replacement.empty()) {  // another thing: nobody keeps the old one's weight
      bowl.whole = false;
      if (here != nullptr) here->grams = Fraction::lost();
      return;
    }
    if (!change.before) {  // it was not there: none of it, though a base keeps its kind
      if (here != nullptr) here->grams = Fraction();
      return;
    }
    if (here == nullptr) {
      come_back(change, bowl);
      return;
    }
    // The same thing in the same measure: so much more or less, whatever one of it weighs.
    if (change.after && change.before->dimension() == change.after->dimension()) {
      here->grams *= middle(in_base(*change.before, recipe_.dialect)) / middle(in_base(*change.after, recipe_.dialect));
    } else if (here->line != kNone) {
      here->grams = middle(grams_of(recipe_, recipe_.lines[here->line], *change.before));
    } else {
      here->grams = Fraction::lost();
    }
  }

  // What a trial had taken out is in again, as far as somebody can weigh it.
  void come_back(const Change& change, Bowl& bowl) {
    TakeLine line;
    line.name = change.name;
    line.basis = Basis::amount;
    line.written = line.amount = *change.before;
    know_food(recipe_, line);
    bowl.weights.push_back({kNone, fold_name(change.name), middle(grams_of(recipe_, line, *change.before)), is_flour(line), is_raw_meat(line)});
    if (bowl.weights.back().grams.is_lost()) bowl.whole = false;
  }

  Recipe& recipe_;
  std::vector<Bowl> bowls_;
};

}  // namespace

namespace {

int places_of(const Fraction& per_cent) { return per_cent >= Fraction(10) ? 0 : per_cent >= Fraction(1) ? 1 : 2; }

}  // namespace

std::string share_in_words(const Fraction& share) {
  const Fraction per_cent = share * Fraction(100);
  return per_cent.decimal(places_of(per_cent)) + " %";
}

std::string shares_in_words(const ChangeShare& share) {
  const Fraction before = share.before * Fraction(100), after = share.after * Fraction(100);
  int places = places_of(before > after ? before : after);
  while (places < 3 && !(before == after) && before.decimal(places) == after.decimal(places)) ++places;
  return before.decimal(places) + " % to " + after.decimal(places) + " %";
}

LineShare share_of_line(Recipe recipe, Index line) { return Shares(recipe).of_line(line); }

void share_changes(Recipe& recipe) {
  for (const Log& log : recipe.trials)
    if (!log.changes.empty()) return Shares(recipe).run();
}

}  // namespace qtn
