#include "plan/search.hpp"

#include <algorithm>

namespace qtn::plan {
namespace {

constexpr std::size_t kLooks = 16;           // rivalries that a choice is made among
constexpr std::uint64_t kFirstTry = 30;     // clashes before another aim is taken, for a sum
constexpr std::uint64_t kFirstStart = 800;   // and for a beginning: high aims are found in the end, lower ones no sooner
constexpr std::uint64_t kRound = 100;        // clashes before the search begins again, times 1, 1, 2, 1, 1, 2, 4, ...

// Luby, Sinclair and Zuckerman 1993.
std::uint64_t luby(std::uint64_t round) {
  std::uint64_t size = 1, power = 0;
  while (size < round + 1) size = 2 * size + 1, ++power;
  while (size - 1 != round) {
    size = (size - 1) / 2;
    --power;
    round %= size;
  }
  return std::uint64_t{1} << power;
}

}  // namespace

Ticks value(const Objective& objective, const std::vector<Ticks>& times) {
  const bool sum = objective.kind == Objective::Kind::sum;
  Ticks out = sum || objective.points.empty() ? 0 : kNever;
  for (const Point point : objective.points) out = sum ? out + times[point] : std::min(out, times[point]);
  return out;
}

Settled settle(const Problem& problem, const Rivals& rivals, const std::vector<Ticks>& plan) {
  Windows windows(problem);
  windows.open();
  Settled out;
  std::vector<Rivalry> found;
  for (rivals.find(windows.late(), 1, found); !found.empty(); rivals.find(windows.late(), 1, found)) {
    const std::vector<Order>& choices = found.front().choices;
    const auto kept = std::find_if(choices.begin(), choices.end(), [&](const Order& order) { return rivals.holds(order, plan); });
    if (kept == choices.end() || !windows.add(rivals.lag(*kept))) return {};  // the plan was none
    out.orders.push_back(*kept);
  }
  // Once more with all orders from the start, so that every reason is the last word.
  Problem ordered = problem;
  for (const Order& order : out.orders) ordered.lags.push_back(rivals.lag(order));
  Windows again(ordered);
  again.open();
  out.times = again.late();
  out.why = again.why();
  for (Why& why : out.why)
    if (why.kind == Why::Kind::lag && why.index >= problem.lags.size())
      why = {Why::Kind::order, why.index - static_cast<Number>(problem.lags.size())};
  return out;
}

bool Search::open() {
  Windows windows(problem_);
  if (!windows.open()) return false;
  relaxed_ = windows.late();
  for (Point point = 0; point < problem_.points; ++point) facts_.add(windows.early({point, 0}), windows.late(point));
  for (const Lag& lag : problem_.lags)
    if (lag.before != lag.after) facts_.lag(lag);
  for (const Job& job : problem_.jobs)
    if (job.begin.point != job.end.point) facts_.lag({job.begin.point, job.end.point, job.begin.shift - job.end.shift});
  const Distances distances(problem_);
  rules_.emplace(problem_, distances, facts_);
  const auto kept = [&](const Lag& lag) { return -distances.most(lag.before)[lag.after] >= lag.least; };
  for (const auto& [one, other] : rivals_.pairs()) {
    if (kept(one) || kept(other)) continue;
    if (!facts_.weigh(pair(one, other).side / 2)) return false;
  }
  late_.resize(problem_.points);
  return true;
}

// One of two lags holds: a moment that is 1 for the one and 0 for the other.
Fact Search::pair(const Lag& one, const Lag& other) {
  const auto key = [](const Lag& lag) { return std::array<Ticks, 3>{Ticks{lag.before}, Ticks{lag.after}, lag.least}; };
  const auto known = orders_.find(key(one));
  if (known != orders_.end()) return known->second;
  const Fact is{2 * facts_.choice(one, other), 1}, is_not = no(is);
  orders_.emplace(key(one), is);
  orders_.emplace(key(other), is_not);
  return is;
}

void Search::keep() {
  const Settled settled = settle(problem_, rivals_, late_);
  best_ = settled.times.empty() ? late_ : settled.times;
}

// What speaks against an order. For a sum: that the best plan has it otherwise; then what it takes away. For a beginning,
// whose aims leave little room: how little room it leaves.
std::pair<bool, Ticks> Search::cost_of(const Order& order) const {
  const Lag lag = rivals_.lag(order);
  const Ticks early = facts_.early({lag.before, 0});
  if (!sum() && early > -kNever / 2) return {false, early + lag.least - late_[lag.after]};
  return {sum() && best_ && !rivals_.holds(order, *best_), late_[lag.before] + lag.least - late_[lag.after]};
}

// That one of the choices holds, for good.
bool Search::know(const Rivalry& rivalry, std::vector<Fact>& facts) {
  facts.clear();
  for (const Order& order : rivalry.choices) {
    const Lag lag = rivals_.lag(order);
    facts.push_back(pair(lag, {lag.after, lag.before, 1 - lag.least}));
    if (!facts_.weigh(facts.back().side / 2)) return false;
  }
  if (facts.size() == 2 && facts[0] == no(facts[1])) return true;
  std::vector<std::pair<Side, Ticks>> key;
  for (const Fact& fact : facts) key.push_back({fact.side, fact.least});
  std::sort(key.begin(), key.end());
  return !clauses_.insert(key).second || facts_.either(facts);
}

std::optional<Fact> Search::choose(bool& possible) {
  possible = true;
  for (Point point = 0; point < problem_.points; ++point) late_[point] = facts_.late({point, 0});
  rivals_.find(late_, kLooks, rivalries_);
  std::optional<Fact> chosen;
  double most = -1;
  std::vector<Fact> facts;
  for (const Rivalry& rivalry : rivalries_) {
    if (!know(rivalry, facts)) return possible = false, std::nullopt;
    // In every other round the latest rivalry comes first; else the one that had a part in most clashes.
    double weight = 0;
    if (by_weight_)
      for (const Fact& fact : facts) weight = std::max(weight, facts_.weight(fact.side / 2));
    if (weight <= most) continue;
    std::pair<bool, Ticks> least{true, kNever};
    std::optional<Fact> here;
    for (std::size_t i = 0; i < facts.size(); ++i) {
      if (facts_.fails(facts[i])) continue;
      const std::pair<bool, Ticks> cost = cost_of(rivalry.choices[i]);
      if (cost < least) least = cost, here = facts[i];
    }
    if (!here) continue;
    most = weight;
    chosen = here;
  }
  return chosen;
}

Search::Outcome Search::run(const std::optional<Fact>& aim, std::uint64_t& nodes, std::uint64_t most) {
  facts_.back(0);
  std::uint64_t round = 0, left = kRound * luby(round);
  by_weight_ = sum();
  for (;;) {
    bool possible = rules_->follow();
    if (possible && facts_.level() == 0 && aim) {
      if (facts_.fails(*aim)) return Outcome::refuted;
      facts_.suppose(*aim);
      continue;
    }
    if (possible) {
      const std::size_t told = facts_.told();
      const std::optional<Fact> choice = choose(possible);
      if (possible && rivalries_.empty()) return keep(), Outcome::found;
      if (possible) {
        if (facts_.told() == told) facts_.suppose(*choice);
        continue;
      }
    }
    if (nodes >= most) return Outcome::ended;
    ++nodes;
    if (!facts_.learn()) return Outcome::impossible;
    if (--left == 0) {
      left = kRound * luby(++round);
      by_weight_ = sum() || round % 2 == 1;
      facts_.back(0);
      }
  }
}

bool Search::sum() const {
  return goal_ >= problem_.objectives.size() || problem_.objectives[goal_].kind == Objective::Kind::sum;
}

Ticks Search::highest() const { return -facts_.least(2 * rules_->value_of(goal_) + 1); }

Ticks Search::climb(Number goal, std::uint64_t& nodes, std::uint64_t most) {
  goal_ = goal;
  const bool any = goal < problem_.objectives.size();
  if (!best_) {
    rules_->mind(0);
    const Outcome outcome = run(std::nullopt, nodes, most);
    if (outcome == Outcome::impossible) return -kNever;
    if (!best_ || !any) return kNever;
  }
  // What the objectives before have reached is kept from here on.
  facts_.back(0);
  rules_->mind(goal + 1);
  for (Number i = 0; i < goal; ++i) facts_.tell({2 * rules_->value_of(i), value(problem_.objectives[i], *best_)}, {});
  const Objective& objective = problem_.objectives[goal];
  const Point point = rules_->value_of(goal);
  const auto reached = [&] { return value(objective, *best_); };
  if (!rules_->follow()) return reached();
  // What falls at once: halving between what is reached and what is not known to be out of reach.
  for (Ticks least = reached(); least < highest();) {
    const Ticks middle = least + (highest() - least + 1) / 2;
    facts_.suppose({2 * point, middle});
    const bool hopeless = !rules_->follow();
    facts_.back(0);
    if (!hopeless) least = middle;
    else if (!facts_.tell({2 * point + 1, 1 - middle}, {}) || !rules_->follow()) return reached();
  }
  // A high aim leaves the least room, and is soon reached or soon refuted; where neither, a lower one.
  std::uint64_t limit = sum() ? kFirstTry : kFirstStart;
  for (int halvings = 0; reached() < highest() && nodes < most;) {
    const Ticks low = reached(), high = highest();
    const Ticks aim = low + std::max<Ticks>(1, (high - low) >> halvings);
    const Outcome outcome = run(Fact{2 * point, aim}, nodes, std::min(most, nodes + limit));
    if (outcome == Outcome::impossible) return reached();
    facts_.back(0);
    if (outcome == Outcome::refuted) facts_.tell({2 * point + 1, 1 - aim}, {});
    if (outcome == Outcome::found) halvings = std::max(0, halvings - 1);
    if (outcome != Outcome::ended) continue;
    if (aim > low + 1) ++halvings;
    else halvings = 0, limit *= 2;
  }
  facts_.back(0);
  return std::max(reached(), highest());
}

}  // namespace qtn::plan
