// From a clock and what the house has to a problem for the planner. Private to this room.
#pragma once
#include <span>

#include "day/day.hpp"
#include "plan/problem.hpp"

namespace qtn {

// How freely lengths are taken that nobody has written.
enum class Guesses : std::uint8_t {
  kept,  // each as long as the house says
  free,  // as long as the plan likes, from nothing: an estimate never makes a day impossible
};

struct Posed {
  plan::Network network;            // with the guesses in it
  plan::Placed placed;
  plan::Problem problem;
  std::vector<Number> job_of;       // of each activity, its job; kNothing: it takes nobody and nothing
  std::vector<Number> activity_of;  // of each job
  std::vector<Number> lag_rule;     // of each lag of the problem, the label it comes from
  Number kept_from = kNothing;      // bounds from this one on are hours of an earlier plan
  Ticks per_minute = 1;             // of the problem: 1, or the clock's own where whole minutes leave no plan
  Ticks clock_ticks = 1;            // of a minute in the clock
};

// `order.serve` has an hour for each dish. `kept`: labels of the clock that count; an empty span keeps all.
Posed pose(const Clock& clock, const DayOrder& order, Guesses guesses, bool whole_minutes, std::span<const char> kept = {});

// A heat that is not written, and cannot be told from the page, is like no other: this, and more for each.
inline constexpr int kUnwrittenHeat = 1'000'000;

// Which bakes of a recipe have to be in one oven, and which of them takes over the heat of another.
void keep_in_oven(const Clock& clock, Posed& posed);

// An activity that begins at an hour of the wall.
struct Pinned {
  Number activity;
  Minute wall;
};
void pin(Posed& posed, const DayOrder& order, const Pinned& one);

}  // namespace qtn
