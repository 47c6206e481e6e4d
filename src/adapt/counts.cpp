// Things that are counted: eggs, cloves, tins, pinches.
#include <algorithm>

#include "adapt/pace.hpp"
#include "adapt/shower.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

Fraction whole_at_least_one(const Fraction& count) {
  return Fraction::of(std::max<Wide>(count.nearest(), 1), 1);
}

}  // namespace

// Half an egg is a matter of the scale; where the page itself halves things nothing is said.
void Shower::splitting(const TakeLine& line, const Fraction& count) {
  const bool page_splits = !(line.amount.low / recipe_.factor).is_whole();
  const bool herb = line.food != nullptr && line.food->seasoning;  // half a bay leaf is no trouble
  if (lacks_ == nullptr || line.amount.unit != kNoUnit || line.target.kind != TargetKind::none || page_splits || herb)
    return;
  const std::string name = count > Fraction(1) ? plural_of(line.name) : singular_of(line.name);
  lacks_->add(Code::whole_thing_splits, line.name_span,
              "At this size that comes to " + write_number(count, true, false) + " " + name +
                  ", and a whole one has to be divided.");
}

// Whole where that is within tolerance, else in halves, with a weight where one is known.
Shown Shower::things(const TakeLine* line, const Quantity& amount) {
  Shown shown = in_own_unit(amount);
  if (amount.is_range()) return shown;
  const Rounded count = round_on(Ladder::things, amount.low, allowed(amount), reader_.dialect);
  last_ = count;
  if (line == nullptr || (count.shown.is_whole() && !count.rough)) return shown;
  const Ends grams = grams_of(recipe_, *line, amount);
  if (!grams.low.is_lost()) {
    const bool ounces = reader_.system == System::imperial || reader_.system == System::american;
    const auto weigh = [&](Ladder ladder) {
      return round_on(ladder, grams.low, allowed(amount), reader_.dialect, finest());
    };
    Rounded weight = weigh(ounces ? Ladder::ounces : Ladder::grams);
    if (weight.rough) weight = weigh(Ladder::grams);  // half a yolk is too little for ounces
    if (weight.rung != kTwoFigures) shown.text += " (" + write(weight) + ")";
  }
  splitting(*line, count.shown);
  return shown;
}

// None of these has a legal size, and the books disagree; said once a line.
void Shower::pinch_scaled(const TakeLine& line, const Quantity& amount) {
  if (lacks_ == nullptr || recipe_.factor == Fraction(1)) return;
  for (const Diagnostic& said : lacks_->list())
    if (said.code == Code::pinch_scaled && said.span == line.name_span) return;
  lacks_->add(Code::pinch_scaled, line.name_span,
              "No two hands measure the same " + std::string(unit(amount.unit).name) + ": put in the " + std::string(line.name) +
                  " bit by bit, by taste.");
}

// A few pinches are pinches; beyond four they are a spoon's business, and no more exact than before.
Shown Shower::pinches(const Quantity& amount) {
  if (amount.high <= Fraction(4)) {
    Quantity whole = amount;
    whole.low = whole_at_least_one(amount.low), whole.high = whole_at_least_one(amount.high);
    Shown shown = in_own_unit(whole);
    shown.exact = amount;
    return shown;
  }
  const Dialect dialect = reader_.dialect == Dialect::unstated ? Dialect::british : reader_.dialect;
  const Way spoons{ladder_for(Dimension::volume, reader_.system, dialect, true), dialect, Fraction(1), false};
  Shown shown = rounded(amount, spoons, in_base(amount, recipe_.dialect));
  last_.reset();
  if (shown.rough) return shown;
  shown.text.insert(0, "≈ ");
  shown.rough = true;
  return shown;
}

// 2 x 400 g tins: packs where a whole number is within tolerance, else the weight.
Shown Shower::packs(const TakeLine& line) {
  const Fraction one = in_base(*line.pack, recipe_.dialect).low;
  const Ends total = in_base(line.amount, recipe_.dialect);
  const auto number = [&](const Fraction& end, Fraction& count) {
    const Fraction exact = end / one;
    count = whole_at_least_one(exact);
    return !exact.is_lost() && ((count - exact) / exact).abs() <= allowed(line.amount);
  };
  Fraction low, high;
  if (!number(total.low, low) || !number(total.high, high))
    return amount(&line, line.amount, line.amount_span, Origin::worked_out);
  std::string text = low == high ? low.exact() : low.exact() + " to " + high.exact();
  text += " x " + write_plain(*line.pack);
  if (!line.pack_noun.empty()) {
    const std::string noun = singular_of(line.pack_noun);
    (text += ' ') += high == Fraction(1) ? noun : plural_of(noun);
  }
  return from_text(std::move(text), line.amount);
}

}  // namespace qtn
