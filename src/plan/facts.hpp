// What is known of every moment and every order, why, and what is learned where it cannot all be.
//
// Lazy clause generation (Ohrimenko, Stuckey and Codish 2009) without a variable for each bound: a fact is `side >= least`,
// where side 2p stands for a moment and 2p + 1 for its negative, so an upper bound is a lower one of the other side and one
// rule serves both. An order is a moment that is 0 or 1. Every fact that follows keeps its reason; where facts clash, the
// reasons are followed back to a clause that holds everywhere (first unique implication point; Marques-Silva and Sakallah
// 1999), and the search goes back to where it would have told.
#pragma once
#include <span>

#include "plan/problem.hpp"

namespace qtn::plan {

using Side = std::uint32_t;

struct Fact {
  Side side = 0;
  Ticks least = 0;
  friend bool operator==(const Fact&, const Fact&) = default;
};
inline Fact no(const Fact& fact) { return {fact.side ^ 1, 1 - fact.least}; }
inline Fact not_before(const Moment& moment, Ticks time) { return {2 * moment.point, time - moment.shift}; }
inline Fact not_after(const Moment& moment, Ticks time) { return {2 * moment.point + 1, moment.shift - time}; }

class Facts {
 public:
  // A further moment within these bounds: its number.
  Point add(Ticks low, Ticks high);
  // Rules that always hold.
  void lag(const Lag& lag);
  // A moment that is 1 where the one lag holds, and 0 where the other does: one of them must.
  Point choice(const Lag& one, const Lag& other);
  // Is there room for either lag? False: for none.
  bool weigh(Point choice);
  // One of these holds. False: it cannot be, and `learn` is next.
  bool either(std::vector<Fact> facts, bool learned = false);

  Ticks least(Side side) const { return least_[side]; }
  Ticks early(const Moment& moment) const { return least_[2 * moment.point] + moment.shift; }
  Ticks late(const Moment& moment) const { return moment.shift - least_[2 * moment.point + 1]; }
  bool holds(const Fact& fact) const { return least_[fact.side] >= fact.least; }
  bool fails(const Fact& fact) const { return holds(no(fact)); }

  // A fact that follows from others that hold. False: it cannot be.
  bool tell(const Fact& fact, std::span<const Fact> because);
  // These hold and cannot all.
  bool clash(std::span<const Fact> facts) { return clash_.assign(facts.begin(), facts.end()), false; }
  // All that follows by lags and clauses. False: it cannot be.
  bool follow();

  std::size_t level() const { return levels_.size(); }
  void suppose(const Fact& fact);   // a level deeper
  void back(std::size_t level);
  // After a clash: goes back and keeps what was learned. False: it cannot be at all.
  bool learn();

  std::size_t told() const { return trail_.size(); }
  // The sides that have risen since this was asked last, one by one.
  bool news(Side& side);
  double weight(Point point) const { return weight_[point]; }

 private:
  enum class By : std::uint8_t { chosen, lag, room, clause, told };
  struct Reason {
    By by = By::chosen;
    std::uint32_t index = 0, count = 0;
  };
  struct Entry {
    Side side;
    Ticks was;
    Reason reason;
    std::int32_t before;  // the entry of this side before it
  };
  struct Arc {
    Side from, to;
    Ticks least;
    Fact given;  // side kAlways: no condition
  };
  struct Step {
    Side to;
    std::uint32_t arc;
    Ticks least;
  };
  struct Watch {
    std::uint32_t clause;
    Ticks least;  // the watched fact fails when the side has come so far
  };
  struct Clause {
    std::vector<Fact> facts;
    std::uint32_t spread = 0;
    bool learned = false;
  };
  struct Level {
    std::size_t trail, said;
  };
  static constexpr Side kAlways = ~Side{0};

  bool set(const Fact& fact, const Reason& reason);
  bool apply(std::uint32_t arc);
  bool circle(Side side);
  bool clauses_of(Side side);
  bool room_of(Side side);
  bool room(std::uint32_t arc);
  void watch(std::uint32_t clause, std::size_t which);
  std::int32_t entry_of(const Fact& fact) const;   // what made it hold; -1: the start
  Ticks least_at(Side side, std::int32_t before) const;
  std::size_t level_of(std::int32_t entry) const;
  void reasons(const Entry& entry, std::int32_t at, Ticks needed, std::vector<Fact>& out) const;
  void bump(Side side);
  void forget();

  std::vector<Ticks> least_;
  std::vector<std::int32_t> last_;   // of each side: its last entry
  std::vector<Entry> trail_;
  std::vector<Level> levels_;
  std::vector<Fact> said_;
  std::vector<Arc> arcs_;
  std::vector<std::vector<Step>> steps_, rooms_;  // of each side: arcs that hold; arcs that may come to hold
  std::vector<std::vector<std::uint32_t>> given_; // of each side: arcs that hold when it is 1 (or 0)
  std::vector<Clause> clauses_;
  std::vector<std::vector<Watch>> watches_;
  std::size_t next_ = 0, roomed_ = 0, asked_ = 0;  // how far along the trail each has come
  std::vector<std::uint16_t> rises_;
  std::vector<Fact> clash_;
  std::vector<double> weight_;
  double bump_ = 1;
  std::size_t learned_ = 0, most_learned_ = 2000;
  // While learning.
  std::vector<Ticks> needed_;
  std::vector<Fact> because_;
};

}  // namespace qtn::plan
