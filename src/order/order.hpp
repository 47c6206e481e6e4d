// What is bought for the dishes of a table: the boundary of this room. Amounts are as bought, exact, at the larger end of a
// range; what is rounded up is whole packs and whole things, here, and nothing else.
#pragma once
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "day/board.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

// A weight in grams, a volume in millilitres, or a number of things: of `noun`, where they have one (tins, sprigs).
struct Measure {
  Fraction amount;
  Dimension dimension = Dimension::count;
  UnitId noun = kNoUnit;
  bool meets(const Measure& other) const { return dimension == other.dimension && noun == other.noun; }
};

// What things of an amount are called: tins, sprigs; nothing where its word is a bare number, a dozen.
UnitId noun_of(const Quantity& amount);

// What one line of one recipe wants.
struct Need {
  std::string name, key;         // "leeks"; the key of what a shop sells: goods_key()
  Measure measure;
  bool trimmed = false;          // `from` says what is bought; else no trim is assumed
  bool optional = false;
  bool spoonful = false;         // written in spoons
  std::string into;              // what the recipe takes of it, where that has a name of its own: "egg yolks"
  Fraction pack = Fraction::lost();  // in the measure: of tins of 400 g each; lost where the line names no packs
  std::string pack_words;            // "400 g tins"
  // Grams per millilitre and of one, where a source gives them; lost otherwise.
  Fraction density = Fraction::lost(), each = Fraction::lost();
  std::string density_source, each_source;
  Index making = 0, line = kNone;
};
// Without an amount: to taste, for dusting.
struct Unmeasured {
  std::string name, key;
  std::string words;             // "to taste, to start with 3 g"
  Index making = 0;
};
// What the lines of a recipe want, without what other recipes bring. Parts and tap water are not bought, `giving` lines once.
struct Needs {
  std::vector<Need> list;
  std::vector<Unmeasured> also;
};
Needs needs_of(const Recipe& recipe, Index part, Index making, const Kitchen* kitchen);

// The measure of a need in another kind, through its sourced figures; lost where there is none. `through` gets the source.
Fraction in_measure(const Need& need, const Measure& wanted, std::string* through = nullptr);

// ---- the house's suppliers and prices -----------------------------------------------------------------------------
const Supplier* supplier_of(const Kitchen* kitchen, std::string_view name);
const HousePrice* price_of(const Kitchen* kitchen, std::string_view name);
Measure pack_of(const HousePrice& price, Dialect dialect);  // what is in one

// ---- the order ----------------------------------------------------------------------------------------------------
struct DishShare {
  std::string dish;
  std::string via;               // the recipe it goes into, where that is another: "Shortcrust"
  Fraction amount;               // of the purchase's measure
  bool optional = false;
};
// A recipe of the book that takes no more than is left.
struct LeftUse {
  std::string dish;
  Fraction amount;
};
struct Purchase {
  std::string name, key;
  Measure measure;               // all that is wanted, exact
  Fraction most{0};              // that one line wants of it: the name is that one's
  Fraction optional{0};          // of it, for lines that may be left out
  bool spoonful = false;         // all of it is written in spoons
  Fraction pack = Fraction::lost();  // what one holds, where all its lines say so; of the price where there is one
  std::string pack_words;        // "400 g tins", "250 g", "12"
  std::vector<DishShare> shares;     // sum to the measure
  const HousePrice* price = nullptr;
  Fraction packs = Fraction::lost();  // whole; lost where it is sold loose or nobody says
  Fraction left = Fraction::lost();   // of the packs, in the measure
  Fraction cost = Fraction::lost();   // of what is bought, in the kitchen's currency
  std::vector<LeftUse> left_for;
  std::vector<std::string> through;   // figures that joined weights, volumes and counts, with their sources
  std::vector<std::string> more;      // "to taste (Green bean salad)": beside the amount
  Minute needed = 0;                  // the day it is first wanted; where the hour of serving is known
};
struct Delivery {
  const Supplier* supplier = nullptr;  // null: nobody is named
  std::vector<Purchase> lines;
  // Where the hour of serving is known: the first day it is wanted, the day it comes, the day it is ordered. 00:00 of each.
  std::optional<Minute> needed, comes, order_by;
};
struct Purchases {
  std::vector<Delivery> deliveries;    // in the kitchen's order, what has no supplier last
  std::vector<Unmeasured> also;        // that stand in no purchase
  Fraction cost{0};                    // of all that has a price
  std::vector<std::string> no_price;   // names
  bool untrimmed = false;              // of something nobody says what is bought, and no trim was assumed
  bool timed = false;                  // days come from the written times
};
// `serve`: when it is served, over what the boards say. `book`: other recipes, for what is left of packs.
Purchases purchases_of(std::span<const Board> boards, const std::optional<Minute>& serve, std::span<const Recipe* const> book);

// The share of a making that goes into each dish of its board; rows by making.
std::vector<std::vector<Fraction>> dish_shares(const Board& board);
// "2 tins", "300 g", "6": exact, for messages and traces.
std::string write_measure(const Measure& measure);

}  // namespace qtn
