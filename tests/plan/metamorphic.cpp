// What must hold whatever the day is: more to do or less room is never better, another hour is the same plan at another
// hour, and names do not matter.
#include <doctest/doctest.h>

#include "plan/kitchens.hpp"

namespace qtn::tests {
namespace {

using namespace plan;

Mix mix_of(std::uint64_t seed) {
  Dice dice(seed + 9000);
  Mix mix;
  mix.activities = dice.from(8, 18);
  mix.dishes = std::max(2, mix.activities / dice.from(4, 8));
  mix.cooks = dice.from(1, 2);
  mix.ovens = ovens_of(dice);
  mix.keeps_oven = dice.chance(60);
  mix.heats = {1800, 1900, 2200};
  mix.nights = dice.chance(30);
  mix.stretches = dice.chance(30);
  mix.runs = dice.chance(30);
  mix.oven_last = 80;
  return mix;
}

constexpr std::uint64_t kDays = 40;

// No plan is the worst of all.
std::vector<Ticks> best(const Problem& problem) {
  const Plan plan = solve(problem);
  if (plan.outcome == Plan::Outcome::impossible) return std::vector<Ticks>(problem.objectives.size(), -kNever);
  CHECK(plan.proven());
  CHECK(faults(problem, plan.times, plan.oven_of).empty());
  for (const Why& why : plan.why) CHECK(why.kind != Why::Kind::free);
  return plan.values;
}

TEST_CASE("the same problem has the same plan") {
  for (std::uint64_t seed = 1; seed <= kDays; ++seed) {
    const Problem problem = day(seed, mix_of(seed));
    const Plan one = solve(problem), two = solve(problem);
    CHECK(one.times == two.times);
    CHECK(one.nodes == two.nodes);
  }
}

TEST_CASE("less room is never better") {
  for (std::uint64_t seed = 1; seed <= kDays; ++seed) {
    CAPTURE(seed);
    const Problem problem = day(seed, mix_of(seed));
    const std::vector<Ticks> as_it_is = best(problem);
    const auto worse = [&](void (*change)(Problem&)) {
      Problem other = problem;
      change(other);
      CHECK(best(other) <= as_it_is);
    };
    worse([](Problem& p) { p.cooks = 1; });
    worse([](Problem& p) { p.ovens.shelves.resize(1); });
    worse([](Problem& p) { std::fill(p.ovens.shelves.begin(), p.ovens.shelves.end(), 1); });
    worse([](Problem& p) { p.rings = 1; });
    worse([](Problem& p) { p.ovens.change += 3; });
    worse([](Problem& p) { p.lags[p.lags.size() / 2].least += 1; });
    worse([](Problem& p) { p.jobs[p.jobs.size() / 3].hands = true; });
    worse([](Problem& p) { p.bounds.push_back({p.jobs[0].begin.point, -kNever, 150}); });
    worse([](Problem& p) {
      const Point point = p.points++;
      p.bounds.push_back({point, 180, 215});
      p.jobs.push_back({.begin = {point, 0}, .end = {point, 5}, .hands = true, .awake = true});
    });
  }
}

TEST_CASE("another hour is the same plan at another hour") {
  for (std::uint64_t seed = 1; seed <= kDays; ++seed) {
    CAPTURE(seed);
    const Problem problem = day(seed, mix_of(seed));
    constexpr Ticks kLater = 12345;
    Problem later = problem;
    for (Bounds& bounds : later.bounds) {
      if (bounds.not_before > -kNever) bounds.not_before += kLater;
      if (bounds.not_after < kNever) bounds.not_after += kLater;
    }
    for (Stretch& closed : later.closed) closed = {closed.from + kLater, closed.to + kLater};
    for (Ticks& midnight : later.midnights) midnight += kLater;
    const Plan now = solve(problem), then = solve(later);
    REQUIRE(now.times.size() == then.times.size());
    for (std::size_t i = 0; i < now.times.size(); ++i) CHECK(now.times[i] + kLater == then.times[i]);
  }
}

TEST_CASE("the order in which things are told makes no plan better or worse") {
  for (std::uint64_t seed = 1; seed <= kDays; ++seed) {
    CAPTURE(seed);
    const Problem problem = day(seed, mix_of(seed));
    Problem turned = problem;
    const auto turn = [&](Point& point) { point = problem.points - 1 - point; };
    for (Lag& lag : turned.lags) turn(lag.before), turn(lag.after);
    for (Bounds& bounds : turned.bounds) turn(bounds.point);
    for (Job& job : turned.jobs) turn(job.begin.point), turn(job.end.point);
    for (Across& wait : turned.across) turn(wait.begin.point), turn(wait.end.point);
    for (Objective& objective : turned.objectives)
      for (Point& point : objective.points) turn(point);
    for (Job& job : turned.jobs)
      if (job.goes_on != kNothing) job.goes_on = static_cast<Number>(problem.jobs.size()) - 1 - job.goes_on;
    std::reverse(turned.jobs.begin(), turned.jobs.end());
    std::reverse(turned.lags.begin(), turned.lags.end());
    CHECK(best(turned) == best(problem));
  }
}

TEST_CASE("a plan is the latest that its orders allow, and every moment says what holds it") {
  for (std::uint64_t seed = 1; seed <= kDays; ++seed) {
    CAPTURE(seed);
    Problem problem = day(seed, mix_of(seed));
    const Plan plan = solve(problem);
    if (plan.outcome != Plan::Outcome::planned) continue;
    for (std::size_t i = 0; i < plan.why.size(); ++i) {
      const Why& why = plan.why[i];
      if (why.kind == Why::Kind::lag) {
        const Lag& lag = problem.lags[why.index];
        CHECK(lag.before == i);
        CHECK(plan.times[lag.after] - plan.times[lag.before] == lag.least);
      } else if (why.kind == Why::Kind::order) {
        const Job& first = problem.jobs[plan.orders[why.index].first];
        CHECK((plan.orders[why.index].what == Order::For::warm ? first.begin : first.end).point == i);
      } else if (why.kind == Why::Kind::bound) {
        CHECK(problem.bounds[why.index].not_after == plan.times[i]);
      }
    }
    for (const Order& order : plan.orders) {
      const Job& first = problem.jobs[order.first];
      const Moment &end = order.what == Order::For::warm ? first.begin : first.end, &begin = problem.jobs[order.second].begin;
      problem.lags.push_back({end.point, begin.point, end.shift - begin.shift});
    }
    const std::vector<Ticks> again = *latest(problem);
    for (std::size_t i = 0; i < again.size(); ++i) CHECK(again[i] >= plan.times[i]);
  }
}

TEST_CASE("a budget that ends early leaves a plan and what no plan can exceed") {
  for (std::uint64_t seed = 1; seed <= (QTN_SANITIZED ? 4 : 20); ++seed) {
    CAPTURE(seed);
    Mix mix = mix_of(seed);
    mix.activities = 40;
    mix.dishes = 8;
    mix.all_late = false;
    const Problem problem = day(seed, mix);
    const Plan full = solve(problem);
    for (const std::uint64_t nodes : {1u, 30u, 100u, 300u}) {
      const Plan plan = solve(problem, {nodes});
      CHECK(plan.nodes <= nodes);
      if (plan.outcome != Plan::Outcome::planned) continue;
      CHECK(faults(problem, plan.times, plan.oven_of).empty());
      CHECK(plan.values[0] <= full.values[0]);
      CHECK(plan.bounds[0] >= full.values[0]);
      for (std::size_t i = 0; i < plan.values.size(); ++i) CHECK(plan.values[i] <= plan.bounds[i]);
    }
  }
}

}  // namespace
}  // namespace qtn::tests
