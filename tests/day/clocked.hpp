// A recipe's text as a clock, and its latest beginnings in exact minutes before serving.
#pragma once
#include <memory>

#include "day/board.hpp"
#include "day/check.hpp"
#include "day/problem.hpp"
#include "recipe/recipe.hpp"
#include "syntax/tree.hpp"
#include "words/fold.hpp"

namespace qtn {

struct Clocked {
  explicit Clocked(std::string text, Surroundings around = {})
      : source(std::make_unique<Source>("test.qtn", std::move(text))), tree(parse(*source)) {
    recipe = std::make_unique<Recipe>(check(*source, tree, around, report));
    if (!report.has_errors()) check_clock(*recipe, report);
    report.sort();
  }

  // The one problem of that code; null when there is none.
  const Diagnostic* problem(Code code) const {
    for (const Diagnostic& one : report.list())
      if (one.code == code) return &one;
    return nullptr;
  }

  // Minutes from the beginning of the activity whose words hold these to serving, with hands, ovens and nights enough and
  // nothing guessed; "?" where there is none.
  std::string before_serving(const std::string& words) {
    Report unsaid;
    Board board = board_of(*recipe, {}, unsaid);
    const Clock clock = wind(board.order);
    DayOrder order;
    order.nights = true, order.work = 0, order.cooks = order.ovens = order.rings = 99, order.shelves = {99};
    order.serve.assign(clock.dishes.size(), 30'000'000);
    const Posed posed = pose(clock, order, Guesses::kept, false);
    const auto times = plan::latest(posed.problem);
    if (!times) return "no plan";
    for (Number i = 0; i < clock.doings.size(); ++i) {
      if (lower(sheet(clock, i)).find(lower(words)) == std::string::npos) continue;
      const plan::Spot& spot = posed.placed.begins[i];
      const Ticks ticks = 30'000'000 * clock.per_minute - ((*times)[spot.point] + spot.high);
      return Fraction::of(ticks, clock.per_minute).decimal(1);
    }
    return "?";
  }

  Day day(const std::string& serve, Report& out) { return day(serve, out, [](DayOrder&) {}); }
  template <class Change>
  Day day(const std::string& serve, Report& out, Change change) {
    const Board board = board_of(*recipe, {}, out);
    DayOrder order = order_of(recipe->kitchen.get());
    order.serve.assign(board.order.dishes, *read_wall(serve));
    change(order);
    return plan_day(wind(board.order), order, out);
  }

  std::unique_ptr<Source> source;
  Tree tree;
  Report report;
  std::unique_ptr<Recipe> recipe;

 private:
  static std::string sheet(const Clock& clock, Number activity);
};

// "21:55 chill ..., 22:00 ..."; of a day, for comparison.
inline std::string begins(const Day& day, const std::string& words) {
  for (const DayRow& row : day.rows)
    if (lower(row.words).find(lower(words)) != std::string::npos) return write_wall(row.begin);
  return "?";
}

}  // namespace qtn
#include "day/table.hpp"
inline std::string qtn::Clocked::sheet(const Clock& clock, Number activity) { return sheet_words(clock, activity); }
