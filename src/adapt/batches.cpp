// What is more than a vessel or a step takes is done in batches, equal ones and as few as may be (semantics part 6).
#include <algorithm>

#include "adapt/works.hpp"
#include "recipe/logs.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr Ends kUnknown{Fraction::lost(), Fraction::lost()};

bool is_lost(const Ends& ends) {
  return ends.low.is_lost() || ends.high.is_lost();
}

// An amount of a line in the base unit of a limit: grams, millilitres, or so many.
Ends in_dimension(const Recipe& recipe, const TakeLine* line, const Quantity& amount, Dimension dimension) {
  if (amount.is_lost()) return kUnknown;
  if (amount.dimension() == dimension) return in_base(amount, recipe.dialect);
  return dimension == Dimension::mass && line != nullptr ? grams_of(recipe, *line, amount) : kUnknown;
}

const TakeLine& standing(const Recipe& recipe, const TakeLine& line) {
  return line.chosen != kNone ? recipe.lines[line.chosen] : line;
}

Ends of_line(const Recipe& recipe, Index part, std::string_view thing, Dimension dimension) {
  for (const Index within : {part, kNone}) {
    for (const Index i : lines_named(recipe, within, thing).lines) {
      const TakeLine& line = recipe.lines[i];
      if (line.alternative || line.struck || !line.measured()) continue;
      const TakeLine& there = standing(recipe, line);
      return in_dimension(recipe, &there, there.amount, dimension);
    }
    if (within == kNone) break;
  }
  return kUnknown;
}

Ends of_makes(const Recipe& recipe, Index part, std::string_view thing, Dimension dimension) {
  const Index own = part != kNone ? part : recipe.dish;
  const std::vector<Made>* const parts = own < recipe.parts.size() ? &recipe.parts[own].makes : nullptr;
  const std::vector<Made>* const head = own == recipe.dish ? &recipe.makes : nullptr;
  for (const auto* all : {part != kNone ? parts : head, part != kNone ? head : parts}) {
    if (all == nullptr) continue;
    for (const Made& made : *all) {
      if (made.by_product || made.amount.is_lost()) continue;
      if (!thing.empty() && fold_name(made.thing) != fold_name(thing)) continue;
      if (made.amount.dimension() == dimension) return in_base(made.amount, recipe.dialect);
      if (made.amount.dimension() == Dimension::count && made.each && made.each->dimension() == dimension) {
        const Ends each = in_base(*made.each, recipe.dialect);
        return {made.amount.low * each.low, made.amount.high * each.high};
      }
    }
  }
  return kUnknown;
}

// `limit` and `need` in one base unit. A count of 1 where the limit is not passed, or nobody knows.
Rounds share_out(const Recipe& recipe, const Quantity& limit, const Ends& need, Shower& shower) {
  Rounds rounds;
  const Fraction most = in_base(limit, recipe.dialect).high;
  if (is_lost(need) || most.is_lost() || most.sign() <= 0 || need.high <= most) return rounds;
  rounds.count = (need.high / most).ceil();
  const Fraction count = Fraction::of(rounds.count, 1);
  if (limit.dimension() == Dimension::count) {
    const Wide low = std::max<Wide>((need.low / count).floor(), 1), high = (need.high / count).ceil();
    rounds.size = from_text(join_range(to_text(low), to_text(high)), limit);
    rounds.size.exact.low = need.low / count, rounds.size.exact.high = need.high / count;
  } else {
    const Fraction size = size_of(limit.unit, recipe.dialect);
    const Quantity one{need.low / count / size, need.high / count / size, limit.unit, Manner::plain, false};
    rounds.size = shower.amount(nullptr, one, {}, Origin::worked_out);
  }
  rounds.full = need.low == need.high && need.high == most * count;
  return rounds;
}

struct Found {
  Ends need = kUnknown;
  Index line = kNone;
  bool any = false, several = false;
  void add(const Ends& amount, Index of) {
    several = several || (any && line != of);
    any = true, line = of, need = amount;
  }
};

