// The room's front door: search, then who does it and why no later.
#include <algorithm>

#include "plan/search.hpp"

namespace qtn::plan {
namespace {

// Each job to the first cook who is free. As many cooks as go on at once are enough: the jobs are intervals.
std::vector<Number> cooks_of(const Problem& problem, const std::vector<Ticks>& times) {
  std::vector<Number> out(problem.jobs.size(), kNothing), order;
  const auto at = [&](const Moment& moment) { return times[moment.point] + moment.shift; };
  for (Number j = 0; j < problem.jobs.size(); ++j)
    if (problem.jobs[j].hands) order.push_back(j);
  std::stable_sort(order.begin(), order.end(), [&](Number a, Number b) { return at(problem.jobs[a].begin) < at(problem.jobs[b].begin); });
  std::vector<Ticks> free(static_cast<std::size_t>(problem.cooks), -kNever);
  std::vector<Number> run(free.size(), kNothing);
  for (const Number j : order) {
    const Job& job = problem.jobs[j];
    std::size_t cook = free.size();
    for (std::size_t c = 0; c < free.size(); ++c)  // whoever is at it goes on with it
      if (job.run != kNothing && run[c] == job.run) cook = c;
    for (std::size_t c = 0; cook == free.size() && c < free.size(); ++c)
      if (free[c] <= at(job.begin)) cook = c;
    if (cook == free.size()) continue;  // no plan of ours
    free[cook] = std::max(free[cook], at(job.end));
    run[cook] = job.run;
    out[j] = static_cast<Number>(cook);
  }
  return out;
}

class Reasons {
 public:
  Reasons(const Problem& problem, const Plan& plan) : problem_(problem), plan_(plan), out_(problem.points) {}
  std::vector<Why> run() {
    for (Number i = 0; i < problem_.bounds.size(); ++i)
      if (plan_.times[problem_.bounds[i].point] == problem_.bounds[i].not_after) say(problem_.bounds[i].point, Why::Kind::bound, i);
    for (Number i = 0; i < plan_.orders.size(); ++i) {
      const Job &first = problem_.jobs[plan_.orders[i].first], &second = problem_.jobs[plan_.orders[i].second];
      if (tight(in_order(first, second, gap_between(problem_, first, second)))) say(first.end.point, Why::Kind::order, i);
    }
    // What it has to be ready for tells more than what it must not fall behind.
    for (const bool later : {true, false})
      for (Number i = 0; i < problem_.lags.size(); ++i) {
        const Lag& lag = problem_.lags[i];
        if (tight(lag) && (plan_.times[lag.after] > plan_.times[lag.before] || lag.least == 0) == later) say(lag.before, Why::Kind::lag, i);
      }
    for (Number i = 0; i < problem_.across.size(); ++i) {
      const Moment& begin = problem_.across[i].begin;
      if (std::binary_search(problem_.midnights.begin(), problem_.midnights.end(), at(begin))) say(begin.point, Why::Kind::midnight, i);
    }
    for (Number i = 0; i < problem_.jobs.size(); ++i) {
      const Job& job = problem_.jobs[i];
      if (!job.awake) continue;
      for (const Stretch& night : problem_.closed)
        if (night.from == at(job.end)) say(job.end.point, Why::Kind::closed, i), say(job.begin.point, Why::Kind::closed, i);
    }
    return std::move(out_);
  }

 private:
  Ticks at(const Moment& moment) const { return plan_.times[moment.point] + moment.shift; }
  bool tight(const Lag& lag) const { return lag.before != lag.after && plan_.times[lag.before] == plan_.times[lag.after] - lag.least; }
  void say(Point point, Why::Kind kind, Number index) {
    if (out_[point].kind == Why::Kind::free) out_[point] = {kind, index};
  }
  const Problem& problem_;
  const Plan& plan_;
  std::vector<Why> out_;
};

}  // namespace

Plan solve(const Problem& problem, const Budget& budget) {
  Plan plan = Search(problem, budget).run();
  if (plan.outcome != Plan::Outcome::planned) return plan;
  plan.cook_of = cooks_of(problem, plan.times);
  plan.why = Reasons(problem, plan).run();
  return plan;
}

std::optional<std::vector<Ticks>> latest(const Problem& problem) {
  State state(problem);
  if (!state.start()) return std::nullopt;
  return state.times();
}

}  // namespace qtn::plan
