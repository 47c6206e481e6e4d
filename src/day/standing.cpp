// What waiting costs: cooked food that stands between the heat and the table, or the fridge, for longer than the house's
// rules let it; and raw food in a pause of its own making, which belongs in the cold.
#include <algorithm>

#include "day/lengths.hpp"
#include "day/say.hpp"
#include "day/table.hpp"
#include "safety/pots.hpp"

namespace qtn {
namespace {

// Is it food that spoils once it is cooked: meat, poultry, fish, rice?
bool is_risky(const Recipe& recipe, const TakeLine& line) { return spoils(hazard_of(recipe, line)); }

class Standing {
 public:
  Standing(const Table& table, Day& day) : table_(table), day_(day) {}

  void run() {
    for (Number i = 0; i < table_.clock.doings.size(); ++i) late(i);
    for (Index m = 0; m < table_.clock.makings.size(); ++m) {
      const Making& making = table_.clock.makings[m];
      const Recipe& recipe = *making.recipe;
      if (std::none_of(recipe.lines.begin(), recipe.lines.end(), [&](const TakeLine& line) { return is_risky(recipe, line); })) continue;
      // As said before the food is named, so that broth and stock of one are judged too.
      for (Number i = 0; i < table_.clock.doings.size(); ++i) {
        const Doing& doing = table_.clock.doings[i];
        if (doing.making == m && doing.what == Doing::What::clause && doing.verb->heats && holds_food(recipe, doing.part)) heat(m, i);
        if (doing.making == m && doing.part != kNone && holds_raw(i)) pause(i), left_out(i);
      }
    }
  }

 private:
  bool holds_food(const Recipe& recipe, Index part) const {
    for (Index l = 0; l < recipe.lines.size(); ++l)
      if (recipe.lines[l].part == part && is_risky(recipe, recipe.lines[l])) return true;
    // A part that takes such a part.
    for (const TakeLine& line : recipe.lines)
      if (line.part == part && line.target.kind == TargetKind::part && line.target.index != part && holds_food_plainly(recipe, line.target.index)) return true;
    for (const Clause& clause : recipe.clauses) {
      if (clause.part != part) continue;
      for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
        const Target& target = recipe.mentions[m].target;
        if (target.kind == TargetKind::part && target.index != part && holds_food_plainly(recipe, target.index)) return true;
      }
    }
    return false;
  }
  bool holds_food_plainly(const Recipe& recipe, Index part) const {
    return std::any_of(recipe.lines.begin(), recipe.lines.end(), [&](const TakeLine& line) { return line.part == part && is_risky(recipe, line); });
  }

  std::string hour_of(Minute wall) const {
    const bool other_day = day_begin(wall) != day_begin(table_.order.serve.front());
    return write_clock(wall) + (other_day ? " on " + write_day(wall) : "");
  }

  Minute gone(const plan::Spot& spot) const { return table_.order.hours.gone(table_.at(spot)); }

  // From the end of a heat to the next heat, the cold, or the table, whichever comes first.
  void heat(Index making, Number activity) {
    const Clock& clock = table_.clock;
    const Minute end = gone(table_.posed.placed.ends[activity]);
    Minute next = std::numeric_limits<Minute>::max();
    for (Number i = 0; i < clock.doings.size(); ++i) {
      const Doing& doing = clock.doings[i];
      if (i == activity || doing.making != making || doing.verb == nullptr) continue;
      const bool cold = doing.place == Takes::fridge || doing.place == Takes::freezer;
      const Minute begin = gone(table_.posed.placed.begins[i]);
      if ((cold || doing.verb->heats) && begin >= end) next = std::min(next, begin);
    }
    bool of_table = false;
    for (const Dish& dish : clock.dishes) {
      if (dish.making != making && next != std::numeric_limits<Minute>::max()) continue;
      const Minute hour = gone(table_.posed.placed.begins[dish.serving]);
      if (hour >= end && hour < next) next = hour, of_table = true;
    }
    if (next == std::numeric_limits<Minute>::max()) return;
    const Recipe& recipe = *clock.makings[making].recipe;
    const Limit& limit = stand_limit(law_of(recipe));
    if (static_cast<double>(next - end) <= limit.value) return;
    day_.cautions.push_back(std::string(recipe.title) + " is off the heat at " + hour_of(table_.order.hours.wall(end)) + " and stands " +
                            say_length(next - end, 1) + (of_table ? " before it is eaten" : " before it is heated or chilled") + ": " +
                            std::string(limit.words) + ". Follow your local code (" + std::string(limit.source) + ").");
  }

