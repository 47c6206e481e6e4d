// Phase 3: percentages, rates and parts are solved, not typed (semantics part 4). One unknown a line, one for the size
// of a part; the lines first, then `makes:` if something is still free, then what the using line asks.
#include <algorithm>

#include "recipe/linear.hpp"
#include "recipe/makes.hpp"
#include "recipe/phases.hpp"

namespace qtn {
namespace {

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

bool is_ratio(const TakeLine& line) { return line.basis == Basis::percent || line.basis == Basis::rate || line.basis == Basis::parts; }

constexpr std::uint32_t kMakesLabel = ~std::uint32_t{0} - 1, kAskedLabel = ~std::uint32_t{0} - 2;

class PartRatios {
 public:
  PartRatios(Recipe& recipe, Report& report, Index part) : recipe_(recipe), report_(report), part_(part) {}

  void run() {
    choose_dimension();
    collect();
    for (Index i : lines_) equation(i);
    if (broken_) return;
    system_.solve();
    if (!all_known()) by_makes();
    if (!all_known()) by_user();
    if (broken_) return;
    write_back();
  }

 private:
  const Part& part() const { return recipe_.parts[part_]; }
  TakeLine& line(Index i) { return recipe_.lines[i]; }

  // Parts take the dimension of what anchors them; percentages and most rates are by weight.
  void choose_dimension() {
    bool volume = false, mass = false, percent = false;
    for (Index i = part().lines.first; i < part().lines.end(); ++i) {
      const TakeLine& one = line(i);
      if (!in_sums(one)) continue;
      percent = percent || one.basis == Basis::percent || one.basis == Basis::rate;
      if (one.basis == Basis::amount && !one.amount.is_lost()) (one.amount.dimension() == Dimension::volume ? volume : mass) = true;
      if (one.basis == Basis::parts && !one.stated.empty()) (recipe_.stated[one.stated.first].amount.dimension() == Dimension::volume ? volume : mass) = true;
    }
    const bool anchored = volume || mass;
    if (!anchored)
      for (const Yield& yield : yields_of(recipe_, part_))
        if (!yield.by_product) (yield.dimension == Dimension::volume ? volume : mass) = true;
    dimension_ = part().head.by_volume || (volume && !mass && !percent) ? Dimension::volume : Dimension::mass;
  }

  // An amount in the block's dimension; the middle of a range where one number is wanted.
  Ends sized(const TakeLine& one, const Quantity& amount) const {
    if (amount.dimension() == dimension_) return in_base(amount, recipe_.dialect);
    const Ends grams = grams_of(recipe_, one, amount);
    if (dimension_ == Dimension::mass) return grams;
    const Fraction density = known_of(recipe_, one).density;
    return {grams.low / density, grams.high / density};
  }

  void collect() {
    unknown_.assign(recipe_.lines.size(), Linear::kNobody);
    for (Index i = part().lines.first; i < part().lines.end(); ++i) {
      const TakeLine& one = line(i);
      if (!in_sums(one)) continue;
      if (!is_ratio(one) && sized(one, one.amount).low.is_lost()) continue;  // nobody can weigh it: left out of the sums
      lines_.push_back(i);
      unknown_[i] = system_.unknown();
      if (one.basis == Basis::parts) has_parts_ = true;
    }
    if (has_parts_) part_size_ = system_.unknown();
  }

  void add(const std::vector<Linear::Factor>& factors, const Fraction& constant, std::uint32_t label, std::uint32_t own) {
    if (broken_) return;
    if (system_.add(factors, constant, label, own) != Linear::Outcome::clash) return;
    broken_ = true;
    clash(label);
  }

  void clash(std::uint32_t label) {
    const bool of_line = label < recipe_.lines.size();
    const Span at = of_line ? line(label).span : part().span;
    auto& problem = report_.add(Code::ratios_clash, at, of_line ? quoted(recipe_.slice(line(label).amount_span)) + " cannot hold together with the other lines."
                                                                : "`makes:` cannot hold together with the lines.");
    for (std::uint32_t other : system_.clashing())
      if (other < recipe_.lines.size()) problem.also(line(other).span, "this line says otherwise");
    problem.expect("ratios that one batch can meet");
  }

