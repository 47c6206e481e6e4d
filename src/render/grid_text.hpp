// A table of words and figures in plain text: columns where they fit a line, else a row at a time.
#pragma once
#include <string>

#include "card/card.hpp"

namespace qtn {

void render_grid_text(const Card& card, const Grid& grid, std::size_t indent, std::string& out);

}  // namespace qtn
