#include "plan/facts.hpp"

#include <algorithm>

namespace qtn::plan {
namespace {

constexpr std::uint16_t kManyRises = 6;   // of one side in one go, before a circle is looked for

bool unbounded(Ticks least) { return least <= -kNever / 2; }

}  // namespace

Point Facts::add(Ticks low, Ticks high) {
  least_.push_back(low), least_.push_back(-high);
  const std::size_t sides = least_.size();
  last_.resize(sides, -1);
  steps_.resize(sides), rooms_.resize(sides), given_.resize(sides), watches_.resize(sides);
  rises_.resize(sides, 0);
  weight_.push_back(0);
  return static_cast<Point>(sides / 2 - 1);
}

void Facts::lag(const Lag& lag) {
  for (const auto& [from, to] : {std::pair{2 * lag.before, 2 * lag.after}, std::pair{2 * lag.after + 1, 2 * lag.before + 1}}) {
    const auto arc = static_cast<std::uint32_t>(arcs_.size());
    arcs_.push_back({from, to, lag.least, {kAlways, 0}});
    steps_[from].push_back({to, arc, lag.least});
  }
}

Point Facts::choice(const Lag& one, const Lag& other) {
  const Point out = add(0, 1);
  for (const Fact& given : {Fact{2 * out, 1}, Fact{2 * out + 1, 0}}) {
    const Lag& lag = given.least == 1 ? one : other;
    for (const auto& [from, to] : {std::pair{2 * lag.before, 2 * lag.after}, std::pair{2 * lag.after + 1, 2 * lag.before + 1}}) {
      const auto arc = static_cast<std::uint32_t>(arcs_.size());
      arcs_.push_back({from, to, lag.least, given});
      rooms_[from].push_back({to ^ 1, arc, lag.least});
      given_[given.side].push_back(arc);
    }
  }
  return out;
}

bool Facts::weigh(Point choice) {
  return room(given_[2 * choice].front()) && room(given_[2 * choice + 1].front());
}

bool Facts::set(const Fact& fact, const Reason& reason) {
  if (least_[fact.side] >= fact.least) return true;
  const auto entry = static_cast<std::int32_t>(trail_.size());
  const Ticks other = least_[fact.side ^ 1];
  if (fact.least + other > 0) {
    reasons({fact.side, 0, reason, 0}, entry, 1 - other, clash_);
    clash_.push_back({fact.side ^ 1, other});
    return false;
  }
  trail_.push_back({fact.side, least_[fact.side], reason, last_[fact.side]});
  last_[fact.side] = entry;
  least_[fact.side] = fact.least;
  for (const std::uint32_t arc : given_[fact.side])
    if (fact.least >= arcs_[arc].given.least) steps_[arcs_[arc].from].push_back({arcs_[arc].to, arc, arcs_[arc].least});
  return true;
}

bool Facts::tell(const Fact& fact, std::span<const Fact> because) {
  if (holds(fact)) return true;
  const auto at = static_cast<std::uint32_t>(said_.size());
  said_.insert(said_.end(), because.begin(), because.end());
  return set(fact, {By::told, at, static_cast<std::uint32_t>(because.size())});
}

// A moment that rises again and again may be driven by lags in a circle, and would rise for ever.
bool Facts::circle(Side side) {
  clash_.clear();
  for (std::int32_t entry = last_[side];;) {
    const Entry& now = trail_[static_cast<std::size_t>(entry)];
    if (now.reason.by != By::lag) return false;
    const Arc& arc = arcs_[now.reason.index];
    if (arc.given.side != kAlways) clash_.push_back(arc.given);
    // The entry of `from` as it was then.
    std::int32_t from = last_[arc.from];
    while (from >= 0 && from > entry) from = trail_[static_cast<std::size_t>(from)].before;
    if (from < 0) return false;
    if (arc.from == side) return true;
    entry = from;
  }
}

bool Facts::apply(std::uint32_t index) {
  const Arc& arc = arcs_[index];
  const Ticks from = least_[arc.from];
  if (unbounded(from) || from + arc.least <= least_[arc.to]) return true;
  if (!set({arc.to, from + arc.least}, {By::lag, index, 0})) return false;
  if (++rises_[arc.to] < kManyRises) return true;
  rises_[arc.to] = 0;
  return !circle(arc.to);
}

bool Facts::follow() {
  for (;;) {
    while (next_ < trail_.size()) {
      const auto entry = static_cast<std::int32_t>(next_++);
      const Side side = trail_[static_cast<std::size_t>(entry)].side;
      for (const std::uint32_t arc : given_[side])
        if (holds(arcs_[arc].given) && !apply(arc)) return false;
      if (last_[side] != entry) continue;  // it has risen further
      for (std::size_t i = 0; i < steps_[side].size(); ++i) {
        const Step step = steps_[side][i];
        if (least_[side] + step.least > least_[step.to] && !apply(step.arc)) return false;
      }
      if (!clauses_of(side)) return false;
    }
    if (roomed_ == trail_.size()) break;
    while (roomed_ < trail_.size()) {
      const auto entry = static_cast<std::int32_t>(roomed_++);
      const Side side = trail_[static_cast<std::size_t>(entry)].side;
      rises_[side] = 0;
      if (last_[side] == entry && !room_of(side)) return false;
    }
  }
  return true;
}

bool Facts::room_of(Side side) {
  const Ticks here = least_[side];
  if (unbounded(here)) return true;
  for (const Step& step : rooms_[side])
    if (here + step.least + least_[step.to] > 0 && !room(step.arc)) return false;
  return true;
}

// What an order asks for does not fit: it is not so.
bool Facts::room(std::uint32_t index) {
  const Arc& arc = arcs_[index];
  const bool self = arc.from == arc.to;
  if (!self && least_[arc.from] + arc.least + least_[arc.to ^ 1] <= 0) return true;
  if (self && arc.least <= 0) return true;
  return set(no(arc.given), {By::room, index, 0});
}

void Facts::watch(std::uint32_t clause, std::size_t which) {
  const Fact failed = no(clauses_[clause].facts[which]);
  watches_[failed.side].push_back({clause, failed.least});
}

bool Facts::either(std::vector<Fact> facts, bool learned) {
  // The two that hold, or may still, or failed last, stand in front.
  const auto rank = [&](const Fact& fact) { return fails(fact) ? entry_of(no(fact)) : std::numeric_limits<std::int32_t>::max(); };
  for (std::size_t front = 0; front < 2 && front < facts.size(); ++front)
    for (std::size_t i = front + 1; i < facts.size(); ++i)
      if (rank(facts[i]) > rank(facts[front])) std::swap(facts[front], facts[i]);
  if (facts.empty() || fails(facts[0])) {
    clash_.clear();
    for (const Fact& fact : facts) clash_.push_back(no(fact));
    if (facts.size() < 2) return facts.empty() ? false : tell(facts[0], {});
  }
  if (facts.size() == 1) return tell(facts[0], {});
  const auto at = static_cast<std::uint32_t>(clauses_.size());
  Clause clause{std::move(facts), 0, learned};
  if (learned) {
    std::vector<std::size_t> levels;
    for (const Fact& fact : clause.facts)
      if (fails(fact)) levels.push_back(level_of(entry_of(no(fact))));
    std::sort(levels.begin(), levels.end());
    clause.spread = static_cast<std::uint32_t>(std::unique(levels.begin(), levels.end()) - levels.begin());
    ++learned_;
  }
  clauses_.push_back(std::move(clause));
  watch(at, 0), watch(at, 1);
  const std::vector<Fact>& kept = clauses_[at].facts;
  if (fails(kept[0])) return false;
  if (fails(kept[1])) return set(kept[0], {By::clause, at, 0});
  return true;
}

bool Facts::clauses_of(Side side) {
  std::vector<Watch>& list = watches_[side];
  std::size_t kept = 0;
  const Ticks here = least_[side];
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Watch seen = list[i];
    if (here < seen.least) {
      list[kept++] = seen;
      continue;
    }
    std::vector<Fact>& facts = clauses_[seen.clause].facts;
    if (facts.empty()) continue;  // forgotten
    const Fact failed = no(Fact{side, seen.least});
    if (facts[0] == failed) std::swap(facts[0], facts[1]);
    list[kept++] = seen;
    if (holds(facts[0])) continue;
    bool moved = false;
    for (std::size_t j = 2; j < facts.size() && !moved; ++j) {
      if (fails(facts[j])) continue;
      std::swap(facts[1], facts[j]);
      --kept;
      moved = true;
      watch(seen.clause, 1);  // of another side, or of this one where it has not come so far
    }
    if (moved) continue;
    bool held = true;
    if (fails(facts[0])) {
      clash_.clear();
      for (const Fact& fact : facts) clash_.push_back(no(fact));
      held = false;
    } else {
      held = set(facts[0], {By::clause, seen.clause, 0});
    }
    if (held) continue;
    for (++i; i < list.size(); ++i) list[kept++] = list[i];
    list.resize(kept);
    return false;
  }
  list.resize(kept);
  return true;
}

bool Facts::news(Side& side) {
  while (asked_ < trail_.size()) {
    const auto entry = static_cast<std::int32_t>(asked_++);
    side = trail_[static_cast<std::size_t>(entry)].side;
    if (last_[side] == entry) return true;
  }
  return false;
}

void Facts::suppose(const Fact& fact) {
  levels_.push_back({trail_.size(), said_.size()});
  set(fact, {});
}

void Facts::back(std::size_t level) {
  if (level >= levels_.size()) return;
  const Level& mark = levels_[level];
  while (trail_.size() > mark.trail) {
    const Entry& entry = trail_.back();
    for (std::size_t i = given_[entry.side].size(); i-- > 0;) {
      const std::uint32_t arc = given_[entry.side][i];
      if (least_[entry.side] >= arcs_[arc].given.least) steps_[arcs_[arc].from].pop_back();
    }
    least_[entry.side] = entry.was;
    last_[entry.side] = entry.before;
    rises_[entry.side] = 0;
    trail_.pop_back();
  }
  said_.resize(mark.said);
  levels_.resize(level);
  next_ = roomed_ = asked_ = trail_.size();  // what is left was followed before the next level began
}

}  // namespace qtn::plan
