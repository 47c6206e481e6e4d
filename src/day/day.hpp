// A day in the kitchen, planned: when everything begins and ends, who and what it takes, and why it is no later. The
// boundary of this room towards cards and run sheets.
#pragma once
#include <map>

#include "day/clock.hpp"
#include "day/hours.hpp"

namespace qtn {

// A step that is to begin at an hour that somebody has named.
struct Pin {
  std::string words;  // of the step, or of the part and the step: "bake", "Tart: bake"
  Minute wall;
};
// What an earlier plan said, so that as little as possible is changed.
struct Settled {
  std::string key;  // of the row: DayRow::key
  Minute wall;
};

struct DayOrder {
  std::vector<Minute> serve;        // of each dish, hours of the wall
  Hours hours;
  std::optional<Minute> start;      // nothing before this; with it `serve` may be empty: as early as can be
  int cooks = 1, ovens = 1, rings = 4;
  std::vector<int> shelves{1};      // of each oven of the house; where other ovens are asked for, all are as the smallest
  std::vector<int> shelves_of_ovens() const;
  Minute heats_in = 0;              // of an oven that has to change its heat; 0: not counted
  int night_from = 22 * 60, night_to = 6 * 60 + 30;
  bool nights = false;              // work in the night is allowed
  Minute work = 5;                  // what a length that is not written is shown as
  std::vector<Pin> pins;
  std::vector<Settled> settled;
  int revision = 0;                 // of the plan: 0 for the first, one more each time an earlier one is kept to
  const Source* source = nullptr;   // of the file asked for: what stands in it is told at its place
  // Of the search, for a table of up to 60 jobs; fewer for a larger one, whose nodes take longer. Never a clock, so that
  // one day has one plan.
  std::uint64_t nodes = 10'000;
};
// What a kitchen file says; without one, what most kitchens have (common practice, no source).
DayOrder order_of(const Kitchen* kitchen);

struct DayRow {
  Number activity = 0;
  Minute begin = 0, end = 0;        // hours of the wall; as planned, for the longest that the food may take
  Minute least_end = 0;             // where the food decides: done at the earliest
  bool guessed = false;             // its length is not written
  int cook = -1, oven = -1;         // from 0
  Takes place = Takes::nothing;     // oven, hob, fridge, freezer, or nothing
  bool hands = false;               // somebody works at it all along
  bool watched = false;             // somebody must be about
  std::string dish, part, words;    // "Leek tart", "Shortcrust", "rest at least 1 h in the fridge at 4 °C"
  int times = 1;                    // this often, each `every` minutes after the one before
  Minute every = 0;
  std::string key;                  // names it from plan to plan: "Leek tart/Shortcrust/2.1"
  std::string why;                  // why it is no later
};

struct Served {
  Index making = 0;
  std::string dish;
  Minute wall = 0;
  Minute waits = 0;   // a hot dish stands ready for so long
  bool hot = false;
};

struct Day {
  bool planned = false;
  std::vector<DayRow> rows;         // by their beginnings
  std::vector<Served> served;
  Hours hours;
  Minute begin = 0, end = 0;        // of the wall
  Minute hands_on = 0, waiting = 0, whole = 0;  // minutes of work; of the rest; from beginning to end, as time goes by
  int night_from = 0, night_to = 0;
  int cooks = 1, ovens = 1;
  int revision = 0;                 // as it was ordered
  bool proven = false;
  std::vector<std::string> short_of;     // what could be better, where the search ended first: "by 6 min at most"
  std::vector<std::string> assumptions;  // what the plan rests on, beside the pages
  std::vector<std::string> cautions;     // what stands too long, or too warm
  std::string earlier;                   // what may be made earlier than it must, by its `keeps:`
  std::vector<std::string> alone;        // begun then, when each dish could be served by itself
  std::vector<std::string> moved;        // against an earlier plan
};

// Plans the dishes of a clock. Without a plan `planned` is false and the report says why.
Day plan_day(const Clock& clock, const DayOrder& order, Report& report);

// How long a recipe takes by itself, with hands and ovens enough, for its card. Minutes, at the longest.
struct Spans {
  bool known = false;     // some time is written
  bool guessed = false;   // and for some steps none is
  Minute hands_on = 0, waiting = 0, whole = 0;
  std::vector<Minute> parts;  // of each part of the first making: how long before the table it begins; -1: never
};
Spans spans_of(const Clock& clock, Minute work);

}  // namespace qtn
