// The equations of the lines, and the stages in which they are met: the lines alone, then `makes:`, then what the line
// that takes the part asks for.
#include "recipe/ratio_system.hpp"

namespace qtn {

const Stated* size_stated(const Recipe& recipe, const TakeLine& line) {
  for (Index i = line.stated.first; i < line.stated.end(); ++i)
    if (!recipe.stated[i].each) return &recipe.stated[i];
  return nullptr;
}

RatioSystem::RatioSystem(const Recipe& recipe, Index only, std::vector<Index> within)
    : recipe_(recipe), only_(only), within_(std::move(within)) {
  const std::size_t lines = recipe.lines.size(), parts = recipe.parts.size();
  var_.assign(lines, Linear::kNobody);
  dim_.assign(lines, Dimension::mass);
  spoiled_.assign(lines, false);
  size_.assign(parts, Linear::kNobody);
  parts_dim_.assign(parts, Dimension::mass);
  makes_.assign(parts, MakesFails::unasked);
  askers_.resize(parts);
  product_at_.assign(parts * 3, kNone);
  head_at_.assign(parts * 3, kNone);
  flour_.assign(parts, Fraction());
  shares_.resize(parts);
}

const PotShares& RatioSystem::shares_of(Index part) {
  if (shares_[part] == nullptr) shares_[part] = std::make_unique<PotShares>(pot_shares(recipe_, part));
  return *shares_[part];
}

Index RatioSystem::standing_index(Index line) const {
  const Index chosen = recipe_.lines[line].chosen;
  return chosen < recipe_.lines.size() ? chosen : line;
}

RatioTrouble& RatioSystem::trouble(RatioTrouble::Kind kind, Index line) {
  RatioTrouble& one = troubles_.emplace_back();
  one.kind = kind;
  one.line = line;
  if (line != kNone) one.part = recipe_.lines[line].part, one.dimension = dim_[line];
  return one;
}

void RatioSystem::find_unknowns() {
  for (Index i = 0; i < recipe_.lines.size(); ++i) {
    const TakeLine& line = recipe_.lines[i];
    if (line.target.kind == TargetKind::part && in_sums(line) && line.target.index != line.part)
      askers_[line.target.index].push_back(i);
    if (!is_ratio(line) || line.struck || !included(line.part)) continue;
    var_[i] = system_.unknown();
    const TakeHead& head = recipe_.parts[line.part].head;
    const bool needs_base = line.basis != Basis::parts;
    const bool has_base = !line.members.empty() || !head.members.empty() || head.all_flour;
    const bool rate = line.basis == Basis::rate;
    if (line.written.is_lost() || (needs_base && !has_base) || (rate && !line.per && !head.per)) spoiled_[i] = true;
    if (line.basis == Basis::parts && size_[line.part] == Linear::kNobody) size_[line.part] = system_.unknown();
  }
}

bool RatioSystem::add(const RatioSum& sum, Equation equation, Linear::Unknown own) {
  const auto label = static_cast<std::uint32_t>(equations_.size());
  equations_.push_back(equation);
  // A sum is Σ by · unknown + constant = 0.
  if (system_.add(sum.factors, -sum.constant, label, own) != Linear::Outcome::clash) return true;
  if (equation.part != kNone) return false;  // a statement that was not needed
  if (equation.stated) {
    unproved_.push_back(equation.line);
    return false;
  }
  std::vector<Index> lines;
  for (const std::uint32_t other : system_.clashing())
    if (equations_[other].line != kNone) lines.push_back(equations_[other].line);
  Index at = equation.line;
  if (at == kNone && !lines.empty()) at = lines.back(), lines.pop_back();  // a sum of lines: said of one of them
  if (at == kNone || spoiled_[at]) return false;
  trouble(RatioTrouble::clash, at).lines = std::move(lines);
  spoiled_[at] = true;
  return false;
}

// 50 % of [the butter] butter: no amount, or any, would do.
bool RatioSystem::of_itself(Index i) const {
  const Slice members = recipe_.lines[i].members;
  for (Index m = members.first; m < members.end(); ++m) {
    const Target& member = recipe_.set_members[m];
    if (member.kind != TargetKind::line || standing_index(member.index) != i) return false;
  }
  return !members.empty();
}

void RatioSystem::line_equation(Index i) {
  const TakeLine& line = recipe_.lines[i];
  const Part& part = recipe_.parts[line.part];
  const Ends written = in_base(line.written, recipe_.dialect);
  const Slice members = line.members;
  if (line.basis == Basis::parts) {
    const Quantity& n = line.written;
    RatioSum sum;
    sum.factors = {{var_[i], Fraction(1)}, {size_[line.part], -middle({n.low, n.high})}};
    add(sum, {i, kNone, false}, var_[i]);
    return;
  }
  Dimension of = dim_[i];
  Fraction share = middle(written);
  if (line.basis == Basis::rate) {
    const Quantity& per = line.per ? *line.per : *part.head.per;
    of = per.dimension();
    share /= middle(in_base(per, recipe_.dialect));
  }
  if (share.is_lost()) {
    spoiled_[i] = true;
    return;
  }
  if (of_itself(i)) {
    trouble(RatioTrouble::of_itself, i);
    spoiled_[i] = true;
    return;
  }
  if (!members.empty()) {
    RatioSum base;
    for (Index m = members.first; m < members.end(); ++m) add_member(base, recipe_.set_members[m], of, Fraction(1));
    return share_equation(i, std::move(base), share);
  }
  Whole& head = head_of(line.part, of);
  if (head.told) {
    spoiled_[i] = !head.sum.holds();
    if (spoiled_[i]) return;
  }
  RatioSum base;
  add_whole(base, head, Fraction(1));
  if (!head.told) base.ranged = head.sum.ranged;
  head.told = true;
  share_equation(i, std::move(base), share);
}

// x - share · Σ base = 0
void RatioSystem::share_equation(Index i, RatioSum base, const Fraction& share) {
  if (base.ranged != kNone) trouble(RatioTrouble::base_range, i).other = base.ranged;
  if (!base.holds()) {
    spoiled_[i] = true;
    if (base.unweighed != kNone && !base.spoiled) trouble(RatioTrouble::base_unweighed, i).other = base.unweighed;
    return;
  }
  for (Linear::Factor& factor : base.factors) factor.by *= -share;
  base.constant *= -share;
  base.factors.push_back({var_[i], Fraction(1)});
  add(base, {i, kNone, false}, var_[i]);
}

// 3 parts (300 ml): the parenthesis fixes the size, or proves what another one fixed.
void RatioSystem::stated_equation(Index i) {
  const TakeLine& line = recipe_.lines[i];
  const Stated* const stated = size_stated(recipe_, line);
  if (stated == nullptr || spoiled_[i]) return;
  const Ends size = sized(i, stated->amount, dim_[i]);
  if (size.low.is_lost() || size.high.is_lost()) return;
  if (!(size.low == size.high)) trouble(RatioTrouble::base_range, i).other = i;
  RatioSum sum;
  sum.factors = {{var_[i], Fraction(1)}};
  sum.constant = -middle(size);
  add(sum, {i, kNone, true}, var_[i]);
}

void RatioSystem::add_waiting_wholes() {
  while (!waiting_.empty()) {
    const std::vector<Index> now = std::move(waiting_);
    waiting_.clear();
    for (const Index at : now) {
      const Whole& whole = wholes_[at];
      if (!whole.sum.holds() || whole.var == Linear::kNobody) continue;
      RatioSum sum = whole.sum;
      sum.factors.push_back({whole.var, Fraction(-1)});
      add(sum, {kNone, kNone, false}, whole.var);
    }
  }
}

bool RatioSystem::any_open(Index part) const {
  const Slice lines = recipe_.parts[part].lines;
  for (Index i = lines.first; i < lines.end(); ++i)
    if (has(i) && !spoiled_[i] && !system_.is_known(var_[i])) return true;
  return false;
}

// Σ x · losses = makes, where nothing leaves the pot.
void RatioSystem::by_makes(Index part) {
  makes_[part] = MakesFails::unwritten;
  for (const Made& made : makes_of(recipe_, part)) {
    if (!made.damaged) continue;
    makes_[part] = MakesFails::damaged;
    return;
  }
  const std::vector<Yield> yields = yields_of(recipe_, part);
  for (const Yield& yield : yields) {
    if (yield.by_product) {
      makes_[part] = MakesFails::by_product;
      return;
    }
  }
  for (const Yield& yield : yields) {
    if (yield.dimension != Dimension::mass && yield.dimension != Dimension::volume) {
      if (makes_[part] == MakesFails::unwritten) makes_[part] = MakesFails::a_count;
      continue;
    }
    if (yield.ends.low.is_lost()) continue;
    if (!(yield.ends.low == yield.ends.high)) {
      makes_[part] = MakesFails::a_range;
      continue;
    }
    if (!shares_of(part).plain) {
      makes_[part] = MakesFails::taken_out;
      return;
    }
    Whole& product = product_of(part, yield.dimension);
    add_waiting_wholes();
    if (!product.sum.holds()) {
      makes_[part] = MakesFails::unweighed;
      continue;
    }
    RatioSum sum;
    add_whole(sum, product, Fraction(1));
    sum.constant -= yield.ends.low;
    add(sum, {kNone, part, false}, Linear::kNobody);
    makes_[part] = MakesFails::unasked;
    return;
  }
}

// What the lines that take the part ask for, trimmings with it.
void RatioSystem::by_askers(Index part) {
  if (askers_[part].empty() || !shares_of(part).plain) return;
  for (const Dimension dimension : {Dimension::mass, Dimension::volume}) {
    Whole& product = product_of(part, dimension);
    add_waiting_wholes();
    if (!product.sum.holds()) continue;
    RatioSum sum;
    add_whole(sum, product, Fraction(-1));
    for (const Index asker : askers_[part]) {
      const Tail* const trimmings = tail_of(recipe_, recipe_.lines[asker], TailKind::trimmings);
      Fraction times(1);
      if (trimmings != nullptr && trimmings->amount) times += in_base(*trimmings->amount, recipe_.dialect).low;
      add_line(sum, asker, dimension, times);
    }
    if (!sum.holds()) continue;
    if (sum.ranged != kNone) trouble(RatioTrouble::base_range, askers_[part].front()).other = sum.ranged;
    add(sum, {kNone, part, false}, Linear::kNobody);
    return;
  }
}

void RatioSystem::solve() {
  find_unknowns();
  choose_dimensions();
  const auto all_lines = [&](auto&& what) {
    for (Index i = 0; i < recipe_.lines.size(); ++i)
      if (has(i) && !spoiled_[i]) what(i);
  };
  all_lines([&](Index i) { line_equation(i); });
  add_waiting_wholes();
  all_lines([&](Index i) { stated_equation(i); });
  const auto stage = [&](auto&& what) {
    system_.solve();
    std::vector<Index> open;
    for (Index p = 0; p < recipe_.parts.size(); ++p)
      if (included(p) && any_open(p)) open.push_back(p);
    for (const Index p : open) what(p);
    return !open.empty();
  };
  if (stage([&](Index p) { by_makes(p); }) && stage([&](Index p) { by_askers(p); })) system_.solve();
  look_over();
}

}  // namespace qtn
