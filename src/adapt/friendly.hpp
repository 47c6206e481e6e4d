// A size near the one asked for at which every amount comes out round. Private to this room.
#pragma once
#include "adapt/ties.hpp"

namespace qtn {

// How far from what was asked the rounder size may lie: 3 %, the house's own choice (common practice, no source).
inline Fraction friendly_reach() { return Fraction::of(3, 100); }

// Of the factors within reach of `recipe.factor` at which every rounded line of the list is shown exactly, the nearest;
// of two as near the smaller. Exhaustive: a factor that makes all lines round makes the first of them round, and that
// line's round amounts within reach are tried one by one. nullopt when the amounts are round already, when no factor
// within reach makes them so, or when nothing was rounded.
std::optional<Fraction> friendly_factor(const Recipe& recipe, const Roundings& roundings);

}  // namespace qtn
