// From a clock to a day: the problem posed, solved, and written as rows.
#include <algorithm>

#include "day/check.hpp"
#include "day/table.hpp"
#include "day/say.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

// The activities that the words of a pin mean: a step, or a part and a step.
std::vector<Number> meant(const Clock& clock, const std::string& words) {
  std::string part, step = lower(trim(words));
  if (const std::size_t colon = step.find(':'); colon != std::string::npos) part = trim(step.substr(0, colon)), step = trim(step.substr(colon + 1));
  std::vector<Number> found;
  for (Number i = 0; i < clock.doings.size(); ++i) {
    const Doing& doing = clock.doings[i];
    if (doing.what != Doing::What::clause && doing.what != Doing::What::work) continue;
    const Recipe& recipe = clock.recipe_of(doing);
    const bool named = doing.part != kNone && (lower(recipe.parts[doing.part].name) == part || lower(recipe.title) == part);
    if (!part.empty() && !named) continue;
    if (lower(sheet_words(clock, i)).find(step) == std::string::npos && (doing.verb == nullptr || doing.verb->name != step)) continue;
    found.push_back(i);
  }
  return found;
}

class Planner {
 public:
  Planner(const Clock& clock, const DayOrder& order, Report& report) : clock_(clock), order_(order), report_(report) {}

  Day run() {
    Day day;
    day.hours = order_.hours;
    day.night_from = order_.night_from, day.night_to = order_.night_to;
    day.cooks = order_.cooks, day.ovens = order_.ovens, day.revision = order_.revision;
    if (!plan::holds(plan::place(clock_.network))) {
      tell_clash(clock_, plan::clash_of(clock_.network), order_.source, report_);
      return day;
    }
    if (!find_pins()) return day;
    if (order_.serve.empty() && !earliest()) return day;
    // Whole minutes, and guesses as long as the house says; then finer, then looser: an estimate never forbids a day.
    for (const Guesses guesses : {Guesses::kept, Guesses::free}) {
      for (const bool whole : {true, false}) {
        if (!whole && clock_.per_minute == 1) continue;
        posed_ = pose(clock_, order_, guesses, whole);
        for (const Pinned& one : pins_) pin(posed_, order_, one);
        plan_ = solved();
        if (plan_.outcome != plan::Plan::Outcome::planned) continue;
        begin_waits_at_once(clock_, posed_, plan_);
        keep_to_ovens(clock_, posed_, plan_);
        // Checked once more by other means: what does not hold is never printed.
        if (const auto faults = plan::faults(posed_.problem, plan_.times, plan_.oven_of); !faults.empty()) {
          report_.add(Code::no_plan, {}, "The plan that was found does not hold (" + faults.front() + "): a fault of the program.")
              .expect("a report of it, with the file");
          return day;
        }
        guesses_ = guesses;
        write(day);
        return day;
      }
    }
    if (plan_.outcome == plan::Plan::Outcome::given_up)
      report_.add(Code::no_plan, {}, "No plan was found in the time that the search may take; there may be one.")
          .expect("fewer dishes, another cook, or another oven");
    else tell_no_plan(clock_, order_, pins_, report_);
    return day;
  }

 private:
  bool find_pins() {
    for (const Pin& one : order_.pins) {
      const std::vector<Number> found = meant(clock_, one.words);
      if (found.size() != 1) {
        report_.add(Code::pin_names_nothing, {}, found.empty() ? "No step is meant by `" + one.words + "`."
                                                               : "More than one step is meant by `" + one.words + "`.")
            .expect(found.empty() ? "the words of a step as the run sheet shows it, with its part in front: `Tart: bake`" : choices(found));
        return false;
      }
      pins_.push_back({found.front(), one.wall});
    }
    return true;
  }

  std::uint64_t nodes_for(const plan::Problem& problem) const {
    constexpr std::uint64_t kHome = 60;
    return problem.jobs.size() <= kHome ? order_.nodes : order_.nodes * kHome * kHome / (problem.jobs.size() * problem.jobs.size());
  }