  void equation(Index i) {
    const TakeLine& one = line(i);
    const auto own = unknown_[i];
    switch (one.basis) {
      case Basis::amount: {
        const Ends ends = sized(one, one.amount);
        add({{own, Fraction(1)}}, (ends.low + ends.high) / Fraction(2), i, own);
        return;
      }
      case Basis::parts: {
        add({{own, Fraction(1)}, {part_size_, -one.written.low}}, Fraction(0), i, own);
        if (!one.stated.empty()) add({{own, Fraction(1)}}, sized(one, recipe_.stated[one.stated.first].amount).low, i, own);
        return;
      }
      case Basis::percent: return share(i, one.written.low / Fraction(100));
      case Basis::rate: {
        const Ends of = sized(one, one.written), per = sized(one, *one.per);
        return share(i, of.low / per.low);
      }
      default: return;
    }
  }

  // x - share · Σ base = 0. A base line in the sum itself is a factor of its own; a used part enters with its weight.
  void share(Index i, const Fraction& share) {
    const TakeLine& one = line(i);
    const Slice members = one.members.empty() ? part().head.members : one.members;
    std::vector<Linear::Factor> factors{{unknown_[i], Fraction(1)}};
    Fraction constant(0);
    for (Index m = members.first; m < members.end(); ++m) {
      const Target& member = recipe_.set_members[m];
      if (member.kind == TargetKind::line && member.index < unknown_.size() && unknown_[member.index] != Linear::kNobody) {
        const TakeLine& base = line(member.index);
        if (base.amount.is_range() && base.basis == Basis::amount) {
          broken_ = true;
          report_.add(Code::range_as_base, base.amount_span, "A range cannot be what a percentage is of.").also(one.span, "this line is a share of it").expect("one amount");
          return;
        }
        auto found = std::find_if(factors.begin(), factors.end(), [&](const auto& f) { return f.unknown == unknown_[member.index]; });
        if (found != factors.end()) found->by -= share;
        else factors.push_back({unknown_[member.index], -share});
      } else {
        const Fraction weight = member_weight(member);
        if (weight.is_lost()) {
          broken_ = true;
          if (member.kind != TargetKind::none && !recipe_.parts.empty())
            report_.add(Code::base_without_weight, one.amount_span, "What this is a share of has no weight.").also(member.span, "this one").expect("a weight, or a figure that gives one");
          return;
        }
        constant += share * weight;
      }
    }
    if (members.empty()) broken_ = true;  // already reported
    else add(factors, constant, i, unknown_[i]);
  }

  Fraction member_weight(const Target& member) const {
    if (member.kind == TargetKind::part) {
      Fraction sum(0);
      const Slice lines = recipe_.parts[member.index].lines;
      for (Index i = lines.first; i < lines.end(); ++i)
        if (in_sums(recipe_.lines[i])) sum += grams_of(recipe_, recipe_.lines[i], recipe_.lines[i].amount).low;
      return sum;
    }
    if (member.kind != TargetKind::line) return Fraction::lost();
    return grams_of(recipe_, recipe_.lines[member.index], recipe_.lines[member.index].amount).low;
  }

  bool all_known() const {
    return std::all_of(lines_.begin(), lines_.end(), [&](Index i) { return system_.is_known(unknown_[i]); });
  }

  // Whether the sum of the list is what `makes:` says, but for losses of the whole pot; otherwise it is only a check.
  bool plain_pot(Fraction& keeps) const {
    keeps = Fraction(1);
    for (const Clause& clause : recipe_.clauses) {
      if (clause.part != part_) continue;
      switch (clause.kind) {
        case ClauseKind::take_out: case ClauseKind::discard: case ClauseKind::strain_out: case ClauseKind::drain:
        case ClauseKind::reduce: case ClauseKind::checkpoint: return false;
        case ClauseKind::drift: {
          if (clause.mentions.count != 0) return false;
          const Fraction change = recipe_.terms[clause.terms.first].amount.low / Fraction(100);
          keeps *= clause.gains ? Fraction(1) + change : Fraction(1) - change;
          break;
        }
        default: break;
      }
    }
    return true;
  }

