// Which raw foods are in the pot of a recipe, which heat has reached them, and what is done while they are raw.
#pragma once
#include "recipe/clauses.hpp"
#include "safety/figures.hpp"

namespace qtn {

struct RawItem {
  Hazard kind = Hazard::none;
  std::string_view name;    // as listed
  std::string_view said;    // as a reader knows it: of the shells, the prawns
  Span place;               // its line here, or the words that bring in the part or recipe that has it
  bool here = true;         // its own line stands in this file
  bool in_pot = true;       // not taken out
  bool heated = false;      // some heat reached it
  bool done = false;        // a heat or a reading that suffices
  bool broth = false;       // it was strained out, and what it boiled in stays
  double wet = 0, dry = 0;  // minutes of heat
  double boiled = 0;        // of these at the boil
  Index heat = kNone;       // the last heat clause of this file that reached it
  Index longest = kNone;    // the longest of them: there a reading is asked for
  double longest_minutes = 0;
  int pot = 0;              // a pan of its own where it went into one; 0: the one pot
  Index low = kNone;        // a reading of that heat that is not enough
};

// A clause that something is said of: tasting, cooling, keeping, thawing.
struct PotEvent {
  Index clause = kNone;
  std::vector<RawItem> items;  // what was in the pot
};

struct PotTale {
  std::vector<RawItem> end;       // of the dish, with what follows it (to finish)
  std::vector<PotEvent> tastings; // with something raw in the pot
  std::vector<PotEvent> waits;    // with something in the pot, heated or not
  std::vector<PotEvent> reheats;  // readings and heats of `to reheat:`
};

// Follows every part of a recipe, and the recipes that it uses, in the order of their making.
PotTale follow(const Recipe& recipe, Law law);

// Which raw food a line is; none where its words say that it is cooked already.
Hazard hazard_of(const Recipe& recipe, const TakeLine& line);
// Is there anything in the recipe, or in what it uses, that the table judges?
bool has_hazards(const Recipe& recipe, int depth = 0);
inline constexpr int kDeepestUse = 20;  // recipes within recipes
// What a clause heats to, in °C; nothing where it does not say.
std::optional<double> heat_of(const Recipe& recipe, const Clause& clause);
// Minutes that a clause takes at the least; 0 where it does not say.
double least_minutes(const Recipe& recipe, const Clause& clause);
double most_minutes(const Recipe& recipe, const Clause& clause);
// The reading of a clause: °C and seconds; nothing where it has none.
struct Reading {
  double celsius, seconds;
};
std::optional<Reading> reading_of(const Recipe& recipe, const Clause& clause);

}  // namespace qtn
