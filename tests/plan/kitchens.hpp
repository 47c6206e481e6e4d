// Random kitchens: dishes as chains of work, waits, hob and oven, a night, cooks and ovens. The same seed, the same one.
#pragma once
#include <random>

#include "plan/problem.hpp"

namespace qtn::plan {

struct KitchenSize {
  int dishes = 3, activities = 12;
  int cooks = 1, ovens = 1, shelves = 1, rings = 4;
  bool night = false;    // the table is served in the morning, and the night is closed to work
  bool heats = false;    // bakes of several heats
  int slot = 5;          // lengths are multiples of it
};

// The hour of serving is 10,000, or 2,000 for a morning.
inline Problem random_kitchen(unsigned seed, const KitchenSize& size) {
  std::mt19937 random(seed);
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  Problem out;
  out.cooks = size.cooks, out.rings = size.rings;
  out.ovens = {size.ovens, size.shelves, 0, 0};
  const Ticks serving = size.night ? 2000 : 10'000;
  const Point serve = out.points++;
  out.bounds.push_back({serve, serving, serving});
  if (size.night) out.closed = {{480, 990}, {1920, 2430}}, out.midnights = {0, 600, 2040};
  Objective hot{Objective::Kind::sum, {}};
  int left = size.activities;
  for (int d = 0; d < size.dishes; ++d) {
    const int count = d + 1 == size.dishes ? left : std::max(1, size.activities / size.dishes);
    left -= count;
    Moment before{kNothing, 0};
    for (int i = 0; i < count; ++i) {
      const int kind = i + 1 == count && below(3) != 0 ? 3 : below(4);  // most dishes end in the oven
      const Ticks length = (1 + below(kind == 1 ? 24 : 8)) * size.slot;
      const Point begin = out.points++;
      Job job;
      job.begin = {begin, 0}, job.end = {begin, length};
      job.hands = kind == 0, job.ring = kind == 2, job.oven = kind == 3;
      job.awake = kind != 1;
      job.heat = size.heats ? 1600 + 200 * below(3) : -1;
      out.jobs.push_back(job);
      if (before.point != kNothing) {
        out.lags.push_back({before.point, begin, before.shift});
        if (below(3) == 0) out.lags.push_back({begin, before.point, -(before.shift + size.slot * (2 + below(12)))});
      }
      before = job.end;
    }
    out.lags.push_back({before.point, serve, before.shift});
    if (d > 0 && below(4) == 0) {  // something of one dish goes into another
      const Job& one = out.jobs[static_cast<std::size_t>(below(static_cast<int>(out.jobs.size()) - count))];
      const Job& other = out.jobs[out.jobs.size() - static_cast<std::size_t>(1 + below(count))];
      out.lags.push_back({one.end.point, other.begin.point, one.end.shift});
    }
    hot.points.push_back(before.point);
  }
  Objective whole{Objective::Kind::earliest, {}};
  for (Point p = 0; p < out.points; ++p) whole.points.push_back(p);
  out.objectives = {hot, whole};
  return out;
}

}  // namespace qtn::plan
