// What is cooked for one serving: the dishes of a menu, or one recipe, each at its size, and what they use, made once
// for all who need it.
#pragma once
#include <deque>

#include "day/day.hpp"

namespace qtn {

// Made once, for several.
struct MadeOnce {
  std::string name;                    // "Shortcrust"
  std::vector<std::string> portions;   // "363 g for Egg custard tart"
  std::string over;                    // "33 g for trimmings"; empty: nothing is left
};

// What one line takes of a making, as a share of the recipe as it is written, what is made for trimmings with it.
struct Taken {
  Index by = 0;        // the making whose line it is
  Index line = kNone;  // kNone: nobody says how much, and it is made once as written
  Fraction share;
};

// A making as the page has it, and who asks for how much.
struct Demand {
  const Recipe* page = nullptr;  // as written
  Index part = kNone;
  Fraction factor;
  std::vector<std::string> portions;  // as of MadeOnce
  std::string over;
};

struct Board {
  Board() = default;
  Board(Board&&) = default;  // makings look into the recipes, so a copy would look into another board
  Board& operator=(Board&&) = default;

  std::deque<Recipe> recipes;          // at their sizes; makings look into them
  std::deque<Adapted> adapted;
  ClockOrder order;                    // what wind() asks for
  std::vector<std::optional<Minute>> serve;  // of each dish, where the menu says it
  std::vector<Span> serve_places;            // and where that stands
  std::vector<Demand> asked;            // of each making
  std::vector<MadeOnce> shared;
  std::vector<std::string> apart;      // dishes made for the table, and apart from that for others
  std::vector<std::vector<Taken>> taken;  // of each making; empty for a dish, and of none once make_once() changed them
  std::vector<std::string> unsized;    // recipes taken as written, because nobody says how much of them is needed
  std::string title;
  const Kitchen* kitchen = nullptr;
  std::optional<int> cooks;            // where the menu says so
  std::optional<Quantity> serves;      // of a menu, at the size asked for
  Fraction factor{1};                  // that size
};

// `request`: the size of the recipe, or of the whole table. Reports what is wrong with the menu's lines and hours.
Board board_of(const Recipe& recipe, const Request& request, Report& report);

// A dish of the table that others use too is one making with what they take of it, unless it comes to table hot: then it
// is made for the table apart, and that is told. Orders and costs keep the two apart, as the shares of each are theirs.
// `hot`: of each dish. True: something was put together, and the board's order is another.
bool make_once(Board& board, const std::vector<char>& hot);

}  // namespace qtn
