// The independent checker: rule by rule, minute by minute where somebody is busy, with nothing of the search in it.
#include <algorithm>
#include <string>

#include "plan/problem.hpp"

namespace qtn::plan {
namespace {

class Checker {
 public:
  Checker(const Problem& problem, const std::vector<Ticks>& times) : problem_(problem), times_(times) {}

  std::vector<std::string> run() {
    if (times_.size() != problem_.points) return {"not one time for each point"};
    for (std::size_t i = 0; i < problem_.lags.size(); ++i) {
      const Lag& lag = problem_.lags[i];
      if (times_[lag.after] - times_[lag.before] < lag.least) say("distance", i);
    }
    for (std::size_t i = 0; i < problem_.bounds.size(); ++i) {
      const Bounds& bounds = problem_.bounds[i];
      if (times_[bounds.point] < bounds.not_before || times_[bounds.point] > bounds.not_after) say("bounds", i);
    }
    for (std::size_t i = 0; i < problem_.across.size(); ++i) {
      const Ticks begin = at(problem_.across[i].begin), end = at(problem_.across[i].end);
      const bool night = std::any_of(problem_.midnights.begin(), problem_.midnights.end(),
                                     [&](Ticks midnight) { return begin <= midnight && midnight <= end; });
      if (!night) say("night's wait", i);
    }
    for (std::size_t i = 0; i < problem_.jobs.size(); ++i) {
      const Job& job = problem_.jobs[i];
      if (!job.awake) continue;
      for (const Stretch& night : problem_.closed) {
        const bool inside = at(job.begin) == at(job.end) ? night.from < at(job.begin) && at(job.begin) < night.to
                                                         : at(job.begin) < night.to && night.from < at(job.end);
        if (inside) say("job in the night", i);
      }
    }
    moments();
    return std::move(out_);
  }

 private:
  Ticks at(const Moment& moment) const { return times_[moment.point] + moment.shift; }
  void say(const std::string& what, std::size_t index) { out_.push_back(what + " " + std::to_string(index)); }

  // It is enough to look where something begins.
  void moments() {
    for (const Job& one : problem_.jobs) {
      const Ticks now = at(one.begin);
      std::vector<const Job*> busy;
      for (const Job& other : problem_.jobs)
        if (at(other.begin) <= now && now < at(other.end)) busy.push_back(&other);
      if (count(busy, &Job::hands) > problem_.cooks) say("too few cooks at", static_cast<std::size_t>(now));
      if (count(busy, &Job::ring) > problem_.rings) say("too few rings at", static_cast<std::size_t>(now));
      std::vector<const Job*> baking;
      for (const Job* other : busy)
        if (other->oven && first_of_run(busy, other, &Job::oven)) baking.push_back(other);
      if (!baking.empty() && !in_ovens(baking, std::vector<std::vector<const Job*>>(static_cast<std::size_t>(problem_.ovens.count)), 0))
        say("too few ovens at", static_cast<std::size_t>(now));
    }
  }

  bool first_of_run(const std::vector<const Job*>& busy, const Job* one, bool Job::*what) const {
    if (one->run == kNothing) return true;
    for (const Job* other : busy)
      if (other->*what && other->run == one->run) return other == one;
    return true;
  }
  int count(const std::vector<const Job*>& busy, bool Job::*what) const {
    return static_cast<int>(std::count_if(busy.begin(), busy.end(), [&](const Job* job) { return job->*what && first_of_run(busy, job, what); }));
  }
  // Every way of sharing them out.
  bool in_ovens(const std::vector<const Job*>& baking, std::vector<std::vector<const Job*>> ovens, std::size_t next) const {
    if (next == baking.size()) return true;
    for (auto& oven : ovens) {
      const bool fits = static_cast<int>(oven.size()) < problem_.ovens.shelves &&
                        std::all_of(oven.begin(), oven.end(), [&](const Job* other) {
                          return other->heat >= 0 && baking[next]->heat >= 0 && std::abs(other->heat - baking[next]->heat) <= problem_.ovens.tolerance;
                        });
      if (!fits) continue;
      oven.push_back(baking[next]);
      if (in_ovens(baking, ovens, next + 1)) return true;
      oven.pop_back();
    }
    return false;
  }

  const Problem& problem_;
  const std::vector<Ticks>& times_;
  std::vector<std::string> out_;
};

}  // namespace

std::vector<std::string> faults(const Problem& problem, const std::vector<Ticks>& times) { return Checker(problem, times).run(); }

}  // namespace qtn::plan
