// Which raw food of the safety table a listed thing is. Rows: data/hazards.txt.
#pragma once
#include "larder/food.hpp"

namespace qtn {

enum class Hazard : std::uint8_t {
  none, poultry, minced, offal, beef, pork, bacon, fish, shellfish, molluscs, egg, rice, cooked_rice, cooked, beans, flour, honey, curing_salt,
};
std::string_view name_of(Hazard hazard);  // as the tables spell it: "cooked rice"
// `food` is one of Larder::all(), or null.
Hazard hazard_of(const Food* food);
// Food that goes bad once it is cooked: all of the table but eggs, flour, dried beans and honey.
bool spoils(Hazard hazard);

}  // namespace qtn