// What a step handles up to a place in it: the pieces cut last, else the one line that is counted, or that weighs more
// than the load.
Found handled(const Recipe& recipe, const Step& step, Index last, const Quantity& load) {
  const Dimension dimension = load.dimension();
  const Fraction most = in_base(load, recipe.dialect).high;
  Found found;
  for (Index c = std::min(last + 1, step.clauses.end()); c-- > step.clauses.first;) {
    const Clause& clause = recipe.clauses[c];
    if (cuts(recipe, clause) && dimension == Dimension::count && !clause.terms.empty()) {
      const Quantity& pieces = recipe.terms[clause.terms.first].amount;
      if (pieces.is_lost() || found.any) continue;
      const auto whole = [](const Fraction& end) { return Fraction::of(std::max<Wide>(end.nearest(), 1), 1); };
      found.add({whole(pieces.low), whole(pieces.high)}, kNone);
      return found;
    }
    for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
      const Mention& mention = recipe.mentions[m];
      if (mention.target.kind != TargetKind::line || mention.taking == Taking::named) continue;
      const TakeLine& line = standing(recipe, recipe.lines[mention.target.index]);
      const bool herb = line.food != nullptr && line.food->seasoning;
      if (line.struck || herb || !line.measured() || line.amount.is_lost()) continue;
      if (dimension == Dimension::count && line.amount.unit != kNoUnit) continue;
      Ends need = in_dimension(recipe, &line, line.amount, dimension);
      if (mention.takes) need = {need.low * mention.part_low, need.high * mention.part_high};
      if (is_lost(need) || need.high <= most) continue;  // what goes in at once says nothing of rounds
      found.add(need, mention.target.index);
    }
  }
  return found;
}

}  // namespace

bool cuts(const Recipe& recipe, const Clause& clause) {
  if (clause.kind == ClauseKind::pieces) return true;
  if (clause.kind != ClauseKind::use || clause.mentions.count != 1 || clause.terms.empty()) return false;
  const Mention& mention = recipe.mentions[clause.mentions.first];
  const Target& target = mention.target;
  const bool itself = target.kind == TargetKind::part && target.index == clause.part;
  const Quantity& amount = recipe.terms[clause.terms.first].amount;
  return itself && !mention.takes && !amount.is_lost() && amount.unit == kNoUnit;
}

Shown limit_of(const std::optional<Batch>& batch, Shower& shower) {
  if (!batch || batch->amount.is_lost()) return {};
  if (!shower.stays(batch->amount.unit)) return shower.amount(nullptr, batch->amount, {}, Origin::worked_out);
  Shown shown = from_text(write_plain(batch->amount), batch->amount);
  shown.changed = false;
  return shown;
}

Rounds rounds_of(const Recipe& recipe, const std::optional<Batch>& batch, Index part, Shower& shower) {
  if (!batch || batch->amount.is_lost()) return {};
  const Dimension dimension = batch->amount.dimension();
  Ends need = kUnknown;
  if (!batch->thing.empty()) need = of_line(recipe, part, batch->thing, dimension);
  if (is_lost(need)) need = of_makes(recipe, part, batch->thing, dimension);
  return share_out(recipe, batch->amount, need, shower);
}

std::vector<Rounds> loads_of(const Recipe& recipe, Shower& shower) {
  std::vector<Rounds> out;
  for (Index c = 0; c < recipe.clauses.size(); ++c) {
    const Clause& clause = recipe.clauses[c];
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
      if (recipe.terms[t].role != TermRole::load || clause.part >= recipe.parts.size()) continue;
      const Quantity& load = recipe.terms[t].amount;
      if (load.is_lost() || clause.step >= recipe.steps.size()) continue;
      const Slice& steps = recipe.parts[clause.part].steps;
      Found found = handled(recipe, recipe.steps[clause.step], c, load);
      // Things that are counted may have been laid out some steps before; what is weighed is named where it is done.
      for (Index s = clause.step; !found.any && load.dimension() == Dimension::count && s-- > steps.first;)
        found = handled(recipe, recipe.steps[s], c, load);
      if (!found.any || found.several) continue;
      Rounds rounds = share_out(recipe, load, found.need, shower);
      rounds.term = t;
      if (rounds.count > 1) out.push_back(std::move(rounds));
    }
  }
  return out;
}

}  // namespace qtn
