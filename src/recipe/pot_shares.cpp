// How the lines of a part end up in its product, as far as that is a plain sum: what `makes:` may decide (semantics
// part 4). A loss of the whole pot takes its share of all that was in it by then.
#include <algorithm>

#include "larder/food.hpp"
#include "recipe/ratio_system.hpp"

namespace qtn {
namespace {

class Shares {
 public:
  Shares(const Recipe& recipe, Index part) : recipe_(recipe), part_(part) {}

  PotShares run() {
    const Part& part = recipe_.parts[part_];
    for (const Made& made : makes_of(recipe_, part_)) out_.by_product = out_.by_product || made.by_product;
    if (out_.by_product) out_.plain = false;
    for (Index s = part.steps.first; s < part.steps.end() && out_.plain; ++s) {
      if (!counts_in_pot(recipe_, part, s)) continue;
      const Slice clauses = recipe_.steps[s].clauses;
      for (Index c = clauses.first; c < clauses.end(); ++c) clause(recipe_.clauses[c]);
    }
    if (asides_ != 0) out_.plain = false;  // something kept back never goes in
    finish();
    return std::move(out_);
  }

 private:
  struct Put {
    TargetKind kind;
    Index index;
    Fraction taken;  // of the whole line
    Fraction worth;  // Σ share ÷ what the losses had left by then
  };

  void clause(const Clause& one) {
    switch (one.kind) {
      case ClauseKind::take_out:
      case ClauseKind::discard:
      case ClauseKind::strain_out:
      case ClauseKind::drain:
      case ClauseKind::reduce:
      case ClauseKind::checkpoint:
        out_.plain = false;
        return;
      case ClauseKind::drift:
        return drift(one);
      case ClauseKind::keep_back:
        ++asides_;
        return;
      case ClauseKind::use:
        break;
      default:
        return;
    }
    for (Index m = one.mentions.first; m < one.mentions.end(); ++m) use(recipe_.mentions[m]);
  }

  void drift(const Clause& one) {
    if (one.mentions.count != 0 || one.terms.empty()) {
      out_.plain = false;
      return;
    }
    const Quantity& change = recipe_.terms[one.terms.first].amount;
    const Fraction by = in_base(change, recipe_.dialect).low;
    if (change.is_lost() || change.is_range() || change.dimension() != Dimension::ratio) out_.plain = false;
    left_ *= one.gains ? Fraction(1) + by : Fraction(1) - by;
    if (left_.sign() <= 0) out_.plain = false;
  }

  void use(const Mention& mention) {
    const Target& target = mention.target;
    if (target.kind == TargetKind::aside) {
      if (asides_ != 0) --asides_;
      return;
    }
    if (target.kind == TargetKind::everything) {
      const Slice lines = recipe_.parts[part_].lines;
      for (Index i = lines.first; i < lines.end(); ++i) put(TargetKind::line, i, Taking::rest, Fraction(1));
      return;
    }
    if (target.kind == TargetKind::use || (target.kind == TargetKind::part && target.index != part_) ||
        target.kind == TargetKind::line) {
      if (mention.taking != Taking::named) put(target.kind, target.index, mention.taking, mention.share);
    }
  }

  void put(TargetKind kind, Index index, Taking taking, const Fraction& share) {
    auto at =
        std::find_if(puts_.begin(), puts_.end(), [&](const Put& p) { return p.kind == kind && p.index == index; });
    if (at == puts_.end()) at = puts_.insert(puts_.end(), {kind, index, Fraction(), Fraction()});
    Fraction part = Fraction(1) - at->taken;
    if (taking == Taking::share && share < part) part = share;
    if (taking == Taking::amount) uneven_ = true;  // what share that is hangs on the line's own amount
    at->taken += part;
    at->worth += part / left_;
  }

  void finish() {
    const bool drifts = !(left_ == Fraction(1));
    if (drifts && uneven_) out_.plain = false;
    const Slice lines = recipe_.parts[part_].lines;
    for (Index i = lines.first; i < lines.end(); ++i) {
      if (!in_sums(recipe_.lines[i])) continue;
      Fraction worth(1);
      if (drifts)
        for (const Put& put : puts_)
          if (put.kind == TargetKind::line && put.index == i) worth = put.worth * left_ + (Fraction(1) - put.taken);
      out_.lines.push_back({i, worth});
    }
    for (const Put& put : puts_) {
      if (put.kind == TargetKind::use) out_.plain = false;
      if (put.kind == TargetKind::part) out_.parts.push_back({put.index, put.worth * left_});
    }
  }

  const Recipe& recipe_;
  Index part_;
  PotShares out_;
  std::vector<Put> puts_;
  Fraction left_ = Fraction(1);
  int asides_ = 0;
  bool uneven_ = false;
};

}  // namespace

PotShares pot_shares(const Recipe& recipe, Index part) {
  return Shares(recipe, part).run();
}

bool is_flour(const TakeLine& line) {
  static const WordKey kFlour = fold_key("flour");
  const auto last_is_flour = [](std::string_view name) {
    const std::size_t blank = name.rfind(' ');
    return fold_key(blank == std::string_view::npos ? name : name.substr(blank + 1)) == kFlour;
  };
  return last_is_flour(line.name) || (line.food != nullptr && last_is_flour(line.food->name));
}

Fraction flour_share_of(const Recipe& recipe, Index part, int depth) {
  if (depth > 20 || part >= recipe.parts.size()) return Fraction::lost();
  Fraction flour, all;
  const Slice lines = recipe.parts[part].lines;
  for (Index i = lines.first; i < lines.end(); ++i) {
    const TakeLine& line = recipe.lines[i];
    if (!in_sums(line)) continue;
    const bool own = line.target.kind == TargetKind::part && line.target.index == part;
    if (own) continue;
    const TakeLine& meant = standing(recipe, line);
    const Fraction grams = grams_of(recipe, meant, kept_amount(recipe, meant)).low;
    Fraction share(is_flour(meant) ? 1 : 0);
    if (line.target.kind == TargetKind::part) share = flour_share_of(recipe, line.target.index, depth + 1);
    if (line.target.kind == TargetKind::use) {
      const Use& use = recipe.uses[line.target.index];
      share = use.recipe == nullptr
                  ? Fraction::lost()
                  : flour_share_of(*use.recipe, use.part == kNone ? use.recipe->dish : use.part, depth + 1);
    }
    all += grams;
    flour += share.is_zero() ? Fraction() : share * grams;
  }
  return flour / all;
}

}  // namespace qtn
