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

struct Board {
  std::deque<Recipe> recipes;          // at their sizes; makings look into them
  std::deque<Adapted> adapted;
  ClockOrder order;                    // what wind() asks for
  std::vector<std::optional<Minute>> serve;  // of each dish, where the menu says it
  std::vector<MadeOnce> shared;
  std::vector<std::string> unsized;    // recipes taken as written, because nobody says how much of them is needed
  std::string title;
  const Kitchen* kitchen = nullptr;
  std::optional<int> cooks;            // where the menu says so
};

// `request`: the size of a single recipe. Reports what is wrong with the menu's lines and hours.
Board board_of(const Recipe& recipe, const Request& request, Report& report);

}  // namespace qtn
