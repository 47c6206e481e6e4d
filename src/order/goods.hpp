// What a shop calls a thing: names that are one to whoever sells it. Rows: data/goods.txt. Private to this room.
#pragma once
#include <string>
#include <string_view>

namespace qtn {

// The same for two names of one thing, without case, plural and what the cook does to it ("sifted flour"). Sizes and
// kinds that are bought apart have keys of their own: large eggs, medium eggs.
std::string goods_key(std::string_view name);
// Water from the tap: nobody orders it.
bool is_tap_water(std::string_view name);
// Does who brings `brought` ("flour") bring that ("strong white flour")? How many words say so; 0: no.
std::size_t brings(std::string_view brought, std::string_view name);

}  // namespace qtn
