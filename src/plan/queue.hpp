// What waiting for one cook or one oven costs a sum at least, whoever goes first.
//
// Looked at from the end of the day backwards, a job is released at its latest end and done at its beginning. If jobs could
// be interrupted, the one with the least left to do first would be best (Schrage 1968: shortest remaining processing
// time), and no plan does better than that. A place for n jobs at once counts as one that works n times as fast.
#pragma once
#include "plan/rivals.hpp"

namespace qtn::plan {

// How much later one moment can be than others at most, by the lags alone.
class Distances {
 public:
  explicit Distances(const Problem& problem);
  // Of each moment: time(point) <= time(it) + most; kNever where there is no such bound.
  const std::vector<Ticks>& most(Point point) const;

 private:
  std::vector<std::vector<Lag>> from_;
  mutable std::vector<std::vector<Ticks>> most_;  // worked out when first asked for
  mutable std::vector<Point> moved_;
};

// The work that everybody must find time for: how long each job lasts at least; 0 where it may overlap another of its run.
std::vector<Ticks> works(const Problem& problem, const Distances& distances);

class Queues {
 public:
  Queues(const Problem& problem, const Objective& objective, const Distances& distances, const std::vector<Ticks>& lengths);
  // How much the sum must fall short of these latest times; or the sum of the others, where one moment is left out.
  // `on`: the moments beside those of the sum whose latest times say so.
  Ticks loss(const std::vector<Ticks>& late, Point without = kNothing, std::vector<Point>* on = nullptr) const;

 private:
  // A job that holds back a moment of the sum: the moment is no later than `reach` after the job's beginning.
  struct Held {
    Moment begin, end;
    Ticks length, reach;
    Point point;
    std::size_t job;
  };
  struct Queue {
    int places;
    std::vector<Held> held;  // those of one moment side by side
  };
  struct Waiting {
    Ticks release, left;  // both times the number of places
  };
  Ticks loss(const Queue& queue, const std::vector<Ticks>& late, Point without) const;

  mutable std::vector<Point> leaned_;
  std::vector<Queue> queues_;
  mutable std::vector<Waiting> waiting_;
  mutable std::vector<Ticks> alone_, heap_;
  mutable std::vector<char> taken_;  // of each job: stands for a moment already; its work is done once
};

}  // namespace qtn::plan
