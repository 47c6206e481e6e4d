// What follows from hours, sums and the work there is, as facts with their reasons.
#pragma once
#include "plan/energy.hpp"
#include "plan/facts.hpp"

namespace qtn::plan {

class Rules {
 public:
  Rules(const Problem& problem, const Distances& distances, Facts& facts);
  // The moment that stands for an objective's value.
  Point value_of(Number objective) const { return values_[objective]; }
  void mind(Number objectives) { minded_ = objectives; }
  // All that follows. False: it cannot be, see `Facts::learn`.
  bool follow();

 private:
  struct Watch {
    bool midnight;
    Moment begin, end;
  };
  struct Sum {
    std::vector<std::pair<Point, Ticks>> parts;  // how many times each
  };
  bool hours();
  bool hour_late(const Watch& watch);
  bool hour_early(const Watch& watch);
  bool sum(Number objective);

  const Problem& problem_;
  Facts& facts_;
  std::vector<Watch> watches_;
  std::vector<std::vector<Number>> watched_by_;
  std::vector<Point> values_;
  std::vector<Sum> sums_;
  std::vector<Queues> queues_;
  Energy energy_;
  Number minded_ = 0;
  std::vector<Fact> because_;
  std::vector<Ticks> late_;
  std::vector<Point> leaned_;
};

}  // namespace qtn::plan
