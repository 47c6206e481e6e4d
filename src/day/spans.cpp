// How long a recipe takes when nothing stands in its way: the longest way through its clock, and the hands in it.
#include <algorithm>

#include "day/day.hpp"

namespace qtn {

Spans spans_of(const Clock& clock, Minute work) {
  Spans spans;
  plan::Network network = clock.network;
  const Ticks guess = work * clock.per_minute;
  for (std::size_t i = 0; i < clock.doings.size(); ++i) {
    const Doing& doing = clock.doings[i];
    plan::Length& length = network.activities[i].length;
    spans.known = spans.known || doing.written;
    spans.guessed = spans.guessed || doing.guessed;
    if (doing.guessed) length = {guess, guess, false}, network.activities[i].label = kNothing;
    if (doing.what != Doing::What::clause && doing.what != Doing::What::work) continue;
    if (doing.verb->attention != Attention::throughout || doing.wait) continue;
    const Ticks most = length.most < plan::kNever ? length.most : length.least;
    spans.hands_on += doing.turn ? (doing.busy.is_lost() ? guess : static_cast<Ticks>((doing.busy * Fraction(clock.per_minute)).ceil())) : most;
  }
  if (!spans.known) return spans;
  const plan::Placed placed = plan::place(network);
  if (!plan::holds(placed)) return Spans{};  // only with the guesses in it: nothing sure can be said
  // Latest moments before the table at 0.
  std::vector<Ticks> latest(placed.points, plan::kNever);
  for (const Dish& dish : clock.dishes) latest[placed.begins[dish.serving].point] = 0;
  for (bool moved = true; moved;) {
    moved = false;
    for (const plan::Lag& lag : placed.lags) {
      if (latest[lag.after] >= plan::kNever || lag.before == lag.after) continue;
      const Ticks then = latest[lag.after] - lag.least;
      if (then < latest[lag.before]) latest[lag.before] = then, moved = true;
    }
  }
  spans.parts.assign(clock.makings.front().recipe->parts.size(), -1);
  for (Number i = 0; i < clock.doings.size(); ++i) {
    const Doing& doing = clock.doings[i];
    if (doing.what != Doing::What::clause && doing.what != Doing::What::work) continue;
    const plan::Spot& spot = placed.begins[i];
    if (latest[spot.point] >= plan::kNever) continue;
    const Minute before = (clock.per_minute - 1 - latest[spot.point] - spot.low) / clock.per_minute;
    spans.whole = std::max(spans.whole, before);
    if (doing.making == 0 && doing.part < spans.parts.size()) spans.parts[doing.part] = std::max(spans.parts[doing.part], before);
  }
  spans.hands_on = (spans.hands_on + clock.per_minute - 1) / clock.per_minute;
  spans.whole = std::max(spans.whole, spans.hands_on);  // a card reckons with one cook
  spans.waiting = std::max<Minute>(0, spans.whole - spans.hands_on);
  return spans;
}

}  // namespace qtn
