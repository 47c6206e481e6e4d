#include "day/problem.hpp"

#include <algorithm>

namespace qtn {
namespace {

constexpr int kMostNights = 1200;  // no plan of a household looks back further than three years

bool needs_somebody(const Doing& doing) {
  if (doing.verb == nullptr || doing.overnight) return false;
  if (doing.what == Doing::What::work) return true;
  return doing.verb->attention != Attention::none || doing.place == Takes::oven || doing.place == Takes::hob;
}

class Poser {
 public:
  Poser(const Clock& clock, const DayOrder& order, Guesses guesses, bool whole_minutes, std::span<const char> kept)
      : clock_(clock), order_(order), guesses_(guesses), kept_(kept) {
    out_.per_minute = whole_minutes ? 1 : clock.per_minute;
    out_.clock_ticks = clock.per_minute;
  }

  Posed run() {
    lengths();
    out_.placed = plan::place(out_.network, kept_);
    problem().points = out_.placed.points;
    lags();
    hours();
    jobs();
    keep_in_oven(clock_, out_);
    house();
    objectives();
    return std::move(out_);
  }

 private:
  plan::Problem& problem() { return out_.problem; }
  // From ticks of the clock to those of the problem; a least distance upwards, so that what is planned holds.
  Ticks up(Ticks ticks) const {
    if (out_.per_minute != 1) return ticks;
    const Ticks over = out_.clock_ticks;
    return ticks >= 0 ? (ticks + over - 1) / over : -(-ticks / over);
  }
  Ticks down(Ticks ticks) const { return -up(-ticks); }
  Ticks at(Minute gone) const { return gone * out_.per_minute; }
  plan::Moment early(const plan::Spot& spot) const { return {spot.point, down(spot.low)}; }
  plan::Moment late(const plan::Spot& spot) const { return {spot.point, up(spot.high)}; }

  void lengths() {
    out_.network = clock_.network;
    for (std::size_t i = 0; i < clock_.doings.size(); ++i) {
      if (!clock_.doings[i].guessed || guesses_ == Guesses::free) continue;
      const Ticks guess = order_.work * clock_.per_minute;
      out_.network.activities[i].length = {guess, guess, false};
      out_.network.activities[i].label = kNothing;
    }
  }

  void lags() {
    for (std::size_t i = 0; i < out_.placed.lags.size(); ++i) {
      plan::Lag lag = out_.placed.lags[i];
      lag.least = up(lag.least);
      problem().lags.push_back(lag);
      out_.lag_rule.push_back(out_.placed.lag_labels[i]);
    }
    // Everything is over when the last dish is served.
    if (clock_.dishes.empty()) return;
    Number last = clock_.dishes.front().serving;
    for (std::size_t d = 0; d < clock_.dishes.size() && d < order_.serve.size(); ++d)
      if (order_.serve[d] > latest_) latest_ = order_.serve[d], last = clock_.dishes[d].serving;
    const plan::Point end = out_.placed.begins[last].point;
    for (const plan::Spot& spot : out_.placed.ends) {
      if (spot.point == end) continue;
      problem().lags.push_back({spot.point, end, up(spot.high)});
      out_.lag_rule.push_back(kNothing);
    }
  }

  void hours() {
    for (std::size_t d = 0; d < clock_.dishes.size() && d < order_.serve.size(); ++d) {
      const plan::Spot spot = out_.placed.begins[clock_.dishes[d].serving];
      const Ticks when = at(order_.hours.gone(order_.serve[d])) - up(spot.high);
      problem().bounds.push_back({spot.point, when, when});
    }
    if (!order_.start) return;
    const Ticks start = at(order_.hours.gone(*order_.start));
    for (plan::Point p = 0; p < out_.placed.points; ++p) problem().bounds.push_back({p, start, plan::kNever});
  }

  void jobs() {
    out_.job_of.assign(clock_.doings.size(), kNothing);
    std::vector<Number> run(clock_.doings.size());
    for (Number i = 0; i < clock_.doings.size(); ++i) {
      const Number before = clock_.network.activities[i].follows;
      run[i] = before == kNothing ? i : run[before];
      job(i, run[i]);
    }
  }

