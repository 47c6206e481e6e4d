#include "measure/tin.hpp"

namespace qtn {
namespace {

// A quarter of pi: the share of its square that a circle fills.
Fraction quarter_pi() { return Fraction::of(355, 4 * 113); }

bool is_circle(TinShape shape) {
  return shape == TinShape::round || shape == TinShape::ring || shape == TinShape::oval;
}

// One level of the tin: its square or oblong, and of that the circle.
Fraction level(TinShape shape, const Fraction& across, const Fraction& along) {
  const Fraction box = across * (along.is_lost() ? across : along);
  return is_circle(shape) ? box * quarter_pi() : box;
}

// A plain figure: a shape that has one. An oblong needs both its sides, and a dish of no shape has none.
bool has_figure(const TinSize& tin) {
  if (tin.across.is_lost()) return false;
  switch (tin.shape) {
    case TinShape::round:
    case TinShape::square: return true;
    case TinShape::ring: return tin.along.is_lost();
    case TinShape::oval:
    case TinShape::rectangle:
    case TinShape::other: return !tin.along.is_lost();
    case TinShape::none: break;
  }
  return false;
}

Fraction hole_of(const TinSize& tin) {
  return tin.shape == TinShape::ring && !tin.hole.is_lost() ? level(TinShape::round, tin.hole, tin.hole) : Fraction(0);
}

struct Levels {
  Fraction top, middle, base;
};
Levels levels_of(const TinSize& tin) {
  const Fraction half = Fraction::of(1, 2);
  const Fraction along = tin.along.is_lost() ? tin.across : tin.along;
  const Fraction base_across = tin.base_across.is_lost() ? tin.across : tin.base_across;
  const Fraction base_along = !tin.base_along.is_lost()  ? tin.base_along
                              : tin.base_across.is_lost() ? along
                                                          : along * tin.base_across / tin.across;
  const Fraction hole = hole_of(tin);
  return {level(tin.shape, tin.across, along) - hole,
          level(tin.shape, (tin.across + base_across) * half, (along + base_along) * half) - hole,
          level(tin.shape, base_across, base_along) - hole};
}

}  // namespace

Fraction top_of(const TinSize& tin) {
  if (!has_figure(tin)) return Fraction::lost();
  const Fraction top = levels_of(tin).top;
  return top.sign() > 0 ? top * tin.count : Fraction::lost();
}

Fraction held_by(const TinSize& tin) {
  if (!tin.volume.is_lost()) return tin.volume * tin.count;
  if (!has_figure(tin) || tin.deep.is_lost()) return Fraction::lost();
  const Levels at = levels_of(tin);
  const Fraction cubic_mm = tin.deep * (at.top + Fraction(4) * at.middle + at.base) / Fraction(6);
  return cubic_mm.sign() > 0 ? cubic_mm * tin.count / Fraction(1000) : Fraction::lost();
}

Fraction lining_of(const TinSize& tin) {
  if (!has_figure(tin) || tin.deep.is_lost() || tin.shape == TinShape::ring) return Fraction::lost();
  const Levels at = levels_of(tin);
  const Fraction along = tin.along.is_lost() ? tin.across : tin.along;
  const Fraction base_across = tin.base_across.is_lost() ? tin.across : tin.base_across;
  const Fraction base_along = !tin.base_along.is_lost() ? tin.base_along : tin.base_across.is_lost() ? along : base_across;
  // Once round the wall at half its height; an oval's is taken as that of the circle of its mean width.
  const Fraction around = (tin.across + base_across + along + base_along) * (is_circle(tin.shape) ? quarter_pi() : Fraction(1));
  return (at.base + around * tin.deep + (at.top - at.base)) * tin.count;
}

TinFactor tin_factor(const TinSize& before, const TinSize& after) {
  const Fraction held_before = held_by(before), held_after = held_by(after);
  if (!held_before.is_lost() && !held_after.is_lost()) return {held_after / held_before, false};
  const Fraction top_before = top_of(before), top_after = top_of(after);
  if (top_before.is_lost() || top_after.is_lost()) return {};
  return {top_after / top_before, true};
}

}  // namespace qtn
