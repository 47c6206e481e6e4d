// What one part asks of those that take it, and a dish of its hour: keeps, ready, use within, and the end of a wait.
#include <algorithm>

#include "day/winder.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

// A frozen or chilled thing keeps the longest of what is written; `once open` never binds a plan.
const Keep* longest_of(const Recipe& recipe, const std::vector<Keep>& keeps) {
  const Keep* best = nullptr;
  for (const Keep& keep : keeps) {
    if (keep.once_open || keep.length.is_lost()) continue;
    if (best == nullptr || in_base(best->length, recipe.dialect).high < in_base(keep.length, recipe.dialect).high) best = &keep;
  }
  return best;
}

bool cools(const Doing& doing) {
  return doing.place == Takes::fridge || doing.place == Takes::freezer ||
         (doing.verb != nullptr && doing.verb->cools);
}

}  // namespace

Winder::PartClock* Winder::made(Index making, Index part) {
  const Making& one = clock_.makings[making];
  const Index which = part != kNone ? part : one.part != kNone ? one.part : one.recipe->dish;
  if (which >= parts_[making].size() || !parts_[making][which].made) return nullptr;
  return &parts_[making][which];
}

void Winder::keeps(const std::vector<Keep>& keeps, const PartClock& made, Index making, plan::End use) {
  const Recipe& recipe = this->recipe(making);
  const Keep* const keep = longest_of(recipe, keeps);
  if (keep == nullptr || made.last == kNothing) return;
  const Number said = label(Said::What::keeps, making, kNone, kNone, keep->span);
  longest(plan::end_of(made.last), use, in_base(keep->length, recipe.dialect).high, said);
}

void Winder::ready(const std::optional<Quantity>& after, const PartClock& made, Index making, Index part, plan::End use) {
  if (!after || after->is_lost()) return;
  const Number from = made.last_making != kNothing ? made.last_making : made.last;
  if (from == kNothing) return;
  const Recipe& recipe = this->recipe(making);
  const Number said = label(Said::What::ready, making, part, kNone, part != kNone ? recipe.parts[part].span : Span{});
  rule(plan::end_of(from), use, minutes_in(recipe, *after), said);
}

// `use within D`, from the end of the last making, or of what it names.
void Winder::withins(const PartClock& made, Index making, Index part, plan::End use) {
  const Recipe& recipe = this->recipe(making);
  const Slice steps = recipe.parts[part].steps;
  for (Index s = steps.first; s < steps.end(); ++s)
    for (Index c = recipe.steps[s].clauses.first; c < recipe.steps[s].clauses.end(); ++c) {
      const Clause& clause = recipe.clauses[c];
      const Term* const within = clause.kind == ClauseKind::use_within ? term_of(recipe, clause, TermRole::within) : nullptr;
      if (within == nullptr || within->amount.is_lost()) continue;
      Number from = made.last_making != kNothing ? made.last_making : made.last;
      for (Number i = 0; !clause.of.empty() && i < clock_.doings.size(); ++i) {
        const Doing& doing = clock_.doings[i];
        if (doing.making != making || doing.part != part || doing.verb == nullptr) continue;
        const Verb* deed = doing.verb;
        if (doing.what == Doing::What::work)  // "Rub the butter into the flour." has no time of its own
          if (const Found word = Lexicon::standard().longest(recipe.slice(doing.sentence), kVerbWord)) deed = &verb(word.row->verb);
        if (verb_form(deed->name, VerbForm::ing) == clause.of) from = i;
      }
      if (from == kNothing) continue;
      const Number said = label(Said::What::within, making, part, c, clause.span);
      longest(plan::end_of(from), use, in_base(within->amount, recipe.dialect).high, said);
    }
}

// All that a part asks of one who takes it, or of its hour at table.
void Winder::limits(const PartClock& made, Index making, Index part, plan::End use, bool serving) {
  const Recipe& recipe = this->recipe(making);
  rule(plan::end_of(made.whole), use, Fraction(0), kNothing);
  if (!serving)
    for (const auto& [wait, minutes] : made.waits)
      longest(plan::begin_of(wait), use, *minutes.most, clock_.network.activities[wait].label);
  keeps(recipe.parts[part].keeps, made, making, use);
  ready(recipe.parts[part].ready_after, made, making, part, use);
  withins(made, making, part, use);
  if (part != recipe.dish) return;
  keeps(recipe.keeps, made, making, use);
  ready(recipe.ready_after, made, making, kNone, use);
}

void Winder::taken() {
  for (const Taken& one : taken_) {
    const PartClock* const from = made(one.making, one.part);
    if (from == nullptr) continue;
    const Making& making = clock_.makings[one.making];
    const Index part = one.part != kNone ? one.part : making.part != kNone ? making.part : making.recipe->dish;
    limits(*from, one.making, part, plan::begin_of(one.by), false);
  }
}

// What heats a dish that comes to table hot: all heat behind the last cooling of its own part; nothing where it comes to
// table cold.
std::vector<Number> Winder::heats(Index making) const {
  const Index part = clock_.makings[making].part != kNone ? clock_.makings[making].part : recipe(making).dish;
  std::vector<Number> out;
  for (Number i = static_cast<Number>(clock_.doings.size()); i-- > 0;) {
    const Doing& doing = clock_.doings[i];
    if (doing.making != making || doing.part != part || doing.what != Doing::What::clause) continue;
    if (cools(doing)) break;
    if (doing.verb->heats) out.push_back(i);
  }
  return out;
}

void Winder::dishes() {
  for (Index d = 0; d < order_.dishes && d < clock_.makings.size(); ++d) {
    Dish dish;
    dish.making = d;
    Doing serving;
    serving.what = Doing::What::serving, serving.making = d;
    Minutes nothing;
    nothing.most = Fraction(0);
    dish.serving = add(serving, nothing, kNothing, kNothing);
    const plan::End hour = plan::begin_of(dish.serving);
    const Index own = clock_.makings[d].part != kNone ? clock_.makings[d].part : recipe(d).dish;
    for (Index p = 0; p < parts_[d].size(); ++p) {
      const PartClock& part = parts_[d][p];
      if (!part.made) continue;
      if (p == own) limits(part, d, p, hour, true);
      else rule(plan::end_of(part.whole), hour, Fraction(0), kNothing);  // nothing may take it
    }
    if (const PartClock* const part = made(d, kNone)) {
      dish.done = part->whole, dish.last = part->last;
      dish.heats = heats(d);
      dish.hot = !dish.heats.empty();
    }
    clock_.dishes.push_back(dish);
  }
  // What nothing takes is done before the last dish all the same.
  for (Index m = static_cast<Index>(order_.dishes); m < clock_.makings.size() && !clock_.dishes.empty(); ++m)
    for (const PartClock& part : parts_[m])
      if (part.made) rule(plan::end_of(part.whole), plan::begin_of(clock_.dishes.back().serving), Fraction(0), kNothing);
}

}  // namespace qtn
