// Exact elimination on small sparse systems of linear equations. Equations come one at a time, so that the one that
// clashes is known, and what it clashes with. Private to this room.
#pragma once
#include <cstdint>
#include <vector>

#include "base/fraction.hpp"

namespace qtn {

class Linear {
 public:
  using Unknown = std::uint32_t;
  static constexpr std::uint32_t kNobody = ~std::uint32_t{0};
  struct Factor {
    Unknown unknown;
    Fraction by;
  };
  enum class Outcome : std::uint8_t {
    added,      // it says something new
    redundant,  // it follows from those before
    clash,      // it cannot hold together with those before; it is not kept
  };

  Unknown unknown();
  // Σ by · unknown = constant. `label` is the caller's name for it. `own` is the unknown that it is best solved for.
  Outcome add(const std::vector<Factor>& factors, const Fraction& constant, std::uint32_t label, Unknown own = kNobody);
  // The labels of the equations that the last clash came from, its own left out, in the order they were added. Those
  // kept so far are independent, so this is the one smallest set that cannot hold together with it.
  std::vector<std::uint32_t> clashing() const;

  // Works out what is known so far.
  void solve();
  bool is_known(Unknown unknown) const { return known_[unknown]; }
  const Fraction& value(Unknown unknown) const { return values_[unknown]; }

  // A number grew too long to be exact, or the equations are too tangled to be worth solving: trust no value.
  bool gave_up() const { return gave_up_; }

 private:
  struct Taken {
    std::uint32_t row;
    Fraction times;
  };
  struct Row {
    Unknown own;                  // with the factor 1, not in `factors`
    std::vector<Factor> factors;  // unknowns that had no row of their own when this one was added
    Fraction constant;
    std::uint32_t label;
    Fraction scale;           // what its equation was divided by
    std::vector<Taken> from;  // rows that were put into it
  };
  void count_in(Unknown unknown, const Fraction& by);
  void put_in_rows(Fraction& constant, std::vector<Taken>& from);

  std::vector<Row> rows_;
  std::vector<std::uint32_t> row_of_;  // by unknown
  std::vector<Fraction> values_;
  std::vector<bool> known_;
  // Of the equation being added.
  std::vector<Fraction> work_;
  std::vector<bool> seen_;
  std::vector<Unknown> touched_;
  std::vector<std::uint32_t> waiting_;  // a heap of rows, oldest first
  std::vector<Taken> clash_from_;
  std::size_t steps_ = 0;
  bool gave_up_ = false;
};

}  // namespace qtn