  // Did food that spoils go into the part before this activity, and no heat reach it yet?
  bool holds_raw(Number activity) const {
    const Clock& clock = table_.clock;
    const Doing& doing = clock.doings[activity];
    const Recipe& recipe = clock.recipe_of(doing);
    for (Number i = 0; i < clock.doings.size(); ++i) {
      const Doing& other = clock.doings[i];
      if (other.making == doing.making && other.part == doing.part && i < activity && other.verb != nullptr && other.verb->heats && !other.verb->heats_oven) return false;
    }
    for (const Clause& clause : recipe.clauses) {
      if (clause.part != doing.part || clause.span.begin >= (doing.clause != kNone ? recipe.clauses[doing.clause].span.begin : doing.sentence.begin)) continue;
      for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
        const Target& target = recipe.mentions[m].target;
        if (target.kind == TargetKind::line && is_risky(recipe, recipe.lines[target.index])) return true;
      }
    }
    return false;
  }

  // Half an hour is the time a cook has it in hand (common practice, no source).
  static constexpr Minute kInHand = 30;
  void pause(Number activity) {
    const Clock& clock = table_.clock;
    const Doing& doing = clock.doings[activity];
    const auto over = over_before(clock, table_.posed, table_.plan, activity);
    if (!over || waits_from(table_, activity) || stays_cold(activity)) return;
    const Minute from = table_.wall(*over), to = table_.at(table_.posed.placed.begins[activity]);
    if (to - from <= kInHand) return;
    day_.cautions.push_back("Nothing is done to " + std::string(clock.recipe_of(doing).title) + " between " + hour_of(from) + " and " + hour_of(to) +
                            ": cover it and keep it in the fridge until then, it is raw.");
  }

  // A wait of raw food that no page sends into the cold, and that this plan makes long. What is cured or dried is no such wait.
  void left_out(Number activity) {
    const Clock& clock = table_.clock;
    const Doing& doing = clock.doings[activity];
    const bool cold = doing.place == Takes::fridge || doing.place == Takes::freezer;
    if (!doing.wait || cold || doing.clause == kNone || has_any(doing.verb->name, {"cure", "dry", "brine", "salt", "mature", "thaw", "ferment", "hang", "age"})) return;
    const Recipe& recipe = clock.recipe_of(doing);
    const Limit& limit = out_limit(law_of(recipe));
    const Minute from = waits_from(table_, activity).value_or(table_.at(table_.posed.placed.begins[activity])), to = table_.at(table_.posed.placed.ends[activity]);
    if (static_cast<double>(table_.order.hours.gone(to) - table_.order.hours.gone(from)) <= limit.value) return;
    day_.cautions.push_back(std::string(recipe.title) + " waits raw from " + hour_of(from) + " to " + hour_of(to) + ": " + std::string(limit.words) + " (" + std::string(limit.source) + ").");
  }

  static bool has_any(std::string_view name, std::initializer_list<std::string_view> verbs) { return std::find(verbs.begin(), verbs.end(), name) != verbs.end(); }

  // A rest with a longest time that this plan begins well after the step before it: what rests does so from then on.
  void late(Number activity) {
    const Clock& clock = table_.clock;
    const Doing& doing = clock.doings[activity];
    if (!doing.wait || doing.clause == kNone || doing.overnight || clock.network.activities[activity].follows != kNothing || (doing.part != kNone && holds_raw(activity))) return;
    const Making& making = clock.makings[doing.making];
    const auto over = over_before(clock, table_.posed, table_.plan, activity);
    if (!over || !minutes_of(making, doing.clause).longest_binds) return;
    const Minute from = table_.wall(*over), to = table_.at(table_.posed.placed.begins[activity]);
    if (to - from <= kInHand) return;
    const Recipe& recipe = *making.recipe;
    day_.cautions.push_back(std::string(recipe.title) + ": `" + words_of(recipe, recipe.clauses[doing.clause].span) + "` is planned for " + hour_of(to) + ", but the step before it is over at " + hour_of(from) +
                            "; from then on it waits, which is longer than the page allows. Another hour, cook or oven may mend that.");
  }

  // Is the last step before it one in the cold? There it stays.
  bool stays_cold(Number activity) const {
    const Doing& doing = table_.clock.doings[activity];
    for (Number i = activity; i-- > 0;) {
      const Doing& before = table_.clock.doings[i];
      if (before.making != doing.making || before.part != doing.part || before.what == Doing::What::whole) continue;
      return before.place == Takes::fridge || before.place == Takes::freezer;
    }
    return false;
  }

  const Table& table_;
  Day& day_;
};

}  // namespace

void write_standing(const Table& table, Day& day) { Standing(table, day).run(); }

}  // namespace qtn