  // "one of `Roast: roast 20 min per 450 g of the chicken`, `Roast: roast at most 10 min`".
  std::string choices(const std::vector<Number>& found) const {
    constexpr std::size_t kMost = 4;
    std::string out = "more of its words, or its part in front; it may be one of ";
    for (std::size_t i = 0; i < found.size() && i < kMost; ++i) {
      const Doing& doing = clock_.doings[found[i]];
      const Recipe& recipe = clock_.recipe_of(doing);
      const std::string_view of = doing.part != kNone && !recipe.parts[doing.part].unnamed ? recipe.parts[doing.part].name : recipe.title;
      const std::string words = doing.clause != kNone ? words_of(recipe, recipe.clauses[doing.clause].span) : sheet_words(clock_, found[i]);
      out += (i == 0 ? "`" : ", `") + std::string(of) + ": " + words + "`";
    }
    return out + (found.size() > kMost ? " and others" : "");
  }

  // What an earlier plan said is kept wherever it still can be, the earliest row first.
  plan::Plan solved() {
    const plan::Budget budget{nodes_for(posed_.problem)};
    if (order_.settled.empty()) return plan::solve(posed_.problem, budget);
    Day probe;
    plan::Plan plan = plan::solve(posed_.problem, budget);
    if (plan.outcome != plan::Plan::Outcome::planned) return plan;
    write_rows({clock_, order_, posed_, plan}, probe);
    posed_.kept_from = static_cast<Number>(posed_.problem.bounds.size());
    for (const Settled& settled : order_.settled) {
      const auto row = std::find_if(probe.rows.begin(), probe.rows.end(), [&](const DayRow& one) { return one.key == settled.key; });
      if (row == probe.rows.end()) continue;
      const std::size_t before = posed_.problem.bounds.size();
      pin(posed_, order_, {row->activity, settled.wall});
      if (!plan::latest(posed_.problem)) {
        posed_.problem.bounds.resize(before);
        continue;
      }
      plan::Plan kept = plan::solve(posed_.problem, budget);
      if (kept.outcome == plan::Plan::Outcome::planned) plan = std::move(kept);
      else posed_.problem.bounds.resize(before);
    }
    return plan;
  }

  // The earliest minute at which all of it can be served, when it begins at `start`: hours are tried upwards from what the
  // times alone need, until one can be planned.
  bool earliest() {
    const Minute start = order_.hours.gone(*order_.start);
    DayOrder asked = order_;
    const auto feasible = [&](Minute gone) {
      asked.serve.assign(clock_.dishes.size(), order_.hours.wall(gone));
      Posed posed = pose(clock_, asked, Guesses::kept, true);
      for (const Pinned& one : pins_) pin(posed, asked, one);
      posed.problem.objectives.clear();
      return plan::solve(posed.problem, {order_.nodes}).outcome == plan::Plan::Outcome::planned;
    };
    constexpr Minute kFar = 400 * 1440;
    Minute hour = start + spans_of(clock_, order_.work).whole, last_bad = hour - 1, step = 15;
    while (!feasible(hour) && hour < start + kFar) {
      const Minute ahead = hour - start;
      last_bad = hour;
      step = ahead > 40 * 1440 ? 1440 : ahead > 3 * 1440 ? 60 : 15;
      hour += step;
    }
    // Between the last hour that was too early and this one: by finer steps, down to the minute.
    for (Minute finer : {Minute{60}, Minute{15}, Minute{1}}) {
      if (finer >= step) continue;
      Minute between = last_bad + finer;
      while (between < hour && !feasible(between)) last_bad = between, between += finer;
      hour = std::min(hour, between);
    }
    if (hour >= start + kFar) {
      // Nor would any later hour do: what stands in the way is told of one that leaves days of room.
      order_.serve.assign(clock_.dishes.size(), order_.hours.wall(start + spans_of(clock_, order_.work).whole + 3 * 1440));
      tell_no_plan(clock_, order_, pins_, report_);
      return false;
    }
    order_.serve.assign(clock_.dishes.size(), order_.hours.wall(hour));
    return true;
  }

