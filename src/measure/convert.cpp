#include "measure/convert.hpp"

namespace qtn {

Converted convert(const Fraction& value, UnitId from, Dialect from_dialect, UnitId to, Dialect to_dialect,
                  const Fraction& grams_per_ml, const Fraction& grams_each) {
  Converted out;
  const Dimension a = unit(from).dimension, b = unit(to).dimension;
  if (a == Dimension::temperature && b == Dimension::temperature) {
    out.value = from_celsius(to_celsius(value, from), to);
    return out;
  }
  Fraction base = value * size_of(from, from_dialect);
  if (a != b) {
    const auto weighable = [](Dimension d) { return d == Dimension::mass || d == Dimension::volume || d == Dimension::count; };
    if (!weighable(a) || !weighable(b)) return out;
    out.used_density = a == Dimension::volume || b == Dimension::volume;
    out.used_each = a == Dimension::count || b == Dimension::count;
    if (a == Dimension::volume) base *= grams_per_ml;
    if (a == Dimension::count) base *= grams_each;
    if (b == Dimension::volume) base /= grams_per_ml;
    if (b == Dimension::count) base /= grams_each;
  }
  out.value = base / size_of(to, to_dialect);
  return out;
}

}  // namespace qtn
