// Days drawn at random for tests and bench: dishes as chains of steps, all served at one hour. The same number draws the
// same day everywhere.
#pragma once
#include <algorithm>

#include "plan/problem.hpp"

namespace qtn::tests {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) { state_ = next(); }
  std::uint64_t next() {  // SplitMix64 (Steele, Lea and Flood 2014)
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15u);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
  }
  int from(int least, int most) { return least + static_cast<int>(next() % static_cast<std::uint64_t>(most - least + 1)); }
  bool chance(int percent) { return from(1, 100) <= percent; }

 private:
  std::uint64_t state_;
};

// What a day is made of. A tick is five minutes.
struct Mix {
  int activities = 20, dishes = 4;
  int cooks = 1, rings = 4;
  plan::Ovens ovens{};
  std::vector<int> heats{1800};   // tenths of a degree
  bool nights = false;            // closed from 22:00 to 7:00; some waits across midnight
  bool stretches = false;         // some steps are as long as the plan makes them
  bool runs = false;              // some steps come in pairs of one run
  bool pins = false;              // some steps at an hour of their own
  bool all_late = true;           // a third objective: the sum of all beginnings
  int oven_last = 40;             // percent of dishes whose last step is a bake
  bool keeps_oven = false;        // a dish stays in the oven that it heats, or is in, until it heats another
};

// One or two ovens, of one shelf or two each, alike in half of the kitchens where there are two.
inline plan::Ovens ovens_of(Dice& dice) {
  plan::Ovens out;
  out.shelves.assign(static_cast<std::size_t>(dice.from(1, 2)), dice.from(1, 2));
  if (out.count() == 2 && dice.chance(50)) out.shelves.back() = 3 - out.shelves.back();
  out.tolerance = 100;
  out.change = dice.chance(50) ? 2 : 0;
  return out;
}

inline constexpr plan::Ticks kDay = 288, kServed = 222;  // 18:30

// prep (hands), rest, bake (oven), hob (ring, half of them with hands): steps follow each other, often with a longest wait.
inline plan::Problem day(std::uint64_t seed, const Mix& mix) {
  using namespace plan;
  Dice dice(seed);
  Problem out;
  out.cooks = mix.cooks;
  out.rings = mix.rings;
  out.ovens = mix.ovens;
  if (mix.nights)
    for (Ticks night = -3; night <= 0; ++night) {
      out.closed.push_back({night * kDay - 24, night * kDay + 84});
      out.midnights.push_back(night * kDay);
    }
  Objective hold{Objective::Kind::sum, {}}, start{Objective::Kind::earliest, {}}, late{Objective::Kind::sum, {}};
  Number runs = 0;
  int left = mix.activities;
  for (int dish = 0; dish < mix.dishes; ++dish) {
    const int steps = left / (mix.dishes - dish);
    left -= steps;
    std::optional<Moment> before;
    Number bake = kNothing;  // the last of the dish
    for (int step = 0; step < steps; ++step) {
      const bool last = step == steps - 1;
      int kind = dice.from(0, 9);
      if (last && dice.chance(mix.oven_last)) kind = 7;
      Job job;
      Ticks length = dice.from(1, 6);
      if (kind <= 4) job.hands = true;                                     // prep
      else if (kind == 5) length = dice.from(2, 12);                       // rest
      else if (kind <= 7) job.oven = true, length = dice.from(4, 12);      // bake
      else job.ring = true, job.hands = dice.chance(50), length = dice.from(2, 8);
      job.awake = job.hands || job.oven || job.ring;
      job.heat = mix.heats[static_cast<std::size_t>(dice.from(0, static_cast<int>(mix.heats.size()) - 1))];
      if (mix.keeps_oven && job.oven) {
        const auto here = static_cast<Number>(out.jobs.size());
        if (bake == kNothing || dice.chance(25)) {
          job.heats = dice.chance(60);
          job.one_oven = here;
        } else {
          const Job& last_bake = out.jobs[bake];
          job.one_oven = last_bake.one_oven;
          if (dice.chance(60)) job.heat = last_bake.heat;
          if (job.heat == last_bake.heat || dice.chance(50)) job.goes_on = bake;
        }
        bake = here;
      }
      const Point point = out.points++;
      job.begin = {point, 0};
      job.end = {point, length};
      if (mix.stretches && dice.chance(25)) {
        const Point end = out.points++;
        job.end = {end, 0};
        out.lags.push_back({point, end, length});
        out.lags.push_back({end, point, -(length + dice.from(1, 6))});
      }
      if (before) {
        out.lags.push_back({before->point, point, before->shift});
        if (mix.nights && dice.chance(8)) {
          out.across.push_back({*before, job.begin});
        } else if (dice.chance(50)) {
          out.lags.push_back({point, before->point, -(before->shift + dice.from(0, 12) + (mix.nights ? 60 : 0))});
        }
        if (mix.runs && dice.chance(20) && !out.jobs.empty()) {
          if (out.jobs.back().run == kNothing) out.jobs.back().run = runs++;
          job.run = out.jobs.back().run;
        }
      }
      if (mix.pins && dice.chance(3)) out.bounds.push_back({point, -kNever, kServed - dice.from(10, 60)});
      start.points.push_back(point);
      late.points.push_back(point);
      if (last) {
        // Served within so long of being done, and counted from when it is done.
        const Point done = out.points++;
        out.lags.push_back({job.end.point, done, job.end.shift});
        out.lags.push_back({done, job.end.point, -job.end.shift});
        out.bounds.push_back({done, -kNever, kServed});
        if (dice.chance(20)) out.bounds.push_back({done, kServed - 48, kNever});
        hold.points.push_back(done);
      }
      before = job.end;
      out.jobs.push_back(job);
    }
  }
  out.objectives = {hold, start};
  if (mix.all_late) out.objectives.push_back(late);
  return out;
}

}  // namespace qtn::tests
