// The latest times that are still possible, and what follows when one of them falls. Private to this room.
//
// Every rule but "who is busy" is closed under taking the later of two plans, so the latest times that keep all of them
// are themselves a plan; lowering one time lowers others until nothing moves.
#pragma once
#include "plan/problem.hpp"

namespace qtn::plan {

class State {
 public:
  explicit State(const Problem& problem);

  // False: nothing keeps all rules.
  bool start();
  // One more distance, as long as it is not taken back. False: nothing keeps it; the state is then to be taken back.
  bool add(const Lag& lag);

  struct Mark {
    std::size_t times, lags;
  };
  Mark mark() const { return {trail_.size(), added_.size()}; }
  void take_back(const Mark& mark);

  Ticks time(Point point) const { return times_[point]; }
  Ticks time(const Moment& moment) const { return times_[moment.point] + moment.shift; }
  const std::vector<Ticks>& times() const { return times_; }
  const std::vector<Lag>& added() const { return added_; }

 private:
  bool lower(Point point, Ticks time);
  bool spread(Point watch);
  bool wake(const Job& job);
  bool cross(const Across& across);
  bool turns_in_circles() const;

  const Problem& problem_;
  std::vector<Ticks> times_, floors_;
  std::vector<std::vector<Lag>> by_after_;           // lags, the added ones at the end
  std::vector<std::vector<Number>> awake_, across_;  // by point
  std::vector<Lag> added_;
  std::vector<std::pair<Point, Ticks>> trail_;
  std::vector<Point> queue_;
  std::vector<char> queued_;
  bool snapped_ = false;  // a night or a midnight moved something: a time may fall twice without a circle
};

// Where the second must begin when the first ends before it; `gap` lies between.
inline Lag in_order(const Job& first, const Job& second, Ticks gap) {
  return {first.end.point, second.begin.point, first.end.shift - second.begin.shift + gap};
}
// That the second begins before the first ends.
inline Lag not_in_order(const Job& first, const Job& second, Ticks gap) {
  return {second.begin.point, first.end.point, second.begin.shift - first.end.shift - gap + 1};
}

}  // namespace qtn::plan
