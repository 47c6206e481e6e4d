// Waits begin when the step before them is over.
#include <algorithm>

#include "day/lengths.hpp"
#include "day/table.hpp"

namespace qtn {
namespace {

// Does anything follow at once? It would have to come along.
bool is_followed(const Clock& clock, Number activity) {
  const auto& all = clock.network.activities;
  return std::any_of(all.begin(), all.end(), [&](const plan::Activity& one) { return one.follows == activity; });
}

}  // namespace

std::optional<Ticks> over_before(const Clock& clock, const Posed& posed, const plan::Plan& plan, Number activity) {
  std::optional<Ticks> over;
  for (const plan::Rule& rule : clock.network.rules) {
    const Doing &mine = clock.doings[activity], &other = clock.doings[rule.before.activity];
    if (rule.after.activity != activity || rule.after.end || !rule.before.end || other.making != mine.making || other.part != mine.part) continue;
    const plan::Spot& spot = posed.placed.ends[rule.before.activity];
    const Ticks end = plan.times[spot.point] + (posed.per_minute == 1 ? (spot.high + posed.clock_ticks - 1) / posed.clock_ticks : spot.high);
    over = std::max(over.value_or(end), end);
  }
  return over;
}

void begin_waits_at_once(const Clock& clock, const Posed& posed, plan::Plan& plan) {
  for (Number i = 0; i < clock.doings.size(); ++i) {
    const plan::Spot &begin = posed.placed.begins[i], &end = posed.placed.ends[i];
    const bool first = clock.network.activities[i].follows == kNothing;
    if (!clock.doings[i].wait || !first || (begin.point == end.point && is_followed(clock, i))) continue;
    const auto over = over_before(clock, posed, plan, i);
    if (!over || *over >= plan.times[begin.point]) continue;
    const Ticks before = plan.times[begin.point];
    plan.times[begin.point] = *over;
    if (!plan::faults(posed.problem, plan.times).empty()) plan.times[begin.point] = before;
  }
}

std::optional<Minute> waits_from(const Table& table, Number activity) {
  const Clock& clock = table.clock;
  const Doing& doing = clock.doings[activity];
  if (!doing.wait || doing.overnight || doing.clause == kNone || clock.network.activities[activity].follows != kNothing) return std::nullopt;
  if (!is_followed(clock, activity) || minutes_of(clock.makings[doing.making], doing.clause).longest_binds) return std::nullopt;
  const auto over = over_before(clock, table.posed, table.plan, activity);
  if (!over) return std::nullopt;
  const Minute from = table.wall(*over);
  return from < table.at(table.posed.placed.begins[activity]) ? std::optional(from) : std::nullopt;
}

}  // namespace qtn