  void write(Day& day) {
    const Table table{clock_, order_, posed_, plan_};
    day.planned = true;
    day.proven = plan_.proven();
    write_rows(table, day);
    for (std::size_t d = 0; d < clock_.dishes.size(); ++d) {
      const Dish& dish = clock_.dishes[d];
      Served served;
      served.making = dish.making;
      served.dish = clock_.makings[dish.making].recipe->title;
      served.wall = order_.serve[d];
      served.hot = dish.hot;
      if (dish.last != kNothing) served.waits = order_.hours.gone(served.wall) - order_.hours.gone(table.at(posed_.placed.ends[dish.last]));
      day.end = d == 0 ? served.wall : std::max(day.end, served.wall);
      day.served.push_back(std::move(served));
    }
    day.begin = day.rows.empty() ? day.end : day.rows.front().begin;
    day.whole = order_.hours.gone(day.end) - order_.hours.gone(day.begin);
    for (const DayRow& row : day.rows)
      if (row.hands) day.hands_on += row.times * (order_.hours.gone(row.end) - order_.hours.gone(row.begin));
    day.waiting = std::max<Minute>(0, day.whole - day.hands_on);
    write_assumptions(table, day);
    write_keeping(table, day);
    write_standing(table, day);
    if (guesses_ == Guesses::free)
      report_.add(Code::late_by_guess, {}, "With " + say_length(order_.work, 1) + " for each step without a written time the plan would not fit; here such steps take as long as is left.")
          .expect("a written time for the steps marked ≈, or a later hour");
    short_of(day);
    moved(day);
  }

  void short_of(Day& day) {
    const bool hot = posed_.problem.objectives.size() > 1;
    for (std::size_t i = 0; i < plan_.values.size(); ++i) {
      const Ticks gap = plan_.bounds[i] - plan_.values[i];
      if (gap <= 0) continue;
      const std::string length = say_length(gap, posed_.per_minute);
      day.short_of.push_back(hot && i == 0 ? "Hot food may wait up to " + length + " less in a better plan; the search ended before it was ruled out."
                                           : "A better plan may begin up to " + length + " later; the search ended before it was ruled out.");
    }
  }

  void moved(Day& day) {
    for (const Settled& settled : order_.settled)
      for (const DayRow& row : day.rows)
        if (row.key == settled.key && row.begin != settled.wall)
          day.moved.push_back(row.dish + ": " + row.words + ", from " + write_wall(settled.wall) + " to " + write_wall(row.begin));
  }

  const Clock& clock_;
  DayOrder order_;
  Report& report_;
  std::vector<Pinned> pins_;
  Posed posed_;
  plan::Plan plan_;
  Guesses guesses_ = Guesses::kept;
};

}  // namespace

std::vector<int> DayOrder::shelves_of_ovens() const {
  const auto count = static_cast<std::size_t>(std::max(ovens, 0));
  return count == shelves.size() ? shelves : std::vector<int>(count, *std::min_element(shelves.begin(), shelves.end()));
}

DayOrder order_of(const Kitchen* kitchen) {
  DayOrder order;
  if (kitchen == nullptr) return order;
  order.cooks = kitchen->cooks;
  order.night_from = kitchen->night_from, order.night_to = kitchen->night_to;
  if (!kitchen->work.low.is_lost() && kitchen->work.low.sign() > 0)
    order.work = static_cast<Minute>(in_base(kitchen->work, kitchen->dialect).low.ceil());
  int rings = 0;
  std::vector<int> shelves;
  for (const HouseOven& oven : kitchen->ovens) {
    shelves.insert(shelves.end(), static_cast<std::size_t>(oven.count), std::max(oven.shelves, 1));
    // All are taken to be as the slowest, so that whatever is planned is hot in time in whichever is free.
    if (!oven.heats_in.is_lost()) order.heats_in = std::max(order.heats_in, static_cast<Minute>(oven.heats_in.ceil()));
  }
  for (const HouseHob& hob : kitchen->hobs) rings += hob.rings * hob.count;
  if (!shelves.empty()) order.ovens = static_cast<int>(shelves.size()), order.shelves = std::move(shelves);
  if (rings > 0) order.rings = rings;
  return order;
}

Day plan_day(const Clock& clock, const DayOrder& order, Report& report) { return Planner(clock, order, report).run(); }

}  // namespace qtn
