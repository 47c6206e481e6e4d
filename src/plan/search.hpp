// The best plan, found by choosing who goes first and learning from what cannot be.
//
// The facts that hold give a latest plan. Where jobs clash in it, one must go first: that is a clause over orders, and a
// choice of one of them. No clash: a plan. How good a plan has to be is a fact like any other, supposed before all choices,
// so what is learned while one aim is tried holds for all others.
#pragma once
#include <array>
#include <map>
#include <optional>
#include <set>

#include "plan/rivals.hpp"
#include "plan/rules.hpp"

namespace qtn::plan {

Ticks value(const Objective& objective, const std::vector<Ticks>& times);

// The latest plan that keeps only as many of the orders of a plan as it takes that nobody is busy twice.
struct Settled {
  std::vector<Ticks> times;
  std::vector<Order> orders;
  std::vector<Why> why;
};
Settled settle(const Problem& problem, const Rivals& rivals, const std::vector<Ticks>& plan);

class Search {
 public:
  Search(const Problem& problem, const Rivals& rivals) : problem_(problem), rivals_(rivals) {}

  // False when no plan exists even if nobody is ever busy twice.
  bool open();
  // The latest such plan.
  const std::vector<Ticks>& relaxed() const { return relaxed_; }
  // Makes objective `goal` as good as can be and the earlier ones no worse than in the best plan so far; with as many
  // objectives as there are, only looks for a plan. What no such plan can exceed.
  Ticks climb(Number goal, std::uint64_t& nodes, std::uint64_t most);
  const std::optional<std::vector<Ticks>>& best() const { return best_; }

 private:
  enum class Outcome : std::uint8_t { found, refuted, impossible, ended };

  // A plan for which `aim` holds.
  Outcome run(const std::optional<Fact>& aim, std::uint64_t& nodes, std::uint64_t most);
  // A choice to be made; nullopt: none is left. `possible` false: the clash is to be learned from.
  std::optional<Fact> choose(bool& possible);
  std::pair<bool, Ticks> cost_of(const Order& order) const;
  bool sum() const;
  bool know(const Rivalry& rivalry, std::vector<Fact>& facts);
  Fact pair(const Lag& one, const Lag& other);
  void keep();
  Ticks highest() const;

  const Problem& problem_;
  const Rivals& rivals_;
  std::vector<Ticks> relaxed_;
  Facts facts_;
  std::optional<Rules> rules_;
  std::map<std::array<Ticks, 3>, Fact> orders_;
  std::set<std::vector<std::pair<Side, Ticks>>> clauses_;
  std::vector<Rivalry> rivalries_;
  std::vector<Ticks> late_;
  std::optional<std::vector<Ticks>> best_;
  Number goal_ = 0;
  bool by_weight_ = true;
};

}  // namespace qtn::plan
