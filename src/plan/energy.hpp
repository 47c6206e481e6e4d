// Whether the work fits into the time there is, and who can only come after all the others of a set.
//
// Edge finding (Carlier and Pinson 1989; for several places at once Nuijten 1994), on windows that are narrow because a
// better plan is wanted. The hours when nobody is up are cut out of the time of jobs that need somebody up.
#pragma once
#include "plan/facts.hpp"
#include "plan/queue.hpp"

namespace qtn::plan {

class Energy {
 public:
  Energy(const Problem& problem, const std::vector<Ticks>& lengths);
  // Narrows the windows of jobs; false when the work cannot fit.
  bool follow(Facts& facts);

 private:
  struct Work {
    Moment begin, end;
    Ticks length;
  };
  struct Place {
    Ticks count;
    bool by_day;  // all its jobs are awake
    std::vector<Work> works;
    std::vector<std::pair<Ticks, Ticks>> seen;  // the windows of the works when they were weighed last
  };
  struct Window {
    Ticks from, to, length;
    std::size_t work;
    Ticks least = 0;                // what `from` was found to be, because of the works within [set_from, set_to]
    Ticks set_from = 0, set_to = 0;
  };
  Ticks awake(Ticks time) const;                 // the waking ticks up to a time
  Ticks asleep(Ticks awake, bool earliest) const;  // and back
  bool push(Ticks places) const;                 // over `spans_`; false: those in `over_` are too much
  bool moved(Place& place, const Facts& facts) const;
  void overfull(Ticks to, Ticks places) const;
  void press(Ticks to, std::size_t end, Ticks spare, Ticks places) const;
  bool follow(const Place& place, bool turned, Facts& facts) const;

  const Problem& problem_;
  std::vector<Ticks> closed_before_;  // closed ticks before each closed stretch
  std::vector<Place> places_;
  struct Set {
    Ticks from, work, done;  // `done`: when all but one place of it can be free for another job
  };
  mutable std::vector<Window> spans_;
  mutable std::vector<Ticks> deadlines_, from_, to_, length_;
  mutable std::vector<Set> sets_;
  mutable std::pair<Ticks, Ticks> over_;
  mutable std::vector<Fact> because_;
};

}  // namespace qtn::plan
