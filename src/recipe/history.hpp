// What the log tells of one thing: how much of it was tasted when.
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

struct HistoryRow {
  Index trial = kNone;
  const Change* change = nullptr;  // null: tasted as it stood
  std::string before, after;       // as written: "60 g", "none", "150 g silken tofu"; equal without a change
  std::string share;               // "3 % to 2.3 % of the meat"; empty where it cannot be weighed
};
struct History {
  std::string name;                // "fine salt, in Brine"
  std::string now, share;          // as the list has it; "none" where it has gone; empty for a step
  std::vector<HistoryRow> rows;    // the oldest first
};

// Of an ingredient, `[Brine] fine salt` where two parts have it, or of a verb of the method. nullopt, with the reason in
// `report`, when neither the list nor the log has that name, or several lines have it. `recipe` must outlive the result.
std::optional<History> history_of(const Recipe& recipe, std::string_view name, Report& report);

std::string_view words_of(ShareOf share);  // "of the meat"

}  // namespace qtn
