#include "plan/search.hpp"

#include <algorithm>
#include <utility>

namespace qtn::plan {
namespace {

constexpr std::uint64_t kFirstTry = 64;    // nodes before another aim is taken
constexpr std::uint64_t kFirstPlan = 256;    // nodes before the first plan is looked for by another way
constexpr std::size_t kShared = 24;          // moments of a sum that are weighed one by one
constexpr int kHighAims = 2;
constexpr int kLowest = 40;                 // halvings that leave one step

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
  if (!windows_.open()) return false;
  const Distances distances(problem_);
  const std::vector<Ticks> lengths = works(problem_, distances);
  energy_.emplace(problem_, lengths);
  collect_pairs(distances);
  tied_ = tied(problem_);
  for (const Objective& objective : problem_.objectives) queues_.emplace_back(problem_, objective, distances, lengths);
  return true;
}

Ticks Search::reached(const std::vector<Ticks>& times) const {
  return goal_ < problem_.objectives.size() ? value(problem_.objectives[goal_], times) : 0;
}

Ticks Search::bound() const {
  if (goal_ >= queues_.size()) return 0;
  return reached(windows_.late()) - (wanted_[goal_] == -kNever ? loss(goal_) : lost_[goal_]);
}

// What must be reached leaves each moment of an objective only so much room.
bool Search::cut() {
  for (std::size_t i = 0; i < wanted_.size(); ++i) {
    if (wanted_[i] == -kNever) continue;
    const Objective& objective = problem_.objectives[i];
    const bool sum = objective.kind == Objective::Kind::sum;
    const Ticks room = value(objective, windows_.late()) - wanted_[i];
    if (room < 0) return false;
    lost_[i] = sum ? loss(i) : 0;
    if (room < lost_[i]) return false;
    for (const Point point : objective.points)
      if (!windows_.raise(point, sum ? windows_.late(point) - room : wanted_[i])) return false;
  }
  return windows_.settle();
}

// Pairs that the lags do not settle already.
void Search::collect_pairs(const Distances& distances) {
  for (const Order& order : rivals_.pairs()) {
    const Pair pair{rivals_.lag(order), rivals_.lag({order.what, order.second, order.first})};
    const auto kept = [&](const Lag& lag) { return -distances.most(lag.before)[lag.after] >= lag.least; };
    if (!kept(pair.one) && !kept(pair.other)) pairs_.push_back(pair);
  }
  open_pairs_ = pairs_.size();
}

// Whoever has no room to go first goes second.
bool Search::force() {
  const std::vector<Ticks>&late = windows_.late(), &early = windows_.early();
  const auto cannot = [&](const Lag& lag) { return early[lag.before] + lag.least > late[lag.after]; };
  const auto must = [&](const Lag& lag) { return late[lag.before] + lag.least <= early[lag.after]; };
  for (std::size_t i = 0; i < open_pairs_;) {
    const Pair& pair = pairs_[i];
    const bool not_one = cannot(pair.one), not_other = cannot(pair.other);
    if (not_one && not_other) return false;
    const bool settled = must(pair.one) || must(pair.other);
    if (!not_one && !not_other && !settled) {
      ++i;
      continue;
    }
    std::swap(pairs_[i], pairs_[--open_pairs_]);
    if (!settled && !windows_.add(not_one ? pairs_[open_pairs_].other : pairs_[open_pairs_].one)) return false;
  }
  return true;
}

// What the others of a sum cannot make up for, each moment must bring itself.
bool Search::share() {
  for (std::size_t i = 0; i < wanted_.size(); ++i) {
    const Objective& objective = problem_.objectives[i];
    if (wanted_[i] == -kNever || objective.kind != Objective::Kind::sum || objective.points.size() > kShared) continue;
    const Ticks sum = value(objective, windows_.late());
    for (const Point point : objective.points) {
      const Ticks others = sum - windows_.late(point) - queues_[i].loss(windows_.late(), point);
      if (!windows_.raise(point, wanted_[i] - others)) return false;
    }
  }
  return windows_.settle();
}

// The cheap rules until nothing moves; the dear ones once.
bool Search::narrow() {
  for (bool weighed = false;;) {
    const std::size_t before = windows_.mark();
    if (!cut() || !force()) return false;
    if (windows_.mark() != before) continue;
    if (weighed) return true;
    weighed = true;
    if (!share() || !energy_->narrow(windows_)) return false;
    if (windows_.mark() == before) return true;
  }
}

void Search::keep() {
  const Settled settled = settle(problem_, rivals_, windows_.late());
  best_ = settled.times.empty() ? windows_.late() : settled.times;
  if (goal_ < problem_.objectives.size()) wanted_[goal_] = reached(*best_) + 1;
}

// Looks into the latest rivalries: what has one answer is settled at once, of the others the dearest is branched on.
Search::Step Search::look(Frame& frame) {
  rivals_.find(windows_.late(), looks_, rivalries_);
  if (rivalries_.empty()) return Step::leaf;
  std::pair<Ticks, Ticks> least{kNever, kNever};
  bool settled = false;
  std::vector<Choice> choices;
  frame.choices.clear();
  for (const Rivalry& rivalry : rivalries_) {
    if (settled && std::any_of(rivalry.choices.begin(), rivalry.choices.end(),
                               [&](const Order& order) { return rivals_.holds(order, windows_.late()); }))
      continue;
    choices.clear();
    for (const Order& order : rivalry.choices) {
      const std::size_t mark = windows_.mark();
      if (windows_.add(rivals_.lag(order)) && cut()) choices.push_back({order, bound(), windows_.sum_late()});
      windows_.undo(mark);
    }
    if (choices.empty()) return Step::dead;
    if (choices.size() == 1) {
      if (!windows_.add(rivals_.lag(choices[0].order))) return Step::dead;
      settled = true;
      continue;
    }
    std::sort(choices.begin(), choices.end(),
              [](const Choice& a, const Choice& b) { return std::pair(a.bound, a.sum) < std::pair(b.bound, b.sum); });
    const std::pair best{choices.back().bound, choices.back().sum};
    if (best >= least) continue;
    least = best;
    frame.choices = choices;
  }
  if (settled) return Step::again;
  return Step::branch;
}

void Search::want(Number goal, Ticks target) {
  goal_ = goal;
  lost_.assign(problem_.objectives.size(), 0);
  wanted_.assign(std::min<std::size_t>(goal + 1, problem_.objectives.size()), -kNever);
  for (std::size_t i = 0; i < wanted_.size() && best_; ++i) wanted_[i] = value(problem_.objectives[i], *best_);
  if (goal < wanted_.size()) wanted_[goal] = target;
}

bool Search::hopeless(Number goal, Ticks target) {
  want(goal, target);
  const std::size_t root = windows_.mark(), pairs = open_pairs_;
  const bool out = !narrow();
  windows_.undo(root);
  open_pairs_ = pairs;
  return out;
}

Ticks Search::climb(Number goal, std::uint64_t& nodes, std::uint64_t most) {
  if (!best_) {
    // A search may be lost in a part without plans: others look at fewer rivalries, and find their way by other turnings.
    Ticks bound = kNever;
    std::uint64_t limit = kFirstPlan;
    for (std::size_t tries = 0; !best_ && bound > -kNever && nodes < most; ++tries, limit += limit / 2) {
      looks_ = std::size_t{16} >> tries % 5;
      bound = run(goal, -kNever, nodes, std::min(most, nodes + limit));
    }
    looks_ = 16;
    if (!best_ || goal >= problem_.objectives.size()) return bound;
  }
  want(goal, -kNever);
  Ticks low = reached(*best_), high = reached(windows_.late());
  for (Ticks least = low; least < high;) {  // halving: `least` is not hopeless, above `high` is
    const Ticks middle = least + (high - least + 1) / 2;
    if (hopeless(goal, middle)) high = middle - 1;
    else least = middle;
  }
  // A high aim narrows the windows most, and is soon reached or soon refuted; where neither, a lower one. For a sum the
  // step just above what is reached comes first: its bounds are good enough to end most searches there.
  const bool sum = problem_.objectives[goal].kind == Objective::Kind::sum;
  std::uint64_t limit = sum ? 8 * kFirstTry : kFirstTry;
  for (int halvings = sum ? kLowest : 0; low < high && nodes < most;) {
    const Ticks aim = low + std::max<Ticks>(1, (high - low) >> halvings);
    const std::uint64_t part = aim == low + 1 ? limit : std::max(kFirstTry, limit / 8);
    const Ticks bound = run(goal, aim, nodes, std::min(most, nodes + part));
    const Ticks reach = reached(*best_);
    high = std::min(high, std::max({bound, reach, aim - 1}));
    if (reach > low) {
      low = reach;
      halvings = sum ? halvings : std::max(0, halvings - 1);
    } else if (high >= aim) {
      if (sum ? halvings == kLowest : aim > low + 1) {
        halvings = sum ? 0 : halvings + 1;
      } else if (sum && halvings < kHighAims && aim > low + 1) {
        ++halvings;
      } else {
        halvings = sum ? kLowest : 0;
        Ticks was = low;
        do {
          was = reached(*best_);
          look_nearby(goal, nodes, most, limit / (2 * kNearby));
        } while (reached(*best_) > was && nodes < most);
        low = reached(*best_);
        limit *= 2;
      }
    }
  }
  return std::max(low, high);
}

Ticks Search::run(Number goal, Ticks target, std::uint64_t& nodes, std::uint64_t most) {
  want(goal, target);
  const std::size_t root = windows_.mark(), root_pairs = open_pairs_;
  Ticks open = -kNever;  // the best that the parts not searched could hold
  std::vector<Frame> stack;
  Frame frame{windows_.mark(), open_pairs_, {}, {}, kNever};
  bool down = true;
  for (;;) {
    if (down) {
      if (nodes >= most) {
        open = frame.bound;
        for (const Frame& above : stack)
          for (const Choice& choice : above.choices) open = std::max(open, choice.bound);
        break;
      }
      ++nodes;
      if (narrow()) {
        frame.bound = std::min(frame.bound, bound());
        const Step step = look(frame);
        if (step == Step::again) continue;
        if (step == Step::leaf) {
          keep();
          if (target == -kNever) break;  // any plan will do
        }
        if (step == Step::branch) {
          frame.mark = windows_.mark();
          frame.pairs = open_pairs_;
          stack.push_back(frame);
        }
      }
      down = false;
    }
    while (!stack.empty() && stack.back().choices.empty()) stack.pop_back();
    if (stack.empty()) break;
    Frame& top = stack.back();
    windows_.undo(top.mark);
    open_pairs_ = top.pairs;
    const Choice choice = top.choices.back();
    top.choices.pop_back();
    if (goal_ < wanted_.size() && choice.bound < wanted_[goal_]) continue;
    // What was tried and searched out need not hold again: the next answer is without it.
    bool held = true;
    if (top.choices.size() + top.tried.size() > 1)
      for (const Order& order : top.tried) {
        const Lag lag = rivals_.lag(order);
        held = held && windows_.add({lag.after, lag.before, 1 - lag.least});
      }
    top.tried.push_back(choice.order);
    if (!held || !windows_.add(rivals_.lag(choice.order))) continue;
    frame = {windows_.mark(), open_pairs_, {}, {}, choice.bound};
    down = true;
  }
  windows_.undo(root);
  open_pairs_ = root_pairs;
  return best_ ? std::max(open, reached(*best_)) : open;
}

}  // namespace qtn::plan
