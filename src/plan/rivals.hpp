// Who wants the same hands, ring or oven at the same time, and what can be done about it.
#pragma once
#include "plan/windows.hpp"

namespace qtn::plan {

// Jobs that cannot all be as they are: one of the choices holds in every plan.
struct Rivalry {
  std::vector<Order> choices;
  Ticks when = 0;  // the later ones are settled first
};

class Rivals {
 public:
  explicit Rivals(const Problem& problem);

  // The rivalries at these times, the latest first and no more than `most`; none: nobody is busy twice.
  void find(const std::vector<Ticks>& times, std::size_t most, std::vector<Rivalry>& out) const;
  // The lag that an order stands for.
  Lag lag(const Order& order) const;
  // Does the order hold at these times?
  bool holds(const Order& order, const std::vector<Ticks>& times) const;
  // Pairs of lags of which one must hold in any plan.
  std::vector<std::pair<Lag, Lag>> pairs() const;
  // Of each job its oven at these times (kNothing: it takes none); empty where there are not enough.
  std::vector<Number> assign(const std::vector<Ticks>& times) const;

  bool one_run(Number a, Number b) const {
    return a == b || (problem_.jobs[a].run != kNothing && problem_.jobs[a].run == problem_.jobs[b].run);
  }
  bool alike(Number a, Number b) const;
  // Must a bake that shares the oven of a heating be in before that, or wait for it? With one shelf they never share one.
  bool waits(Number bake, Number heating) const;
  bool one_oven(Number a, Number b) const {
    return problem_.ovens.count() == 1 || (problem_.jobs[a].one_oven != kNothing && problem_.jobs[a].one_oven == problem_.jobs[b].one_oven);
  }

 private:
  struct Span {
    Number job;
    Ticks begin, end;
    Ticks taken_over;  // when the bake ends whose heat it takes over; -kNever: there is none
  };
  std::vector<Span> spans(const std::vector<Number>& jobs, const std::vector<Ticks>& times) const;
  void crowds(const std::vector<Span>& spans, int capacity, Order::For what, std::size_t most, std::vector<Rivalry>& out) const;
  // Would it go into an oven that is still heating?
  bool cold(const Span& heating, const Span& bake) const {
    return heating.begin < bake.begin && bake.begin < heating.end && waits(bake.job, heating.job);
  }
  void unlike(const std::vector<Span>& spans, std::size_t most, std::vector<Rivalry>& out) const;
  class Fit;
  void unassigned(const std::vector<Ticks>& times, std::vector<Rivalry>& out) const;
  Ticks gap(Order::For what, Number first, Number second) const;
  bool first_goes(Order::For what, const Span& first, const Span& second) const;
  bool clash(Order::For what, const Span& a, const Span& b) const { return !one_run(a.job, b.job) && !first_goes(what, a, b) && !first_goes(what, b, a); }
  void one_way(Order::For what, Number first, Number second, std::vector<Order>& out) const;
  void both_ways(Order::For what, Number a, Number b, std::vector<Order>& out) const;
  void warm_ways(Number bake, Number heating, std::vector<Order>& out) const;

  const Problem& problem_;
  std::vector<Number> hands_, rings_, bakes_;
  bool single_;  // no oven has more than one shelf
};

}  // namespace qtn::plan
