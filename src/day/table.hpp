// A plan as rows that a cook reads. Private to this room.
#pragma once
#include "day/problem.hpp"

namespace qtn {

struct Table {
  const Clock& clock;
  const DayOrder& order;
  const Posed& posed;
  const plan::Plan& plan;

  // Minutes of the wall of an end of an activity, for the longest that chance may make of it, or the shortest.
  Minute at(const plan::Spot& spot, bool longest = true) const;
  // ... of a moment in ticks of the problem, the minute begun counting whole.
  Minute wall(Ticks moment) const;
};

// What waits by itself does so from the end of the step before it, however much later the plan would let it begin: a loaf
// cools as it leaves the oven. Only where the plan still holds so.
void begin_waits_at_once(const Clock& clock, const Posed& posed, plan::Plan& plan);

// When the last step of its part before an activity is over, in ticks of the problem; nothing where it is the first.
std::optional<Ticks> over_before(const Clock& clock, const Posed& posed, const plan::Plan& plan, Number activity);
// The same for a wait that something follows at once: it cannot be moved, so it lasts longer, where its length may. The
// minute from which it waits; nothing where that is when the plan begins it.
std::optional<Minute> waits_from(const Table& table, Number activity);

// Gives each bake the oven that its dish is in already, wherever the ovens let it.
void keep_to_ovens(const Clock& clock, const Posed& posed, plan::Plan& plan);

void write_rows(const Table& table, Day& day);
// Why an activity begins no later; empty where there is nothing to say beyond the order of the page.
std::string why_no_later(const Table& table, Number activity);
// The name of what an activity does, for sentences about it: "the baking of the Tart".
std::string name_of(const Clock& clock, Number activity);
// What an activity says on a run sheet.
std::string sheet_words(const Clock& clock, Number activity);
// Cooked food that stands longer than the house's law lets it.
void write_standing(const Table& table, Day& day);
// What may be made earlier, and where what stands has to be kept.
void write_keeping(const Table& table, Day& day);
void write_assumptions(const Table& table, Day& day);

// Why there is no plan at all, as few things as do it.
void tell_no_plan(const Clock& clock, const DayOrder& order, const std::vector<Pinned>& pins, Report& report);

}  // namespace qtn
