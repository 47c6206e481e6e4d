// How long it takes, and by when to begin.
#include "card/maker.hpp"
#include "day/check.hpp"
#include "day/say.hpp"

namespace qtn {

void Maker::time_fact() {
  if (recipe_.kind == FileKind::menu) return;  // its run sheet says so
  const Minute work = order_of(recipe_.kitchen.get()).work;
  spans_ = spans_of(wind({makings_of(recipe_, &adapted_), 1, adapted_.way}), work);
  if (!spans_.known || spans_.whole == 0) return;
  out_.begin();
  const auto length = [&](Minute minutes) { out_.add((spans_.guessed ? "≈ " : "") + say_length(minutes, 1), Role::time); };
  length(spans_.hands_on);
  out_.put(words_[Caption::hands_on_and]);
  if (spans_.waiting > 0) {
    out_.put(", ");
    length(spans_.waiting);
    out_.put(words_[Caption::waiting_and]);
  }
  out_.put("; ");
  out_.put(words_[Caption::begin_so_long]);
  length(spans_.whole);
  out_.put(words_[Caption::before_serving]);
  fact(FactKind::time, Caption::takes_time, out_.end());
}

// Of one part among several: when it has to be begun at the latest. How long it keeps stands beside it.
void Maker::part_time_fact(Index part) {
  if (!spans_.known || recipe_.parts.size() < 2 || part >= spans_.parts.size() || spans_.parts[part] <= 0) return;
  out_.begin();
  out_.add((spans_.guessed ? "≈ " : "") + say_length(spans_.parts[part], 1), Role::time);
  out_.put(words_[Caption::before_serving]);
  fact(FactKind::begin, Caption::begin, out_.end());
}

}  // namespace qtn
