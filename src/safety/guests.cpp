// "3 without gluten": which dishes of the table they can eat.
#include <algorithm>

#include "safety/allergens.hpp"
#include "safety/guest_words.hpp"

namespace qtn {

std::vector<GuestNeed> guests_of(const Recipe& menu, Report* report) {
  std::vector<GuestNeed> out;
  for (const TextFact& fact : menu.facts) {
    if (fact.field != Field::guests) continue;
    for (GuestNeed& need : read_guests(menu, fact.span, report)) {
      for (const Use& use : menu.uses) {
        if (use.recipe == nullptr) continue;
        const AllergenSheet sheet = allergens_of(*use.recipe);
        const bool unsure = ((sheet.label() | may_be(sheet.contains())) & need.avoids) != 0 || !sheet.all_known();
        auto& list = (sheet.contains() & need.avoids) != 0 ? need.cannot : need.more ? need.open : unsure ? need.label : need.can;
        list.emplace_back(use.as);
      }
      if (report != nullptr && need.can.empty() && need.label.empty() && need.open.empty() && !need.cannot.empty())
        report->add(Code::guests_eat_nothing, need.place, "Every dish of this table brings what they must not eat.")
            .find(quoted(need.who)).expect("one dish at least that they can eat");
      out.push_back(std::move(need));
    }
  }
  return out;
}

}  // namespace qtn
