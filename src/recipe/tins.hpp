// `tin:` values, in a recipe, a kitchen and on the command line. Private to this room.
#pragma once
#include "recipe/amounts.hpp"

namespace qtn {

// The tin that a value node says; nothing when part of it could not be read, which is then reported.
std::optional<Tin> read_tin(Reading& in, View value);

}  // namespace qtn
