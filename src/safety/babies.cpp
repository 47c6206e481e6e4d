// Food for babies under a year, by the recipe's own words. Advice of the UK's NHS and the American CDC, from memory.
#include <string>

#include "safety/storing.hpp"

namespace qtn {
namespace {

// Baby spinach and baby carrots are no food for babies, and "not for babies" is the caution itself.
bool is_for_babies(std::string_view words) {
  const std::string text = lower(words);
  for (const std::string_view not_for : {"not for", "no honey", "without honey", "leave out the honey", "over 12 months", "over one", "over 1 year", "from 12 months"})
    if (text.find(not_for) != std::string::npos) return false;
  for (const std::string_view baby : {"weaning", "for infants", "for babies", "for a baby", "for baby", "baby food", "baby rice", "baby porridge", "baby cereal", "baby puree", "baby purée", "baby-led",
                                      "babies'", "from 6 months", "from six months", "6 months old", "six months old", "from 7 months", "from 8 months", "from 9 months", "6 months plus", "6 months +"})
    if (text.find(baby) != std::string::npos) return true;
  return false;
}

}  // namespace

void check_babies(const Recipe& recipe, Report& report) {
  for (const TakeLine& line : recipe.lines) {
    if (line.struck || hazard_of(recipe, line) != Hazard::honey) continue;
    bool babies = is_for_babies(recipe.title);
    for (const TextFact& fact : recipe.facts) babies = babies || (fact.field == Field::note && is_for_babies(recipe.slice(fact.span)));
    if (babies)
      report.add(Code::honey_for_baby, line.name_span, "Honey is not for babies under 12 months, raw or cooked.")
          .find("words that say that this is for one").expect("no honey; ripe banana, apple or pear sweetens it (NHS advice, from memory)");
    return;
  }
}

}  // namespace qtn
