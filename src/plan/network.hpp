// A clock before anybody chooses: things that take time, in chains that follow at once, and least distances between
// their ends. In whole ticks; whoever builds it makes the tick so small that every written time is whole.
//
// A length is certain, or a choice of the plan, or left to chance (the food decides, and nobody knows beforehand). The
// plan has to hold for every chance: strong controllability of a temporal network (Vidal and Fargier 1999), which for
// chains comes down to plain distances between the moments that are chosen.
#pragma once
#include <span>

#include "plan/problem.hpp"

namespace qtn::plan {

struct Length {
  Ticks least = 0, most = kNever;
  bool chance = false;
  bool chosen() const { return !chance && least != most; }
};

struct Activity {
  Length length;
  Number label = kNothing;    // what says so; without the label the length is 0 or more, as a plan likes
  Number follows = kNothing;  // begins at once when that one ends
};

// One end of an activity.
struct End {
  Number activity = kNothing;
  bool end = false;
};
inline End begin_of(Number activity) { return {activity, false}; }
inline End end_of(Number activity) { return {activity, true}; }

// after - before >= least, whatever chance does; a negative `least` is a longest distance the other way.
struct Rule {
  End before, after;
  Ticks least = 0;
  Number label = kNothing;  // kNothing: it follows from the order of the page and is never dropped
};

struct Network {
  std::vector<Activity> activities;  // one that follows another stands behind it
  std::vector<Rule> rules;
  Number labels = 0;                 // labels are below this
};

// Where an end lies: so long after a chosen moment, between `low` and `high` as chance has it.
struct Spot {
  Point point = 0;
  Ticks low = 0, high = 0;
  Number place = 0;  // how many activities lie between: of two spots on one point, what lies before both cancels
};

struct Placed {
  Number points = 0;
  std::vector<Spot> begins, ends;   // of each activity
  std::vector<Lag> lags;            // one on a single point with least > 0 can never hold
  std::vector<Number> lag_labels;   // of each lag; kNothing: the order of the page, or several
};

// `kept[label]` false: that label is dropped. An empty span keeps all.
Placed place(const Network& network, std::span<const char> kept = {});

// Can all of it hold?
bool holds(const Placed& placed);

// Labels that cannot hold together, as few as there are: dropping any one of them leaves a network that holds.
struct Clash {
  std::vector<Number> labels;  // ascending
  Ticks excess = 0;            // by how much they miss
};
// Only for a network that does not hold.
Clash clash_of(const Network& network);

}  // namespace qtn::plan
