// Which raw food of the safety table a listed thing is. Rows: data/hazards.txt.
#pragma once
#include <span>

#include "larder/food.hpp"

namespace qtn {

enum class Hazard : std::uint8_t {
  none, poultry, minced, offal, beef, pork, bacon, fish, shellfish, molluscs, egg, rice, cooked_rice, cooked, beans, flour, honey, curing_salt,
};
std::string_view name_of(Hazard hazard);  // as the tables spell it: "cooked rice"
// `food` is one of Larder::all(), or null.
Hazard hazard_of(const Food* food);
// The same of a listed name, folded: where no row knows it its words tell ("chicken pieces"), and a few words tell against
// its row ("liver sausage").
Hazard hazard_of(const Food* food, std::span<const WordKey> name);
// Food that goes bad once it is cooked: all of the table but eggs, flour, dried beans and honey.
bool spoils(Hazard hazard);

}  // namespace qtn
