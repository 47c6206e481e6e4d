// Why a fact holds, and what is to be learned from facts that cannot all hold.
#include <algorithm>

#include "plan/facts.hpp"

namespace qtn::plan {
namespace {

constexpr double kFade = 1 / 0.95;  // what had a part in a clash counts less after every further one
constexpr Ticks kUnmarked = std::numeric_limits<Ticks>::min();

}  // namespace

std::int32_t Facts::entry_of(const Fact& fact) const {
  std::int32_t entry = last_[fact.side];
  while (entry >= 0 && trail_[static_cast<std::size_t>(entry)].was >= fact.least) entry = trail_[static_cast<std::size_t>(entry)].before;
  return entry;
}

Ticks Facts::least_at(Side side, std::int32_t before) const {
  Ticks least = least_[side];
  for (std::int32_t entry = last_[side]; entry >= before; entry = trail_[static_cast<std::size_t>(entry)].before) least = trail_[static_cast<std::size_t>(entry)].was;
  return least;
}

std::size_t Facts::level_of(std::int32_t entry) const {
  const auto above = std::upper_bound(levels_.begin(), levels_.end(), entry,
                                      [](std::int32_t at, const Level& level) { return at < static_cast<std::int32_t>(level.trail); });
  return static_cast<std::size_t>(above - levels_.begin());
}

void Facts::reasons(const Entry& entry, std::int32_t at, Ticks needed, std::vector<Fact>& out) const {
  out.clear();
  switch (entry.reason.by) {
    case By::chosen: return;
    case By::lag: {
      const Arc& arc = arcs_[entry.reason.index];
      out.push_back({arc.from, needed - arc.least});
      if (arc.given.side != kAlways) out.push_back(arc.given);
      return;
    }
    case By::room: {
      const Arc& arc = arcs_[entry.reason.index];
      if (arc.from == arc.to) return;
      const Ticks to = least_at(arc.to ^ 1, at);
      out.push_back({arc.to ^ 1, to});
      out.push_back({arc.from, 1 - arc.least - to});
      return;
    }
    case By::clause:
      for (const Fact& fact : clauses_[entry.reason.index].facts)
        if (fact.side != entry.side) out.push_back(no(fact));
      return;
    case By::told:
      out.assign(said_.begin() + entry.reason.index, said_.begin() + entry.reason.index + entry.reason.count);
      return;
  }
}

void Facts::bump(Side side) {
  double& weight = weight_[side / 2];
  weight += bump_;
  if (weight < 1e100) return;
  for (double& each : weight_) each *= 1e-100;
  bump_ *= 1e-100;
}

bool Facts::learn() {
  needed_.resize(std::max(needed_.size(), trail_.size() + 1), kUnmarked);
  std::vector<std::int32_t> below, marked;
  std::size_t top = 0;
  for (const Fact& fact : clash_) {
    const std::int32_t entry = entry_of(fact);
    if (entry >= 0) top = std::max(top, level_of(entry));
  }
  if (top == 0) return false;
  const auto start = static_cast<std::int32_t>(levels_[top - 1].trail), root = static_cast<std::int32_t>(levels_[0].trail);
  std::size_t open = 0;
  const auto mark = [&](const Fact& fact) {
    const std::int32_t entry = entry_of(fact);
    if (entry < root) return;
    Ticks& needed = needed_[static_cast<std::size_t>(entry)];
    if (needed == kUnmarked) {
      marked.push_back(entry);
      bump(fact.side);
      if (entry >= start) ++open;
      else below.push_back(entry);
    }
    needed = std::max(needed, fact.least);
  };
  for (const Fact& fact : clash_) mark(fact);
  std::int32_t at = static_cast<std::int32_t>(top < levels_.size() ? levels_[top].trail : trail_.size());
  for (;;) {
    while (needed_[static_cast<std::size_t>(--at)] == kUnmarked) {}
    if (--open == 0) break;
    reasons(trail_[static_cast<std::size_t>(at)], at, needed_[static_cast<std::size_t>(at)], because_);
    for (const Fact& fact : because_) mark(fact);
  }
  const auto fact_at = [&](std::int32_t entry) { return Fact{trail_[static_cast<std::size_t>(entry)].side, needed_[static_cast<std::size_t>(entry)]}; };
  std::vector<Fact> learned{no(fact_at(at))};
  std::sort(below.begin(), below.end());
  std::size_t level = 0;
  for (const std::int32_t entry : below) {
    // What follows from the others need not be said.
    if (trail_[static_cast<std::size_t>(entry)].reason.by != By::chosen) {
      reasons(trail_[static_cast<std::size_t>(entry)], entry, needed_[static_cast<std::size_t>(entry)], because_);
      const bool follows = std::all_of(because_.begin(), because_.end(), [&](const Fact& fact) {
        const std::int32_t cause = entry_of(fact);
        return cause < root || (needed_[static_cast<std::size_t>(cause)] != kUnmarked && needed_[static_cast<std::size_t>(cause)] >= fact.least);
      });
      if (follows) continue;
    }
    // Of one side the furthest says all; what is known of the first is the furthest of its side.
    const Fact fails = no(fact_at(entry));
    const auto same = std::find_if(learned.begin(), learned.end(), [&](const Fact& other) { return other.side == fails.side; });
    if (same != learned.end()) same->least = std::min(same->least, fails.least);
    else learned.push_back(fails);
  }
  for (std::size_t i = 1; i < learned.size(); ++i) level = std::max(level, level_of(entry_of(no(learned[i]))));
  for (const std::int32_t entry : marked) needed_[static_cast<std::size_t>(entry)] = kUnmarked;
  back(level);
  bump_ *= kFade;
  if (learned_ > most_learned_) forget();
  return either(std::move(learned), true);
}

// The half of what was learned that hangs on the most choices.
void Facts::forget() {
  std::vector<std::uint32_t> spreads;
  for (const Clause& clause : clauses_)
    if (clause.learned && !clause.facts.empty()) spreads.push_back(clause.spread);
  std::nth_element(spreads.begin(), spreads.begin() + static_cast<std::ptrdiff_t>(spreads.size() / 2), spreads.end());
  const std::uint32_t limit = std::max<std::uint32_t>(spreads[spreads.size() / 2], 2);
  std::vector<char> used(clauses_.size(), 0);
  for (const Entry& entry : trail_)
    if (entry.reason.by == By::clause) used[entry.reason.index] = 1;
  for (std::size_t i = 0; i < clauses_.size(); ++i) {
    Clause& clause = clauses_[i];
    if (!clause.learned || clause.facts.empty() || used[i] || clause.spread <= limit) continue;
    clause.facts.clear();
    clause.facts.shrink_to_fit();
    --learned_;
  }
  most_learned_ += most_learned_ / 10;
}

}  // namespace qtn::plan
