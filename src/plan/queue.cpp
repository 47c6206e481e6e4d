#include "plan/queue.hpp"

#include <algorithm>
#include <functional>

namespace qtn::plan {

Distances::Distances(const Problem& problem) : from_(problem.points), most_(problem.points) {
  for (const Lag& lag : problem.lags) from_[lag.before].push_back(lag);
}

const std::vector<Ticks>& Distances::most(Point point) const {
  std::vector<Ticks>& most = most_[point];
  if (!most.empty()) return most;
  most.assign(most_.size(), kNever);
  most[point] = 0;
  moved_.assign(1, point);
  for (std::size_t next = 0; next < moved_.size(); ++next)
    for (const Lag& lag : from_[moved_[next]]) {  // time(before) <= time(after) - least
      if (most[lag.before] - lag.least >= most[lag.after]) continue;
      most[lag.after] = most[lag.before] - lag.least;
      moved_.push_back(lag.after);
    }
  return most;
}

std::vector<Ticks> works(const Problem& problem, const Distances& distances) {
  std::vector<Ticks> out;
  for (std::size_t i = 0; i < problem.jobs.size(); ++i) {
    const Job& job = problem.jobs[i];
    const auto apart = [&](const Job& first, const Job& second) {
      const Ticks most = distances.most(first.end.point)[second.begin.point];
      return most < kNever && second.begin.shift - first.end.shift >= most;
    };
    bool counts = true;
    for (std::size_t mate = 0; mate < i && job.run != kNothing && counts; ++mate)
      if (problem.jobs[mate].run == job.run && out[mate] > 0) counts = apart(job, problem.jobs[mate]) || apart(problem.jobs[mate], job);
    const Ticks most = distances.most(job.begin.point)[job.end.point];  // begin <= end + most
    const Ticks length = most < kNever ? job.end.shift - job.begin.shift - most : 0;
    out.push_back(counts ? std::max<Ticks>(length, 0) : 0);
  }
  return out;
}

Queues::Queues(const Problem& problem, const Objective& objective, const Distances& distances, const std::vector<Ticks>& lengths) {
  if (objective.kind != Objective::Kind::sum) return;
  taken_.assign(problem.jobs.size(), 0);
  queues_ = {{problem.cooks, {}}, {problem.rings, {}}, {problem.ovens.all_shelves(), {}}};
  bool Job::* const wants[] = {&Job::hands, &Job::ring, &Job::oven};
  std::vector<Point> points = objective.points;
  std::sort(points.begin(), points.end());
  points.erase(std::unique(points.begin(), points.end()), points.end());
  for (const Point point : points) {
    const std::vector<Ticks>& most = distances.most(point);
    for (std::size_t i = 0; i < problem.jobs.size(); ++i) {
      const Job& job = problem.jobs[i];
      if (most[job.begin.point] >= kNever || lengths[i] == 0) continue;
      for (std::size_t q = 0; q < queues_.size(); ++q)
        if (job.*wants[q]) queues_[q].held.push_back({job.begin, job.end, lengths[i], most[job.begin.point] - job.begin.shift, point, i});
    }
  }
  std::erase_if(queues_, [](const Queue& queue) { return queue.held.size() < 2 || queue.places < 1; });
}

Ticks Queues::loss(const std::vector<Ticks>& late, Point without, std::vector<Point>* on) const {
  Ticks most = 0;
  for (const Queue& queue : queues_) {
    const Ticks lost = loss(queue, late, without);
    if (lost <= most) continue;
    most = lost;
    if (on != nullptr) *on = leaned_;
  }
  return most;
}

Ticks Queues::loss(const Queue& queue, const std::vector<Ticks>& late, Point without) const {
  const Ticks places = queue.places;
  waiting_.clear();
  leaned_.clear();
  alone_.clear();
  std::fill(taken_.begin(), taken_.end(), 0);
  Ticks allowed = 0;  // done without waiting, and the room that the moments have of their own
  for (std::size_t i = 0; i < queue.held.size();) {
    const Point point = queue.held[i].point;
    const Held* best = nullptr;
    Ticks least = kNever;
    for (; i < queue.held.size() && queue.held[i].point == point; ++i) {
      const Held& held = queue.held[i];
      const Ticks room = late[held.begin.point] + held.begin.shift + held.reach - late[point];
      if (taken_[held.job] || room > least || (room == least && held.length <= best->length)) continue;
      least = room;
      best = &held;
    }
    if (point == without || best == nullptr || least > 2 * best->length) continue;
    taken_[best->job] = 1;
    leaned_.push_back(best->begin.point);
    const Ticks begin = late[best->begin.point] + best->begin.shift;
    waiting_.push_back({-(begin + best->length) * places, best->length});
    alone_.push_back(-begin * places);
    allowed += (least - begin) * places;
  }
  std::sort(alone_.begin(), alone_.end());
  std::sort(waiting_.begin(), waiting_.end(), [](const Waiting& a, const Waiting& b) { return a.release < b.release; });
  // Shortest remaining first, on the day turned round. The first job done is not done before any job could be, and so on.
  heap_.clear();
  Ticks now = 0, done = 0;
  std::size_t finished = 0;
  for (std::size_t next = 0; next < waiting_.size() || !heap_.empty();) {
    if (heap_.empty()) now = waiting_[next].release;
    while (next < waiting_.size() && waiting_[next].release <= now) {
      heap_.push_back(waiting_[next++].left);
      std::push_heap(heap_.begin(), heap_.end(), std::greater<>());
    }
    std::pop_heap(heap_.begin(), heap_.end(), std::greater<>());
    const Ticks left = heap_.back();
    const Ticks until = next < waiting_.size() ? std::min(now + left, waiting_[next].release) : now + left;
    if (until < now + left) {
      heap_.back() = now + left - until;
      std::push_heap(heap_.begin(), heap_.end(), std::greater<>());
    } else {
      heap_.pop_back();
      done += std::max(until, alone_[finished++]);
    }
    now = until;
  }
  const Ticks over = done - allowed;
  return over <= 0 ? 0 : (over + places - 1) / places;
}

}  // namespace qtn::plan
