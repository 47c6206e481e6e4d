// Which oven a bake has: the one that its dish is in already, wherever the ovens let it. The planner, which knows nothing
// of dishes, only proves that there is a way.
#include <algorithm>

#include "day/table.hpp"

namespace qtn {
namespace {

constexpr int kTries = 20'000;  // for each number of moves; then the planner's own way is kept

struct Bake {
  Number job, run;
  Ticks begin, end;
  int heat;
  bool heats, heated;  // `heated`: it goes on from a heating of its own
  Number one_oven;
  Ticks taken_over;  // when the bake ends whose heat it takes over
  std::size_t before = SIZE_MAX;  // the bake of the same dish that it follows
};

class Giver {
 public:
  Giver(const Clock& clock, const Posed& posed, const plan::Plan& plan) : ovens_(posed.problem.ovens) {
    for (Number j = 0; j < posed.problem.jobs.size(); ++j) {
      const plan::Job& job = posed.problem.jobs[j];
      if (!job.oven) continue;
      const auto at = [&](const plan::Moment& moment) { return plan.times[moment.point] + moment.shift; };
      bakes_.push_back({j, job.run, at(job.begin), at(job.end), job.heat, job.heats,
                        job.goes_on != kNothing && posed.problem.jobs[job.goes_on].heats, job.one_oven,
                        job.goes_on == kNothing ? -plan::kNever : at(posed.problem.jobs[job.goes_on].end)});
    }
    std::stable_sort(bakes_.begin(), bakes_.end(), [](const Bake& a, const Bake& b) { return a.begin < b.begin; });
    for (std::size_t i = 0; i < bakes_.size(); ++i)
      for (std::size_t b = 0; b < i; ++b) {
        const Doing &one = clock.doings[posed.activity_of[bakes_[b].job]], &other = clock.doings[posed.activity_of[bakes_[i].job]];
        if (one.making == other.making && one.part == other.part) bakes_[i].before = b;
      }
  }

  // Of each bake its oven, by job, with as few moves from oven to oven as can be; empty: none was found.
  std::vector<std::pair<Number, int>> run() {
    for (std::size_t moves = 0; moves < std::max<std::size_t>(bakes_.size(), 1); ++moves)
      if (auto out = with(moves); !out.empty()) return out;
    return {};
  }

 private:
  std::vector<std::pair<Number, int>> with(std::size_t moves) {
    const std::size_t count = bakes_.size();
    std::vector<int> tried(count, 0);
    oven_.assign(count, -1);
    std::size_t at = 0;
    for (int tries = 0; at < count && tries < kTries; ++tries) {
      if (tried[at] == ovens_.count()) {
        tried[at] = 0, oven_[at] = -1;
        if (at-- == 0) return {};
        continue;
      }
      oven_[at] = choice(at, tried[at]++);
      if (moved(at) <= moves && holds(at)) ++at;
    }
    std::vector<std::pair<Number, int>> out;
    for (std::size_t i = 0; at == count && i < count; ++i) out.push_back({bakes_[i].job, oven_[i]});
    return out;
  }

  // Of the bakes up to this one.
  std::size_t moved(std::size_t at) const {
    std::size_t count = 0;
    for (std::size_t i = 0; i <= at; ++i)
      if (bakes_[i].before < i && oven_[i] != oven_[bakes_[i].before]) ++count;
    return count;
  }

  // First the oven of the bake before it, then the others in their order.
  int choice(std::size_t at, int tried) const {
    const int first = bakes_[at].before < at ? oven_[bakes_[at].before] : 0;
    return tried == 0 ? first : tried <= first ? tried - 1 : tried;
  }

  bool one_run(const Bake& a, const Bake& b) const { return a.run != kNothing && a.run == b.run; }

  bool holds(std::size_t at) const {
    const Bake& last = bakes_[at];
    std::vector<Number> beside;
    for (std::size_t i = 0; i < at; ++i) {
      const Bake& one = bakes_[i];
      if (oven_[i] != oven_[at] && one.one_oven == last.one_oven) return false;
      if (oven_[i] != oven_[at] || one_run(one, last)) continue;
      const bool alike = std::abs(one.heat - last.heat) <= ovens_.tolerance;
      if (alike && one.heats && !last.heats && !last.heated && one.begin < last.begin && last.begin < one.end) return false;
      if (!alike && one.end > last.taken_over && one.end + (last.heats ? 0 : ovens_.change) > last.begin) return false;
      if (one.end <= last.begin) continue;
      const Number name = one.run == kNothing ? one.job : one.run;
      if (std::find(beside.begin(), beside.end(), name) == beside.end()) beside.push_back(name);
    }
    return static_cast<int>(beside.size()) < ovens_.shelves[static_cast<std::size_t>(oven_[at])];
  }

  const plan::Ovens& ovens_;
  std::vector<Bake> bakes_;
  std::vector<int> oven_;
};

}  // namespace

void keep_to_ovens(const Clock& clock, const Posed& posed, plan::Plan& plan) {
  if (posed.problem.ovens.count() < 2) return;
  for (const auto& [job, oven] : Giver(clock, posed, plan).run()) plan.oven_of[job] = static_cast<Number>(oven);
}

}  // namespace qtn
