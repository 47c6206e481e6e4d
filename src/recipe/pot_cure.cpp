// Curing salt against its limit: parts per million of nitrite on the green weight of the meat that it goes in with, or,
// where there is a pickle, on meat and pickle together.
#include "formula/cure.hpp"
#include "recipe/pot.hpp"
#include "recipe/strength.hpp"

namespace qtn {
namespace {

struct Told {
  CureKind kind;
  bool sure = true;
};

// Which limit holds, as far as the page tells; else the strictest that may.
Told told_by(const Recipe& recipe, Index part, const std::vector<Index>& meat, bool pickle, const CureSteps& steps) {
  std::string names = std::string(recipe.title) + " . " + std::string(recipe.parts[part].name) + " . ";
  for (Index i : meat) names += std::string(recipe.slice(recipe.lines[i].span)) + " . ";
  const FoldedCureWords& words = folded_cure_words();
  if (steps.minced || has_one_of(names, words.minced)) return {CureKind::minced};
  if (has_one_of(names, words.bacon)) return {pickle ? CureKind::bacon_steeped : CureKind::bacon_dry};
  if (pickle) return {CureKind::steeped};
  if (steps.dry || has_one_of(names, words.dry)) return {CureKind::dry};
  return {CureKind::minced, false};
}

// The place of the cure: its own line, else the line that takes the part that has it.
Span cure_span(const Recipe& recipe, const Held& held) {
  const auto place = [](const TakeLine& line) { return line.amount_span.empty() ? line.name_span : line.amount_span; };
  const auto says = [&](const TakeLine& line) {
    for (Index t = line.tails.first; t < line.tails.end(); ++t)
      if (recipe.tails[t].kind == TailKind::strength && is_nitrite(recipe.tails[t].name)) return true;
    return false;
  };
  Index part = held.what.kind == TargetKind::part ? held.what.index : kNone;
  if (held.what.kind == TargetKind::line) {
    const TakeLine& line = recipe.lines[held.what.index];
    if (says(line) || line.target.kind != TargetKind::part) return place(line);
    part = line.target.index;
  }
  for (const TakeLine& line : recipe.lines)
    if (line.part == part && says(line)) return place(line);
  return held.what.kind == TargetKind::line ? place(recipe.lines[held.what.index]) : held.what.kind == TargetKind::use ? recipe.uses[held.what.index].span : Span{};
}

struct CureSum {
  Ends cure, meat, liquid, all;       // grams; cure: of nitrite
  const Held* first = nullptr;        // the cure itself
  std::vector<Index> meat_lines;
  bool cure_lost = false, meat_lost = false, known = true;
  bool fresh = false;                 // a cure that has not been with meat before, where it was looked at
};

CureSum add_up(const Recipe& recipe, const std::vector<Held>& things) {
  CureSum sum;
  for (const Held& held : things) {
    const Ends& grams = held.load.grams;
    const bool lost = is_lost(grams);
    sum.known = sum.known && held.makeup.known;
    for (const Strength& one : held.makeup.strengths) {
      if (!is_nitrite(one.name)) continue;
      if (sum.first == nullptr || (!sum.fresh && held.makeup.meat.is_zero())) sum.first = &held;
      sum.fresh = sum.fresh || held.makeup.meat.is_zero();
      sum.cure_lost = sum.cure_lost || lost;
      if (!lost) sum.cure = sum.cure + grams * Ends{one.share.low, one.share.low};
    }
    if (held.makeup.meat.sign() > 0) {
      if (held.what.kind == TargetKind::line) sum.meat_lines.push_back(held.what.index);
      sum.meat_lost = sum.meat_lost || lost;
      if (!lost) sum.meat = sum.meat + grams * Ends{held.makeup.meat, held.makeup.meat};
    }
    if (lost) continue;
    sum.liquid = sum.liquid + grams * Ends{held.makeup.liquid, held.makeup.liquid};
    sum.all = sum.all + grams;
  }
  for (Index i = 0; i < recipe.lines.size(); ++i)  // meat that came by way of a part
    if (sum.meat.low.sign() > 0 && sum.meat_lines.empty() && is_raw_meat(recipe.lines[i])) sum.meat_lines.push_back(i);
  return sum;
}

Fraction ppm(const CureSum& sum, bool pickle) {
  const Ends& base = pickle ? sum.all : sum.meat;
  const Fraction million(1'000'000), low = sum.cure.low * million / base.low, high = sum.cure.high * million / base.high;
  return high > low ? high : low;
}

}  // namespace

const CureSteps& Pots::cure_steps() {
  if (steps_) return *steps_;
  steps_ = CureSteps{};
  const FoldedCureWords& words = folded_cure_words();
  for (const Step& step : recipe_.steps) {
    if (step.kind == StepKindOf::note) continue;
    const std::string_view text = recipe_.slice(step.span);
    steps_->minced = steps_->minced || has_one_of(text, words.minced_step);
    steps_->dry = steps_->dry || has_one_of(text, words.dry_step);
  }
  return *steps_;
}

void Pot::check_cure() {
  if (!pots_.cured() || pot_.mixed() || pot_.cures_put() == cured_) return;
  if ((work_ += pot_.things().size() + recipe_.lines.size()) > kMostWork) return;
  cured_ = pot_.cures_put();
  const CureSum sum = add_up(recipe_, pot_.things());
  if (!sum.fresh || !sum.known) return;
  const Span at = cure_span(recipe_, *sum.first);
  if (sum.meat_lines.empty() && sum.meat.low.is_zero()) {
    // A cure or a pickle by itself has salt in it, but nothing that weighs fifty times the cure.
    if (sum.cure_lost || sum.all.low - sum.liquid.low < sum.first->load.grams.high * Fraction(50) || !pots_.first_of(at)) return;
    report_.add(Code::cure_not_weighed, at, "Nothing here is known as raw meat by its name, so the nitrite of this curing salt is not checked.")
        .expect("a name that says the meat: `1 kg venison haunch`")
        .find("`" + std::string(recipe_.slice(at)) + "`");
    return;
  }
  if (sum.cure_lost || sum.meat_lost || sum.meat.low.is_zero()) {
    if (!pots_.first_of(at)) return;
    report_.add(Code::cure_not_weighed, at, sum.cure_lost ? "This curing salt has no weight here, so its nitrite is not checked." : "The meat for this curing salt has no weight here, so its nitrite is not checked.")
        .expect("both by weight: `1 kg pork shoulder`, `2.5 g curing salt, 6.25 % nitrite`")
        .find("`" + std::string(recipe_.slice(at)) + "`");
    return;
  }
  const bool pickle = sum.liquid.low * Fraction(10) >= sum.meat.low;  // less than a tenth is a moistened cure
  const Told told = told_by(recipe_, part_, sum.meat_lines, pickle, pots_.cure_steps());
  const CureLimit& limit = cure_limit(told.kind);
  const Fraction found = ppm(sum, pickle);
  if (!passes(limit, found) || !pots_.first_of(at)) return;
  const std::string base = pickle ? "meat and pickle together (" + say_amount(sum.all, Dimension::mass) + ")" : "the green meat (" + say_amount(sum.meat, Dimension::mass) + ")";
  const std::string which = told.sure ? "the limit for " + std::string(limit.what) : "the strictest limit that may hold, that for " + std::string(limit.what);
  auto& problem = report_.add(Code::cure_over_limit, at, "This comes to " + found.decimal(0) + " ppm of nitrite on " + base + ", over " + limit.ppm.exact() + " ppm, " + which + ".");
  problem.find(found.decimal(0) + " ppm, `" + std::string(recipe_.slice(at)) + "`");
  // What would do, rounded down: in grams where this line is the cure, else as a share of what is there.
  const bool listed = sum.first->what.kind == TargetKind::line && recipe_.lines[sum.first->what.index].target.kind == TargetKind::none;
  const Fraction allowed = limit.ppm / found * (listed ? sum.first->load.grams.low * Fraction(10) : Fraction(100));
  std::string expected = "at most " + limit.ppm.exact() + " ppm, which is " + (listed ? Fraction::of(allowed.floor(), 10).decimal(1) + " g of it" : Fraction::of(allowed.floor(), 1).decimal(0) + " % of this amount");
  const TakeLine* const line = listed ? &recipe_.lines[sum.first->what.index] : nullptr;
  const bool in_grams = line != nullptr && line->basis == Basis::amount && line->written.unit == common().gram && !line->pack && allowed.floor() > 0;
  if (in_grams) {
    const std::string grams = Fraction::of(allowed.floor(), 10).decimal(1) + " g";
    problem.offer(line->amount_span, grams, "weigh " + grams);
  }
  if (!told.sure) expected += "; or say what it is: sausage, bacon, a dry-cured ham, meat in a pickle";
  problem.expect(expected);
  problem.because("Nitrite is poisonous in excess: weigh it to 0.1 g and never guess. The limit is the American one (" + std::string(limit.source) + "); follow your local code.");
}

}  // namespace qtn
