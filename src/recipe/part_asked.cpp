// Is there as much of a part as other parts take of it? A storekeeper hands out no more than came in.
#include <algorithm>

#include "recipe/makes.hpp"
#include "recipe/phases.hpp"

namespace qtn {
namespace {

class Stores {
 public:
  Stores(const Recipe& recipe, Report& report) : recipe_(recipe), report_(report) {}

  void run() {
    for (Index p = 0; p < recipe_.parts.size(); ++p)
      if (recipe_.parts[p].used && !recipe_.parts[p].disturbed) part(p);
  }

 private:
  // What cooks, or is boiled in water that the list does not measure, may weigh more at its end than what went in.
  bool may_grow(const Part& part) const {
    for (Index s = part.steps.first; s < part.steps.end(); ++s)
      for (Index c = recipe_.steps[s].clauses.first; c < recipe_.steps[s].clauses.end(); ++c) {
        const Clause& clause = recipe_.clauses[c];
        const bool heats = clause.house_verb != nullptr ? clause.house_verb->heats : clause.verb != kNoVerb && verb(clause.verb).heats;
        if (heats || clause.kind == ClauseKind::drain || clause.kind == ClauseKind::bad) return true;
      }
    for (Index i = part.lines.first; i < part.lines.end(); ++i) {
      const TakeLine& line = recipe_.lines[i];
      if (!line.measured() && line.food != nullptr && line.food->liquid) return true;
    }
    return false;
  }

  Ends made(Index p) const {
    for (const Yield& yield : yields_of(recipe_, p))
      if (!yield.by_product && yield.dimension == Dimension::mass) return yield.ends;
    const Part& part = recipe_.parts[p];
    if (may_grow(part)) return {Fraction::lost(), Fraction::lost()};
    return {part.weight_low, part.weight_high};
  }

  void part(Index p) {
    const Ends there = made(p);
    if (there.high.is_lost() || there.high.sign() <= 0) return;
    Fraction asked(0);
    const TakeLine* first = nullptr;
    Manner loose = Manner::plain;
    for (const TakeLine& line : recipe_.lines) {
      if (line.target.kind != TargetKind::part || line.target.index != p || line.alternative || line.struck || !line.measured()) continue;
      if (line.amount.is_lost() || line.amount.dimension() != Dimension::mass) return;
      const Tail* const spare = tail_of(recipe_, line, TailKind::trimmings);
      const bool share = spare != nullptr && spare->amount && spare->amount->dimension() == Dimension::ratio;
      asked += in_base(line.amount, recipe_.dialect).low * (share ? Fraction(1) + in_base(*spare->amount, recipe_.dialect).low : Fraction(1));
      if (line.amount.manner == Manner::about) loose = Manner::about;
      if (first == nullptr) first = &line;
    }
    if (first == nullptr || asked <= there.high * (Fraction(1) + tolerance(loose, recipe_.tolerance()))) return;
    const std::string name(recipe_.parts[p].name), has = say_amount(there, Dimension::mass), wanted = say_amount(asked, Dimension::mass);
    report_.add(Code::part_short, first->amount_span, "There is " + has + " of the " + name + ", and " + wanted + " is taken of it.")
        .expect("at most " + has + ", or more in the list of the " + name)
        .find("`" + std::string(recipe_.slice(first->amount_span)) + "`")
        .also(recipe_.parts[p].span, "this part comes to " + has);
  }

  const Recipe& recipe_;
  Report& report_;
};

}  // namespace

void check_asked(const Recipe& recipe, Report& report) { Stores(recipe, report).run(); }

}  // namespace qtn
