// Raw food against the core table, tasting, beans.
#include <algorithm>
#include <map>

#include "safety/safety.hpp"
#include "safety/say.hpp"
#include "safety/storing.hpp"
#include "safety/allergens.hpp"

namespace qtn {
namespace {

// Does the table ask that this one be cooked? Eggs and flour are told on the card; rice and beans have checks of their own.
bool must_be_cooked(Hazard kind) {
  switch (kind) {
    case Hazard::poultry:
    case Hazard::minced:
    case Hazard::offal:
    case Hazard::beef:
    case Hazard::pork:
    case Hazard::bacon:
    case Hazard::fish:
    case Hazard::shellfish:
    case Hazard::molluscs:
      return true;
    default:
      return false;
  }
}

class Checker {
 public:
  Checker(const Recipe& recipe, Report& report) : recipe_(recipe), report_(report), law_(law_of(recipe)), tale_(follow(recipe, law_)) {}

  void run() {
    cores();
    tastings();
    beans();
    check_storing(recipe_, law_, tale_, report_);
  }

 private:
  // One report for all that shares a heat.
  void cores() {
    // What is cured and not heated leaves the recipe raw, to be cooked or dried by another; its card says so.
    const bool cured = std::any_of(tale_.end.begin(), tale_.end.end(), [](const RawItem& item) { return item.kind == Hazard::curing_salt; });
    std::map<std::pair<Index, Index>, std::vector<const RawItem*>> groups;
    for (const RawItem& item : tale_.end)
      if (must_be_cooked(item.kind) && !item.done && !item.broth && !(cured && !item.heated)) groups[{item.heat, item.low}].push_back(&item);
    for (const auto& [where, items] : groups) {
      // The one that wants most speaks for all.
      const RawItem& worst = **std::max_element(items.begin(), items.end(), [&](const RawItem* a, const RawItem* b) { return wanted(*a) < wanted(*b); });
      const CoreRule* const rule = core_rule(law_, worst.kind);
      if (rule != nullptr) core(items, worst, *rule, worst.longest, where.second);
    }
  }

  double wanted(const RawItem& item) const {
    const CoreRule* const rule = core_rule(law_, item.kind);
    return rule == nullptr ? 0 : rule->points.back().celsius;
  }

  void core(const std::vector<const RawItem*>& items, const RawItem& worst, const CoreRule& rule, Index heat, Index low) {
    const std::string names = the_names(items);
    if (low != kNone) {
      const Clause& clause = recipe_.clauses[low];
      const Reading reading = *reading_of(recipe_, clause);
      report_.add(Code::core_too_low, clause.span, "At this reading " + names + " may not be safe.")
          .find(quoted(recipe_.slice(clause.span))).expect(std::string(rule.words) + " (" + source_of(law_, rule.source) + ")" + enough(rule, reading))
          .also(worst.place, "this is raw when it goes in");
      return;
    }
    auto& problem = report_.add(Code::no_core_reading, worst.place, heat == kNone ? "Nothing here cooks " + names + "." : "Nothing says how hot " + names + (items.size() > 1 ? " get" : plural(worst.name) ? " get" : " gets") + " in the middle.")
                        .expect("a reading at the last heat: " + std::string(rule.words) + " (" + source_of(law_, rule.source) + ")");
    if (heat == kNone) return;
    const Span end{recipe_.clauses[heat].span.end, recipe_.clauses[heat].span.end};
    problem.also(recipe_.clauses[heat].span, "the last heat it has")
        .offer(end, " until the middle [reads " + std::string(rule.write) + "]", "ask for a reading of " + std::string(rule.write));
  }

  // How long this heat would have to last, where it is a matter of time.
  std::string enough(const CoreRule& rule, const Reading& reading) const {
    const double seconds = seconds_wanted(rule, reading.celsius);
    if (seconds > 24 * 3600) return "";
    return "; at this heat it takes " + say_seconds(seconds);
  }

  void tastings() {
    for (const PotEvent& event : tale_.tastings) {
      std::vector<const RawItem*> raw;
      for (const RawItem& item : event.items)
        if (!item.heated && !item.broth && item.kind != Hazard::rice && item.kind != Hazard::honey && item.kind != Hazard::cooked && item.kind != Hazard::cooked_rice &&
            item.kind != Hazard::curing_salt)
          raw.push_back(&item);
      if (raw.empty()) continue;
      const Span here = recipe_.clauses[event.clause].span;
      report_.add(Code::tasted_raw, recipe_.clauses[event.clause].span, "Here it is tasted while " + the_names(raw) + (raw.size() > 1 || plural(raw[0]->name) ? " are" : " is") + " raw.")
          .expect("a spoonful cooked through first: `fry a spoonful [2 min] and [taste]`")
          .also(raw[0]->place, "not heated yet")
          .offer({here.begin, here.begin}, begins_sentence(here) ? "Fry a spoonful [2 min], cool it and " : "fry a spoonful [2 min], cool it and ", "cook a spoonful first");
    }
  }

  bool begins_sentence(Span place) const {
    std::size_t at = place.begin;
    while (at > 0 && (recipe_.text[at - 1] == ' ' || recipe_.text[at - 1] == '\n' || recipe_.text[at - 1] == '\r')) --at;
    return at == 0 || std::string_view(".!?:").find(recipe_.text[at - 1]) != std::string_view::npos || recipe_.text.substr(at, place.begin - at).find("\n\n") != std::string_view::npos;
  }

  // Ten minutes at a hard boil: the Food Standards Agency's advice; the American one is thirty. Both from memory.
  void beans() {
    constexpr double kHardBoil = 10;
    for (const RawItem& item : tale_.end) {
      if (item.kind != Hazard::beans || item.boiled >= kHardBoil) continue;
      auto& problem = report_.add(Code::beans_not_boiled, item.place, "The " + std::string(item.name) + " never boil hard.")
                          .expect("soaked, drained, then `[boil 10 min]` in fresh water before they simmer (UK advice; in the United States 30 min; both from memory)");
      if (item.heat != kNone) problem.offer({recipe_.clauses[item.heat].span.begin, recipe_.clauses[item.heat].span.begin}, "[boil 10 min], then ", "boil them hard first");
    }
  }

  const Recipe& recipe_;
  Report& report_;
  Law law_;
  PotTale tale_;
};

}  // namespace

void check_safety(const Recipe& recipe, Report& report) {
  check_promises(recipe, report);
  check_babies(recipe, report);
  if (recipe.kind == FileKind::recipe && (has_hazards(recipe) || keeps_under_oil(recipe))) Checker(recipe, report).run();
}

}  // namespace qtn
