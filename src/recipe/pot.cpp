// Phase 5: the pot of each part (semantics part 9): what goes in, is put aside, leaves, is lost, is weighed on the way,
// and what the part makes of it (H4). A pot that cannot be weighed is never accused.
#include <algorithm>

#include "recipe/makes.hpp"
#include "recipe/phases.hpp"

namespace qtn {
namespace {

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

struct Entry {
  TargetKind kind;
  Index index;
  Ends grams;
};

class Pot {
 public:
  Pot(Recipe& recipe, Report& report, Index part) : recipe_(recipe), report_(report), part_(part) {}

  void run() {
    for (const Clause& clause : recipe_.clauses)
      if (clause.part == part_ && clause.kind != ClauseKind::bad) step(clause);
    for (const Entry& kept : aside_)
      report_.add(Code::kept_not_used, kept_span_, "What is kept back of " + quoted(recipe_.lines[kept.index].name) + " is never brought in.")
          .expect("a later step with `[the kept " + std::string(recipe_.lines[kept.index].name) + "]`");
    // Lines that no step names stand beside the pot and are served with it.
    for (Index i = mine().lines.first; i < mine().lines.end(); ++i) {
      const TakeLine& line = recipe_.lines[i];
      if (!mine().has_method && in_sums(line)) put_in(TargetKind::line, i, grams(line, kept_amount(recipe_, line)));
    }
    const Ends sum = total();
    recipe_.parts[part_].weight_low = sum.low, recipe_.parts[part_].weight_high = sum.high;
    makes(sum);
  }

 private:
  const Part& mine() const { return recipe_.parts[part_]; }
  Ends grams(const TakeLine& line, const Quantity& amount) const { return grams_of(recipe_, line, amount); }

  void put_in(TargetKind kind, Index index, const Ends& grams) { pot_.push_back({kind, index, grams}); }

  Ends total() const {
    Ends sum{Fraction(0), Fraction(0)};
    for (const Entry& entry : pot_) sum.low += entry.grams.low, sum.high += entry.grams.high;
    for (const Entry& entry : out_) sum.low += entry.grams.low, sum.high += entry.grams.high;
    return reduced_.low.is_lost() && !unweighed_ ? sum : unweighed_ ? Ends{Fraction::lost(), Fraction::lost()} : reduced_;
  }

  Ends taken(const Mention& mention) const {
    const TakeLine& line = standing(recipe_, recipe_.lines[mention.target.index]);
    Quantity amount = kept_amount(recipe_, line);
    const Ends whole = grams(line, amount);
    return {whole.low * mention.part_low, whole.high * mention.part_high};
  }

  void use(const Mention& mention) {
    switch (mention.target.kind) {
      case TargetKind::line:
        if (!mention.takes) return put_back(mention);
        return put_in(TargetKind::line, mention.target.index, taken(mention));
      case TargetKind::aside:
        for (auto entry = aside_.begin(); entry != aside_.end(); ++entry)
          if (entry->index == mention.target.index) {
            put_in(TargetKind::line, entry->index, entry->grams);
            aside_.erase(entry);
            return;
          }
        return;
      case TargetKind::part: {
        if (mention.target.index == part_ || !mention.takes) return put_back(mention);
        const Part& other = recipe_.parts[mention.target.index];
        Ends whole{other.weight_low, other.weight_high};
        for (Index i = mine().lines.first; i < mine().lines.end(); ++i)  // 450 g [Shortcrust] says how much
          if (recipe_.lines[i].target.kind == TargetKind::part && recipe_.lines[i].target.index == mention.target.index) whole = grams(recipe_.lines[i], recipe_.lines[i].amount);
        return put_in(TargetKind::part, mention.target.index, {whole.low * mention.part_low, whole.high * mention.part_high});
      }
      case TargetKind::use: {
        if (!mention.takes) return;
        Ends whole{Fraction::lost(), Fraction::lost()};
        for (Index i = mine().lines.first; i < mine().lines.end(); ++i)
          if (recipe_.lines[i].target.kind == TargetKind::use && recipe_.lines[i].target.index == mention.target.index) whole = grams(recipe_.lines[i], recipe_.lines[i].amount);
        return put_in(TargetKind::use, mention.target.index, {whole.low * mention.part_low, whole.high * mention.part_high});
      }
      case TargetKind::everything:
        for (Index i = mine().lines.first; i < mine().lines.end(); ++i) {
          const bool there = std::any_of(pot_.begin(), pot_.end(), [&](const Entry& e) { return e.kind == TargetKind::line && e.index == i; });
          if (in_sums(recipe_.lines[i]) && !there) put_in(TargetKind::line, i, grams(recipe_.lines[i], kept_amount(recipe_, recipe_.lines[i])));
        }
        return;
      default: return;
    }
  }

