#include "plan/rules.hpp"

#include <algorithm>

namespace qtn::plan {
namespace {

bool unbounded(Ticks time) { return time >= kNever / 2 || time <= -kNever / 2; }
Ticks up(Ticks sum, Ticks by) { return sum >= 0 ? (sum + by - 1) / by : -(-sum / by); }

}  // namespace

Rules::Rules(const Problem& problem, const Distances& distances, Facts& facts)
    : problem_(problem), facts_(facts), watched_by_(problem.points), energy_(problem, works(problem, distances)) {
  const std::vector<Ticks> lengths = works(problem, distances);
  for (const Job& job : problem.jobs)
    if (job.awake && !problem.closed.empty()) watches_.push_back({false, job.begin, job.end});
  for (const Across& wait : problem.across) watches_.push_back({true, wait.begin, wait.end});
  for (Number i = 0; i < watches_.size(); ++i) {
    watched_by_[watches_[i].begin.point].push_back(i);
    if (watches_[i].end.point != watches_[i].begin.point) watched_by_[watches_[i].end.point].push_back(i);
  }
  for (const Objective& objective : problem.objectives) {
    const Point value = facts.add(-kNever, kNever);
    values_.push_back(value);
    sums_.emplace_back();
    queues_.emplace_back(problem, objective, distances, lengths);
    if (objective.kind == Objective::Kind::earliest) {
      for (const Point point : objective.points) facts.lag({value, point, 0});
      continue;
    }
    auto& parts = sums_.back().parts;
    for (const Point point : objective.points) {
      const auto same = std::find_if(parts.begin(), parts.end(), [&](const auto& part) { return part.first == point; });
      if (same == parts.end()) parts.push_back({point, 1});
      else ++same->second;
    }
  }
  late_.resize(problem.points);
}

bool Rules::follow() {
  for (;;) {
    if (!facts_.follow()) return false;
    const std::size_t told = facts_.told();
    if (!hours()) return false;
    if (facts_.told() != told) continue;
    for (Number i = 0; i < minded_; ++i)
      if (!sum(i)) return false;
    if (facts_.told() != told) continue;
    if (!energy_.follow(facts_)) return false;
    if (facts_.told() == told) return true;
  }
}

bool Rules::hours() {
  if (watches_.empty()) return true;
  for (Side side = 0; facts_.news(side);) {
    if (side / 2 >= watched_by_.size()) continue;
    for (const Number watch : watched_by_[side / 2])
      if (!(side % 2 ? hour_late(watches_[watch]) : hour_early(watches_[watch]))) return false;
  }
  return true;
}

// The latest begin and end there are with the hours: the last midnight that fits, the last stretch of being up.
bool Rules::hour_late(const Watch& watch) {
  if (watch.midnight) {
    const Ticks end = facts_.late(watch.end);
    if (unbounded(end)) return true;
    const auto after = std::upper_bound(problem_.midnights.begin(), problem_.midnights.end(), end);
    const Fact because[] = {not_after(watch.end, after == problem_.midnights.end() ? end : *after - 1)};
    if (after == problem_.midnights.begin()) return facts_.clash(because);
    return facts_.tell(not_after(watch.begin, *(after - 1)), because);
  }
  const Ticks begin = facts_.late(watch.begin);
  if (unbounded(begin)) return true;
  const auto next = std::upper_bound(problem_.closed.begin(), problem_.closed.end(), begin,
                                     [](Ticks time, const Stretch& stretch) { return time < stretch.to; });
  if (next == problem_.closed.end()) return true;
  const Fact because[] = {not_after(watch.begin, next->to - 1)};
  return facts_.tell(not_after(watch.end, next->from), because);
}

bool Rules::hour_early(const Watch& watch) {
  if (watch.midnight) {
    const Ticks begin = facts_.early(watch.begin);
    if (unbounded(begin)) return true;
    const auto at = std::lower_bound(problem_.midnights.begin(), problem_.midnights.end(), begin);
    const Fact because[] = {not_before(watch.begin, at == problem_.midnights.begin() ? begin : *(at - 1) + 1)};
    if (at == problem_.midnights.end()) return facts_.clash(because);
    return facts_.tell(not_before(watch.end, *at), because);
  }
  const Ticks end = facts_.early(watch.end);
  if (unbounded(end)) return true;
  const auto next = std::lower_bound(problem_.closed.begin(), problem_.closed.end(), end,
                                     [](const Stretch& stretch, Ticks time) { return stretch.from < time; });
  if (next == problem_.closed.begin()) return true;
  const Fact because[] = {not_before(watch.end, (next - 1)->from + 1)};
  return facts_.tell(not_before(watch.begin, (next - 1)->to), because);
}

// A sum is no later than its parts can be, less what they take from each other; a part makes up for the others.
bool Rules::sum(Number objective) {
  const Sum& sum = sums_[objective];
  if (sum.parts.empty()) return true;
  const Point value = values_[objective];
  for (Point point = 0; point < late_.size(); ++point) late_[point] = -facts_.least(2 * point + 1);
  Ticks all = 0;
  for (const auto& [point, times] : sum.parts) all += times * late_[point];
  const Ticks wanted = facts_.least(2 * value);
  const auto reasons = [&](Point without) {
    because_.clear();
    for (const auto& [point, times] : sum.parts)
      if (point != without) because_.push_back({2 * point + 1, -late_[point]});
    if (without != kNothing) because_.push_back({2 * value, wanted});
  };
  if (all < -facts_.least(2 * value + 1)) {
    reasons(kNothing);
    if (!facts_.tell({2 * value + 1, -all}, because_)) return false;
  }
  leaned_.clear();
  const Ticks loss = queues_[objective].loss(late_, kNothing, &leaned_);
  if (loss > 0 && all - loss < -facts_.least(2 * value + 1)) {
    reasons(kNothing);
    for (const Point point : leaned_) because_.push_back({2 * point + 1, -late_[point]});
    if (!facts_.tell({2 * value + 1, loss - all}, because_)) return false;
  }
  if (unbounded(wanted)) return true;
  constexpr std::size_t kShared = 24;
  for (const auto& [point, times] : sum.parts) {
    const bool shared = times == 1 && sum.parts.size() <= kShared;
    leaned_.clear();
    const Ticks lost = shared ? queues_[objective].loss(late_, point, &leaned_) : 0;
    const Fact fact{2 * point, up(wanted - (all - times * late_[point] - lost), times)};
    if (facts_.holds(fact)) continue;
    reasons(point);
    if (lost > 0)
      for (const Point on : leaned_) because_.push_back({2 * on + 1, -late_[on]});
    if (!facts_.tell(fact, because_)) return false;
  }
  return true;
}

}  // namespace qtn::plan
