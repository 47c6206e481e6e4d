// What the pot is compared with, and what is said when it does not fit: checkpoints, pieces, what was kept back, and
// what the part says it makes (semantics H4, T11).
#include <algorithm>

#include "recipe/pot.hpp"

namespace qtn {
namespace {

bool apart(const Ends& there, const Ends& said, const Fraction& slack) {
  return there.low > said.high * (Fraction(1) + slack) || there.high < said.low * (Fraction(1) - slack);
}

// The end of `there` that comes nearest to what was said.
Fraction nearer(const Ends& there, const Ends& said) {
  return there.low > said.high ? there.low : there.high;
}
Fraction nearer_said(const Ends& there, const Ends& said) {
  return there.low > said.high ? said.high : said.low;
}

std::string difference(const Ends& there, const Ends& said) {
  const std::string size = say_error(nearer(there, said), nearer_said(there, said));
  return size + (there.low > said.high ? " more" : " less");
}

}  // namespace

// The looser of two manners wins, unless one says exactly (A16).
Fraction Pot::slack(Manner manner) const {
  const Fraction own = tolerance(manner, recipe_.tolerance());
  const Fraction loose = tolerance(Manner::about, recipe_.tolerance());
  return about_ && manner != Manner::exactly && loose > own ? loose : own;
}

void Pot::check_checkpoint(const Term& term, const Ends& said) {
  const Dimension dimension = term.amount.dimension();
  const Ends there = pot_.total().in(dimension);
  if (is_lost(there) || there.high.is_zero() || !apart(there, said, slack(term.amount.manner))) return;
  report_
      .add(Code::checkpoint_off, term.span,
           "By the steps so far there is " + say_amount(there, dimension) + " in the pot, " + difference(there, said) +
               " than " + say_amount(said, dimension) + ".")
      .expect(quoted(say_amount(there, dimension)))
      .find(quoted(recipe_.slice(term.span)));
}

void Pot::check_reduced(const Term& term, Dimension dimension, const Ends& said) {
  const Ends there = pot_.total().in(dimension);
  if (is_lost(there) || there.high.is_zero() || !(said.low > there.high * (Fraction(1) + slack(term.amount.manner))))
    return;
  report_
      .add(Code::reduce_to_more, term.span,
           "There is only " + say_amount(there, dimension) + " in the pot here, which cannot be boiled down to " +
               say_amount(said, dimension) + ".")
      .expect("less than " + say_amount(there, dimension))
      .find(quoted(recipe_.slice(term.span)));
}

void Pot::check_pieces(const Clause& clause) {
  const Term *count = nullptr, *each = nullptr;
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
    if (recipe_.terms[t].role == TermRole::pieces) count = &recipe_.terms[t];
    if (recipe_.terms[t].role == TermRole::piece_weight) each = &recipe_.terms[t];
  }
  if (count == nullptr || each == nullptr || count->amount.is_lost() || each->amount.is_lost()) return;
  const Dimension dimension = each->amount.dimension();
  if (dimension != Dimension::mass && dimension != Dimension::volume) return;
  const Ends one = in_base(each->amount, recipe_.dialect);
  const Ends asked{count->amount.low * one.low, count->amount.high * one.high};
  const Ends there = pot_.total().in(dimension);
  if (is_lost(there) || is_lost(asked) || there.high.is_zero()) return;
  const Fraction room = slack(each->amount.manner);
  const std::string together = say_amount(asked, dimension), pot = say_amount(there, dimension);
  if (asked.low > there.high * (Fraction(1) + room)) {
    report_
        .add(Code::pieces_weigh, clause.span,
             "These pieces weigh " + together + " together, and there is only " + pot + ".")
        .expect("pieces that add up to " + pot)
        .find(together);
  } else if (!heated_ && asked.high < there.low * (Fraction(1) - room)) {
    // After cooking the page does not say what is left, so nothing is said either.
    report_
        .add(Code::pieces_weigh, Severity::note, clause.span,
             say_amount(there.low - asked.high, dimension) + " is left over: these pieces weigh " + together +
                 " together, and there is " + pot + ".")
        .expect("pieces that add up to " + pot)
        .find(together);
  }
}

