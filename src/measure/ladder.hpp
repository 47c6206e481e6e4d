// Rounding on purpose, once: the roundest number within tolerance. A ladder is the list of steps
// that a kitchen can measure, coarse to fine; rows in data/ladders.txt with their source.
#pragma once
#include <string>
#include <vector>

#include "measure/quantity.hpp"

namespace qtn {

enum class Ladder : std::uint8_t {
  grams,
  ounces /* lb + oz */,
  millilitres,
  cups /* American: cups, tbsp, tsp */,
  pints /* imperial: pint, fl oz */,
  spoons /* of the dialect: tbsp, tsp */,
  minutes,
  celsius,
  fahrenheit,
  gas,
  things,
  centimetres,
  inches,
};

// Rounded::rung where no rung shows the amount and two significant figures do; the house needs a finer scale.
inline constexpr int kTwoFigures = -1;
// Rounded::rung where a published table gave the step, not a tolerance.
inline constexpr int kByTable = -2;

struct Rounded {
  Ladder ladder = Ladder::grams;
  Dialect dialect = Dialect::unstated;  // whose spoons and pints
  int rung = 0;                         // index from the coarsest
  Fraction exact;                       // in the base unit of the ladder's dimension (°C for all temperatures)
  Fraction shown;                       // same unit
  Fraction tolerance;                   // relative
  bool rough = false;                   // ≈: not within tolerance on the finest rung
  Fraction finest = Fraction(1);        // the smallest step of the house's scale, in grams
  bool ratio = false;                   // by the table's steps for what hangs on a ratio
};

// `finest` is the smallest step of the house's scale in grams (1 unless the kitchen says otherwise). Temperatures go by
// the oven's rung from 100 °C up, to the degree below it or when the tolerance is 0 (a reading, a sugar stage). Under
// half a fluid ounce the ladder of pints becomes the spoons, and so does a small measure that no step of a jug comes
// near. What is less than the smallest spoon is a part of it: "⅔ of ⅛ tsp".
Rounded round_on(Ladder ladder, const Fraction& exact, const Fraction& tolerance, Dialect dialect,
                 const Fraction& finest = Fraction(1));
// By the published school-meal guide instead, for pounds and ounces and for American cups and spoons (ECC App. 7, S4-01
// to S4-15): what a kitchen with `rounding: standardized` prints. `ratio`: what is tied by one has finer steps when large.
// Other ladders have no such table: standard_step() is lost() for them.
Fraction standard_step(Ladder ladder, const Fraction& exact, bool ratio);
Rounded round_standard(Ladder ladder, const Fraction& exact, bool ratio);
// Another amount rounded the way that `how` was.
Rounded round_again(const Rounded& how, const Fraction& exact);
// At least as much, on the same step: what is bought rounds up (PRO, S4-60). Things come whole. Cups, spoons and what a
// published table rounded stay as they are.
Rounded rounded_up(const Rounded& rounded);
// One rung finer (rule 4: lines of one ratio drift from each other by at most one tolerance). False at the last rung.
bool refine(Rounded& rounded);
// The steps that this amount may be shown in, coarse to fine, in the base unit.
std::vector<Fraction> steps_of(const Rounded& rounded);
// "1 lb 2 oz", "≈ ¼ tsp", "2 tbsp + ¾ tsp", "2.8 kg", "3⅓ cups", "350 °F", "gas 4". One string, no tolerance words.
std::string write(const Rounded& rounded);
// The same in pieces, each a number and its unit, so that a card can align them: {"2", "tbsp"}, {"¾", "tsp"}.
struct WrittenPiece {
  std::string number;
  std::string unit;
};
std::vector<WrittenPiece> write_pieces(const Rounded& rounded);

// Which ladder shows this dimension in a system of measures: what `--units` and `--beside` ask for.
enum class System : std::uint8_t { written, metric, imperial, american };
std::string_view name_of(System system);
// `spoonful`: the line was written in spoons or pinches, so spoons are its natural home in every system.
Ladder ladder_for(Dimension dimension, System system, Dialect dialect, bool spoonful);
// The ladder that a unit as written belongs to: an amount in cups that was scaled stays in cups. A named foreign
// measure ("US cup" in a British file) is shown in millilitres, since a bare "cup" would not say whose it is.
Ladder ladder_of(UnitId unit, Dialect dialect);

}  // namespace qtn
