#include "adapt/ties.hpp"

#include "adapt/text.hpp"

namespace qtn {
namespace {

struct Tied {
  Index line;
  Rounded* rounded;  // null: as written, so it drifts by nothing and cannot be refined
  bool stuck;        // on its last rung
  bool refined = false;
  Fraction drift = Fraction(1);
  void weigh() {
    if (rounded != nullptr) drift = rounded->shown / rounded->exact;
  }
};

void add(const Recipe& recipe, Roundings& roundings, Index line, std::vector<Tied>& tied) {
  for (const Tied& one : tied)
    if (one.line == line) return;
  std::optional<Rounded>& rounded = roundings[line];
  const Quantity& amount = recipe.lines[line].amount;
  if (amount.is_lost() || amount.is_range()) return;
  if (rounded && (rounded->rough || rounded->rung == kTwoFigures || rounded->exact.sign() <= 0)) return;
  tied.push_back({line, rounded ? &*rounded : nullptr, !rounded.has_value()});
  tied.back().weigh();
}

void add_members(const Recipe& recipe, Roundings& roundings, Slice members, std::vector<Tied>& tied) {
  for (Index m = members.first; m < members.end(); ++m) {
    const Target& target = recipe.set_members[m];
    if (target.kind == TargetKind::line) add(recipe, roundings, target.index, tied);
  }
}

// The coarser of the two extremes, while it can be refined; nullptr when neither can.
Tied* coarser(Tied& low, Tied& high) {
  if (low.stuck && high.stuck) return nullptr;
  if (low.stuck) return &high;
  if (high.stuck) return &low;
  return high.rounded->rung <= low.rounded->rung ? &high : &low;
}

}  // namespace

bool is_ratio(const TakeLine& line) {
  return line.basis == Basis::percent || line.basis == Basis::rate || line.basis == Basis::parts;
}

void tie(const Recipe& recipe, const Part& part, Roundings& roundings, std::vector<Shown>& shown) {
  std::vector<Tied> tied;
  for (Index i = part.lines.first; i < part.lines.end(); ++i) {
    if (!is_ratio(recipe.lines[i])) continue;
    add(recipe, roundings, i, tied);
    add_members(recipe, roundings, recipe.lines[i].members, tied);
  }
  if (tied.empty()) return;
  add_members(recipe, roundings, part.head.members, tied);
  const Fraction most = Fraction(1) + recipe.tolerance();
  while (tied.size() > 1) {
    Tied *low = &tied[0], *high = &tied[0];
    for (Tied& one : tied) {
      if (one.drift < low->drift) low = &one;
      if (one.drift > high->drift) high = &one;
    }
    if (high->drift <= most * low->drift) break;
    Tied* const coarse = coarser(*low, *high);
    if (coarse == nullptr) break;
    if (!refine(*coarse->rounded)) {
      coarse->stuck = true;
      continue;
    }
    coarse->refined = true;
    coarse->weigh();
  }
  for (const Tied& one : tied)
    if (one.refined) shown[one.line] = from_rounded(recipe.lines[one.line].amount, *one.rounded, *one.rounded);
}

}  // namespace qtn
