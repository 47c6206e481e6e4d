// "3 without gluten": which dishes of the table they can eat.
#include "safety/allergens.hpp"

namespace qtn {
namespace {

// The pieces of `guests: 24, 3 without gluten, 1 without milk and eggs` that say what somebody does without.
std::vector<std::pair<Span, Span>> needs(const Recipe& menu, Span guests) {
  std::vector<std::pair<Span, Span>> out;  // all of it; the words behind "without"
  const std::string_view text = menu.slice(guests);
  for (std::size_t at = 0; (at = text.find("without ", at)) != std::string_view::npos;) {
    std::size_t first = text.rfind(',', at);
    first = first == std::string_view::npos ? 0 : first + 1;
    while (first < at && (text[first] == ' ' || text[first] == '\n')) ++first;
    const std::size_t words = at + 8;
    // It runs on to the next number of guests.
    std::size_t end = words;
    while (end < text.size() && !(text[end] >= '0' && text[end] <= '9')) ++end;
    while (end > words && (text[end - 1] == ' ' || text[end - 1] == ',' || text[end - 1] == '\n' || text[end - 1] == '\r')) --end;
    out.push_back({{static_cast<std::uint32_t>(guests.begin + first), static_cast<std::uint32_t>(guests.begin + end)},
                   {static_cast<std::uint32_t>(guests.begin + words), static_cast<std::uint32_t>(guests.begin + end)}});
    at = end;
  }
  return out;
}

}  // namespace

std::vector<GuestNeed> guests_of(const Recipe& menu, Report* report) {
  std::vector<GuestNeed> out;
  for (const TextFact& fact : menu.facts) {
    if (fact.field != Field::guests) continue;
    for (const auto& [all, words] : needs(menu, fact.span)) {
      GuestNeed need;
      need.who = menu.slice(all);
      need.avoids = promised(menu, words, report);
      if (need.avoids == 0) continue;
      for (const Use& use : menu.uses) {
        if (use.recipe == nullptr) continue;
        const AllergenSheet sheet = allergens_of(*use.recipe);
        const std::string dish(use.as);
        if ((sheet.contains() & need.avoids) != 0) need.cannot.push_back(dish);
        else if ((sheet.label() & need.avoids) != 0 || !sheet.all_known()) need.label.push_back(dish);
        else need.can.push_back(dish);
      }
      if (report != nullptr && need.can.empty() && need.label.empty() && !need.cannot.empty())
        report->add(Code::guests_eat_nothing, all, "Every dish of this table brings what they must not eat.")
            .find("`" + need.who + "`").expect("one dish at least that they can eat");
      out.push_back(std::move(need));
    }
  }
  return out;
}

}  // namespace qtn
