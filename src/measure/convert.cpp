#include "measure/convert.hpp"

namespace qtn {
namespace {

bool weighs(Dimension d) {
  return d == Dimension::mass || d == Dimension::volume || d == Dimension::count;
}

// Grams of one base unit of this dimension.
Fraction grams_per(Dimension dimension, const Fraction& grams_per_ml, const Fraction& grams_each) {
  if (dimension == Dimension::mass) return Fraction(1);
  return dimension == Dimension::volume ? grams_per_ml : grams_each;
}

// A clove is no stick: two count nouns meet only through a bare count or a dozen.
bool counts_apart(UnitId from, UnitId to) {
  const auto noun = [](UnitId id) { return unit(id).size[0] == Fraction(1) && id != common().each; };
  return from != to && noun(from) && noun(to);
}

}  // namespace

Converted convert(const Fraction& value, UnitId from, Dialect from_dialect, UnitId to, Dialect to_dialect,
                  const Fraction& grams_per_ml, const Fraction& grams_each) {
  const Dimension source = unit(from).dimension, target = unit(to).dimension;
  if (from == to && from_dialect == to_dialect) return {value, false, false};
  if (source == Dimension::temperature && target == Dimension::temperature)
    return {from_celsius(to_celsius(value, from), to), false, false};
  const Fraction base = value * size_of(from, from_dialect), size = size_of(to, to_dialect);
  if (source == target) {
    if (source == Dimension::count && counts_apart(from, to)) return {};
    return {base / size, false, false};
  }
  if (!weighs(source) || !weighs(target)) return {};
  const Fraction grams = base * grams_per(source, grams_per_ml, grams_each);
  const Fraction found = grams / grams_per(target, grams_per_ml, grams_each) / size;
  if (found.is_lost()) return {};
  const auto through = [&](Dimension d) { return source == d || target == d; };
  return {found, through(Dimension::volume), through(Dimension::count)};
}

}  // namespace qtn
