// Winds a clock: from pages to activities and rules. Lengths are exact fractions of a minute until the tick is known.
// Private to this room.
#pragma once
#include "day/clock.hpp"
#include "day/lengths.hpp"
#include "recipe/sentences.hpp"

namespace qtn {

class Winder {
 public:
  explicit Winder(ClockOrder order) : order_(std::move(order)) {}
  Clock run();

 private:
  // What is known of a part once its method was walked through.
  struct PartClock {
    bool made = false;
    Number last = kNothing;          // the last activity of its ordinary steps
    Number last_making = kNothing;   // ... that is no wait
    Number whole = kNothing;         // all of it done
    std::vector<std::pair<Number, Minutes>> waits;  // that end the part: what takes it ends the waiting
  };
  struct Taken {  // a part or another recipe goes in here
    Index making, part;  // of what is taken
    Number by;           // the activity that takes it
  };
  struct Chain {
    Number first = kNothing, last = kNothing;
    bool empty() const { return first == kNothing; }
  };
  struct Path {  // of the steps of one part, what the next ordinary step has to wait for
    std::vector<plan::End> ends;
    plan::End beside{};              // the beginning of the last ordinary step
    std::vector<Chain> aheads;
    std::vector<std::pair<Number, Minutes>> waits;
  };

  // winder_parts.cpp
  void making(Index index);
  void part(Index making, Index part);
  void steps(Index making, Index part, PartClock& clock, Path& way);
  void ordinary(const Chain& chain, Path& way);
  Fraction loose_of(Number last) const;
  bool wanted(const Making& making, Index part) const;

  // winder_steps.cpp
  Chain chain(Index making, Index part, Index step);
  void sentence(Index making, Index part, Index step, const Sentence& sentence, Chain& chain);
  void clause(Index making, Index part, Index step, Index clause, const Sentence& sentence, Chain& chain);
  void repeats(const Doing& model, const Minutes& each, const Clause& clause, Chain& chain);
  void turns(const Doing& model, const Minutes& each, const Clause& clause, const Term& every, Chain& chain);
  Number work(Index making, Index part, Index step, Span words, Chain& chain);
  bool has_work_first(const Recipe& recipe, const Sentence& sentence, const Clause& clause) const;
  bool is_work(const Recipe& recipe, const Sentence& sentence) const;
  void takes(Index making, const Clause& clause, Number by);
  bool was_taken(Index making, const Target& target, const std::vector<Index>& uses) const;

  // winder_rules.cpp
  void taken();
  void dishes();
  void limits(const PartClock& made, Index making, Index part, plan::End use, bool serving);
  void keeps(const std::vector<Keep>& keeps, const PartClock& made, Index making, plan::End use);
  void ready(const std::optional<Quantity>& after, const PartClock& made, Index making, Index part, plan::End use);
  void withins(const PartClock& made, Index making, Index part, plan::End use);
  PartClock* made(Index making, Index part);
  std::vector<Number> heats(Index making) const;

  Number add(const Doing& doing, const Minutes& minutes, Number label, Number follows);
  Number label(Said::What what, Index making, Index part, Index clause, Span span);
  // after - before >= least, in minutes.
  void rule(plan::End before, plan::End after, const Fraction& least, Number label);
  void longest(plan::End before, plan::End after, const Fraction& most, Number label) { rule(after, before, -most, label); }
  const Recipe& recipe(Index making) const { return *clock_.makings[making].recipe; }
  void ticks();  // wind.cpp: from minutes to whole ticks

  ClockOrder order_;
  Clock clock_;
  std::vector<Minutes> minutes_;      // of each activity
  std::vector<Fraction> leasts_;      // of each rule
  std::vector<std::vector<PartClock>> parts_;  // of each making
  std::vector<Taken> taken_;
  int batch_ = 0, batches_ = 1;
};

}  // namespace qtn
