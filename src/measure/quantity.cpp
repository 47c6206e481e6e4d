#include "measure/quantity.hpp"

namespace qtn {

Fraction tolerance(Manner manner, const Fraction& plain) {
  if (manner == Manner::exactly) return Fraction::of(1, 100);
  const Fraction loose = Fraction::of(1, 10);
  return manner == Manner::about && plain < loose ? loose : plain;
}

Ends in_base(const Quantity& quantity, Dialect dialect) {
  if (quantity.dimension() == Dimension::temperature)
    return {to_celsius(quantity.low, quantity.unit), to_celsius(quantity.high, quantity.unit)};
  const Fraction size = size_of(quantity.unit, dialect), low = quantity.low * size;
  return {low, quantity.is_range() ? quantity.high * size : low};
}

}  // namespace qtn
