// Scaling by a factor, exactly.
#include "adapt/adapt.hpp"
#include "adapt/pace.hpp"

namespace qtn {
namespace {

void times(Quantity& amount, const Fraction& k) {
  amount.low *= k;
  amount.high *= k;
}

class Scaler {
 public:
  // The gentle rule is of the recipe as written: what was scaled before is taken back out, so that scaling back is
  // exact.
  Scaler(Recipe& recipe, const Fraction& k)
      : recipe_(recipe), by_{Fraction(1), k, gentle(recipe.factor * k) / gentle(recipe.factor)} {}

  void run() {
    for (TakeLine& line : recipe_.lines) this->line(line);
    for (const Clause& clause : recipe_.clauses) {
      for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
        times(recipe_.terms[t].amount, by(pace_of(recipe_, clause, t)));
    }
    for (Weighed& weighed : recipe_.weighed) this->weighed(weighed);
    makes(recipe_.makes);
    for (Part& part : recipe_.parts) {
      makes(part.makes);
      part.weight_low *= by(Pace::plain), part.weight_high *= by(Pace::plain);
    }
    if (recipe_.serves) times(*recipe_.serves, by(Pace::plain));
    recipe_.factor *= by(Pace::plain);
  }

 private:
  const Fraction& by(Pace pace) const { return by_[static_cast<std::size_t>(pace)]; }

  void line(TakeLine& line) {
    const Pace pace = pace_of(recipe_, line);
    const Fraction& k = by(pace);
    tails(line, pace);
    if (!line.measured()) return;
    times(line.amount, k);
    if (line.basis == Basis::amount) times(line.written, k);  // 50 %, 3 parts, 18 g per kg say the same at any size
    stated(line, k);
  }

  // `1/2 tsp each thyme and sage` is two lines with one tail and one statement, scaled with the first of them.
  void tails(const TakeLine& line, Pace pace) {
    if (line.tails.empty() || line.tails.first < tails_done_) return;
    tails_done_ = line.tails.end();
    for (Index t = line.tails.first; t < line.tails.end(); ++t) {
      Tail& tail = recipe_.tails[t];
      if (!tail.amount) continue;
      if (tail.kind == TailKind::from || tail.kind == TailKind::taking_up) times(*tail.amount, by(pace));
      if (tail.kind == TailKind::start_with) times(*tail.amount, by(pace == Pace::still ? pace : Pace::gentle));
    }
  }

  void stated(const TakeLine& line, const Fraction& k) {
    if (line.stated.empty() || line.stated.first < stated_done_) return;
    stated_done_ = line.stated.end();
    for (Index s = line.stated.first; s < line.stated.end(); ++s)
      if (!recipe_.stated[s].each) times(recipe_.stated[s].amount, k);
  }

  // More pieces of one weight are no heavier each.
  void weighed(Weighed& weighed) {
    if (weighed.counted) return;
    const bool of_line = weighed.line < recipe_.lines.size();
    const Fraction& k = by(of_line ? pace_of(recipe_, recipe_.lines[weighed.line]) : Pace::plain);
    weighed.one.low *= k, weighed.one.high *= k;
  }

  void makes(std::vector<Made>& all) {
    for (Made& made : all) times(made.amount, by(Pace::plain));
  }

  Recipe& recipe_;
  Fraction by_[3];
  Index tails_done_ = 0, stated_done_ = 0;
};

}  // namespace

Recipe scale(const Recipe& recipe, const Fraction& k) {
  Recipe scaled = recipe;
  Scaler(scaled, k).run();
  return scaled;
}

}  // namespace qtn
