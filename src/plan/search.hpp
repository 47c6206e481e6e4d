// Branch and bound over who goes first.
//
// A node is a set of orders; its latest plan bounds every objective at once. Where two jobs clash in that plan, one must go
// first; which rivalry to settle is found by looking at what each answer would cost. What is still to be beaten gives
// every moment an earliest time, too, and whoever has no room to go first goes second.
#pragma once
#include <optional>

#include "plan/energy.hpp"

namespace qtn::plan {

Ticks value(const Objective& objective, const std::vector<Ticks>& times);

// The latest plan that keeps only as many of the orders of a plan as it takes that nobody is busy twice.
struct Settled {
  std::vector<Ticks> times;
  std::vector<Order> orders;
  std::vector<Why> why;
};
Settled settle(const Problem& problem, const Rivals& rivals, const std::vector<Ticks>& plan);

constexpr std::uint64_t kNearby = 24;  // nodes of a turn near a plan

std::vector<Number> tied(const Problem& problem);

class Search {
 public:
  Search(const Problem& problem, const Rivals& rivals) : problem_(problem), rivals_(rivals), windows_(problem) {}

  // False when no plan exists even if nobody is ever busy twice.
  bool open();
  // The latest such plan.
  const std::vector<Ticks>& relaxed() const { return windows_.late(); }
  // Makes objective `goal` as good as can be and the earlier ones no worse than in the best plan so far; with as many
  // objectives as there are, only looks for a plan. What no such plan can exceed.
  Ticks climb(Number goal, std::uint64_t& nodes, std::uint64_t most);
  const std::optional<std::vector<Ticks>>& best() const { return best_; }

 private:
  struct Choice {
    Order order;
    Ticks bound, sum;
  };
  struct Frame {
    std::size_t mark;
    std::size_t pairs;
    std::vector<Choice> choices;  // the best one last
    std::vector<Order> tried;
    Ticks bound;
  };
  enum class Step : std::uint8_t { dead, leaf, again, branch };

  // Whether a plan of at least this value is out of the question before anything is tried.
  bool hopeless(Number goal, Ticks target);
  Ticks run(Number goal, Ticks target, std::uint64_t& nodes, std::uint64_t most);
  // Better plans near the best one, some nodes a turn.
  void look_nearby(Number goal, std::uint64_t& nodes, std::uint64_t most, std::uint64_t turns);
  std::vector<char> movable(std::uint64_t turn) const;
  void want(Number goal, Ticks target);
  Ticks reached(const std::vector<Ticks>& times) const;
  Ticks bound() const;
  Ticks loss(std::size_t objective) const { return queues_[objective].loss(windows_.late()); }
  bool cut();
  bool force();
  bool share();
  bool narrow();
  Step look(Frame& frame);
  void keep();

  const Problem& problem_;
  const Rivals& rivals_;
  Windows windows_;
  std::optional<Energy> energy_;
  // One of two orders, as lags.
  struct Pair {
    Lag one, other;
  };
  void collect_pairs(const Distances& distances);
  std::vector<Pair> pairs_;  // the open ones first
  std::size_t open_pairs_ = 0;
  Number goal_ = 0;
  std::vector<Ticks> lost_;    // of each objective: its `loss` when it was cut last
  std::vector<Ticks> wanted_;  // of each objective up to the goal; -kNever: anything
  std::optional<std::vector<Ticks>> best_;
  std::vector<Number> tied_;   // of each moment: which dish
  std::uint64_t turn_ = 0;
  std::size_t looks_ = 16;     // rivalries looked into at a node
  std::vector<Rivalry> rivalries_;
  std::vector<Queues> queues_;  // of each objective
};

}  // namespace qtn::plan
