// Why something begins no later: what it has to be ready for, or who is busy.
#include "day/table.hpp"

namespace qtn {
namespace {

// What a lag hangs on: the rule of the page that it comes from; no activity where it is a length of its own.
plan::End later_of(const Table& table, Number index) {
  const plan::Placed& placed = table.posed.placed;
  if (index >= placed.lags.size()) return {};
  const plan::Lag& lag = placed.lags[index];
  const auto spot = [&](const plan::End& end) { return end.end ? placed.ends[end.activity] : placed.begins[end.activity]; };
  for (const plan::Rule& rule : table.clock.network.rules) {
    const plan::Spot before = spot(rule.before), after = spot(rule.after);
    if (rule.label == placed.lag_labels[index] && before.point == lag.before && after.point == lag.after &&
        lag.least == rule.least + before.high - after.low)
      return rule.after;
  }
  return {};
}

// A length of its own and the ends of parts stand between an activity and what it is for: on to what these wait for.
// `index` is the lag it ends with.
plan::End reason_of(const Table& table, Number& index) {
  plan::End other = later_of(table, index);
  for (int step = 0; step < 8; ++step) {
    if (other.activity != kNothing && table.clock.doings[other.activity].what != Doing::What::whole) break;
    const plan::Why& why = table.plan.why[table.posed.problem.lags[index].after];
    if (why.kind != plan::Why::Kind::lag) break;
    index = why.index;
    other = later_of(table, index);
  }
  if (other.activity != kNothing || index < table.posed.placed.lags.size()) return other;
  // Whatever nothing waits for is over when the last dish is served.
  for (const Dish& dish : table.clock.dishes)
    if (table.posed.placed.begins[dish.serving].point == table.posed.problem.lags[index].after) other = plan::begin_of(dish.serving);
  return other;
}

// With its day where that is another than the one from which it is told.
std::string clock_at(const Table& table, const plan::End& end, Minute from) {
  const plan::Placed& placed = table.posed.placed;
  const Minute wall = table.at(end.end ? placed.ends[end.activity] : placed.begins[end.activity]);
  return write_clock(wall) + (day_begin(wall) != day_begin(from) ? " on " + write_day(wall) : "");
}

// Is it what comes next, and no later step that the rest of this one leads to?
bool next_is(const Table& table, Number activity, const plan::End& end) {
  const plan::Placed& placed = table.posed.placed;
  const plan::Spot& mine = placed.ends[activity];
  return table.at(mine) == table.at(end.end ? placed.ends[end.activity] : placed.begins[end.activity]);
}

}  // namespace

std::string why_no_later(const Table& table, Number activity) {
  const Clock& clock = table.clock;
  if (clock.network.activities[activity].follows != kNothing) return "at once after the step before";
  const plan::Point point = table.posed.placed.begins[activity].point;
  const Minute from = table.at(table.posed.placed.begins[activity]);
  const bool waits = clock.doings[activity].wait;
  if (const auto over = over_before(clock, table.posed, table.plan, activity); waits && over && table.wall(*over) == from) return "at once after the step before";
  const plan::Why& why = table.plan.why[point];
  switch (why.kind) {
    case plan::Why::Kind::bound: return why.index >= table.posed.kept_from ? "as it was planned before" : "pinned to this hour";
    case plan::Why::Kind::closed: return waits ? "so that nobody has to begin it in the night" : "so that it is done before the night";
    case plan::Why::Kind::midnight: return "so that the night falls into it";
    case plan::Why::Kind::order: {
      const plan::Order& order = table.plan.orders[why.index];
      const Number other = table.posed.activity_of[order.second];
      if (order.what == plan::Order::For::warm) return "else the oven is hot only from " + clock_at(table, plan::end_of(other), from);
      const std::string what = order.what == plan::Order::For::oven || order.what == plan::Order::For::heat ? "the oven is"
                               : order.what == plan::Order::For::ring ? "the hob is"
                               : table.order.cooks == 1 ? "the cook is" : "the cooks are";
      return what + " wanted from " + clock_at(table, plan::begin_of(other), from) + " for " + name_of(clock, other);
    }
    case plan::Why::Kind::lag: {
      Number index = why.index;
      const plan::End end = reason_of(table, index);
      const Number other = end.activity;
      if (other == kNothing) return "";
      const Doing& doing = clock.doings[other];
      if (doing.what == Doing::What::serving) return "to be ready at " + clock_at(table, end, from);
      const Ticks least = table.posed.problem.lags[index].least;
      const Number label = table.posed.lag_rule[index];
      if (label != kNothing && least < 0) return "not too long after " + name_of(clock, other);
      const Doing& mine = clock.doings[activity];
      const Recipe& page = clock.recipe_of(doing);
      const bool beside = doing.step != kNone && doing.making == mine.making && page.steps[doing.step].kind == StepKindOf::meanwhile;
      if (beside && least <= 0 && doing.step != mine.step) return "the step beside it begins at " + clock_at(table, end, from);
      if (doing.making == mine.making && doing.part == mine.part) return std::string(next_is(table, activity, end) ? "in time for the next step at " : "in time for the step at ") + clock_at(table, end, from);
      return "in time for " + name_of(clock, other) + " at " + clock_at(table, end, from);
    }
    case plan::Why::Kind::job:
    case plan::Why::Kind::free: break;
  }
  return "";
}

}  // namespace qtn
