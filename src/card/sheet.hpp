// A run sheet from a planned day: one table for one serving, headed as a cook thinks of the time that is left.
#pragma once
#include "card/card.hpp"
#include "card/words.hpp"
#include "day/board.hpp"

namespace qtn {

Card make_sheet(const Board& board, const Day& day, const Words& words);

}  // namespace qtn
