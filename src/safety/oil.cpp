// Garlic, herbs and the like under oil, where there is no air: how long, and how cold.
#include <algorithm>

#include "recipe/makes.hpp"
#include "safety/storing.hpp"

namespace qtn {
namespace {

// Food under oil in the cold: a week, as for chilled food that is dated (FDA Food Code); common practice is less.
constexpr double kOilHours = 7 * 24;
constexpr double kDayHours = 24;   // what is eaten the same day is a dish
constexpr double kCovers = 60;     // ml or g of oil: a spoonful dresses, more than that covers
constexpr std::string_view kFigure = "chilled, for a week at most, and thrown away after (common practice, no source)";

std::string_view food_of(const TakeLine& line) { return line.food == nullptr ? std::string_view() : line.food->name; }

// Vinegar, lemon and lime keep it sour enough that it is another thing.
bool is_sour(const TakeLine& line) {
  const std::string name = lower(line.name);
  for (const std::string_view word : {"vinegar", "lemon", "lime", "citric", "verjuice"})
    if (name.find(word) != std::string::npos && name.find("zest") == std::string::npos) return true;
  return false;
}

double hours_of(const Quantity& length, const Recipe& recipe) { return length.is_lost() ? 0 : in_base(length, recipe.dialect).high.approx() / 60; }

// Does a heat reach what is fresh in it? Pine nuts that are toasted before do not make a pesto a cooked dish.
bool is_cooked(const Recipe& recipe) {
  Index first = kNone;  // the clause that brings in something fresh
  for (Index c = 0; c < recipe.clauses.size(); ++c) {
    const Clause& clause = recipe.clauses[c];
    for (Index m = clause.mentions.first; m < clause.mentions.end() && first == kNone; ++m) {
      const Target& target = recipe.mentions[m].target;
      if (target.kind == TargetKind::everything || (target.kind == TargetKind::line && grows_in_oil(recipe.lines[target.index].food))) first = c;
    }
    const Verb& verb = verb_of(clause);
    if (verb.heats && (clause.kind == ClauseKind::time || clause.kind == ClauseKind::reduce) && (first != kNone || verb.name != "toast")) return true;
  }
  return false;
}

// With other things in it, uncooked and not sour: pesto, feta under oil.
bool is_under_oil(const Recipe& recipe) {
  bool oil = false, flavour = false;
  for (const TakeLine& line : recipe.lines) {
    if (line.struck || line.alternative) continue;
    if (is_sour(line) || food_of(line).ends_with("flour")) return false;
    flavour = flavour || grows_in_oil(line.food);
    if (!food_of(line).ends_with("oil") || !line.measured() || line.amount.is_lost()) continue;
    const Dimension dimension = line.amount.dimension();
    oil = oil || ((dimension == Dimension::volume || dimension == Dimension::mass) && in_base(line.amount, recipe.dialect).high.approx() >= kCovers);
  }
  return oil && flavour && !is_cooked(recipe);
}

}  // namespace

bool is_flavoured_oil(const Recipe& recipe) {
  bool oil = false, flavour = false;
  for (const TakeLine& line : recipe.lines) {
    if (line.struck || line.alternative) continue;
    const std::string_view name = food_of(line);
    if (name.ends_with("oil")) {
      oil = true;
      continue;
    }
    const bool fresh = grows_in_oil(line.food);
    flavour = flavour || fresh;
    const bool dry = line.food != nullptr && (line.food->seasoning || name == "salt" || name == "sea salt flakes");
    if (!fresh && !dry) return false;  // something else is in it: a dish, a dressing
  }
  return oil && flavour;
}

bool keeps_under_oil(const Recipe& recipe) {
  if (is_flavoured_oil(recipe)) return true;
  const bool long_kept = std::any_of(recipe.keeps.begin(), recipe.keeps.end(), [&](const Keep& keep) { return hours_of(keep.length, recipe) > kDayHours; });
  return long_kept && is_under_oil(recipe);
}

void check_oil(const Recipe& recipe, Report& report) {
  const bool plain = is_flavoured_oil(recipe);
  const std::string week = std::to_string(static_cast<int>(kOilHours / 24)) + " days chilled";
  bool told = false;
  for (const Keep& keep : recipe.keeps) {
    const bool cold = keep.place == KeepPlace::chilled || keep.place == KeepPlace::frozen;
    const double hours = hours_of(keep.length, recipe);
    if (keep.place == KeepPlace::frozen || (cold && hours <= kOilHours) || (!plain && hours <= kDayHours)) continue;
    told = true;
    report.add(Code::oil_keeps_garlic, keep.span, cold ? "That is long for garlic or herbs in oil." : "Garlic or herbs in oil are kept out of the cold here.")
        .find(quoted(recipe.slice(keep.span))).expect(std::string(kFigure)).offer(keep.span, week, "keep it " + week);
  }
  if (told || !plain) return;
  for (const Clause& clause : recipe.clauses) {
    const Verb& verb = verb_of(clause);
    if (clause.kind != ClauseKind::time || !verb.wait || clause.place == Takes::freezer || verb.name == "freeze") continue;
    const bool cold = clause.place == Takes::fridge || (verb.takes & static_cast<std::uint8_t>(Takes::fridge)) != 0;
    if (least_minutes(recipe, clause) / 60 <= (cold ? kOilHours : kDayHours)) continue;
    const std::string chilled = "[" + std::string(verb.name) + " 2 days in the fridge]";
    report.add(Code::oil_keeps_garlic, clause.span, cold ? "That is long for garlic or herbs in oil." : "Garlic or herbs stand in oil for days, and nothing says that it is cold.")
        .find(quoted(recipe.slice(clause.span))).expect(std::string(kFigure)).offer(clause.span, chilled, "let it stand cold: " + quoted(chilled));
  }
}

}  // namespace qtn
