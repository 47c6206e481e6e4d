#include "adapt/friendly.hpp"

#include <algorithm>

#include "adapt/pace.hpp"

namespace qtn {
namespace {

struct Grown {
  const Rounded* rounded;
  bool gentle;
};

Rounded again(const Grown& one, const Fraction& factor, const Fraction& asked) {
  const Fraction by = one.gentle ? gentle(factor) / gentle(asked) : factor / asked;
  return round_again(*one.rounded, one.rounded->exact * by);
}

bool is_round(const Rounded& r) { return !r.rough && r.rung != kTwoFigures && r.shown == r.exact; }

std::vector<Grown> grown_lines(const Recipe& recipe, const Roundings& roundings) {
  std::vector<Grown> out;
  for (std::size_t i = 0; i < roundings.size() && i < recipe.lines.size(); ++i) {
    const TakeLine& line = recipe.lines[i];
    if (!roundings[i] || roundings[i]->exact.sign() <= 0 || line.alternative || line.struck) continue;
    const Pace pace = pace_of(recipe, line);
    if (pace != Pace::still) out.push_back({&*roundings[i], pace == Pace::gentle});
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
  const std::vector<Grown> lines = grown_lines(recipe, roundings);
  const auto all_round = [&](const Fraction& factor) {
    return std::all_of(lines.begin(), lines.end(), [&](const Grown& one) { return is_round(again(one, factor, asked)); });
  };
  if (lines.empty() || all_round(asked)) return std::nullopt;
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
