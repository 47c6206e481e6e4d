// Phase 4: ingredients are counted out as a good storekeeper does (semantics 3.2). Text order, part by part; a part's
// product counts the same way over all who use it. What is left is a share of the whole line, by both ends of a range.
#include "recipe/phases.hpp"

namespace qtn {
namespace {

struct Left {
  Fraction low = Fraction(1), high = Fraction(1);  // shares of the whole line
  bool taken = false;      // something went in
  bool named = false;      // mentioned at all
  bool uncertain = false;  // an amount could not be compared: nothing is said of what is left
  Span last;               // where the last was taken
  bool none() const { return low <= Fraction::of(1, 100); }
};

class Counter {
 public:
  Counter(Recipe& recipe, Report& report)
      : recipe_(recipe), report_(report), lines_(recipe.lines.size()), asides_(recipe.lines.size()), parts_(recipe.parts.size()), uses_(recipe.uses.size()) {}

  void run() {
    for (Clause& clause : recipe_.clauses) {
      if (clause.kind == ClauseKind::bad || clause.part == kNone) continue;
      for (Index i = clause.mentions.first; i < clause.mentions.end(); ++i) mention(clause, recipe_.mentions[i]);
    }
    ends();
  }

 private:
  Left* left_of(const Mention& mention, const Clause& clause) {
    switch (mention.target.kind) {
      case TargetKind::line: return &lines_[mention.target.index];
      case TargetKind::aside: return &asides_[mention.target.index];
      case TargetKind::part: return mention.target.index == clause.part ? nullptr : &parts_[mention.target.index];
      case TargetKind::use: return &uses_[mention.target.index];
      default: return nullptr;
    }
  }

  const TakeLine* line_of(const Mention& mention) const {
    const bool line = mention.target.kind == TargetKind::line || mention.target.kind == TargetKind::aside;
    return line ? &recipe_.lines[mention.target.index] : nullptr;
  }

  std::string_view name(const Mention& mention) const {
    switch (mention.target.kind) {
      case TargetKind::line:
      case TargetKind::aside: return recipe_.lines[mention.target.index].name;
      case TargetKind::part: return recipe_.parts[mention.target.index].name;
      default: return recipe_.uses[mention.target.index].as;
    }
  }

  void take(Mention& mention, Left& left, const Fraction& low, const Fraction& high) {
    mention.takes = true;
    mention.part_low = low;
    mention.part_high = high;
    mention.whole = low == Fraction(1) && high == Fraction(1);
    left.low -= low;
    left.high -= high;
    left.taken = true;
    left.last = mention.span;
  }

  void mention(Clause& clause, Mention& mention) {
    mention.takes = false;
    mention.whole = false;
    if (mention.target.kind == TargetKind::everything) return everything(clause, mention);
    Left* const left = left_of(mention, clause);
    if (left == nullptr) return;
    left->named = true;
    const TakeLine* const line = line_of(mention);
    if (line != nullptr && (!line->measured() || line->struck)) return;
    const bool pot = clause.kind == ClauseKind::take_out || clause.kind == ClauseKind::discard || clause.kind == ClauseKind::strain_out || clause.kind == ClauseKind::drain;
    if (pot) return leaves(mention, *left, line, clause);
    if (mention.taking == Taking::named) return;
    if (clause.kind == ClauseKind::keep_back) return keep_back(mention, *left, line, clause);
    switch (mention.taking) {
      case Taking::mention: return plain(mention, *left);
      case Taking::share: return share(mention, *left, clause);
      case Taking::amount: return amount(mention, *left, line);
      case Taking::rest: return rest(mention, *left);
      default: return;
    }
  }

