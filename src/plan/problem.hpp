// What is to be planned, in whole ticks and nothing of cookery: moments to be chosen, distances between them, who is
// needed when. The boundary of this room; it knows nothing of recipes.
//
// Every rule here is closed under taking the later of two plans moment by moment, but for who is busy. So once it is
// settled which of two jobs goes first wherever they want the same hands or oven, there is one latest plan, and it is at
// once the best in every objective (Dechter, Meiri and Pearl 1991 for the distances).
#pragma once
#include <cstdint>
#include <limits>
#include <numeric>
#include <optional>
#include <string>
#include <vector>

namespace qtn::plan {

using Ticks = std::int64_t;    // a tick is what the caller makes it: a minute, as a rule
using Point = std::uint32_t;   // a moment that the plan chooses
using Number = std::uint32_t;  // an index into a list of the problem
inline constexpr Number kNothing = ~Number{0};
inline constexpr Ticks kNever = std::numeric_limits<Ticks>::max() / 4;

// A moment told from a chosen one: `shift` ticks after it.
struct Moment {
  Point point = 0;
  Ticks shift = 0;
};

// time(after) - time(before) >= least. A negative `least` is a longest distance the other way.
struct Lag {
  Point before, after;
  Ticks least;
};

// Not before, not after: bounds of one moment in absolute time. A pinned moment has both alike.
struct Bounds {
  Point point;
  Ticks not_before = -kNever, not_after = kNever;
};

// A stretch [from, to) of absolute time.
struct Stretch {
  Ticks from, to;
};

// What is busy from one moment to another. Two jobs clash when each begins before the other ends; no job ends before it
// begins. `run`: jobs of one run follow each other by themselves and never clash.
struct Job {
  Moment begin, end;
  Number run = kNothing;
  bool hands = false;            // takes one cook all along
  bool awake = false;            // somebody must be up: it may not touch Problem::closed
  bool ring = false;             // takes one ring of the hob
  bool oven = false;             // takes a shelf of an oven at `heat`
  int heat = 0;                  // in tenths of a degree; two bakes share an oven only within Ovens::tolerance
  // Brings the oven to its heat itself: no change time before it. What else wants that heat there begins once this is over,
  // or no later than this begins: it is in already. But for what heats as well, or goes on from a heating of its own; that
  // some third bake may have the oven hot all along is left out of account.
  bool heats = false;
  Number one_oven = kNothing;    // jobs of one such number stand in one and the same oven
  // The bake of its `one_oven` whose heat it takes over; over before this begins, and the caller's lags say so. No change
  // time before this behind what is out of the oven by the end of that; behind what came later there is.
  Number goes_on = kNothing;
};

// The wait from one moment to another must have one of Problem::midnights in it (begin <= midnight <= end).
struct Across {
  Moment begin, end;
};

struct Ovens {
  std::vector<int> shelves{1};  // of each oven
  int tolerance = 0;            // tenths of a degree
  Ticks change = 0;             // between two bakes of unlike heat in one oven, but see Job::heats and Job::goes_on
  int count() const { return static_cast<int>(shelves.size()); }
  int all_shelves() const { return std::accumulate(shelves.begin(), shelves.end(), 0); }
};

// What is to be as good as it can be; one strictly after the other.
struct Objective {
  enum class Kind : std::uint8_t {
    sum,       // the sum of the times of the points is to be as late as can be
    earliest,  // the earliest of the points is to be as late as can be
  };
  Kind kind = Kind::earliest;
  std::vector<Point> points;
};

struct Problem {
  Number points = 0;
  std::vector<Lag> lags;
  std::vector<Bounds> bounds;
  std::vector<Job> jobs;
  std::vector<Across> across;
  std::vector<Stretch> closed;     // ascending, apart: the night, when no `awake` job may run
  std::vector<Ticks> midnights;    // ascending
  int cooks = 1, rings = 4;
  Ovens ovens;
  std::vector<Objective> objectives;
};

// Why a moment is no later than it is.
struct Why {
  enum class Kind : std::uint8_t { free, lag, bound, closed, midnight, order, job } kind = Kind::free;
  Number index = kNothing;   // of lags, bounds, jobs (closed; job: it ends no sooner than it begins), across, Plan::orders
};

// Job `first` ends before job `second` begins, because both want the same thing. `heat`: it ends no later than the bake
// whose heat `second` takes over. `warm`: it begins no later than `second`, which heats the oven that it is in.
struct Order {
  enum class For : std::uint8_t { hands, ring, oven, heat, warm } what = For::hands;
  Number first, second;
};

struct Plan {
  enum class Outcome : std::uint8_t {
    planned,
    impossible,   // proven: no plan exists
    given_up,     // the budget ended before any plan was found
  } outcome = Outcome::given_up;
  std::vector<Ticks> times;            // of each point
  std::vector<Why> why;                // of each point
  std::vector<Order> orders;           // what the plan settled
  std::vector<Ticks> values;           // of each objective
  // What no plan can exceed that does as well in the objectives before; equal to `values` where proven.
  std::vector<Ticks> bounds;
  std::vector<Number> cook_of, oven_of;  // of each job: which cook, which oven (kNothing where none)
  std::uint64_t nodes = 0;
  bool proven() const { return outcome == Outcome::planned && values == bounds; }
};

struct Budget {
  // How many dead ends are learned from, in all objectives together; never a clock, so that one problem has one plan.
  std::uint64_t nodes = 20'000;
};

// The best plan, each objective strictly after the one before it; of all best plans the latest one that its orders allow.
// Deterministic. A moment without any upper bound is an error of the caller (asserted).
Plan solve(const Problem& problem, const Budget& budget = {});

// The latest plan when nobody is ever busy twice: nullopt when even that does not exist.
std::optional<std::vector<Ticks>> latest(const Problem& problem);

// What in a plan breaks a rule of the problem, told plainly; empty for a sound one. Shares no code with the search. Without
// `oven_of` it is asked whether there is any way to give the bakes ovens.
std::vector<std::string> faults(const Problem& problem, const std::vector<Ticks>& times, const std::vector<Number>& oven_of = {});

}  // namespace qtn::plan
