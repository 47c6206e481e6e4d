// What in a plan breaks a rule, by looking at every rule on its own. Shares no code with the search.
#include <algorithm>
#include <set>

#include "plan/problem.hpp"

namespace qtn::plan {
namespace {

struct Busy {
  Number job;
  Ticks begin, end;
};

class Check {
 public:
  Check(const Problem& problem, const std::vector<Ticks>& times, const std::vector<Number>& oven_of)
      : problem_(problem), times_(times), oven_of_(oven_of) {}

  std::vector<std::string> all() {
    if (times_.size() != problem_.points) {
      say("the plan has " + std::to_string(times_.size()) + " moments of " + std::to_string(problem_.points));
      return out_;
    }
    lags();
    bounds();
    jobs();
    across();
    crowd("hands", problem_.cooks, &Job::hands);
    crowd("a ring", problem_.rings, &Job::ring);
    ovens();
    return out_;
  }

 private:
  void say(std::string text) { out_.push_back(std::move(text)); }
  static std::string name(const char* what, std::size_t index) { return what + (" " + std::to_string(index)); }
  Ticks at(const Moment& moment) const { return times_[moment.point] + moment.shift; }
  Busy busy(Number job) const { return {job, at(problem_.jobs[job].begin), at(problem_.jobs[job].end)}; }

  void lags() {
    for (std::size_t i = 0; i < problem_.lags.size(); ++i) {
      const Lag& lag = problem_.lags[i];
      if (const Ticks is = times_[lag.after] - times_[lag.before]; is < lag.least)
        say(name("lag", i) + ": " + std::to_string(is) + " ticks, not " + std::to_string(lag.least));
    }
  }

  void bounds() {
    for (std::size_t i = 0; i < problem_.bounds.size(); ++i) {
      const Bounds& each = problem_.bounds[i];
      if (times_[each.point] < each.not_before) say(name("bound", i) + ": too early");
      if (times_[each.point] > each.not_after) say(name("bound", i) + ": too late");
    }
  }

  void jobs() {
    for (Number i = 0; i < problem_.jobs.size(); ++i) {
      const Busy job = busy(i);
      if (job.end < job.begin) say(name("job", i) + ": ends before it begins");
      for (const Stretch& closed : problem_.closed)
        if (problem_.jobs[i].awake && job.begin < closed.to && closed.from < job.end)
          say(name("job", i) + ": nobody is up from " + std::to_string(closed.from) + " to " + std::to_string(closed.to));
    }
  }

  void across() {
    for (std::size_t i = 0; i < problem_.across.size(); ++i) {
      const Across& each = problem_.across[i];
      if (std::none_of(problem_.midnights.begin(), problem_.midnights.end(),
                       [&](Ticks midnight) { return at(each.begin) <= midnight && midnight <= at(each.end); }))
        say(name("wait", i) + ": no midnight in it");
    }
  }

  bool same_run(Number a, Number b) const {
    return a == b || (problem_.jobs[a].run != kNothing && problem_.jobs[a].run == problem_.jobs[b].run);
  }

  // At the beginning of each job, how many are at work that clash with it.
  void crowd(const char* what, int places, bool Job::* wants) {
    for (Number i = 0; i < problem_.jobs.size(); ++i) {
      if (!(problem_.jobs[i].*wants)) continue;
      const Busy job = busy(i);
      std::set<std::pair<Number, bool>> others;  // by run, or by job where there is none
      for (Number j = 0; j < problem_.jobs.size(); ++j) {
        if (!(problem_.jobs[j].*wants) || same_run(i, j)) continue;
        const Busy other = busy(j);
        const bool first = other.begin < job.begin || (other.begin == job.begin && j < i);
        if (!first || other.end <= job.begin || job.end <= other.begin) continue;
        const Number run = problem_.jobs[j].run;
        others.insert(run == kNothing ? std::pair(j, false) : std::pair(run, true));
      }
      if (static_cast<int>(others.size()) + 1 > places)
        say(name("job", i) + ": " + std::to_string(others.size() + 1) + " jobs want " + what + " at " + std::to_string(job.begin));
    }
  }

