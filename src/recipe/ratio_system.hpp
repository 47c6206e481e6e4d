// Percentages, rates and parts as a small exact linear system (semantics part 4). Works out; says nothing: what went
// wrong is a list of facts, which ratio_words.cpp puts into sentences. Private to this room.
#pragma once
#include <deque>
#include <memory>
#include <utility>
#include <vector>

#include "recipe/linear.hpp"
#include "recipe/makes.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

inline bool is_ratio(const TakeLine& line) {
  return line.basis == Basis::percent || line.basis == Basis::rate || line.basis == Basis::parts;
}

// Why `makes:` could not fix the size of a part.
enum class MakesFails : std::uint8_t { unasked, unwritten, damaged, a_count, a_range, taken_out, by_product, unweighed };

struct RatioTrouble {
  enum Kind : std::uint8_t {
    open,
    clash,
    base_range,
    base_unweighed,
    makes_unweighed,
    of_itself,
    only_zero,
    below_zero,
    too_long
  };
  Kind kind;
  Index part = kNone;
  Index line = kNone;        // where it is said
  Index other = kNone;       // the line that has no weight, or a range; the stated amount's first line
  std::vector<Index> lines;  // those that hang together with it
  Fraction found, wanted;    // of a clash over a stated amount, in the base unit of `dimension`
  Dimension dimension = Dimension::mass;
  MakesFails makes = MakesFails::unasked;  // of `open`
  Fraction adds_up = Fraction::lost();     // of `only_zero`: what the shares of the base come to, where that is not 1
};

// A sum of unknowns and known amounts, and what stands in the way of it.
struct RatioSum {
  std::vector<Linear::Factor> factors;
  Fraction constant;
  Index unweighed = kNone;  // a line that nobody can weigh
  Index ranged = kNone;     // a line that is a range
  bool spoiled = false;     // a member that is damaged and was already reported
  bool holds() const { return unweighed == kNone && !spoiled; }
};

// How the lines of a part end up in its product, where that is a plain sum; see pot_shares.cpp.
struct PotShares {
  bool plain = true;  // false: something leaves the pot, or its weight is said on the way
  bool by_product = false;
  std::vector<std::pair<Index, Fraction>> lines;  // grams that come out of one gram put in
  std::vector<std::pair<Index, Fraction>> parts;  // taken whole or in shares, without a line of their own
};
PotShares pot_shares(const Recipe& recipe, Index part);

class RatioSystem {
 public:
  // All parts, or `only` one for the proportions in it. `within` are the parts that are being worked out already.
  explicit RatioSystem(const Recipe& recipe) : RatioSystem(recipe, kNone, {}) {}
  void solve();

  bool has(Index line) const { return var_[line] != Linear::kNobody; }
  bool is_known(Index line) const {
    return has(line) && !spoiled_[line] && !system_.gave_up() && system_.is_known(var_[line]);
  }
  const Fraction& value(Index line) const { return system_.value(var_[line]); }  // in the base unit of its dimension
  Dimension dimension(Index line) const { return dim_[line]; }
  const std::vector<RatioTrouble>& troubles() const { return troubles_; }

 private:
  RatioSystem(const Recipe& recipe, Index only, std::vector<Index> within);

  struct Whole {  // a sum with an unknown of its own: the product of a part, the base in the head of a list
    RatioSum sum;
    Linear::Unknown var = Linear::kNobody;
    bool open = true;   // still being added up: met again, it is a ring
    bool told = false;  // what is wrong with it was said
  };
  struct Equation {
    Index line, part;  // one of them is kNone
    bool stated;
  };

  // ratio_system.cpp: equations and stages; ratio_outcome.cpp: what came of them
  void find_unknowns();
  void line_equation(Index line);
  void share_equation(Index line, RatioSum base, const Fraction& share);
  void stated_equation(Index line);
  bool add(const RatioSum& sum, Equation equation, Linear::Unknown own);
  void add_waiting_wholes();
  void by_makes(Index part);
  void by_askers(Index part);
  bool any_open(Index part) const;
  const PotShares& shares_of(Index part);
  bool of_itself(Index line) const;
  Fraction shares_of_base(Index part);
  void look_over();
  void look_over(Index part);
  void drop_followers();
  RatioTrouble& trouble(RatioTrouble::Kind kind, Index line);
  Index standing_index(Index line) const;
  bool included(Index part) const { return only_ == kNone || part == only_; }

  // ratio_dimensions.cpp
  void choose_dimensions();
  Dimension parts_dimension(Index part) const;
  bool by_volume_only(Index line, const Slice& members) const;

  // ratio_sums.cpp
  Fraction convert(Index line, Dimension from, Dimension to) const;
  Ends sized(Index line, const Quantity& amount, Dimension dimension) const;
  void add_line(RatioSum& sum, Index line, Dimension dimension, const Fraction& by);
  void add_member(RatioSum& sum, const Target& member, Dimension dimension, const Fraction& by);
  void add_whole(RatioSum& sum, Whole& whole, const Fraction& by);
  Whole& product_of(Index part, Dimension dimension);
  Whole& head_of(Index part, Dimension dimension);
  void add_up_product(RatioSum& sum, Index part, Dimension dimension);
  void add_flour(RatioSum& sum, Index part);
  Fraction flour_share(const Target& taken);
  Fraction flour_share(Index part);

  const Recipe& recipe_;
  Index only_;
  std::vector<Index> within_;
  Linear system_;
  std::vector<Linear::Unknown> var_;        // by line
  std::vector<Dimension> dim_;              // by line
  std::vector<bool> spoiled_;               // by line: damaged, or said to be wrong
  std::vector<Linear::Unknown> size_;       // by part: what one of its parts is
  std::vector<Dimension> parts_dim_;        // by part
  std::vector<MakesFails> makes_;           // by part
  std::vector<std::vector<Index>> askers_;  // by part: lines that take so much of it
  std::deque<Whole> wholes_;
  std::vector<Index> product_at_, head_at_;  // by part and dimension, into wholes_
  std::vector<Index> waiting_;               // wholes whose equation is not added yet
  std::vector<std::unique_ptr<PotShares>> shares_;  // by part, once they were asked for
  std::vector<Fraction> flour_;              // by part, once it was asked for
  std::vector<Equation> equations_;
  std::vector<Index> unproved_;  // lines whose stated amount is a check
  std::vector<RatioTrouble> troubles_;
};

// Flour by its name: plain flour, rice flour, not cornflour.
bool is_flour(const TakeLine& line);
// What share of a solved recipe's part is flour, by weight; lost when it cannot be weighed.
Fraction flour_share_of(const Recipe& recipe, Index part, int depth = 0);

// The amount in parentheses that is not of each: 3 parts (300 ml); nullptr when there is none.
const Stated* size_stated(const Recipe& recipe, const TakeLine& line);

// Sentences for what went wrong.
void say_trouble(const Recipe& recipe, const RatioTrouble& trouble, Report& report);

}  // namespace qtn
