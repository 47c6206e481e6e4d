// The steps of a part in order: what waits for what.
#include <algorithm>

#include "day/winder.hpp"

namespace qtn {
namespace {

// More batches than this are told as this many: a slip, and no plan of a day.
constexpr int kMostBatches = 50;

int batches_of(const Making& making, Index part) {
  if (making.adapted == nullptr || part >= making.adapted->part_rounds.size()) return 1;
  Wide count = making.adapted->part_rounds[part].count;
  if (part == making.recipe->dish) count = std::max(count, making.adapted->rounds.count);
  return static_cast<int>(std::clamp<Wide>(count, 1, kMostBatches));
}

// The part that a line, or a mention, is of; kNone for anything else.
Index part_of(const Recipe& recipe, const Target& target) {
  if (target.kind == TargetKind::part) return target.index;
  if (target.kind == TargetKind::line && recipe.lines[target.index].target.kind == TargetKind::part)
    return recipe.lines[target.index].target.index;
  return kNone;
}

}  // namespace

// A making of one part is that part and what it takes, and what those take.
bool Winder::wanted(const Making& making, Index part) const {
  if (making.part == kNone || making.part == part) return true;
  const Recipe& recipe = *making.recipe;
  std::vector<char> reached(recipe.parts.size(), 0);
  std::vector<Index> open{making.part};
  while (!open.empty()) {
    const Index at = open.back();
    open.pop_back();
    if (at >= reached.size() || reached[at] != 0) continue;
    reached[at] = 1;
    for (const Clause& clause : recipe.clauses) {
      if (clause.part != at) continue;
      for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m)
        if (const Index other = part_of(recipe, recipe.mentions[m].target); other != kNone) open.push_back(other);
    }
    const Slice lines = recipe.parts[at].lines;
    for (Index l = lines.first; l < lines.end(); ++l)
      if (recipe.lines[l].target.kind == TargetKind::part) open.push_back(recipe.lines[l].target.index);
  }
  return part < reached.size() && reached[part] != 0;
}

void Winder::making(Index index) {
  parts_.emplace_back(recipe(index).parts.size());
  for (Index p = 0; p < recipe(index).parts.size(); ++p)
    if (wanted(clock_.makings[index], p)) part(index, p);
}

void Winder::part(Index making, Index part) {
  PartClock clock;
  clock.made = true;
  Path way;
  batches_ = batches_of(clock_.makings[making], part);
  for (batch_ = 0; batch_ < batches_; ++batch_) {
    way.beside = {};
    way.waits.clear();
    steps(making, part, clock, way);
  }
  batch_ = 0, batches_ = 1;
  Doing whole;
  whole.what = Doing::What::whole;
  whole.making = making, whole.part = part;
  Minutes nothing;
  nothing.most = Fraction(0);
  clock.whole = add(whole, nothing, kNothing, kNothing);
  for (const plan::End& end : way.ends) rule(end, plan::begin_of(clock.whole), Fraction(0), kNothing);
  clock.waits = way.waits;
  parts_[making][part] = std::move(clock);
}

// How much longer than the least the run up to an activity may take by chance.
Fraction Winder::loose_of(Number last) const {
  Fraction loose(0);
  for (Number i = last; i != kNothing; i = clock_.network.activities[i].follows)
    if (minutes_[i].chance) loose += *minutes_[i].most - minutes_[i].least;
  return loose;
}

void Winder::ordinary(const Chain& chain, Path& way) {
  const plan::End begin = plan::begin_of(chain.first);
  for (const plan::End& end : way.ends) rule(end, begin, Fraction(0), kNothing);
  // A dough rises from the moment that it is mixed, whatever the cook does meanwhile; and what is done `if needed` is done
  // then or not at all.
  const Doing& first = clock_.doings[chain.first];
  const bool if_needed = first.clause != kNone && recipe(first.making).clauses[first.clause].if_needed;
  if (((first.wait && first.verb->spoils) || if_needed) && way.ends.size() == 1)
    longest(way.ends.front(), begin, loose_of(way.ends.front().activity), kNothing);
  // A pause behind a wait with a written longest time is part of the waiting.
  for (const auto& [wait, minutes] : way.waits)
    longest(plan::begin_of(wait), begin, *minutes.most, clock_.network.activities[wait].label);
  for (const Chain& ahead : way.aheads) {
    const plan::End end = plan::end_of(ahead.last);
    rule(end, begin, Fraction(0), kNothing);
    longest(end, begin, loose_of(ahead.last), kNothing);  // ready just then, for the longest of its length
  }
  way.ends.clear(), way.waits.clear(), way.aheads.clear();
  way.beside = begin;
}

void Winder::steps(Index making, Index part, PartClock& clock, Path& way) {
  const Recipe& recipe = this->recipe(making);
  const Slice steps = recipe.parts[part].steps;
  for (Index s = steps.first; s < steps.end(); ++s) {
    const Step& step = recipe.steps[s];
    if (step.kind == StepKindOf::note || is_other_way(recipe, s, order_.way)) continue;
    const Chain chain = this->chain(making, part, s);
    if (chain.empty()) continue;
    const bool beside = step.kind == StepKindOf::meanwhile;
    if (step.kind == StepKindOf::ahead) {
      way.aheads.push_back(chain);
    } else {
      if (!beside) {
        ordinary(chain, way);
        clock.last = chain.last;
      } else if (way.beside.activity != kNothing) {
        rule(way.beside, plan::begin_of(chain.first), Fraction(0), kNothing);
      }
      way.ends.push_back(plan::end_of(chain.last));
      if (minutes_[chain.last].longest_binds) way.waits.push_back({chain.last, minutes_[chain.last]});
    }
    for (Number i = chain.first; i <= chain.last && step.kind != StepKindOf::ahead; ++i)
      if (!clock_.doings[i].wait) clock.last_making = i;
  }
  if (clock.last == kNothing && !way.ends.empty()) clock.last = way.ends.back().activity;
}

}  // namespace qtn