  void total(const Fraction& amount, std::uint32_t label) {
    std::vector<Linear::Factor> factors;
    for (Index i : lines_) factors.push_back({unknown_[i], Fraction(1)});
    add(factors, amount, label, Linear::kNobody);
    if (!broken_) system_.solve();
  }

  void by_makes() {
    Fraction keeps;
    if (!plain_pot(keeps)) return;
    for (const Yield& yield : yields_of(recipe_, part_)) {
      if (yield.by_product) return;
      if (yield.dimension != dimension_) continue;
      return total((yield.ends.low + yield.ends.high) / Fraction(2) / keeps, kMakesLabel);
    }
  }

  void by_user() {
    for (const TakeLine& user : recipe_.lines) {
      if (user.target.kind != TargetKind::part || user.target.index != part_ || user.basis != Basis::amount) continue;
      if (user.amount.dimension() != dimension_ || user.part == part_) continue;
      const Ends ends = in_base(user.amount, recipe_.dialect);
      Fraction asked = ends.low;
      for (Index t = user.tails.first; t < user.tails.end(); ++t)
        if (recipe_.tails[t].kind == TailKind::trimmings && recipe_.tails[t].amount) asked *= Fraction(1) + recipe_.tails[t].amount->low / Fraction(100);
      return total(asked, kAskedLabel);
    }
  }

  void write_back() {
    std::vector<Index> free_lines;
    bool all_zero = true;
    for (Index i : lines_) {
      if (!system_.is_known(unknown_[i])) free_lines.push_back(i);
      else if (!system_.value(unknown_[i]).is_zero()) all_zero = false;
    }
    if (!free_lines.empty()) return undetermined(free_lines);
    for (Index i : lines_) {
      const Fraction& value = system_.value(unknown_[i]);
      if (value.sign() < 0 || (all_zero && is_ratio(line(i)))) {
        report_.add(Code::only_zero_fits, line(i).span, all_zero ? "Only an amount of 0 fits these lines." : "Only an amount below 0 fits this line.")
            .expect("an amount for one of them");
        return;
      }
    }
    const UnitId unit = dimension_ == Dimension::volume ? common().millilitre : common().gram;
    for (Index i : lines_)
      if (is_ratio(line(i))) line(i).amount = {system_.value(unknown_[i]), system_.value(unknown_[i]), unit, Manner::plain, false};
  }

  void undetermined(const std::vector<Index>& free_lines) {
    std::string names;
    for (Index i : free_lines) names += (names.empty() ? "" : ", ") + quoted(line(i).name);
    auto& problem = report_.add(Code::ratios_open, line(free_lines.front()).amount_span, "Nothing says how much of these there is: " + names + ".");
    problem.expect("an amount in one line, or `makes:` with a weight");
    for (std::size_t i = 1; i < free_lines.size(); ++i) problem.also(line(free_lines[i]).span, "free too");
  }

  Recipe& recipe_;
  Report& report_;
  Index part_;
  Dimension dimension_ = Dimension::mass;
  Linear system_;
  std::vector<Index> lines_;
  std::vector<Linear::Unknown> unknown_;
  Linear::Unknown part_size_ = Linear::kNobody;
  bool has_parts_ = false, broken_ = false;
};

}  // namespace

void solve_ratios(Recipe& recipe, Report& report) {
  if (std::none_of(recipe.lines.begin(), recipe.lines.end(), is_ratio)) return;
  for (Index p = 0; p < recipe.parts.size(); ++p) {
    const Slice lines = recipe.parts[p].lines;
    const auto first = recipe.lines.begin() + lines.first;
    if (std::any_of(first, first + lines.count, is_ratio)) PartRatios(recipe, report, p).run();
  }
}

}  // namespace qtn