  void job(Number index, Number run) {
    const Doing& doing = clock_.doings[index];
    const bool kitchen = doing.what == Doing::What::clause || doing.what == Doing::What::work;
    if (!kitchen) return;
    plan::Job job;
    job.begin = early(out_.placed.begins[index]);
    job.end = late(out_.placed.ends[index]);
    job.run = run;
    job.hands = doing.verb != nullptr && doing.verb->attention == Attention::throughout && !doing.wait;
    job.awake = needs_somebody(doing) && !order_.nights;
    job.ring = doing.place == Takes::hob;
    job.oven = doing.place == Takes::oven;
    job.heat = doing.heat >= 0 ? doing.heat : kUnwrittenHeat + 1000 * static_cast<int>(index);
    job.heats = doing.verb != nullptr && doing.verb->heats_oven;
    if (doing.overnight) problem().across.push_back({late(out_.placed.begins[index]), early(out_.placed.ends[index])});
    // Somebody puts it there: what waits by itself does not begin by itself, nor move from the worktop into the fridge.
    const Number before = clock_.network.activities[index].follows;
    const bool put = before == kNothing || (clock_.doings[before].wait && clock_.doings[before].place != doing.place);
    if (!job.awake && !order_.nights && put) {
      plan::Job start;
      start.begin = start.end = late(out_.placed.begins[index]);
      start.awake = true;
      out_.activity_of.push_back(index);
      problem().jobs.push_back(start);
    }
    if (!job.hands && !job.awake && !job.ring && !job.oven) return;
    if (doing.turn) {
      const Fraction busy = doing.busy.is_lost() ? Fraction(order_.work) : doing.busy;
      job.end = {job.begin.point, up(out_.placed.begins[index].high) + at(static_cast<Minute>(busy.ceil()))};
    }
    // What stretches because nothing is written is worked at for as long as a guess, and then stands.
    const bool stretches = doing.guessed && guesses_ == Guesses::free && job.end.point != job.begin.point;
    if (stretches) job.end = {job.begin.point, job.begin.shift + at(order_.work)};
    out_.job_of[index] = static_cast<Number>(problem().jobs.size());
    out_.activity_of.push_back(index);
    problem().jobs.push_back(job);
  }

  void house() {
    plan::Problem& all = problem();
    all.cooks = order_.cooks, all.rings = order_.rings;
    all.ovens = {order_.shelves_of_ovens(), 50, at(order_.heats_in)};
    // Nights and midnights, back as far as the longest chain of the table reaches, and a month of room.
    plan::Problem without_nights = all;
    without_nights.across.clear();
    const auto latest = plan::latest(without_nights);
    if (!latest) return;
    Ticks first = plan::kNever, last = -plan::kNever;
    for (const Ticks time : *latest) first = std::min(first, time), last = std::max(last, time);
    const auto reach = [&](Minute wall) { first = std::min(first, at(order_.hours.gone(wall))); };
    if (order_.start) reach(*order_.start);
    for (const Pin& one : order_.pins) reach(one.wall);
    for (const Settled& one : order_.settled) reach(one.wall);
    const Minute from = order_.hours.wall(first / out_.per_minute) - 31 * 1440, to = order_.hours.wall(last / out_.per_minute) + 2 * 1440;
    Minute day = day_begin(std::max(from, to - Minute{kMostNights} * 1440));
    for (; day <= to; day += 1440) {
      const Minute dusk = day + order_.night_from;
      const Minute dawn = day + order_.night_to + (order_.night_to <= order_.night_from ? 1440 : 0);
      all.midnights.push_back(at(order_.hours.gone(day)));
      if (!order_.nights) all.closed.push_back({at(order_.hours.gone(dusk)), at(order_.hours.gone(dawn))});
    }
    // Where no more nights are known nothing is planned: what no day between two nights can hold would flee there.
    if (from < to - Minute{kMostNights} * 1440 || (order_.nights && all.across.empty())) return;
    const Ticks known = at(order_.hours.gone(day_begin(from) + order_.night_from));
    for (plan::Point p = 0; p < out_.placed.points; ++p) all.bounds.push_back({p, known, plan::kNever});
  }

  void objectives() {
    plan::Objective hot{plan::Objective::Kind::sum, {}}, whole{plan::Objective::Kind::earliest, {}};
    for (const Dish& dish : clock_.dishes) {
      if (!dish.hot || dish.last == kNothing) continue;
      // Neither the dish nor anything hot in it is to stand: its end, and the end of each heat on the way.
      hot.points.push_back(out_.placed.ends[dish.last].point);
      for (const Number heat : dish.heats) hot.points.push_back(out_.placed.ends[heat].point);
    }
    for (plan::Point p = 0; p < out_.placed.points; ++p) whole.points.push_back(p);
    if (!hot.points.empty()) problem().objectives.push_back(std::move(hot));
    problem().objectives.push_back(std::move(whole));
  }

  const Clock& clock_;
  const DayOrder& order_;
  Guesses guesses_;
  std::span<const char> kept_;
  Minute latest_ = std::numeric_limits<Minute>::min();
  Posed out_;
};

}  // namespace

Posed pose(const Clock& clock, const DayOrder& order, Guesses guesses, bool whole_minutes, std::span<const char> kept) {
  return Poser(clock, order, guesses, whole_minutes, kept).run();
}

void pin(Posed& posed, const DayOrder& order, const Pinned& one) {
  const plan::Spot& spot = posed.placed.begins[one.activity];
  const Ticks shift = posed.per_minute == 1 ? (spot.high + posed.clock_ticks - 1) / posed.clock_ticks : spot.high;
  const Ticks when = order.hours.gone(one.wall) * posed.per_minute - shift;
  posed.problem.bounds.push_back({spot.point, when, when});
}

}  // namespace qtn