  // What leaves the pot must have gone in, and no more of it. What a line was split into may be thrown away raw.
  void leaves(const Mention& mention, const Left& left, const TakeLine* line, const Clause& clause) {
    if (line == nullptr || line->given || line->splits || mention.target.kind == TargetKind::aside || clause.kind == ClauseKind::drain) return;
    if (recipe_.parts[clause.part].disturbed || left.uncertain) return;
    if (!left.taken && !left.none()) {
      report_.add(Code::not_in_pot, mention.span, "The " + std::string(name(mention)) + " has not gone in yet.")
          .also(line->span, "the list has it").find(quoted(recipe_.slice(mention.span))).expect("a step above with `[the " + std::string(name(mention)) + "]`");
      return;
    }
    const Ends asked = share_of(mention, line);
    if (mention.taking != Taking::amount || asked.low.is_lost() || asked.low <= Fraction(1) + tolerance(recipe_.terms[mention.term].amount.manner)) return;
    report_.add(Code::more_than_left, mention.span, "There is only " + shown(Fraction(1), line) + " of the " + std::string(name(mention)) + ", and " +
                shown(asked.low, line) + " is to leave.")
        .also(line->span, "the list").expect("at most " + shown(Fraction(1), line)).find(shown(asked.low, line));
  }

  void everything(const Clause& clause, Mention&) {
    const Slice lines = recipe_.parts[clause.part].lines;
    for (Index i = lines.first; i < lines.end(); ++i) {
      lines_[i].low = lines_[i].high = Fraction(0);
      lines_[i].taken = lines_[i].named = true;
    }
  }

  void plain(Mention& mention, Left& left) {
    if (left.none() || left.uncertain) return;
    const bool told = left.taken;
    const Span before = left.last;
    take(mention, left, left.low, left.high);
    if (!told) return;
    const std::string mended = "the rest of the " + std::string(name(mention));
    report_.add(Code::say_the_rest, mention.span, "Some of the " + std::string(name(mention)) + " went in before; this is read as the rest of it.")
        .also(before, "some is taken here").find(quoted(recipe_.slice(mention.span))).expect(quoted(mended))
        .fix(mention.span, mended, "write " + quoted(mended));
  }

  // A share of more than the whole was reported where it stands: what follows from it is not said again.
  void over_whole(Mention& mention, Left& left, const Clause& clause) {
    take(mention, left, left.low, left.high);
    left.uncertain = true;
    recipe_.parts[clause.part].disturbed = true;
  }

  void share(Mention& mention, Left& left, const Clause& clause) {
    if (mention.share > Fraction(1)) return over_whole(mention, left, clause);
    const Fraction slack = mention.about ? Fraction::of(1, 10) : Fraction::of(1, 100);
    if (!left.uncertain && mention.share > left.low + slack * mention.share) return too_much(mention, left, mention.share);
    take(mention, left, mention.share, mention.share);
  }

  // How much of the whole line an amount is, by both ends; lost where they cannot be compared.
  Ends share_of(const Mention& mention, const TakeLine* line) const {
    if (line == nullptr || mention.term == kNone) return {Fraction::lost(), Fraction::lost()};
    const Quantity& asked = recipe_.terms[mention.term].amount;
    const Quantity& whole = line->amount;
    if (asked.is_lost() || whole.is_lost() || whole.low.is_zero()) return {Fraction::lost(), Fraction::lost()};
    if (asked.unit == whole.unit) return {asked.low / whole.low, asked.high / whole.high};
    if (asked.dimension() == whole.dimension()) {
      const Ends a = in_base(asked, recipe_.dialect), w = in_base(whole, recipe_.dialect);
      return {a.low / w.low, a.high / w.high};
    }
    const Ends a = grams_of(recipe_, *line, asked), w = grams_of(recipe_, *line, whole);
    return {a.low / w.low, a.high / w.high};
  }

  void amount(Mention& mention, Left& left, const TakeLine* line) {
    const Ends asked = share_of(mention, line);
    if (asked.low.is_lost() || asked.high.is_lost()) {
      left.uncertain = left.taken = true;
      return;
    }
    const Fraction slack = tolerance(recipe_.terms[mention.term].amount.manner) * asked.low;
    if (!left.uncertain && asked.low > left.low + (mention.about ? slack : Fraction::of(1, 100))) return too_much(mention, left, asked.low);
    take(mention, left, asked.low, asked.high);
  }

  void rest(Mention& mention, Left& left) {
    if (left.uncertain) {
      left.low = left.high = Fraction(0);
      left.taken = true;
      left.uncertain = false;
      return;
    }
    const bool at_most = left.high > Fraction::of(1, 100);  // of 100 to 120 g, 100 g went in
    if (!left.none() || at_most) return take(mention, left, left.low.sign() < 0 ? Fraction(0) : left.low, left.high);
    report_.add(Code::nothing_left, mention.span, "There is no " + std::string(name(mention)) + " left here.")
        .also(left.last, "the last of it went in here").find(quoted(recipe_.slice(mention.span)))
        .expect("a mention before all of it is taken, or a smaller share above");
  }