  bool may_share(const Busy& a, const Busy& b) const {
    const Job &one = problem_.jobs[a.job], &two = problem_.jobs[b.job];
    if (std::abs(one.heat - two.heat) <= problem_.ovens.tolerance) return !goes_in_cold(a, b) && !goes_in_cold(b, a);
    const Ticks to_two = two.heats ? 0 : problem_.ovens.change, to_one = one.heats ? 0 : problem_.ovens.change;
    return a.end + to_two <= b.begin || b.end + to_one <= a.begin || out_before(a, b) || out_before(b, a);
  }

  // It goes into an oven that the other is still heating.
  bool goes_in_cold(const Busy& bake, const Busy& heating) const {
    const Job &one = problem_.jobs[bake.job], &other = problem_.jobs[heating.job];
    const bool has_its_own = one.heats || (one.goes_on != kNothing && problem_.jobs[one.goes_on].heats);
    return other.heats && !has_its_own && heating.begin < bake.begin && bake.begin < heating.end;
  }

  // It is out of the oven before the bake ends whose heat the other takes over.
  bool out_before(const Busy& one, const Busy& other) const {
    const Number from = problem_.jobs[other.job].goes_on;
    return from != kNothing && one.end <= busy(from).end && one.end <= other.begin;
  }

  // Whether the bakes given an oven each keep to heats and shelves, as far as they have been given one.
  bool oven_holds(const std::vector<Busy>& bakes, const std::vector<int>& oven, std::size_t given) const {
    const Busy& last = bakes[given];
    std::set<std::pair<Number, bool>> beside;
    for (std::size_t i = 0; i < given; ++i) {
      const Number together = problem_.jobs[last.job].one_oven;
      if (oven[i] != oven[given] && together != kNothing && problem_.jobs[bakes[i].job].one_oven == together) return false;
      if (oven[i] != oven[given] || same_run(bakes[i].job, last.job)) continue;
      if (!may_share(bakes[i], last)) return false;
      if (bakes[i].end <= last.begin || last.end <= bakes[i].begin) continue;
      const Number run = problem_.jobs[bakes[i].job].run;
      beside.insert(run == kNothing ? std::pair(bakes[i].job, false) : std::pair(run, true));
    }
    return static_cast<int>(beside.size()) < problem_.ovens.shelves[static_cast<std::size_t>(oven[given])];
  }

  // Counts through all ways to give the bakes ovens, leaving out what already fails; or looks at the one that is told.
  void ovens() {
    std::vector<Busy> bakes;
    for (Number i = 0; i < problem_.jobs.size(); ++i) {
      const Job& job = problem_.jobs[i];
      if (job.oven) bakes.push_back(busy(i));
      if (job.goes_on != kNothing && busy(job.goes_on).end > busy(i).begin) say(name("job", i) + ": begins before the bake it follows is over");
    }
    std::sort(bakes.begin(), bakes.end(), [](const Busy& a, const Busy& b) { return a.begin < b.begin; });
    std::vector<int> oven(bakes.size(), -1);
    for (std::size_t i = 0; i < bakes.size() && !oven_of_.empty(); ++i) {
      const Number is = oven_of_[bakes[i].job];
      if (is >= problem_.ovens.shelves.size()) return say(name("job", bakes[i].job) + ": has no oven");
      oven[i] = static_cast<int>(is);
      if (!oven_holds(bakes, oven, i)) return say(name("job", bakes[i].job) + ": oven " + std::to_string(is) + " has no room for it");
    }
    if (!oven_of_.empty()) return;
    std::size_t at = 0;
    while (at < bakes.size()) {
      ++oven[at];
      if (oven[at] >= problem_.ovens.count()) {
        oven[at] = -1;
        if (at == 0) return say("the bakes do not fit into the ovens");
        --at;
      } else if (oven_holds(bakes, oven, at)) {
        ++at;
      }
    }
  }

  const Problem& problem_;
  const std::vector<Ticks>& times_;
  const std::vector<Number>& oven_of_;
  std::vector<std::string> out_;
};

}  // namespace

std::vector<std::string> faults(const Problem& problem, const std::vector<Ticks>& times, const std::vector<Number>& oven_of) {
  return Check(problem, times, oven_of).all();
}

}  // namespace qtn::plan
