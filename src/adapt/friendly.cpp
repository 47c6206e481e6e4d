#include "adapt/friendly.hpp"

#include <algorithm>

#include "adapt/pace.hpp"

namespace qtn {
namespace {

struct Grown {
  const Rounded* rounded;
  bool gentle;
  bool known = false;                  // is `fine` worked out?
  Fraction fine = Fraction::lost();    // how many of its finest steps it is, at a factor of 1; lost: not told by steps
};

// On most ladders every step is so many of the finest: what is no whole number of those is round on none of them. Cups
// and pints go on in spoons.
Fraction finest_steps(const Rounded& r, const Fraction& factor) {
  if (r.rung == kByTable || r.ladder == Ladder::cups || r.ladder == Ladder::pints) return Fraction::lost();
  const std::vector<Fraction> steps = steps_of(r);
  return steps.empty() ? Fraction::lost() : r.exact / (steps.back() * factor);
}

bool is_round(const Rounded& r) { return !r.rough && r.rung != kTwoFigures && r.shown == r.exact; }

bool is_round(Grown& one, const Fraction& factor, const Fraction& asked) {
  const Fraction to = one.gentle ? gentle(factor) : factor, from = one.gentle ? gentle(asked) : asked;
  if (!one.known) one.fine = finest_steps(*one.rounded, from), one.known = true;
  if (!one.fine.is_lost() && !(one.fine * to).is_whole()) return false;
  return is_round(round_again(*one.rounded, one.rounded->exact * to / from));
}

std::vector<Grown> grown_lines(const Recipe& recipe, const Roundings& roundings) {
  std::vector<Grown> out;
  for (std::size_t i = 0; i < roundings.size() && i < recipe.lines.size(); ++i) {
    const TakeLine& line = recipe.lines[i];
    if (!roundings[i] || roundings[i]->exact.sign() <= 0 || line.alternative || line.struck) continue;
    const Pace pace = pace_of(recipe, line);
    if (pace != Pace::still) out.push_back({.rounded = &*roundings[i], .gentle = pace == Pace::gentle});
  }
  return out;
}

// The factors within reach at which this one line is round, on any of its ladder's steps.
std::vector<Fraction> round_factors(const Rounded& r, const Fraction& asked) {
  std::vector<Fraction> out;
  const Fraction low = r.exact * (Fraction(1) - friendly_reach()), high = r.exact * (Fraction(1) + friendly_reach());
  for (const Fraction& step : steps_of(r)) {
    for (Fraction at = Fraction::of((low / step).ceil(), 1) * step; at <= high; at += step)
      if (at.sign() > 0) out.push_back(asked * at / r.exact);
    // From here on every amount within reach is shown on this step or a coarser one. Cups go on in spoons.
    if (r.rung != kByTable && r.ladder != Ladder::cups && step <= r.tolerance * low) break;
  }
  return out;
}

}  // namespace

std::optional<Fraction> friendly_factor(const Recipe& recipe, const Roundings& roundings) {
  const Fraction asked = recipe.factor;
  std::vector<Grown> lines = grown_lines(recipe, roundings);
  const auto all_round = [&](const Fraction& factor) {
    return std::all_of(lines.begin(), lines.end(), [&](Grown& one) { return is_round(one, factor, asked); });
  };
  if (std::all_of(lines.begin(), lines.end(), [](const Grown& one) { return is_round(*one.rounded); })) return std::nullopt;
  const Rounded* leads = nullptr;  // any line will do; one in cups has many round amounts within reach
  for (const Grown& one : lines)
    if (!one.gentle && (leads == nullptr || leads->ladder == Ladder::cups)) leads = one.rounded;
  const std::vector<Fraction> tries = leads == nullptr ? std::vector<Fraction>() : round_factors(*leads, asked);
  std::optional<Fraction> best;
  for (const Fraction& factor : tries) {
    const Fraction away = (factor - asked).abs();
    const bool nearer = !best || away < (*best - asked).abs() || (away == (*best - asked).abs() && factor < *best);
    if (nearer && all_round(factor)) best = factor;
  }
  return best;
}

}  // namespace qtn
