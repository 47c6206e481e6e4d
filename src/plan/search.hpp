// Branch and bound over which of two jobs goes first. Private to this room.
#pragma once
#include "plan/bounds.hpp"
#include "plan/conflicts.hpp"

namespace qtn::plan {

class Search {
 public:
  Search(const Problem& problem, const Budget& budget);
  Plan run();

 private:
  struct Child {
    std::vector<Ticks> values;  // of all objectives, by its latest times; what it can be at the best
    Number first, second;
    Order::For what;
    std::vector<Lag> lags;      // the order, and the orders of the children before it turned down
  };
  struct Frame {
    State::Mark mark;
    std::size_t orders;
    std::vector<Child> children;  // the best last
  };

  void improve(std::size_t objective);
  bool promising(const std::vector<Ticks>& values) const;
  bool expand(Frame& frame);
  void settle();
  std::vector<Ticks> values() const;
  std::vector<Child> children_of(const Conflict& conflict);

  const Problem& problem_;
  Budget budget_;
  State state_;
  Conflicts conflicts_;
  Limits limits_;
  Plan plan_;
  std::size_t objective_ = 0;
  std::vector<Order> orders_;  // on the way to the node in hand
  bool found_ = false;
};

}  // namespace qtn::plan
