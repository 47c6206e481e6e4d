// The latest and the earliest time of every moment, kept as orders are added and taken back.
//
// Every rule but who is busy is closed under taking the later of two plans moment by moment, and the earlier one too. So
// lowering the latest times until nothing moves gives the latest plan, or shows that there is none. Times never creep
// round a cycle of lags: one that is there from the start is found by `open`, and one that a new lag closes by following
// what caused what.
#pragma once
#include "plan/problem.hpp"

namespace qtn::plan {

class Windows {
 public:
  explicit Windows(const Problem& problem);

  // Settles all rules of the problem; false when they cannot all hold. Call it once, before anything else.
  bool open();

  // A further lag; `index` is what `why` calls it. False when it cannot hold, and then nothing more can be asked.
  bool add(const Lag& lag, Number index = kNothing);
  // A moment may not be before this, or not after; nothing else moves until `settle`.
  bool raise(Point point, Ticks time);
  bool lower(Point point, Ticks time) { return lower(point, time, kNothing, {}); }
  bool settle();

  Ticks late(Point point) const { return late_[point]; }
  Ticks late(const Moment& moment) const { return late_[moment.point] + moment.shift; }
  Ticks early(const Moment& moment) const { return early_[moment.point] + moment.shift; }
  const std::vector<Ticks>& late() const { return late_; }
  const std::vector<Ticks>& early() const { return early_; }
  // What lowered each moment last.
  const std::vector<Why>& why() const { return why_; }

 private:
  struct Arc {
    Point other;
    Number index;
    Why::Kind kind;
    std::int32_t next;
    Ticks least;
  };
  // A job that must lie in one open stretch, or a wait that has a midnight in it.
  struct Watch {
    Why::Kind kind;
    Number index;
    Moment begin, end;
  };

  void link(const Lag& lag, Why::Kind kind, Number index);
  bool cyclic() const;
  bool lower(Point point, Ticks time, Point cause, Why why);
  bool sink();   // until the latest times stand
  bool rise();   // until the earliest times stand
  bool watch_late(const Watch& watch);
  bool watch_early(const Watch& watch);
  bool closes_cycle(Point point) const;

  const Problem& problem_;
  std::vector<Ticks> late_, early_;
  std::vector<std::int32_t> before_, after_;  // heads: lags that end in a point, lags that start in it
  std::vector<Arc> arcs_;                     // two a lag: even ones for `before_`, odd ones for `after_`
  std::vector<Watch> watches_;
  std::vector<std::vector<Number>> watched_by_;
  std::vector<Point> sinking_, rising_;
  std::vector<char> is_sinking_, is_rising_;
  std::vector<Point> cause_;      // in this round: which point lowered this one by a lag
  std::vector<Number> round_of_;
  Number round_ = 0;
  Lag newest_{};
  bool adding_ = false;
  std::vector<Why> why_;
};

}  // namespace qtn::plan
