// Small days whose plans are worked out by hand.
#include <doctest/doctest.h>

#include "plan/problem.hpp"

namespace qtn::tests {
namespace {

using namespace plan;

// Points 0, 1, ... each begin a job of the given length, done by `until`.
Problem jobs(const std::vector<Ticks>& lengths, Ticks until, void (*make)(Job&)) {
  Problem out;
  Objective all{Objective::Kind::sum, {}};
  for (const Ticks length : lengths) {
    const Point point = out.points++;
    Job job{.begin = {point, 0}, .end = {point, length}};
    make(job);
    out.jobs.push_back(job);
    out.bounds.push_back({point, -kNever, until - length});
    all.points.push_back(point);
  }
  out.objectives = {all};
  return out;
}

void hands(Job& job) { job.hands = true; }
void bake(Job& job) { job.oven = true, job.heat = 1800; }

Plan sound(const Problem& problem) {
  const Plan plan = solve(problem);
  REQUIRE(plan.outcome == Plan::Outcome::planned);
  CHECK(plan.proven());
  CHECK(faults(problem, plan.times) == std::vector<std::string>{});
  return plan;
}

TEST_CASE("one cook does one thing after the other, the longest first") {
  const Problem problem = jobs({30, 10, 20}, 100, hands);
  const Plan plan = sound(problem);
  CHECK(plan.times == std::vector<Ticks>{40, 90, 70});
  CHECK(plan.orders.size() == 3);
  CHECK(plan.why[1].kind == Why::Kind::bound);
  CHECK(plan.why[2].kind == Why::Kind::order);
  CHECK(plan.orders[plan.why[2].index].second == 1);
  CHECK(plan.cook_of == std::vector<Number>{0, 0, 0});
  CHECK(*latest(problem) == std::vector<Ticks>{70, 90, 80});
}

TEST_CASE("two cooks share three jobs") {
  Problem problem = jobs({30, 10, 20}, 100, hands);
  problem.cooks = 2;
  const Plan plan = sound(problem);
  CHECK(plan.values == std::vector<Ticks>{70 + 90 + 70});
  CHECK(plan.cook_of[0] + plan.cook_of[2] == 1);
}

TEST_CASE("an oven changes its heat, two bakes of one heat share it") {
  Problem problem = jobs({30, 30, 30}, 100, bake);
  problem.jobs[2].heat = 2200;
  problem.ovens = {1, 2, 100, 15};
  CHECK(sound(problem).values == std::vector<Ticks>{70 + 70 + 25});
  problem.jobs[0].heated_before = true;
  problem.jobs[1].heated_before = true;
  CHECK(sound(problem).values == std::vector<Ticks>{70 + 70 + 40});
  problem.ovens.shelves = 1;
  CHECK(sound(problem).values == std::vector<Ticks>{70 + 40 + 10});
  problem.ovens.count = 2;
  const Plan plan = sound(problem);
  CHECK(plan.values == std::vector<Ticks>{70 + 70 + 40});
  CHECK(plan.oven_of[0] < 2);
}

TEST_CASE("a job lies wholly in one waking stretch") {
  Problem problem = jobs({30, 30}, 100, hands);
  problem.jobs[1].awake = true;
  problem.closed = {{-50, -20}, {60, 90}};
  const Plan plan = sound(problem);
  CHECK(plan.times == std::vector<Ticks>{70, 30});
  CHECK(plan.why[1].kind == Why::Kind::closed);
  CHECK(plan.why[1].index == 1);
}

TEST_CASE("a wait across midnight begins before it and ends after it") {
  Problem problem;
  problem.points = 2;
  problem.lags = {{0, 1, 10}};
  problem.bounds = {{1, -kNever, 300}};
  problem.across = {{{0, 0}, {1, 0}}};
  problem.midnights = {-288, 0, 288};
  problem.objectives = {{Objective::Kind::earliest, {0}}};
  CHECK(sound(problem).times == std::vector<Ticks>{288, 300});
  problem.lags.push_back({1, 0, -11});
  CHECK(sound(problem).times == std::vector<Ticks>{288, 299});
  problem.bounds.push_back({1, 300, kNever});
  CHECK(solve(problem).outcome == Plan::Outcome::impossible);
}

TEST_CASE("lags that go round in a circle are found at once") {
  Problem problem;
  problem.points = 3;
  problem.lags = {{0, 1, 1000000}, {1, 2, 1}, {2, 0, -1000000}};
  problem.bounds = {{2, -kNever, 0}};
  CHECK(solve(problem).outcome == Plan::Outcome::impossible);
  CHECK_FALSE(latest(problem).has_value());
}

TEST_CASE("an order that closes a circle is no way out") {
  // Two jobs that must begin within a tick of each other and that one cook cannot do.
  Problem problem = jobs({10, 10}, 100, hands);
  problem.lags = {{0, 1, -1}, {1, 0, -1}};
  CHECK(solve(problem).outcome == Plan::Outcome::impossible);
  problem.jobs[0].run = problem.jobs[1].run = 0;
  CHECK(sound(problem).values == std::vector<Ticks>{180});
}

TEST_CASE("nobody to do it") {
  Problem problem = jobs({10}, 100, hands);
  problem.cooks = 0;
  CHECK(solve(problem).outcome == Plan::Outcome::impossible);
}

TEST_CASE("a plan that breaks rules is told what it breaks") {
  Problem problem = jobs({30, 30}, 100, hands);
  problem.jobs[0].oven = problem.jobs[1].oven = true;
  problem.lags = {{0, 1, 5}};
  problem.closed = {{60, 65}};
  problem.jobs[0].awake = true;
  problem.across = {{{0, 0}, {1, 0}}};
  problem.midnights = {0};
  CHECK(faults(problem, {50, 51}).size() == 5);
  CHECK(faults(problem, {50}).size() == 1);
  CHECK(faults(problem, {-30, 0}).empty());
}

}  // namespace
}  // namespace qtn::tests
