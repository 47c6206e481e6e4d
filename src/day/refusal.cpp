// Why there is no plan: the fewest things that cannot go together, in the words of the page.
#include <algorithm>

#include "day/table.hpp"
#include "day/say.hpp"

namespace qtn {
namespace {

constexpr std::uint64_t kNodes = 20'000;  // for one question of this kind

bool impossible(plan::Problem problem) {
  problem.objectives.clear();
  return plan::solve(problem, {kNodes}).outcome == plan::Plan::Outcome::impossible;
}

// What a way out would be, tried one by one; the first that helps is told.
std::string way_out(const plan::Problem& problem, const DayOrder& order) {
  const auto helps = [&](auto change) {
    plan::Problem other = problem;
    change(other);
    other.objectives.clear();
    return plan::solve(other, {kNodes}).outcome == plan::Plan::Outcome::planned;
  };
  if (!order.nights && helps([](plan::Problem& one) { one.closed.clear(); })) return "work in the night (`--nights`), or another hour";
  if (helps([](plan::Problem& one) { ++one.cooks; })) return "another cook (`--cooks " + std::to_string(order.cooks + 1) + "`)";
  if (helps([](plan::Problem& one) { ++one.ovens.count; })) return "another oven (`--ovens " + std::to_string(order.ovens + 1) + "`)";
  if (helps([](plan::Problem& one) { one.ovens.change = 0; })) return "a step `ahead:` that heats the oven";
  if (helps([](plan::Problem& one) { for (plan::Bounds& bounds : one.bounds) bounds.not_before = -plan::kNever; }))
    return "an earlier beginning, or no step pinned to its hour";
  return "another hour, or dishes that leave more room";
}

}  // namespace

void tell_no_plan(const Clock& clock, const DayOrder& order, const Posed& posed, Report& report) {
  plan::Problem few = posed.problem;
  // Who is wanted, left out one by one wherever that makes no difference.
  std::vector<Number> jobs(few.jobs.size());
  for (Number j = 0; j < jobs.size(); ++j) jobs[j] = j;
  for (std::size_t i = jobs.size(); i-- > 0;) {
    plan::Problem fewer = few;
    fewer.jobs.erase(fewer.jobs.begin() + static_cast<std::ptrdiff_t>(i));
    if (!impossible(fewer)) continue;
    few = std::move(fewer);
    jobs.erase(jobs.begin() + static_cast<std::ptrdiff_t>(i));
  }
  std::string message = "There is no such day";
  if (!jobs.empty()) {
    message += ": ";
    for (std::size_t i = 0; i < jobs.size(); ++i) {
      const Number activity = posed.activity_of[jobs[i]];
      const Doing& doing = clock.doings[activity];
      std::string words = "`" + sheet_words(clock, activity) + "`";
      if (clock.makings.size() > 1) words += " (" + std::string(clock.recipe_of(doing).title) + ")";
      message += (i == 0 ? "" : i + 1 == jobs.size() ? " and " : ", ") + words;
    }
    bool oven = true, hands = true, ring = true;
    for (const plan::Job& job : few.jobs) oven = oven && job.oven, hands = hands && job.hands, ring = ring && job.ring;
    message += jobs.size() == 1 ? " finds no hour"
               : oven ? " cannot all have the oven when they must"
               : hands ? " want the same hands at once"
               : ring ? " want more rings than there are" : " cannot all be done when they must";
  } else if (order.start) {
    message += ": begun then, the written times alone run beyond the hour of serving";
  } else {
    message += ": the written times do not fit before the hour of serving";
  }
  report.add(Code::no_plan, {}, message + ".").expect(way_out(posed.problem, order));
}

}  // namespace qtn
