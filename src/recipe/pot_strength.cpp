// Strengths through the pot (semantics part 9): `5 % acid` mixes with what is there and leaves with what leaves.
#include <algorithm>

#include "recipe/pot.hpp"
#include "recipe/strength.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::size_t kMostStrengths = 12;  // a dish has two or three; a hostile file is not reckoned with

const Strength* find_strength(const Makeup& makeup, std::string_view name) {
  for (const Strength& one : makeup.strengths)
    if (same_strength(one.name, name)) return &one;
  return nullptr;
}

void set_strength(Makeup& makeup, std::string_view name, const Ends& share) {
  for (Strength& one : makeup.strengths)
    if (same_strength(one.name, name)) return void(one.share = share);
  if (makeup.strengths.size() < kMostStrengths) makeup.strengths.push_back({name, share});
  else makeup.known = false;
}

const Fraction& smaller(const Fraction& a, const Fraction& b) { return b < a ? b : a; }
const Fraction& larger(const Fraction& a, const Fraction& b) { return b > a ? b : a; }

// Adds up one strength, or one plain share, over things; by the low and by the high end of every weight, since what is
// lost or reduced together moves together.
struct Sum {
  Ends whole;
  Fraction low_end[2], high_end[2];  // by share.low and share.high
  void add(const Ends& grams, const Ends& share) {
    whole = whole + grams;
    low_end[0] += grams.low * share.low, low_end[1] += grams.low * share.high;
    high_end[0] += grams.high * share.low, high_end[1] += grams.high * share.high;
  }
  Ends share() const {
    return {smaller(low_end[0] / whole.low, high_end[0] / whole.high), larger(low_end[1] / whole.low, high_end[1] / whole.high)};
  }
};

std::string in_unit(const Fraction& share, UnitId unit) {
  const Fraction value = share / size_of(unit, Dialect::unstated);
  return value.decimal(unit == common().percent && value < Fraction(10) ? 2 : 1) + " " + std::string(write_unit(unit, value));
}

}  // namespace

bool same_strength(std::string_view a, std::string_view b) {
  return a == b || fold_name(a) == fold_name(b);
}

bool is_nitrite(std::string_view name) {
  const std::string folded = lower(name);
  return folded.find("nitrite") != std::string::npos;
}

Mix mix_of(const std::vector<Held>& pot, const std::vector<Held>& aside, std::string_view name) {
  Mix mix;
  Sum sum;
  for (const auto* things : {&pot, &aside}) {
    for (const Held& held : *things) {
      const Strength* const strength = find_strength(held.makeup, name);
      mix.named = mix.named || strength != nullptr;
      mix.known = mix.known && held.makeup.known;
      const bool line = held.what.kind == TargetKind::line;
      if (held.makeup.unweighed || is_lost(held.load.grams)) mix.unweighed = line ? held.what.index : 0;
      if (is_lost(held.load.grams)) {
        if (strength != nullptr) mix.known = false;
        continue;
      }
      sum.add(held.load.grams, strength == nullptr ? Ends{} : strength->share);
    }
  }
  mix.whole = sum.whole;
  if (mix.known) mix.share = sum.share();
  return mix;
}

Makeup Pot::makeup_of(const Target& target) const {
  Makeup out;
  if (!pots_.strong()) return out;
  if (target.kind == TargetKind::part) {
    if (target.index == part_) return out;
    pots_.product(target.index, depth_ + 1);
    out = recipe_.parts[target.index].makeup;
    out.known = out.known && !recipe_.parts[target.index].disturbed;
    return out;
  }
  if (target.kind == TargetKind::use) {
    const Use& use = recipe_.uses[target.index];
    if (use.recipe == nullptr || use.recipe->parts.empty()) return out.known = false, out;
    return use.recipe->parts[use.part == kNone ? use.recipe->dish : use.part].makeup;
  }
  if (target.kind != TargetKind::line) return out;
  const TakeLine& line = standing(recipe_, recipe_.lines[target.index]);
  if (line.target.kind == TargetKind::part || line.target.kind == TargetKind::use) out = makeup_of(line.target);
  else if (pots_.cured()) {
    out.meat = Fraction(is_raw_meat(line) ? 1 : 0);
    const bool volume = line.measured() && line.amount.dimension() == Dimension::volume;
    out.liquid = Fraction(volume || (line.food != nullptr && line.food->liquid) ? 1 : 0);
  }
  const TakeLine& says = line.given && line.parent != kNone && line.tails.empty() ? recipe_.lines[line.parent] : line;
  for (Index t = says.tails.first; t < says.tails.end(); ++t) {
    const Tail& tail = recipe_.tails[t];
    if (tail.kind == TailKind::strength && tail.amount) set_strength(out, tail.name, in_base(*tail.amount, recipe_.dialect));
  }
  return out;
}

namespace {

std::vector<std::string_view> names_in(const std::vector<Held>& pot, const std::vector<Held>& aside) {
  std::vector<std::string_view> names;
  for (const auto* things : {&pot, &aside})
    for (const Held& held : *things)
      for (const Strength& one : held.makeup.strengths)
        if (names.size() < kMostStrengths && std::none_of(names.begin(), names.end(), [&](std::string_view name) { return same_strength(name, one.name); })) names.push_back(one.name);
  return names;
}

}  // namespace

// Everything in the pot has the strength of the pot.
void Pot::blend() {
  for (std::string_view name : names_in(pot_.things(), {})) {
    const Mix mix = mix_of(pot_.things(), {}, name);
    pot_.change([&](Held& held) {
      if (is_lost(mix.share)) held.makeup.known = false;
      else set_strength(held.makeup, name, mix.share);
      held.makeup.unweighed = held.makeup.unweighed || mix.unweighed != kNone;
    });
  }
}