void Pot::check_kept() {
  for (const Kept& kept : kept_) {
    if (kept.came_back) continue;
    const std::string name(recipe_.lines[kept.held.what.index].name);
    report_.add(Code::kept_not_used, kept.span, "The " + name + " kept back here never goes in.")
        .expect("a later step with `[the kept " + name + "]`")
        .find(quoted(recipe_.slice(kept.span)));
  }
}

// Grams in a millilitre of what the part makes: as the kitchen file says, or as of any liquid of that name.
Fraction Pot::density() const {
  const std::string_view name = mine().name.empty() ? std::string_view(recipe_.title) : mine().name;
  if (recipe_.kitchen)
    if (const HouseFood* const house = recipe_.kitchen->food(name); house != nullptr) return house->food.density.value;
  const Food* const food = Larder::standard().find(name);
  return food != nullptr && food->liquid ? food->density.value : Fraction::lost();
}

// Does the product stand for what is said? Also true where they cannot be compared.
bool Pot::stands(const Yield& yield, Ends& there, Ends& should) const {
  const Dimension dimension = yield.dimension;
  const Load all = product();
  there = all.in(dimension);
  if (is_lost(there)) {
    const Fraction grams_per_ml = density();
    const Fraction by = dimension == Dimension::volume ? Fraction(1) / grams_per_ml : grams_per_ml;
    there = all.in(dimension == Dimension::volume ? Dimension::mass : Dimension::volume) * Ends{by, by};
  }
  should = yield.ends;
  const auto& makes = makes_of(recipe_, part_);
  for (Index m = 0; m < makes.size(); ++m) {
    if (!makes[m].by_product || std::find(skimmed_.begin(), skimmed_.end(), m) != skimmed_.end()) continue;
    const Ends other = in_base(makes[m].amount, recipe_.dialect);
    if (makes[m].amount.dimension() != dimension) return true;
    there = {there.low - other.high, there.high - other.low};
  }
  if (is_lost(there) || is_lost(should) || there.high.sign() <= 0 || should.low.sign() <= 0) return true;
  const Fraction room = slack(yield.manner);
  if (yield.manner == Manner::at_least) return there.high >= should.low * (Fraction(1) - room);
  if (yield.manner == Manner::at_most) return there.low <= should.high * (Fraction(1) + room);
  return !apart(there, should, room);
}

// The lines that fix the size of a list of ratios: one of the two is a slip, and either may be it.
void Pot::label_anchors(Diagnostic& problem) const {
  const Slice lines = mine().lines;
  std::size_t ratios = 0, told = 0;
  for (Index i = lines.first; i < lines.end(); ++i)
    ratios += recipe_.lines[i].basis == Basis::percent || recipe_.lines[i].basis == Basis::parts ? 1u : 0u;
  for (Index i = lines.first; i < lines.end() && ratios != 0; ++i) {
    const TakeLine& line = recipe_.lines[i];
    const bool fixes = line.basis == Basis::amount || (line.basis != Basis::unmeasured && !line.stated.empty());
    if (!fixes || !in_sums(line) || ++told > 3) continue;
    problem.also(line.amount_span, "by this amount");
  }
}

void Pot::check_makes() {
  for (const Yield& yield : yields_of(recipe_, part_)) {
    if (yield.by_product || (yield.dimension != Dimension::mass && yield.dimension != Dimension::volume)) continue;
    Ends there, should;
    if (stands(yield, there, should)) continue;
    const bool cooks = heated_ || drained_;
    const std::string sum = say_amount(there, yield.dimension), said = say_amount(should, yield.dimension);
    const bool more = there.low > should.high;
    auto& problem = report_.add(Code::makes_off, cooks ? Severity::warning : Severity::error, yield.span,
                                "What goes in comes to " + sum + ", " + difference(there, should) + " than the " +
                                    said + " that `makes:` says.");
    problem.find(quoted(recipe_.slice(yield.span)));
    label_anchors(problem);
    if (cooks) {
      const Fraction from = nearer(there, should), to = nearer_said(there, should);
      const std::string change = std::string(more ? "`[loses " : "`[gains ") + say_error(to, from) + "]`";
      problem.expect("what cooking takes or adds, such as " + change + " in the method, or about " + sum);
    } else {
      problem.expect("about " + sum);
      if (!yield.of_each && there.low == there.high) problem.offer(yield.span, sum, "write " + quoted(sum));
    }
    return;
  }
}

}  // namespace qtn
