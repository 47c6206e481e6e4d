// The clock of a dish, or of all dishes of a table: what takes time, in which order, and what every written time says of
// it. Nothing is chosen yet. Lengths and distances are whole ticks; the tick is as small as the written times need.
#pragma once
#include <string>
#include <vector>

#include "adapt/adapt.hpp"
#include "plan/network.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

using plan::Number;
using plan::Ticks;
inline constexpr Number kNothing = plan::kNothing;

// A recipe, or one part of it, made once at one size.
struct Making {
  const Recipe* recipe = nullptr;
  // Its times by weight, loads and batches; null: they are not known, and such a time is 0 or more.
  const Adapted* adapted = nullptr;
  Index part = kNone;                // only this part and what it takes; kNone: the dish
  std::vector<Index> uses;           // of each `use:` of the recipe the making it is; kNone where it could not be had
};

// One thing that takes time: a clause, or a sentence of plain work.
struct Doing {
  enum class What : std::uint8_t {
    clause,   // a time clause
    work,     // a sentence without one: 0 or more long
    whole,    // nothing to do: the end of a part, all of it done
    gap,      // nothing to do: so long until the next turn
    serving,  // the hour of a dish
  } what = What::clause;
  Index making = 0, part = kNone, step = kNone, clause = kNone;
  Span sentence;             // the words it stands in
  const Verb* verb = nullptr;
  Takes place = Takes::nothing;  // oven, hob, fridge, freezer, or nothing
  bool written = false;      // a length is written
  bool guessed = false;      // none is, and a timetable shows one all the same
  bool wait = false;         // nobody does anything, and a pause behind it does no harm
  bool overnight = false;
  bool sign = false;         // it ends by a temperature, not by the clock
  int heat = -1;             // of an oven, tenths of a °C as a conventional oven is set; -1: not said
  bool between = false;      // the wait between two turns
  int round = 0, rounds = 1; // of repeats and batches
  bool turn = false;         // one of several in a fixed step: its length is the step, and the work in it is shorter
  Fraction busy = Fraction::lost();  // of a turn: minutes of work; lost: as long as a timetable guesses
};

// What a label of the network says, and where.
struct Said {
  enum class What : std::uint8_t { length, within, keeps, ready, every } what = What::length;
  Index making = 0, part = kNone, clause = kNone;
  Span span;
};

// A dish to be served.
struct Dish {
  Index making = 0;
  Number done = kNothing, serving = kNothing;  // activities
  Number last = kNothing;                      // what was done last to it; kNothing: nothing takes time
  bool hot = false;                            // it comes to table as it leaves the heat
  std::vector<Number> heats;                   // of a hot dish: what heats it, behind the last cooling
};

struct Clock {
  Ticks per_minute = 1;
  bool rounded = false;   // a length was too fine for any tick and was rounded, least times up and longest down
  plan::Network network;
  std::vector<Doing> doings;  // of each activity
  std::vector<Said> said;     // of each label
  std::vector<Making> makings;
  std::vector<Dish> dishes;
  const Recipe& recipe_of(const Doing& doing) const { return *makings[doing.making].recipe; }
};

// `makings`: the dishes first, in the order of the table, then what they use. `ways`: which of two ways is taken; the
// first on the page where it is nothing.
struct ClockOrder {
  std::vector<Making> makings;
  std::size_t dishes = 1;
  std::optional<StepWay> way;
};
Clock wind(ClockOrder order);

}  // namespace qtn
