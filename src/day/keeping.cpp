// What may be made earlier than it must, and what has to go into the freezer for the plan to hold.
#include <algorithm>

#include "day/say.hpp"
#include "day/table.hpp"

namespace qtn {
namespace {

std::string_view place_words(KeepPlace place) {
  switch (place) {
    case KeepPlace::chilled: return "in the fridge";
    case KeepPlace::frozen: return "in the freezer";
    case KeepPlace::cool: return "in a cool place";
    case KeepPlace::sealed: return "sealed";
    default: return "at room temperature";
  }
}

Minute minutes_of_keep(const Recipe& recipe, const Keep& keep) {
  return static_cast<Minute>(in_base(keep.length, recipe.dialect).high.floor());
}

struct Kept {
  std::string name;
  const Recipe* recipe;
  const std::vector<Keep>* keeps;
  Index making, part;
};

}  // namespace

void write_keeping(const Table& table, Day& day) {
  const Clock& clock = table.clock;
  std::vector<Kept> all;
  for (Index m = 0; m < clock.makings.size(); ++m) {
    const Recipe& recipe = *clock.makings[m].recipe;
    const bool dish = std::any_of(clock.dishes.begin(), clock.dishes.end(), [&](const Dish& one) { return one.making == m; });
    if (!recipe.keeps.empty() && !dish) all.push_back({std::string(recipe.title), &recipe, &recipe.keeps, m, kNone});
    for (Index p = 0; p < recipe.parts.size(); ++p)
      if (!recipe.parts[p].keeps.empty() && !(dish && p == recipe.dish)) all.push_back({std::string(recipe.parts[p].name), &recipe, &recipe.parts[p].keeps, m, p});
  }
  std::string earlier;
  for (const Kept& kept : all) {
    // From its own last moment to whatever begins next that is not of it: how long this plan lets it stand.
    Minute end = std::numeric_limits<Minute>::min(), use = std::numeric_limits<Minute>::max();
    const auto gone = [&](const plan::Spot& spot) { return table.order.hours.gone(table.at(spot)); };
    for (Number i = 0; i < clock.doings.size(); ++i) {
      const Doing& doing = clock.doings[i];
      if (doing.making == kept.making && (kept.part == kNone || doing.part == kept.part) && doing.what != Doing::What::serving)
        end = std::max(end, gone(table.posed.placed.ends[i]));
    }
    for (const plan::Rule& rule : clock.network.rules) {
      const Doing& before = clock.doings[rule.before.activity];
      const Index part = kept.part != kNone ? kept.part : kept.recipe->dish;
      if (before.what == Doing::What::whole && before.making == kept.making && before.part == part && rule.label == kNothing)
        use = std::min(use, gone(table.posed.placed.begins[rule.after.activity]));
    }
    if (end == std::numeric_limits<Minute>::min() || use == std::numeric_limits<Minute>::max()) continue;
    const Keep *needed = nullptr, *longest = nullptr;
    for (const Keep& keep : *kept.keeps) {
      if (keep.once_open || keep.length.is_lost()) continue;
      const Minute length = minutes_of_keep(*kept.recipe, keep);
      if (length >= use - end && (needed == nullptr || length < minutes_of_keep(*kept.recipe, *needed))) needed = &keep;
      if (longest == nullptr || length > minutes_of_keep(*kept.recipe, *longest)) longest = &keep;
    }
    if (longest == nullptr) continue;
    const Minute most = minutes_of_keep(*kept.recipe, *longest);
    if (needed != nullptr && use - end > 120 && kept.keeps->size() > 1)
      day.assumptions.push_back(kept.name + " stands " + say_length(use - end, 1) + ": keep it " + std::string(place_words(needed->place)) + ".");
    if (most >= 60 && most > use - end)
      earlier += (earlier.empty() ? "" : "; ") + kept.name + ", up to " + say_length(most, 1) + " before it is used, " + std::string(place_words(longest->place));
  }
  if (!earlier.empty()) day.earlier = earlier;
}

}  // namespace qtn