  bool is(const Entry& entry, const Target& target) const {
    return entry.index == target.index && (entry.kind == target.kind || (entry.kind == TargetKind::line && target.kind == TargetKind::aside));
  }

  // A later mention of what was taken out puts it back.
  void put_back(const Mention& mention) {
    for (auto entry = out_.begin(); entry != out_.end(); ++entry)
      if (is(*entry, mention.target)) {
        pot_.push_back(*entry);
        out_.erase(entry);
        return;
      }
  }

  // All of X that is in the pot, or the share or amount said.
  void leave(const Clause& clause, bool keep) {
    if (!reduced_.low.is_lost()) unweighed_ = true;
    if (clause.the_rest) return pot_.clear();
    if (clause.kind == ClauseKind::drain && clause.mentions.count == 0) {
      std::erase_if(pot_, [&](const Entry& e) {
        if (e.kind != TargetKind::line) return false;
        const TakeLine& line = recipe_.lines[e.index];
        return line.amount.dimension() == Dimension::volume || (line.food != nullptr && line.food->liquid);
      });
      return;
    }
    for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
      const Mention& mention = recipe_.mentions[m];
      for (std::size_t i = 0; i < pot_.size();) {
        if (!is(pot_[i], mention.target)) { ++i; continue; }
        if (mention.taking != Taking::named && mention.taking != Taking::mention) unweighed_ = true;
        if (keep) out_.push_back(pot_[i]);
        pot_.erase(pot_.begin() + static_cast<std::ptrdiff_t>(i));
      }
    }
  }

  void drift(const Clause& clause) {
    const Quantity& change = recipe_.terms[clause.terms.first].amount;
    if (change.is_lost()) return;
    const auto factor = [&](const Fraction& percent) { return clause.gains ? Fraction(1) + percent / Fraction(100) : Fraction(1) - percent / Fraction(100); };
    const Fraction a = factor(change.low), b = factor(change.high);
    const Fraction low = std::min(a, b, [](auto& x, auto& y) { return x < y; }), high = a < b ? b : a;
    const auto apply = [&](Ends& grams) { grams.low *= low, grams.high *= high; };
    if (clause.mentions.count == 0) {
      for (Entry& entry : pot_) apply(entry.grams);
      if (!reduced_.low.is_lost()) apply(reduced_);
      return;
    }
    for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m)
      for (auto* list : {&pot_, &out_})
        for (Entry& entry : *list)
          if (is(entry, recipe_.mentions[m].target)) apply(entry.grams);
  }

