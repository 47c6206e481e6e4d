// Why something begins no later: what it has to be ready for, or who is busy.
#include "day/table.hpp"

namespace qtn {
namespace {

// The first activity that begins at a point, or else that ends there: what a reason names.
Number activity_at(const Table& table, plan::Point point, Number not_this) {
  Number ends = kNothing;
  for (Number i = 0; i < table.clock.doings.size(); ++i) {
    const Doing::What what = table.clock.doings[i].what;
    if (i == not_this || what == Doing::What::whole || what == Doing::What::gap) continue;
    if (table.posed.placed.begins[i].point == point) return i;
    if (ends == kNothing && table.posed.placed.ends[i].point == point) ends = i;
  }
  return ends;
}

// Ends of parts stand between an activity and what it is for: on to what they wait for.
plan::Point behind_wholes(const Table& table, plan::Point point) {
  for (int step = 0; step < 8; ++step) {
    bool whole = true;
    for (Number i = 0; i < table.clock.doings.size() && whole; ++i)
      if (table.posed.placed.begins[i].point == point) whole = table.clock.doings[i].what == Doing::What::whole;
    const plan::Why& why = table.plan.why[point];
    if (!whole || why.kind != plan::Why::Kind::lag) return point;
    point = table.posed.problem.lags[why.index].after;
  }
  return point;
}

std::string clock_at(const Table& table, Number activity) { return write_clock(table.at(table.posed.placed.begins[activity])); }

}  // namespace

std::string why_no_later(const Table& table, Number activity) {
  const Clock& clock = table.clock;
  if (clock.network.activities[activity].follows != kNothing) return "at once after the step before";
  const plan::Point point = table.posed.placed.begins[activity].point;
  const plan::Why& why = table.plan.why[point];
  switch (why.kind) {
    case plan::Why::Kind::bound: return "pinned to this hour";
    case plan::Why::Kind::closed: return "so that it is done before the night";
    case plan::Why::Kind::midnight: return "so that the night falls into it";
    case plan::Why::Kind::order: {
      const plan::Order& order = table.plan.orders[why.index];
      const Number other = table.posed.activity_of[order.second];
      const std::string what = order.what == plan::Order::For::oven ? "the oven is"
                               : order.what == plan::Order::For::ring ? "the hob is"
                               : table.order.cooks == 1 ? "the cook is" : "the cooks are";
      return what + " wanted from " + clock_at(table, other) + " for " + name_of(clock, other);
    }
    case plan::Why::Kind::lag: {
      const plan::Lag& lag = table.posed.problem.lags[why.index];
      const plan::Point after = behind_wholes(table, lag.after);
      const Number other = activity_at(table, after, activity);
      if (other == kNothing) return "";
      const Doing& doing = clock.doings[other];
      if (doing.what == Doing::What::serving) return "to be ready at " + clock_at(table, other);
      const Number label = table.posed.lag_rule[why.index];
      if (label != kNothing && lag.least < 0) return "not too long after " + name_of(clock, other);
      const Doing& mine = clock.doings[activity];
      const Recipe& page = clock.recipe_of(doing);
      const bool beside = doing.step != kNone && doing.making == mine.making && page.steps[doing.step].kind == StepKindOf::meanwhile;
      if (beside && lag.least <= 0 && doing.step != mine.step) return "the step beside it begins at " + clock_at(table, other);
      if (doing.making == mine.making && doing.part == mine.part) return "in time for the next step at " + clock_at(table, other);
      return "in time for " + name_of(clock, other) + " at " + clock_at(table, other);
    }
    case plan::Why::Kind::job:
    case plan::Why::Kind::free: break;
  }
  return "";
}

}  // namespace qtn
