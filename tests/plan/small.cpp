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
  problem.ovens = {{2}, 100, 15};
  CHECK(sound(problem).values == std::vector<Ticks>{70 + 70 + 25});
  problem.jobs[0].heats = true;
  problem.jobs[1].heats = true;
  CHECK(sound(problem).values == std::vector<Ticks>{70 + 70 + 40});
  problem.ovens.shelves = {1};
  CHECK(sound(problem).values == std::vector<Ticks>{70 + 40 + 10});
  problem.ovens.shelves = {1, 1};
  const Plan plan = sound(problem);
  CHECK(plan.values == std::vector<Ticks>{70 + 70 + 40});
  CHECK(plan.oven_of[0] < 2);
}

TEST_CASE("a heat that is taken over is lost to what came between") {
  // The heating is over by 30, the bake begins by 70, another dish bakes hotter and begins by 50.
  Problem problem = jobs({20, 30, 10}, 100, bake);
  for (Job& job : problem.jobs) job.heat = 1900;
  problem.jobs[2].heat = 2200;
  problem.jobs[0].heats = true;
  problem.jobs[1].goes_on = 0;
  problem.ovens = {{1}, 50, 15};
  problem.lags = {{0, 1, 20}};
  problem.bounds = {{0, -kNever, 10}, {1, -kNever, 70}, {2, -kNever, 50}};
  // Between the two: heating 10 to 30, the dish 45 to 55, the bake from 70.
  CHECK(sound(problem).times == std::vector<Ticks>{10, 70, 45});
  CHECK(faults(problem, {10, 70, 50}).size() == 1);
  // Before the heating, which makes its own heat, nothing is lost.
  problem.bounds[2].not_after = 0;
  CHECK(sound(problem).times == std::vector<Ticks>{10, 70, 0});
  CHECK(faults(problem, {9, 70, 0}).size() == 1);
}

TEST_CASE("what is baked on a heating is in the oven that was heated") {
  // Two dishes overlap from 52 to 55 and take an oven each; the heating overlaps one, the bake the other.
  Problem problem = jobs({20, 20, 55, 48}, 100, bake);
  problem.jobs[0].heat = problem.jobs[1].heat = 1900;
  problem.jobs[0].heats = true;
  problem.jobs[2].heat = problem.jobs[3].heat = 2200;
  problem.ovens = {{1, 1}, 50, 0};
  problem.lags = {{0, 1, 20}};
  problem.bounds = {{0, -kNever, 30}, {1, -kNever, 60}, {2, 0, 0}, {3, 52, 52}};
  CHECK(sound(problem).values == std::vector<Ticks>{30 + 60 + 52});
  // In one oven both are over by 52.
  problem.jobs[0].one_oven = problem.jobs[1].one_oven = 7;
  CHECK_FALSE(faults(problem, {30, 60, 0, 52}).empty());
  const Plan plan = sound(problem);
  CHECK(plan.times == std::vector<Ticks>{12, 32, 0, 52});
  CHECK(plan.oven_of[0] == plan.oven_of[1]);
  CHECK(faults(problem, plan.times, plan.oven_of).empty());
  CHECK_FALSE(faults(problem, plan.times, {0, 1, 0, 1}).empty());
  // An oven that takes 10 to change its heat.
  problem.ovens.change = 10;
  problem.jobs[1].goes_on = 0;
  CHECK(sound(problem).times == std::vector<Ticks>{2, 22, 0, 52});
}

// Rolls: heating 20, then 10 in the oven; a tart of the same heat, 29. All out by 60.
Problem rolls_and_tart() {
  Problem problem = jobs({20, 10, 29}, 60, bake);
  problem.jobs[0].heats = true;
  problem.jobs[0].one_oven = problem.jobs[1].one_oven = 0;
  problem.jobs[1].goes_on = 0;
  problem.lags = {{0, 1, 20}};
  problem.ovens = {{2}, 50, 15};
  return problem;
}

TEST_CASE("what is baked in an oven that heats is in before, or waits until it is hot") {
  Problem problem = rolls_and_tart();
  // Heating 30 to 50. The tart, which must be in by 31, is in by 30.
  CHECK(faults(problem, {30, 50, 31}).size() == 1);
  CHECK(sound(problem).times == std::vector<Ticks>{30, 50, 30});
  CHECK(sound(problem).why[2].kind == Why::Kind::order);
  // Not ready before 31, it waits until the oven is hot: heating 11 to 31.
  problem.bounds.push_back({2, 31, kNever});
  CHECK(sound(problem).times == std::vector<Ticks>{11, 50, 31});
  // With an oven heated no sooner than at 30 there is no way.
  problem.bounds.push_back({0, 30, kNever});
  CHECK(solve(problem).outcome == Plan::Outcome::impossible);
  // Unless it heats the oven itself, or is of one run with the heating.
  problem.jobs[2].heats = true;
  CHECK(sound(problem).times == std::vector<Ticks>{30, 50, 31});
  problem.jobs[2].heats = false;
  problem.jobs[0].run = problem.jobs[2].run = 0;
  CHECK(sound(problem).times == std::vector<Ticks>{30, 50, 31});
}

TEST_CASE("of two ovens the one that heats takes nothing in") {
  Problem problem = rolls_and_tart();
  problem.ovens.shelves = {2, 2};
  const Plan plan = sound(problem);
  CHECK(plan.times == std::vector<Ticks>{30, 50, 31});
  CHECK(plan.oven_of[0] == plan.oven_of[1]);
  CHECK(plan.oven_of[0] != plan.oven_of[2]);
  CHECK(faults(problem, plan.times, {0, 0, 1}).empty());
  CHECK_FALSE(faults(problem, plan.times, {0, 0, 0}).empty());
  // The other oven is taken all along by what bakes at another heat: as with one oven.
  const Point point = problem.points++;
  problem.jobs.push_back({.begin = {point, 0}, .end = {point, 60}, .oven = true, .heat = 1500});
  problem.bounds.push_back({point, 0, 0});
  CHECK(sound(problem).times == std::vector<Ticks>{30, 50, 30, 0});
  problem.bounds.push_back({2, 31, kNever});
  CHECK(sound(problem).times == std::vector<Ticks>{11, 50, 31, 0});
}

TEST_CASE("ovens have shelves of their own") {
  Problem problem = jobs({30, 30, 30, 30}, 100, bake);
  problem.ovens = {{1, 2}, 50, 0};
  CHECK(sound(problem).values == std::vector<Ticks>{70 + 70 + 70 + 40});
  problem.jobs[3].heat = 2200;
  const Plan plan = sound(problem);
  // Two of the three alike are on two shelves, and the hot one in the other oven; or it comes after.
  CHECK(plan.values == std::vector<Ticks>{70 + 70 + 70 + 40});
  problem.ovens.shelves = {1, 3};
  CHECK(sound(problem).values == std::vector<Ticks>{4 * 70});
  CHECK(sound(problem).oven_of == std::vector<Number>{1, 1, 1, 0});
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
