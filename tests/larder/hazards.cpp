// Which raw foods the safety table judges: by their row, and by the words of a name that no row knows.
#include <doctest/doctest.h>

#include <set>
#include <vector>

#include "data/tables.hpp"
#include "larder/hazards.hpp"
#include "words/rows.hpp"

using namespace qtn;

namespace {

Hazard judged(std::string_view name) {
  std::vector<WordKey> keys;
  fold_keys(name, keys);
  return hazard_of(Larder::standard().find(keys), keys);
}

bool is_row_of_words(std::string_view first) {
  return first == "word" || first == "last" || first == "never" || first == "never last" || first == "ready" || first == "cures" || first == "smoked raw";
}

}  // namespace

TEST_CASE("every row of raw foods is a food, and what is unsafe raw and no plant is in it") {
  std::set<std::string_view> kinds;
  for (Rows row(data::hazards()); row.next();) {
    if (is_row_of_words(row[0])) continue;
    kinds.insert(row[0]);
    for (std::string_view foods = row[1]; !foods.empty();) {
      const std::string_view name = next_item(foods, ',');
      CHECK_MESSAGE(Larder::standard().named(name) != nullptr, name);
      CHECK_MESSAGE(name_of(hazard_of(Larder::standard().find(name))) == row[0], name);
    }
  }
  CHECK(kinds.size() == 17);
  const std::set<std::string_view> ready{"fresh pasta", "puff pastry", "filo pastry", "shortcrust pastry", "sourdough starter", "bread dough"};
  for (const Food& food : Larder::standard().all()) {
    const bool flour = food.name.ends_with("flour") || food.name == "masa harina";
    if (food.raw_risk && !flour && !ready.contains(food.name)) CHECK_MESSAGE(hazard_of(&food) != Hazard::none, food.name);
  }
}

TEST_CASE("raw meat and fish that no row knows is told by its words") {
  const std::vector<std::pair<Hazard, std::vector<std::string_view>>> all{
      {Hazard::poultry, {"chicken pieces", "chicken parts", "chicken mince", "chicken thigh fillets", "chicken tenders", "poussins", "quail", "turkey steaks", "chicken thighs with skin", "chicken burgers", "chicken sausages"}},
      {Hazard::minced, {"mince", "veal mince", "venison mince", "burgers", "meatballs", "chipolatas", "merguez", "hamburger patties", "venison burgers"}},
      {Hazard::beef, {"chuck roast", "oxtail", "ox cheeks", "lamb shoulder on the bone", "beef stew meat", "beef cubes"}},
      {Hazard::pork, {"pork ribs", "pork cheeks", "pork neck", "pork steaks", "gammon steaks", "short ribs", "pork leg", "wild boar", "rabbit pieces"}},
      {Hazard::bacon, {"smoked bacon lardons", "turkey carcass", "pork rind"}},
      {Hazard::fish, {"sea bass fillets", "herring fillets", "tuna", "fish pie mix", "monkfish tail", "undyed smoked haddock loin"}},
      {Hazard::shellfish, {"king prawn tails", "mixed seafood"}},
      {Hazard::molluscs, {"razor clams"}},
      {Hazard::offal, {"ox hearts", "lamb's tongues", "veal sweetbreads"}},
  };
  for (const auto& [kind, names] : all)
    for (const std::string_view name : names) CHECK_MESSAGE(judged(name) == kind, name);
}

TEST_CASE("what only has a beast in its name is no raw meat") {
  for (const std::string_view name :
       {"lamb's lettuce leaves", "chicken stock cube", "chicken cube", "beef gravy granules", "goose fat", "beef tomatoes", "lamb's lettuce", "oyster mushrooms", "oyster sauce", "crab apples", "crab apple jelly",
        "chicken liver pâté", "smoked trout fillets", "smoked salmon trimmings", "fish seasoning", "chicken seasoning", "pork scratchings", "pork crackling", "liver sausage", "corned beef hash",
        "beef pastrami", "salami", "veggie sausages", "vegetarian burgers", "burger buns", "burger sauce", "tuna in brine", "tuna in olive oil", "prawn crackers", "crab sticks", "artichoke hearts",
        "hearts of palm", "cauliflower steaks", "soya mince", "vegan mince", "mincemeat", "goat's cheese", "goat cheese", "chicken salt", "shrimp paste", "lobster soup",
        "lumpfish caviar", "fish cakes", "bacon bits", "fish spice", "ox heart cabbage", "hen of the woods", "pigeon peas", "beef jerky", "meat tenderiser", "fish kettle", "Turkish delight"})
    CHECK_MESSAGE((judged(name) == Hazard::none || judged(name) == Hazard::cooked), name);
}

TEST_CASE("salts with nitrite or nitrate in them are known by the names of the trade") {
  for (const std::string_view name : {"curing salt", "pink curing salt", "Prague powder #1", "Instacure", "Insta Cure #1", "cure #1", "cure no. 2", "saltpetre", "saltpeter", "potassium nitrate"})
    CHECK_MESSAGE(judged(name) == Hazard::curing_salt, name);
  for (const std::string_view name : {"pink Himalayan salt", "fine salt", "the cure", "dry cure mix", "cure"}) CHECK_MESSAGE(judged(name) == Hazard::none, name);
}
