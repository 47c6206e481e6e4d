// Where somebody or something is wanted twice. Private to this room.
#pragma once
#include "plan/state.hpp"

namespace qtn::plan {

// Jobs that cannot all go on at once: in every plan one of the pairs has one job end before the other begins.
struct Conflict {
  Order::For what = Order::For::hands;
  std::vector<Number> jobs;
  std::vector<std::pair<Number, Number>> pairs;  // that go on at once now
  Ticks time = 0;
};

// Ticks between two bakes of one oven.
Ticks gap_between(const Problem& problem, const Job& first, const Job& second);

class Conflicts {
 public:
  explicit Conflicts(const Problem& problem);
  // Those of the latest times, the latest first, at most so many. None: these times are a plan.
  const std::vector<Conflict>& find(const State& state, std::size_t most);
  // Of the plan that find() passed: which oven each job takes.
  const std::vector<Number>& oven_of() const { return oven_of_; }

 private:
  void sweep(const State& state, Order::For what, const std::vector<Number>& jobs, int capacity);
  void ovens(const State& state);
  bool bakes_alike(Number a, Number b) const;
  bool fits(std::vector<Number> jobs) const;
  void one_oven(const State& state);
  bool assign(const State& state);

  const Problem& problem_;
  std::vector<Number> hands_, rings_, ovens_;  // jobs by what they want
  std::vector<Number> oven_of_;
  std::vector<Conflict> found_;
  std::vector<Number> sorted_, active_;
};

}  // namespace qtn::plan
