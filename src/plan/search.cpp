#include "plan/search.hpp"

#include <algorithm>

namespace qtn::plan {
namespace {

constexpr std::size_t kLookAhead = 16;  // conflicts that are looked into before one is chosen; so in the study

}  // namespace

Search::Search(const Problem& problem, const Budget& budget)
    : problem_(problem), budget_(budget), state_(problem), conflicts_(problem), limits_(problem) {}

std::vector<Ticks> Search::values() const {
  std::vector<Ticks> out;
  for (const Objective& one : problem_.objectives) out.push_back(value_of(one, state_.times()));
  return out;
}

// Can a node with these values hold anything better than the best plan? Objectives before the one in hand are settled;
// the one in hand has to gain. Before any plan is found, everything is promising.
bool Search::promising(const std::vector<Ticks>& values) const {
  if (!found_) return true;
  for (std::size_t i = 0; i < objective_; ++i)
    if (values[i] < plan_.values[i]) return false;
  return objective_ < values.size() && values[objective_] > plan_.values[objective_];
}

std::vector<Search::Child> Search::children_of(const Conflict& conflict) {
  std::vector<Child> out;
  std::vector<Lag> turned_down;
  for (const auto& [a, b] : conflict.pairs) {
    for (const bool swapped : {false, true}) {
      const Number first = swapped ? b : a, second = swapped ? a : b;
      const Job &one = problem_.jobs[first], &other = problem_.jobs[second];
      const Ticks gap = gap_between(problem_, one, other);
      const auto mark = state_.mark();
      if (state_.add(in_order(one, other, gap))) {
        std::vector<Ticks> values = this->values();
        if (promising(values)) out.push_back({std::move(values), first, second, conflict.what, {in_order(one, other, gap)}});
      }
      state_.take_back(mark);
    }
  }
  // The best first; what comes later has the orders before it turned down, so that no plan is met twice.
  std::stable_sort(out.begin(), out.end(), [&](const Child& a, const Child& b) {
    for (std::size_t i = objective_; i < a.values.size(); ++i)
      if (a.values[i] != b.values[i]) return a.values[i] > b.values[i];
    return false;
  });
  for (Child& child : out) {
    child.lags.insert(child.lags.end(), turned_down.begin(), turned_down.end());
    const Job &one = problem_.jobs[child.first], &other = problem_.jobs[child.second];
    turned_down.push_back(not_in_order(one, other, gap_between(problem_, one, other)));
  }
  return out;
}

// Fills the frame with the children of the node in hand. False: it is a plan, or holds none.
bool Search::expand(Frame& frame) {
  if (found_ && !problem_.objectives.empty()) {
    if (!promising(values()) || limits_.of(problem_.objectives[objective_], state_) <= plan_.values[objective_]) return false;
  }
  const std::vector<Conflict> conflicts = conflicts_.find(state_, kLookAhead);
  if (conflicts.empty()) {
    settle();
    return false;
  }
  // The pair whose better child still loses most, so that a dead end shows early; a single child is as good as forced.
  std::vector<Child> best;
  bool any = false;
  for (const Conflict& conflict : conflicts) {
    std::vector<Child> children = children_of(conflict);
    if (children.empty()) return false;
    bool better = !any || children.size() == 1;
    if (any && !better && best.size() > 1) {
      for (std::size_t i = objective_; i < children.front().values.size(); ++i) {
        const Ticks here = children.front().values[i], there = best.front().values[i];
        const Ticks here_last = children.back().values[i], there_last = best.back().values[i];
        if (here == there && here_last == there_last) continue;
        better = here < there || (here == there && here_last < there_last);
        break;
      }
    }
    if (better) best = std::move(children), any = true;
    if (best.size() == 1) break;
  }
  frame.children = std::move(best);
  std::reverse(frame.children.begin(), frame.children.end());
  return true;
}

void Search::settle() {
  found_ = true;
  plan_.outcome = Plan::Outcome::planned;
  plan_.times = state_.times();
  plan_.orders = orders_;
  plan_.oven_of = conflicts_.oven_of();
  plan_.values = values();
}

// Looks for the best value of one objective, the ones before it kept.
void Search::improve(std::size_t objective) {
  objective_ = objective;
  const bool wanted = objective < problem_.objectives.size();
  const auto bound_here = [&] { return wanted ? limits_.of(problem_.objectives[objective], state_) : Ticks{0}; };
  const Ticks root = bound_here();
  if (found_ && wanted && plan_.values[objective] >= root) {
    plan_.bounds.push_back(plan_.values[objective]);
    return;
  }
  std::vector<Frame> open;
  open.push_back({state_.mark(), orders_.size(), {}});
  if (!expand(open.back())) open.pop_back();
  while (!open.empty() && plan_.nodes < budget_.nodes) {
    if (found_ && wanted && plan_.values[objective] >= root) break;
    Frame& frame = open.back();
    state_.take_back(frame.mark);
    orders_.resize(frame.orders);
    if (frame.children.empty()) {
      open.pop_back();
      continue;
    }
    const Child child = std::move(frame.children.back());
    frame.children.pop_back();
    ++plan_.nodes;
    if (!promising(child.values)) continue;
    bool fine = true;
    for (const Lag& lag : child.lags) fine = fine && state_.add(lag);
    if (!fine) continue;
    orders_.push_back({child.what, child.first, child.second});
    Frame next{state_.mark(), orders_.size(), {}};
    if (expand(next)) open.push_back(std::move(next));
  }
  // What is still open may be better by so much.
  const bool proven = !found_ || !wanted || plan_.values[objective] >= root || open.empty();
  Ticks bound = found_ && wanted ? plan_.values[objective] : root;
  if (!proven)
    for (const Frame& frame : open)
      for (const Child& child : frame.children) bound = std::max(bound, std::min(root, child.values[objective]));
  if (wanted) plan_.bounds.push_back(bound);
  if (!open.empty()) state_.take_back(open.front().mark);
  orders_.clear();
  if (!found_) plan_.outcome = open.empty() ? Plan::Outcome::impossible : Plan::Outcome::given_up;
}

Plan Search::run() {
  if (!state_.start()) {
    plan_.outcome = Plan::Outcome::impossible;
    return std::move(plan_);
  }
  improve(0);
  for (std::size_t i = 1; found_ && i < problem_.objectives.size(); ++i) improve(i);
  return std::move(plan_);
}

}  // namespace qtn::plan
