// What no plan can exceed. Private to this room.
#pragma once
#include "plan/state.hpp"

namespace qtn::plan {

Ticks value_of(const Objective& objective, const std::vector<Ticks>& times);

// Bounds from those who can do one thing at a time: the cooks, and an oven where no two of its bakes go together. Taken
// on the axis turned round, so that a latest plan becomes an earliest one: what may be put off and taken up again is done
// no later than what may not (Jackson's preemptive rule for the longest way, Schrage's for a sum).
class Limits {
 public:
  explicit Limits(const Problem& problem);
  Ticks of(const Objective& objective, const State& state);

 private:
  struct Work {
    Number job;
    Ticks length;  // at the least
    Ticks head;    // from the earliest moment of any plan to its beginning, at the least
  };
  struct Server {
    std::vector<Work> works;
    Ticks capacity = 1;
  };
  struct Item {
    Ticks release, length, tail;
  };
  Ticks longest_way(const Server& server, const State& state);
  Ticks sum(const Objective& objective, const Server& server, const State& state);

  const Problem& problem_;
  std::vector<Server> servers_;
  std::vector<Item> items_;
  std::vector<std::size_t> heap_;
};

}  // namespace qtn::plan