  void keep_back(Mention& mention, Left& left, const TakeLine* line, const Clause& clause) {
    if (mention.taking == Taking::share && mention.share > Fraction(1)) return over_whole(mention, left, clause);
    Fraction low = mention.share, high = mention.share;
    if (mention.taking == Taking::amount) {
      const Ends asked = share_of(mention, line);
      low = asked.low, high = asked.high;
    } else if (mention.taking != Taking::share) {
      low = left.low, high = left.high;
    }
    if (low.is_lost()) return;
    if (low > left.low + Fraction::of(1, 100)) return too_much(mention, left, low);
    mention.part_low = low, mention.part_high = high;
    mention.takes = true;
    left.low -= low, left.high -= high;  // lowers what is left, but is no taking
    left.last = mention.span;
  }

  std::string shown(const Fraction& share, const TakeLine* line) const {
    if (line == nullptr || line->amount.is_lost()) return (share * Fraction(100)).decimal(0) + " %";
    Quantity part = line->amount;
    part.low = part.low * share, part.high = part.low;
    part.manner = Manner::plain;
    if (part.low.under() > 16) part.low = part.high = Fraction::of((part.low * Fraction(100)).nearest(), 100);
    return write_plain(part);
  }

  void too_much(Mention& mention, Left& left, const Fraction& asked) {
    const TakeLine* const line = line_of(mention);
    const Fraction there = left.low.sign() < 0 ? Fraction(0) : left.low;
    auto& problem = report_.add(Code::more_than_left, mention.span,
                "Only " + shown(there, line) + " of the " + std::string(name(mention)) + " is left, and " + shown(asked, line) + " is asked for.");
    if (line != nullptr) problem.also(line->span, "the list has " + shown(Fraction(1), line));
    if (!left.last.empty()) problem.also(left.last, "some went in here");
    problem.expect("at most " + shown(there, line)).find(shown(asked, line));
    take(mention, left, there, there);
    left.uncertain = true;  // one cause, one error
    if (line != nullptr) recipe_.parts[line->part].disturbed = true;
  }

  void ends() {
    for (Index i = 0; i < recipe_.lines.size(); ++i) {
      const TakeLine& line = recipe_.lines[i];
      const Left& left = lines_[i];
      const bool menu = recipe_.kind == FileKind::menu;
      if (menu || line.splits || line.alternative || line.added || line.struck || !line.measured() || line.basis == Basis::unmeasured) continue;
      if (line.amount.low.is_zero()) continue;
      const Part& part = recipe_.parts[line.part];
      if (!part.has_method || part.disturbed) continue;
      if (!left.named) {
        if (line.optional) continue;
        if (mentioned_as_target(line)) continue;
        report_.add(Code::unused_line, line.name_span, quoted(line.name) + " is in the list, and no step takes it.")
            .expect("a step with `[the " + std::string(line.name) + "]`");
        continue;
      }
      if (left.uncertain || left.none() || !left.taken) continue;
      bool taken_up = false;
      for (Index t = line.tails.first; t < line.tails.end(); ++t) taken_up = taken_up || recipe_.tails[t].kind == TailKind::taking_up;
      if (taken_up) continue;
      report_.add(Code::left_over, line.name_span, shown(left.low, &line) + " of the " + std::string(line.name) + " is left over.")
          .also(left.last, "the last that was taken").expect("steps that take all of it, or a smaller amount in the list");
    }
  }

  // 450 g [Shortcrust]: a mention of the part itself takes the line.
  bool mentioned_as_target(const TakeLine& line) const {
    if (line.target.kind == TargetKind::part) return parts_[line.target.index].named;
    if (line.target.kind == TargetKind::use) return uses_[line.target.index].named;
    return false;
  }

  Recipe& recipe_;
  Report& report_;
  std::vector<Left> lines_, asides_, parts_, uses_;
};

}  // namespace

void count_out(Recipe& recipe, Report& report) { Counter(recipe, report).run(); }

}  // namespace qtn
