// A day drawn: a strip of hours for each day, a lane for each cook, oven, hob and cold place. Private to this room.
#pragma once
#include "card/card.hpp"
#include "render/ink.hpp"

namespace qtn {

void draw(const Drawing& drawing, Ink& ink);

}  // namespace qtn
