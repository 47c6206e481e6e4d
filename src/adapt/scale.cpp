// Scaling by a factor, exactly (semantics part 6).
#include "adapt/adapt.hpp"

namespace qtn {
namespace {

void times(Quantity& amount, const Fraction& k) {
  amount.low *= k;
  amount.high *= k;
}

// Up to twice in proportion, beyond that half as fast: ten times the batch takes six times as much (S3-31).
Fraction gentle(const Fraction& k) { return k <= Fraction(2) ? k : Fraction(2) + (k - Fraction(2)) / Fraction(2); }

class Scaler {
 public:
  Scaler(Recipe& recipe, const Fraction& k) : recipe_(recipe), k_(k), gentle_(gentle(recipe.factor * k) / gentle(recipe.factor)) {}

  void run() {
    for (TakeLine& line : recipe_.lines) this->line(line);
    for (Clause& clause : recipe_.clauses) this->clause(clause);
    makes(recipe_.makes);
    for (Part& part : recipe_.parts) {
      makes(part.makes);
      part.weight_low *= k_, part.weight_high *= k_;
    }
    if (recipe_.serves) times(*recipe_.serves, k_);
    recipe_.factor *= k_;
  }

 private:
  Fraction factor_for(const TakeLine& line) const {
    if (line.fixed) return Fraction(1);
    const bool seasoning = recipe_.kitchen && recipe_.kitchen->gentle_seasoning && line.food != nullptr && line.food->seasoning;
    return line.gently || seasoning ? gentle_ : k_;
  }

  void line(TakeLine& line) {
    const Fraction k = factor_for(line);
    for (Index t = line.tails.first; t < line.tails.end(); ++t) {
      Tail& tail = recipe_.tails[t];
      if (!tail.amount) continue;
      if (tail.kind == TailKind::from || tail.kind == TailKind::taking_up) times(*tail.amount, k);
      if (tail.kind == TailKind::start_with) times(*tail.amount, gentle_);
    }
    if (!line.measured()) return;
    times(line.amount, k);
    if (line.basis == Basis::amount) times(line.written, k);
    for (Index s = line.stated.first; s < line.stated.end(); ++s)
      if (!recipe_.stated[s].each && !line.each_of_several) times(recipe_.stated[s].amount, k);
  }

  // What a step takes of a line scales with that line.
  Fraction factor_for(const Clause& clause) const {
    if (clause.mentions.count == 0) return k_;
    const Target& target = recipe_.mentions[clause.mentions.first].target;
    return target.kind == TargetKind::line || target.kind == TargetKind::aside ? factor_for(recipe_.lines[target.index]) : k_;
  }

  void clause(Clause& clause) {
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
      Term& term = recipe_.terms[t];
      const Dimension dimension = term.amount.dimension();
      switch (term.role) {
        case TermRole::use: times(term.amount, factor_for(clause)); break;
        case TermRole::checkpoint:
        case TermRole::pieces: times(term.amount, k_); break;
        case TermRole::to:
          if (dimension == Dimension::mass || dimension == Dimension::volume) times(term.amount, k_);
          break;
        default: break;
      }
    }
  }

  void makes(std::vector<Made>& all) {
    for (Made& made : all) times(made.amount, k_);
  }

  Recipe& recipe_;
  Fraction k_, gentle_;
};

}  // namespace

Recipe scale(const Recipe& recipe, const Fraction& k) {
  Recipe scaled = recipe;
  Scaler(scaled, k).run();
  return scaled;
}

}  // namespace qtn