// Of the product: what is in the pot and what was set aside.
Makeup Pot::makeup_of_all() const {
  Makeup out;
  if (!pots_.strong()) return out;
  out.known = !pot_.mixed() && work_ <= kMostWork;
  Sum meat, liquid;
  for (const auto* things : {&pot_.things(), &aside_}) {
    for (const Held& held : *things) {
      out.known = out.known && held.makeup.known;
      out.unweighed = out.unweighed || held.makeup.unweighed || is_lost(held.load.grams);
      if (is_lost(held.load.grams)) continue;
      meat.add(held.load.grams, {held.makeup.meat, held.makeup.meat});
      liquid.add(held.load.grams, {held.makeup.liquid, held.makeup.liquid});
    }
  }
  for (std::string_view name : names_in(pot_.things(), aside_)) {
    const Mix mix = mix_of(pot_.things(), aside_, name);
    if (is_lost(mix.share)) out.known = false;
    else out.strengths.push_back({name, mix.share});
  }
  if (meat.whole.low.sign() > 0) out.meat = meat.share().low, out.liquid = liquid.share().low;
  return out;
}

// [at least 3 % acid]: against all that is in the pot. What cannot be weighed only thins, so less than the least is
// certain even then; more than the most is not.
void Pot::check_strength(const Clause& one) {
  if (one.terms.empty()) return;
  const Term& term = recipe_.terms[one.terms.first];
  if (term.amount.is_lost() || term.amount.dimension() != Dimension::ratio) return;
  const Mix mix = mix_of(pot_.things(), {}, one.thing);
  if (pot_.mixed() || !mix.known) return;
  if (!mix.named) {
    report_.add(Code::strength_unsaid, one.span, "Nothing in the pot here says how much " + std::string(one.thing) + " it has.")
        .expect("a strength behind the line that brings it: `250 ml malt vinegar, 5 % acid`")
        .find("`" + std::string(recipe_.slice(one.span)) + "`");
    return;
  }
  if (is_lost(mix.share)) return;
  recipe_.found_strengths.push_back({static_cast<Index>(&one - recipe_.clauses.data()), mix.share, mix.unweighed});
  const Ends wanted = in_base(term.amount, recipe_.dialect);
  const Manner manner = term.amount.manner;
  const bool sure = mix.unweighed == kNone;
  const Fraction room = manner == Manner::at_least || manner == Manner::at_most ? Fraction(0) : slack(manner);
  const Fraction least = wanted.low * (Fraction(1) - room), most = wanted.high * (Fraction(1) + room);
  const bool strict = manner == Manner::at_least || manner == Manner::at_most;
  const Fraction& weakest = sure && strict ? mix.share.low : mix.share.high;
  const Fraction& strongest = strict ? mix.share.high : mix.share.low;
  if (manner != Manner::at_most && weakest < least) return say_strength(one, term, mix, true);
  if (manner != Manner::at_least && sure && strongest > most) say_strength(one, term, mix, false);
}

void Pot::say_strength(const Clause& one, const Term& term, const Mix& mix, bool short_of) {
  const UnitId unit = term.amount.unit;
  const Ends wanted = in_base(term.amount, recipe_.dialect);
  const std::string thing(one.thing), name = " " + thing;
  const Fraction found = short_of ? (mix.unweighed == kNone ? mix.share.low : mix.share.high) : mix.share.high;
  const Fraction& limit = short_of ? wanted.low : wanted.high;
  const bool spread = !(mix.share.low == mix.share.high);
  const std::string end = mix.unweighed != kNone ? "at most " : !spread ? "" : short_of ? "as little as " : "as much as ";
  auto& problem = report_.add(short_of ? Code::strength_short : Code::strength_over, term.span,
                              "The pot here has " + end + in_unit(found, unit) + name + ", " + (short_of ? "less" : "more") + " than the " +
                                  in_unit(limit, unit) + " that it " + (short_of ? "must" : "may") + " have.");
  problem.find(end + in_unit(found, unit) + name + " in all that is in the pot, " + say_amount(mix.whole, Dimension::mass));
  std::string expected = std::string(short_of ? "at least " : "at most ") + in_unit(limit, unit) + name;
  // How much more of the strongest thing in it would do.
  const Held* strongest = nullptr;
  Fraction share;
  for (const Held& held : pot_.things()) {
    const Strength* const strength = find_strength(held.makeup, one.thing);
    if (strength != nullptr && strength->share.low > share && held.what.kind == TargetKind::line) strongest = &held, share = strength->share.low;
  }
  if (short_of && strongest != nullptr && share > limit) {
    const Fraction more = mix.whole.low * (limit - found) / (share - limit);
    expected += ": about " + say_amount(more, Dimension::mass) + " more " + std::string(recipe_.lines[strongest->what.index].name) + ", or a stronger one";
  }
  problem.expect(expected);
}

void Pots::look_for_strengths() {
  for (const TakeLine& line : recipe_.lines)
    for (Index t = line.tails.first; t < line.tails.end(); ++t)
      if (recipe_.tails[t].kind == TailKind::strength) strong_ = true, cured_ = cured_ || is_nitrite(recipe_.tails[t].name);
  for (const Use& use : recipe_.uses) {
    if (use.recipe == nullptr) continue;
    for (const Part& part : use.recipe->parts)
      for (const Strength& one : part.makeup.strengths) strong_ = true, cured_ = cured_ || is_nitrite(one.name);
  }
  for (const Clause& clause : recipe_.clauses) strong_ = strong_ || clause.kind == ClauseKind::strength;
}

bool Pots::first_of(Span cure) {
  for (const Span told : told_)
    if (told.begin == cure.begin) return false;
  told_.push_back(cure);
  return true;
}

}  // namespace qtn
