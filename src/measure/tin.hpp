// Tins as geometry: what one holds and what its floor and sides measure. Exact; where a circle meets a straight side
// pi is 355/113 (off by less than 1 in 10 million), and between rounds it cancels.
#pragma once
#include "base/fraction.hpp"

namespace qtn {

enum class TinShape : std::uint8_t { none, round, square, rectangle, ring, oval, other };

// Lengths in millimetres, a volume in millilitres; lost() where the page does not say.
struct TinSize {
  Fraction count = Fraction(1);  // two of these, twelve holes
  TinShape shape = TinShape::none;
  Fraction across = Fraction::lost();       // of a round its width at the top
  Fraction along = Fraction::lost();        // the other side of an oblong or an oval
  Fraction base_across = Fraction::lost();  // at the base, where the sides slope
  Fraction base_along = Fraction::lost();
  Fraction hole = Fraction::lost();         // across the hole of a ring
  Fraction deep = Fraction::lost();
  Fraction volume = Fraction::lost();       // of a basin that is named by what it holds
  bool operator==(const TinSize&) const = default;
};

// The open top of all of them, in mm²; lost() for a basin by volume and for a shape that is not geometry ("dish").
Fraction top_of(const TinSize& tin);
// To the brim, in ml; lost() without a depth. Sloping sides are a frustum: h/6 (top + 4 middle + base).
Fraction held_by(const TinSize& tin);
// What lines the inside: floor and sides, in mm²; lost() without a depth. Of a round with sloping sides the slant is
// counted along the wall (from above: the ring between the two circles and the height together never fall short).
Fraction lining_of(const TinSize& tin);

// How many times `before` goes into `after`: by what they hold, or by their tops where a depth is not given
// (`by_top` says so). lost() where neither can be worked out.
struct TinFactor {
  Fraction factor = Fraction::lost();
  bool by_top = false;
};
TinFactor tin_factor(const TinSize& before, const TinSize& after);

}  // namespace qtn
