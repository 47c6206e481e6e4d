#include "larder/hazards.hpp"

#include <array>

#include "data/tables.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

constexpr std::array<std::string_view, 18> kNames{"",         "poultry", "minced", "offal",       "beef",   "pork",  "bacon", "fish",  "shellfish",
                                                  "molluscs", "egg",     "rice",   "cooked rice", "cooked", "beans", "flour", "honey", "curing salt"};

struct HazardTable {
  std::vector<Hazard> of_food;

  HazardTable() {
    const Larder& larder = Larder::standard();
    of_food.resize(larder.all().size());
    for (Rows row(data::hazards()); row.next();) {
      Hazard hazard = Hazard::none;
      for (std::size_t i = 1; i < kNames.size(); ++i)
        if (kNames[i] == row[0]) hazard = static_cast<Hazard>(i);
      for (std::string_view foods = row[1]; !foods.empty();)
        if (const Food* const food = larder.find(next_item(foods, ','))) of_food[static_cast<std::size_t>(food - larder.all().data())] = hazard;
    }
  }
};

}  // namespace

std::string_view name_of(Hazard hazard) { return kNames[static_cast<std::size_t>(hazard)]; }

Hazard hazard_of(const Food* food) {
  static const HazardTable table;
  return food == nullptr ? Hazard::none : table.of_food[static_cast<std::size_t>(food - Larder::standard().all().data())];
}

bool spoils(Hazard hazard) {
  switch (hazard) {
    case Hazard::none:
    case Hazard::egg:
    case Hazard::flour:
    case Hazard::beans:
    case Hazard::honey:
    case Hazard::curing_salt:
      return false;
    default:
      return true;
  }
}

}  // namespace qtn
