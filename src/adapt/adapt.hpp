// Another size, other measures: pure functions from a checked recipe. Scaling keeps amounts exact; rounding happens
// once, in show(), on purpose.
#pragma once
#include <string>
#include <vector>

#include "measure/ladder.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

// Whose words a card is in; both: the page's own, and at first mention the other country's.
enum class AskedWords : std::uint8_t { as_written, british, american, both };

struct Request {
  System units = System::written;
  std::optional<System> beside;        // the second column
  Dialect spoons = Dialect::unstated;  // whose spoons and pints the reader has; unstated: follows `units`
  AskedWords words = AskedWords::as_written;
  std::optional<Fraction> times;
  std::optional<Quantity> serves;  // target: feeds this many
  std::optional<Quantity> makes;   // target: 12 pasties, 2 kg
  std::string makes_thing;
  std::string tin_text;            // target: fills this tin as the written one is filled; a size, or one of the house's
  std::optional<Tin> tin;          // ... where the text is a size: "26 cm round, 3 cm deep"
  std::optional<Quantity> have;    // target: uses up so much ...
  std::string have_thing;          // ... of the line of this name
  std::optional<StepWay> way;          // which of two ways of a step is shown; else the kitchen's, else both
};

// The factor that a request asks for: 1 when it asks for none. Reports what cannot be met (serves without `serves:`,
// a makes of another dimension, a tin that cannot be compared, a factor of 0) as errors.
Fraction factor_of(const Recipe& recipe, const Request& request, Report& report);

// The tin that a recipe is written for: its own, else that of the dish, else of the only part that has one; null when
// there is none.
const Tin* tin_of(const Recipe& recipe);

// Every amount times k. scale(scale(r, k), 1/k) has the exact amounts of r.
Recipe scale(const Recipe& recipe, const Fraction& k);

// How one amount is shown. `text` is as written in the source where nothing changed it.
struct Shown {
  std::string text;      // "220 g", "≈ ¼ tsp", "350 °F"; may be empty (an unmeasured line)
  Quantity exact;        // before rounding, in the unit that is shown
  bool rough = false;    // ≈
  bool changed = false;  // differs from what is written
};

// 20 min per 450 g of the lamb, plus 20 min: what that comes to for what there is on this card.
struct ByWeight {
  Index clause = kNone;
  Shown time, weight, weight_beside;
  bool each = false;  // of several: for each of them
};
// So many rounds of so much, where a batch or a pan has a limit.
struct Rounds {
  Wide count = 1;
  Shown size;         // "16", "16 to 17", "6 kg"
  bool full = false;  // each as large as the limit lets it be
  Index term = kNone;  // of a step's `12 at a time`
};

// An amount in the page's own words, its fractions as print has them: 1 1/2 tsp is 1½ tsp.
std::string in_print(std::string_view text);

// Does a clause cut pieces? [24 straws of 22 g] does, where the dish is called Cheese straws, too.
bool cuts(const Recipe& recipe, const Clause& clause);

// The sizes of a tin in the reader's measures, to stand beside the written ones: "9 x 12 in, 2½ in deep". Empty where they
// are the reader's already, and where nobody asked for others.
std::string tin_in(const Recipe& recipe, const Tin& tin, System system);

// All that a card shows of a recipe's amounts, parallel to the recipe's arrays.
struct Adapted {
  const Recipe* recipe = nullptr;  // the scaled one
  System units = System::written;
  std::optional<System> beside;
  AskedWords words = AskedWords::as_written;
  Dialect spoons = Dialect::unstated, spoons_beside = Dialect::unstated;  // whose spoons, cups and pints they are
  std::vector<Shown> lines, lines_beside;  // by TakeLine
  std::vector<Shown> terms, terms_beside;  // by Term of a clause
  // What a mention takes; empty text when it takes a whole line or nothing.
  std::vector<Shown> mentions, mentions_beside;
  std::vector<Shown> tails;                    // by Tail: amounts behind the comma
  std::vector<Shown> makes;                    // of the head
  std::vector<std::vector<Shown>> part_makes;  // of each part
  std::vector<Shown> makes_each;                    // of the head: jars of 330 g
  std::vector<std::vector<Shown>> part_makes_each;  // of each part
  Shown serves;
  std::vector<ByWeight> by_weight;
  Shown batch;                              // the limit of `at most:`
  std::vector<Shown> part_batch;            // of each part
  Rounds rounds;                            // of the whole dish; a count of 1 is no batch
  std::vector<Rounds> part_rounds;          // of each part
  std::vector<Rounds> loads;                // of steps, more than one round each
  std::vector<std::pair<Shown, Shown>> changes;  // of trials, one after another: before, after
  std::optional<StepWay> way;  // the one that is shown; nothing: both
  std::string tin;  // the tin that was asked for, in the words of the request
  // Lines tied by ratios were rounded together.
  Report lacks;  // notes and warnings: no density to convert with, a whole thing splits, times not tested, scales:
};
// `recipe` is already scaled (its `factor` says by how much); it must outlive the result.
Adapted show(const Recipe& recipe, const Request& request);

}  // namespace qtn
