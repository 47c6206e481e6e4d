// Curing salt, brine. What may harm is rounded down, and says so.
#include "app/question.hpp"
#include "formula/cure.hpp"
#include "formula/figures.hpp"

namespace qtn {
namespace {

bool is_weight(const Asked& one) { return one.dimension() == Dimension::mass || one.dimension() == Dimension::volume; }

std::string per_cent(const Fraction& share, int places) { return (share * Fraction(100)).decimal(places) + " %"; }

// Meat and water of a question: every weight but the cure or the salt itself.
struct Base {
  Fraction meat, water, dissolved, all;  // dissolved: salt and sugar, which count only in a pickle
};
std::optional<Base> base_of(const Question& question, const Asked* except, std::string& problem) {
  Base base;
  for (const Asked& one : question.amounts) {
    if (&one == except || !is_weight(one)) continue;
    if (one.amount.is_range()) return problem = "`" + one.written + "` is a range; one weight is wanted.", std::nullopt;
    const Ends grams = weigh(question, one, problem);
    if (grams.low.is_lost()) return std::nullopt;
    const bool water = one.behind("water") || one.behind("pickle") || one.behind("brine");
    const bool dry = one.behind("salt") || one.behind("sugar") || one.behind("pepper") || one.behind("spices");
    (water ? base.water : dry ? base.dissolved : base.meat) += grams.low;
  }
  base.all = base.meat + base.water + (base.water.is_zero() ? Fraction(0) : base.dissolved);
  if (base.all.sign() <= 0) return problem = "Say the weight of the meat: \"in 1 kg meat\".", std::nullopt;
  return base;
}

std::string bare_nitrite(const Asked& one) {
  return "`" + one.written + "` nitrite without a unit: 6.25 % is 0.0625 of the weight, and 6.25 read as the share is a hundred times too much. Write it as the packet does, with its sign: `6.25 %`.";
}

const std::vector<std::string>& cautions() {
  static const std::vector<std::string> all = {
      "Caution: nitrite is poisonous in excess. Weigh the cure on a scale that shows 0.1 g, mix it in evenly, keep it apart from table salt, and do not guess: cures are sold at 6.25 % and at 5.88 %.",
      "The limits are those of the United States; follow your local code."};
  return all;
}

std::string limits_said(const Fraction& ppm) {
  std::string out;
  for (const CureLimit& limit : cure_limits()) {
    const std::string side = limit.least ? (passes(limit, ppm) ? "under" : "not under") : (passes(limit, ppm) ? "OVER" : "within");
    out += (out.empty() ? "" : "\n") + std::string("  ") + side + " " + limit.ppm.exact() + " ppm: " + std::string(limit.what) + (limit.least ? ", the least" : "");
  }
  return out;
}

std::string base_said(const Base& base) {
  return base.water.is_zero() ? "on the green (raw) weight of the meat" : "on meat and pickle together, steeped until even";
}

std::string cure_rule(const Base& base, const std::string& form) {
  return form + ", " + base_said(base) + "; " + std::string(cure_limits().front().source);
}

const Asked* strength_of(const Question& question, std::string& problem) {
  const Asked* found = nullptr;
  for (const Asked& one : question.amounts) {
    if (one.bare() && (one.near("nitrite") || one.near("cure"))) return problem = bare_nitrite(one), nullptr;
    if (one.amount.unit == common().percent && (found == nullptr || one.near("nitrite"))) found = &one;
  }
  if (found == nullptr) problem = "How strong the cure is must be said, as the packet says it: \"at 6.25 % nitrite\". Cures of 6.25 % and of 5.88 % are both sold.";
  else if (found->amount.low.sign() <= 0 || found->amount.low > Fraction(100)) problem = "`" + found->written + "` nitrite is not possible: it lies above 0 and at most at 100 %.", found = nullptr;
  return found;
}

}  // namespace

bool asks_cure(const Question& question) { return question.has_any({"nitrite", "cure", "curing"}); }

std::optional<Sum> answer_cure(const Question& question, std::string& problem) {
  const Asked* const strength = strength_of(question, problem);
  if (strength == nullptr) return std::nullopt;
  const Fraction share = strength->amount.low / Fraction(100);
  const Asked* wanted = nullptr;
  const Asked* cure = nullptr;
  for (const Asked& one : question.amounts) {
    if (one.amount.unit == common().ppm) wanted = &one;
    if (one.dimension() == Dimension::mass && cure == nullptr && (one.behind("cure") || one.behind("curing"))) cure = &one;
  }
  if (wanted == nullptr && cure == nullptr) {
    problem = "Say how much cure there is, or how many ppm are wanted: \"2.5 g cure at 6.25 % nitrite in 1 kg meat\", \"156 ppm from cure at 6.25 % nitrite in 17 lb meat\".";
    return std::nullopt;
  }
  const std::optional<Base> base = base_of(question, wanted == nullptr ? cure : nullptr, problem);
  if (!base) return std::nullopt;
  Sum sum;
  if (wanted != nullptr) {
    const Fraction grams = cure_for(wanted->amount.low, share, base->all);
    sum.answer = rounded_down(grams, 2) + " g cure, rounded down";
    sum.exact = grams.exact() + " g";
    sum.rule = cure_rule(*base, "ppm × weight ÷ (share of nitrite × 1 000 000)");
    sum.notes.push_back("At " + wanted->amount.low.decimal(1) + " ppm:\n" + limits_said(wanted->amount.low));
  } else {
    const Ends weight = weigh(question, *cure, problem);
    if (weight.low.is_lost()) return std::nullopt;
    const Fraction ppm = nitrite_ppm(weight.high, share, base->all);
    sum.answer = ppm.decimal(2) + " ppm nitrite";
    sum.exact = ppm.exact() + " ppm";
    sum.rule = cure_rule(*base, "cure × share of nitrite × 1 000 000 ÷ weight");
    sum.notes.push_back("Against the limits, compared in whole ppm as they are printed:\n" + limits_said(ppm));
  }
  if (share < Fraction::of(3, 1000) || share > Fraction::of(1, 10))
    sum.notes.push_back("LOOK AGAIN at the packet: cures are sold at 6.25 % and at 5.88 % nitrite, not at " + per_cent(share, 4) + ".");
  sum.notes.insert(sum.notes.end(), cautions().begin(), cautions().end());
  return sum;
}

bool asks_brine(const Question& question) {
  return question.has("salt") && !question.has_any({"baker's", "bakers", "true"}) && question.amounts.size() >= 2;
}

std::optional<Sum> answer_brine(const Question& question, std::string& problem) {
  const Asked *share = nullptr, *salt = nullptr;
  for (const Asked& one : question.amounts) {
    if (one.amount.unit == common().percent && share == nullptr) share = &one;
    if (one.dimension() == Dimension::mass && one.behind("salt") && salt == nullptr) salt = &one;
    if (one.bare() && one.near("salt")) return problem = "`" + one.written + "` salt without a unit could be grams or per cent: write `" + one.written + " %` or `" + one.written + " g`.", std::nullopt;
  }
  if (share == nullptr && salt == nullptr) {
    problem = "Say how much salt, or what share is wanted: \"2 % salt in 1 kg meat and 500 g water\", \"10 g salt in 500 g meat and 490 g water\".";
    return std::nullopt;
  }
  const std::optional<Base> base = base_of(question, share == nullptr ? salt : nullptr, problem);
  if (!base) return std::nullopt;
  if (share != nullptr && (share->amount.low.sign() <= 0 || share->amount.low >= Fraction(100))) return problem = "`" + share->written + "` salt is not possible.", std::nullopt;
  const KitchenFigure& moist = kitchen_figure("water in meat");
  const Fraction other = base->meat * moist.low + base->water;
  Sum sum;
  if (share != nullptr) {
    const Fraction part = share->amount.low / Fraction(100), grams = salt_for(part, base->all);
    sum.answer = grams.decimal(1) + " g salt";
    sum.exact = grams.exact() + " g";
    if (!base->water.is_zero()) sum.notes.push_back("In the water alone that is " + per_cent(grams / (base->water + grams), 1) + " at the start, until meat and water are even.");
    sum.notes.push_back("The other base that is in print, the meat's own water and the water (" + other.decimal(0) + " g where the meat is " + per_cent(moist.low, 0) + " water, from memory), would want " + salt_for(part, other).decimal(1) + " g.");
  } else {
    const Ends weight = weigh(question, *salt, problem);
    if (weight.low.is_lost()) return std::nullopt;
    const Fraction found = weight.low / base->all;
    sum.answer = per_cent(found, 2) + " salt";
    sum.exact = (found * Fraction(100)).exact() + " %";
    sum.notes.push_back("With the salt itself counted in, " + per_cent(weight.low / (base->all + weight.low), 2) + " of everything.");
    sum.notes.push_back("On the other base that is in print, the meat's own water and the water (" + other.decimal(0) + " g where the meat is " + per_cent(moist.low, 0) + " water, from memory), it is " + per_cent(weight.low / other, 2) + ".");
  }
  sum.rule = "salt as a share of meat and water together, " + base->all.decimal(0) + " g, even throughout; USDA FSIS Directive 7620.3 (1995), p. 22, steeped until even; the salt itself is not in the base";
  sum.notes.push_back("This is a sum for taste. How much salt keeps meat safe, how cold and how long, is another question: follow your local code.");
  return sum;
}

bool asks_salometer(const Question& question) { return question.has_any({"salometer", "salinometer"}); }

std::optional<Sum> answer_salometer(const Question& question, std::string& problem) {
  if (question.amounts.empty()) return problem = "Say how many degrees: \"brine at 40 degrees salometer\".", std::nullopt;
  const Fraction degrees = question.amounts.front().amount.low, share = salometer_share(degrees);
  if (share.is_lost()) return problem = "A salometer goes from 0 to 100 degrees; 100 is saturated.", std::nullopt;
  Sum sum;
  sum.answer = per_cent(share, 2) + " salt by weight";
  sum.exact = (share * Fraction(100)).exact() + " %";
  sum.rule = "0.264 % a degree; " + std::string(kitchen_figure("salometer degree").source);
  sum.notes = {"That is " + salt_in_water(share, Fraction(1000)).decimal(0) + " g salt to 1 kg water."};
  return sum;
}

}  // namespace qtn