  void step(const Clause& clause) {
    if (clause.verb != kNoVerb && verb(clause.verb).heats) heated_ = true;
    switch (clause.kind) {
      case ClauseKind::use:
        for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) use(recipe_.mentions[m]);
        return;
      case ClauseKind::keep_back:
        for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
          const Mention& mention = recipe_.mentions[m];
          if (mention.target.kind == TargetKind::line && mention.takes) aside_.push_back({TargetKind::line, mention.target.index, taken(mention)}), kept_span_ = clause.span;
        }
        return;
      case ClauseKind::take_out: return leave(clause, true);
      case ClauseKind::drain: drained_ = true; return leave(clause, false);
      case ClauseKind::discard:
      case ClauseKind::strain_out: return leave(clause, false);
      case ClauseKind::drift: return clause.terms.count != 0 ? drift(clause) : void();
      case ClauseKind::reduce:
      case ClauseKind::checkpoint: return holds_from_here(clause);
      case ClauseKind::pieces: return pieces(clause);
      default: return;
    }
  }

  // reduce to A, weigh A: the pot is A from here; a checkpoint is compared first.
  void holds_from_here(const Clause& clause) {
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
      const Term& term = recipe_.terms[t];
      if ((term.role != TermRole::to && term.role != TermRole::checkpoint) || term.amount.is_lost()) continue;
      if (term.amount.dimension() != Dimension::mass) {
        unweighed_ = true;
        continue;
      }
      const Ends said = in_base(term.amount, recipe_.dialect), now = total();
      if (clause.kind == ClauseKind::checkpoint && !now.low.is_lost() && !now.low.is_zero()) {
        const Fraction allowed = tolerance(term.amount.manner);
        if (said.high < now.low * (Fraction(1) - allowed) || said.low > now.high * (Fraction(1) + allowed))
          report_.add(Code::checkpoint_off, term.span, "By the steps so far the pot holds " + say_amount(now, Dimension::mass) + ", and " + say_amount(said, Dimension::mass) + " is to be weighed.")
              .expect(say_amount(now, Dimension::mass)).find(quoted(recipe_.slice(term.span)));
      }
      reduced_ = said;
      unweighed_ = false;
    }
  }

  void pieces(const Clause& clause) {
    const Term *count = nullptr, *each = nullptr;
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
      if (recipe_.terms[t].role == TermRole::pieces) count = &recipe_.terms[t];
      if (recipe_.terms[t].role == TermRole::piece_weight) each = &recipe_.terms[t];
    }
    if (count == nullptr || each == nullptr || each->amount.dimension() != Dimension::mass) return;
    const Ends one = in_base(each->amount, recipe_.dialect), now = total();
    if (now.low.is_lost() || now.high.is_zero()) return;
    const Fraction wanted = count->amount.low * one.low, allowed = tolerance(each->amount.manner);
    const auto say = [&](Severity severity, std::string text) {
      report_.add(Code::pieces_weigh, severity, clause.span, std::move(text)).expect("pieces that add up to " + say_amount(now, Dimension::mass))
          .find(say_amount(wanted, Dimension::mass));
    };
    if (wanted > now.high * (Fraction(1) + allowed)) say(Severity::error, "These pieces weigh " + say_amount(wanted, Dimension::mass) + " together, and there is only " + say_amount(now, Dimension::mass) + ".");
    else if (wanted < now.low * (Fraction(1) - allowed)) say(Severity::note, say_amount(now.low - wanted, Dimension::mass) + " is left over after these pieces.");
  }

  void makes(const Ends& sum) {
    if (sum.low.is_lost() || sum.high.is_zero()) return;
    const auto yields = yields_of(recipe_, part_);
    Fraction by_products(0);
    for (const Yield& yield : yields)
      if (yield.by_product && yield.dimension == Dimension::mass) by_products += yield.ends.low;
    for (const Yield& yield : yields) {
      if (yield.by_product || yield.dimension != Dimension::mass) continue;
      const Fraction allowed = tolerance(yield.manner);
      const Ends there{sum.low - by_products, sum.high - by_products};
      if (yield.ends.high >= there.low * (Fraction(1) - allowed) && yield.ends.low <= there.high * (Fraction(1) + allowed)) return;
      const bool cooks = heated_ || drained_;
      report_.add(Code::makes_off, cooks ? Severity::warning : Severity::error, yield.span,
                  "What goes in comes to " + say_amount(there, Dimension::mass) + ", which is " + say_error(there.low, yield.ends.low) + " off what `makes:` says.")
          .expect(cooks ? "how much is lost: `[loses 14 %]`, or " + say_amount(there, Dimension::mass) : say_amount(there, Dimension::mass))
          .find(quoted(recipe_.slice(yield.span)));
      return;
    }
  }

  Recipe& recipe_;
  Report& report_;
  Index part_;
  std::vector<Entry> pot_, out_, aside_;
  Ends reduced_{Fraction::lost(), Fraction::lost()};
  Span kept_span_{};
  bool unweighed_ = false, heated_ = false, drained_ = false;
};

}  // namespace

void weigh_pot(Recipe& recipe, Report& report) {
  // Parts stand before those that take them; the dish comes last.
  for (Index p = 0; p < recipe.parts.size(); ++p)
    if (p != recipe.dish && !recipe.parts[p].disturbed) Pot(recipe, report, p).run();
  if (recipe.dish < recipe.parts.size() && !recipe.parts[recipe.dish].disturbed) Pot(recipe, report, recipe.dish).run();
}

}  // namespace qtn
