// The way through the house on one page: text to tree, recipe, adapted recipe, card, output. The program, an editor and
// the tests call these; nobody else strings the phases together.
#pragma once
#include <optional>
#include <string>

#include "adapt/adapt.hpp"
#include "card/cost_sheet.hpp"
#include "card/make.hpp"
#include "day/board.hpp"
#include "recipe/recipe.hpp"
#include "render/render.hpp"
#include "safety/allergens.hpp"

namespace qtn {

// What is asked of a recipe beside its text.
struct Order {
  Request request;       // size and measures
  std::string variant;   // a `variant:` by name; empty: as written
  std::string with;      // an `or` line by name
  std::optional<int> as_of;  // the amounts of that day, as read_date counts it; goes before `with`, never beside `variant`
  Format format = Format::markdown;
  bool readings = false;     // the sheet of readings in the place of the card
};

// What is kept from file to file, so that its arrays are made once a thread.
struct Workbench {
  Tree tree;
  Recipe spare;  // a recipe that is done with may be put back here
};

// Text to a checked recipe. `report` says whether it may be cooked from.
Recipe compile(const Source& source, const Surroundings& around, Workbench& bench, Report& report);

// A checked recipe to the card that was ordered, appended to `out`. False, with the reason in `report`, when the order
// cannot be met: no such variant, a yield of another kind, a version with errors of its own.
bool print_card(const Recipe& recipe, const Order& order, std::string& out, Report& report);

// What is asked of a day.
struct DayAsk {
  Request request;             // the size of the recipe or the table
  std::optional<Minute> serve; // hours of the wall; else the menu's own
  std::optional<Minute> start; // begun then, served as early as can be
  std::optional<Minute> now;   // nothing is served before this; not known: not checked
  std::optional<int> cooks, ovens;
  std::optional<StepWay> way;
  std::string zone;            // else the kitchen's
  bool nights = false;         // work in the night is allowed
  std::vector<Pin> pins;
  std::vector<Settled> settled;
  int revision = 0;            // as of a DayOrder
  std::string variant, with;   // as of an Order
};

// The run sheet of a recipe or a menu, appended to `out`. False, with the reason in `report`, when there is no such day
// or the order cannot be met.
bool print_day(const Recipe& recipe, const DayAsk& ask, Format format, std::string& out, Report& report);

// Dishes against allergens, by one of the two lists, appended to `out`: those of a menu, or every recipe that is given.
void print_allergens(std::span<const Recipe* const> recipes, AllergenList list, Format format, std::string& out);

// The trade's table of a checked recipe, of the version and at the size that was ordered, appended to `out`: as text, else as JSON. False,
// with the reason in `report`, when the order cannot be met or nothing in the recipe can be weighed.
bool print_ratios(const Recipe& recipe, const Order& order, bool as_text, std::string& out, Report& report);

// What is bought for one or several recipes and menus of one house, as one list.
struct Ordered {
  const Recipe* recipe = nullptr;
  Order order;                 // its size and version
};
struct OrderAsk {
  std::vector<Ordered> dishes;
  std::optional<Minute> serve;        // else each menu's own
  std::vector<const Recipe*> book;    // for what is left of packs
};
bool print_order(const OrderAsk& ask, Format format, std::string& out, Report& report);

// What a recipe or a menu costs, at the size and of the version that was ordered.
struct CostAsk {
  Order order;
  CostWish wish;
  int today = 0;               // days since 1970-01-01, for old prices; 0: not checked
};
bool print_costs(const Recipe& recipe, const CostAsk& ask, std::string& out, Report& report);

}  // namespace qtn
