// Whether the work fits into the time there is, and who can only come after all the others of a set.
//
// Edge finding (Carlier and Pinson 1989; for several places at once Nuijten 1994), on windows that are narrow because a
// better plan is wanted. The hours when nobody is up are cut out of the time of jobs that need somebody up.
#pragma once
#include "plan/queue.hpp"

namespace qtn::plan {

class Energy {
 public:
  Energy(const Problem& problem, const std::vector<Ticks>& lengths);
  // Narrows the windows of jobs; false when the work cannot fit.
  bool narrow(Windows& windows) const;

 private:
  struct Work {
    Moment begin, end;
    Ticks length;
  };
  struct Place {
    Ticks count;
    bool by_day;  // all its jobs are awake
    std::vector<Work> works;
  };
  struct Window {
    Ticks from, to, length, least;  // `least`: what `from` was found to be
    std::size_t work;
  };
  Ticks awake(Ticks time) const;                 // the waking ticks up to a time
  Ticks asleep(Ticks awake, bool earliest) const;  // and back
  static bool push(std::vector<Window>& windows, Ticks places);
  bool narrow(const Place& place, Windows& windows) const;

  const Problem& problem_;
  std::vector<Ticks> closed_before_;  // closed ticks before each closed stretch
  std::vector<Place> places_;
  mutable std::vector<Window> spans_;
};

}  // namespace qtn::plan
