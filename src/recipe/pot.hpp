// One part's pot, walked through in the order of the page. Private to this room.
#pragma once
#include "recipe/makes.hpp"
#include "recipe/pot_ledger.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

class Pots;
struct Mix;

// A recipe needs some hundreds of looks into its pots; a hostile file is not weighed.
inline constexpr std::size_t kMostWork = 1'000'000;

// The term of a clause that is behind `per`; kNone: it has none.
Index per_term(const Recipe& recipe, const Clause& clause);

class Pot {
 public:
  Pot(Pots& pots, Recipe& recipe, Report& report, Index part, int depth);
  Load run();  // the product: what is in the pot at its end, and what was set aside

 private:
  struct Kept {
    Held held;
    Span span;  // of the clause
    bool came_back = false;
  };

  // pot.cpp
  void clause(const Clause& clause);
  void use(const Mention& mention);
  void use_line(const Mention& mention, Index line);
  void use_part(const Mention& mention);
  void put_line(Index line, const Load& load);
  void everything();
  void bring_in_unused();
  bool put_back(const Target& target);
  void keep_back(const Clause& clause);
  void leave(const Clause& clause);
  std::vector<Held> leaving(const Clause& clause, const Mention& mention);
  void drift(const Clause& clause);
  void by_share(const Term& term);
  void holds(const Clause& clause);
  void note_heat(const Clause& clause);
  Load line_load(Index line) const;
  Load other_load(const Target& target) const;
  Ends share_of(const Mention& mention, const Held& held) const;
  Load asked_load(const Mention& mention, Index line) const;
  bool is(const Held& held, const Target& target) const;
  Load product() const;

  // pot_weigh.cpp
  void weigh_for(Index clause);
  void weigh_thing(const Mention& mention, Dimension dimension, Weighed& out) const;
  void weigh_alone(Dimension dimension, Weighed& out) const;

  // pot_strength.cpp
  Makeup makeup_of(const Target& target) const;
  Makeup makeup_of_all() const;
  void blend();
  void check_strength(const Clause& clause);
  void say_strength(const Clause& clause, const Term& term, const Mix& mix, bool short_of);
  // pot_cure.cpp
  void check_cure();

  // pot_words.cpp
  void check_checkpoint(const Term& term, const Ends& said);
  void check_reduced(const Term& term, Dimension dimension, const Ends& said);
  void check_pieces(const Clause& clause);
  void check_kept();
  void check_makes();
  void label_anchors(Diagnostic& problem) const;
  bool stands(const Yield& yield, Ends& there, Ends& should) const;
  Fraction density() const;
  Fraction slack(Manner manner) const;

  const Part& mine() const { return recipe_.parts[part_]; }

  Pots& pots_;
  Recipe& recipe_;
  Report& report_;
  Index part_;
  int depth_;
  PotLedger pot_;
  std::vector<Held> aside_;     // taken out of the pot, for later
  std::vector<Kept> kept_;      // kept back from the list
  std::vector<Ends> taken_;     // by line of the part: the share that left the list
  std::vector<bool> named_;     // by line of the part
  std::vector<Index> skimmed_;  // by-products that were thrown away
  bool heated_ = false, drained_ = false, about_ = false;
  std::size_t work_ = 0;
  std::size_t cured_ = 0;  // meat and cures that had gone in when they were looked at last
};

// What the steps tell of the meat: is it minced, is it rubbed with a dry cure?
struct CureSteps {
  bool minced = false, dry = false;
};

// The pots of all parts that somebody asks about, each worked out once.
class Pots {
 public:
  Pots(Recipe& recipe, Report& report);
  void run();
  // What a part gives to those that take it: what it says it makes, else what was worked out.
  Load product(Index part, int depth);
  // Does anything here say a strength, and is one of them nitrite?
  bool strong() const { return strong_; }
  bool cured() const { return cured_; }
  // Is this the first time that something is said of this cure? One cause, one report.
  bool first_of(Span cure);
  const CureSteps& cure_steps();

 private:
  void look_for_strengths();

  enum class State : std::uint8_t { waiting, busy, done };
  Recipe& recipe_;
  Report& report_;
  std::vector<State> state_;
  std::vector<Load> loads_;
  std::vector<Span> told_;
  std::optional<CureSteps> steps_;
  bool strong_ = false, cured_ = false;
};

// So much of one strength in what is there.
struct Mix {
  Ends share = lost_ends();
  Ends whole;               // what was weighed of it, grams
  Index unweighed = kNone;  // a line that could not be: the share is at most this
  bool named = false;       // something in it says this strength
  bool known = true;        // everything in it is known
};
Mix mix_of(const std::vector<Held>& pot, const std::vector<Held>& aside, std::string_view name);

}  // namespace qtn
