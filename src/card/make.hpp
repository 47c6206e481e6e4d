// A card from an adapted recipe: which facts, in which order, in which words; prose through CommonMark.
#pragma once
#include "adapt/adapt.hpp"
#include "card/card.hpp"

namespace qtn {

Card make_card(const Adapted& adapted);

}  // namespace qtn
