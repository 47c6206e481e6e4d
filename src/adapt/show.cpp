// Everything a card shows of a recipe's amounts, in one system or two, rounded once.
#include <algorithm>

#include "adapt/shower.hpp"

namespace qtn {
namespace {

bool is_ratio(const TakeLine& line) { return line.basis == Basis::percent || line.basis == Basis::rate || line.basis == Basis::parts; }

bool is_heat(const Term& term) { return !term.amount.is_lost() && term.amount.dimension() == Dimension::temperature; }

class Showing {
 public:
  Showing(const Recipe& recipe, const Request& request, System system, Report* lacks) : system_(system), recipe_(recipe), shower_(recipe, system, request.spoons, lacks) {}

  void lines(std::vector<Shown>& out) {
    out.reserve(recipe_.lines.size());
    rounded_.assign(recipe_.lines.size(), {});
    bool ratios = false;
    for (Index i = 0; i < recipe_.lines.size(); ++i) {
      const TakeLine& line = recipe_.lines[i];
      const TakeLine& shown = line.chosen != kNone ? recipe_.lines[line.chosen] : line;
      out.push_back(shower_.line(shown));
      if (out.back().changed) rounded_[i] = shower_.last;
      ratios = ratios || is_ratio(line);
    }
    if (!ratios) return;
    for (const Part& part : recipe_.parts) tie(part, out);
  }

  void tails(std::vector<Shown>& out) {
    out.resize(recipe_.tails.size());
    for (const TakeLine& line : recipe_.lines)
      for (Index t = line.tails.first; t < line.tails.end(); ++t) {
        const Tail& tail = recipe_.tails[t];
        if (!tail.amount) continue;
        const bool amount = tail.kind == TailKind::from || tail.kind == TailKind::taking_up || tail.kind == TailKind::start_with || tail.kind == TailKind::each;
        out[t] = amount ? shower_.amount(&line, *tail.amount, tail.amount_span, false) : shower_.as_written(tail.amount_span, *tail.amount);
      }
  }

  void terms(std::vector<Shown>& out) {
    out.resize(recipe_.terms.size());
    for (const Clause& clause : recipe_.clauses)
      for (Index t = clause.terms.first; t < clause.terms.end(); ++t) out[t] = term(clause, recipe_.terms[t]);
  }

  void mentions(std::vector<Shown>& out) {
    out.resize(recipe_.mentions.size());
    for (Index i = 0; i < recipe_.mentions.size(); ++i) {
      const Mention& mention = recipe_.mentions[i];
      if (!mention.takes || mention.whole || mention.taking == Taking::amount || mention.taking == Taking::named) continue;
      if (mention.target.kind != TargetKind::line) continue;
      const TakeLine& line = recipe_.lines[mention.target.index];
      if (line.amount.is_lost()) continue;
      Quantity part = line.amount;
      part.low *= mention.part_low, part.high *= mention.part_high;
      out[i] = shower_.amount(&line, part, mention.span, true);
    }
  }

  // Counts round down, so that nobody goes short.
  Shown made(const Quantity& amount, Span span) {
    if (amount.dimension() != Dimension::count) return shower_.amount(nullptr, amount, span, false);
    if (recipe_.factor == Fraction(1)) return shower_.as_written(span, amount);
    Shown shown;
    const Fraction low = Fraction::of(std::max<Wide>(amount.low.floor(), 1), 1), high = Fraction::of(std::max<Wide>(amount.high.floor(), 1), 1);
    shown.text = shown.number = low == high ? low.exact() : low.exact() + " to " + high.exact();
    shown.exact = amount;
    shown.changed = true;
    return shown;
  }

 private:
  const TakeLine* line_of(const Clause& clause) const {
    if (clause.mentions.count == 0) return nullptr;
    const Target& target = recipe_.mentions[clause.mentions.first].target;
    return target.kind == TargetKind::line || target.kind == TargetKind::aside ? &recipe_.lines[target.index] : nullptr;
  }

  Shown term(const Clause& clause, const Term& term) {
    if (term.changed) {
      Shown shown;
      shown.text = shown.number = write_plain(term.amount);
      shown.exact = term.amount;
      shown.changed = true;
      return shown;
    }
    if (term.role == TermRole::by && is_heat(term)) return difference(term);
    if (is_heat(term)) {
      const Verb& verb = clause.house_verb != nullptr ? *clause.house_verb : qtn::verb(clause.verb);
      const bool oven = term.role == TermRole::temperature && (verb.takes & static_cast<std::uint8_t>(Takes::oven)) != 0;
      const bool restated = clause.terms.end() > clause.terms.first && std::any_of(recipe_.terms.begin() + clause.terms.first, recipe_.terms.begin() + clause.terms.end(),
                                                                                   [](const Term& t) { return t.role == TermRole::equivalent; });
      return shower_.heat(term, oven && !restated);
    }
    switch (term.role) {
      case TermRole::use:
      case TermRole::checkpoint:
      case TermRole::to: return shower_.amount(line_of(clause), term.amount, term.span, false);
      case TermRole::piece_weight:
      case TermRole::measure: return term.amount.is_lost() ? shower_.as_written(term.span, term.amount) : shower_.length(term);
      case TermRole::pieces: return pieces(term);
      default: return shower_.as_written(term.span, term.amount);
    }
  }

  Shown pieces(const Term& term) {
    if (recipe_.factor == Fraction(1) || term.amount.is_lost()) return shower_.as_written(term.span, term.amount);
    Shown shown;
    shown.text = shown.number = to_text(std::max<Wide>(term.amount.low.nearest(), 1));
    shown.exact = term.amount;
    shown.changed = true;
    return shown;
  }

  // A step between two temperatures converts without the 32 (S1-111).
  Shown difference(const Term& term) {
    Shown shown = shower_.as_written(term.span, term.amount);
    const bool fahrenheit = term.amount.unit == common().fahrenheit;
    if (system_ == System::written || (system_ == System::american) == fahrenheit) return shown;
    const Fraction other = fahrenheit ? term.amount.low * Fraction::of(5, 9) : term.amount.low * Fraction::of(9, 5);
    shown.text = shown.number = to_text(other.nearest()) + (fahrenheit ? " °C" : " °F");
    shown.changed = true;
    return shown;
  }

  // Lines of one ratio drift from each other by at most one tolerance (semantics 7.4).
  void tie(const Part& part, std::vector<Shown>& out) {
    std::vector<Index> tied;
    for (Index i = part.lines.first; i < part.lines.end(); ++i)
      if (rounded_[i] && !rounded_[i]->rough && (is_ratio(recipe_.lines[i]) || part.head.basis != Basis::amount) && rounded_[i]->exact.sign() > 0) tied.push_back(i);
    if (tied.size() < 2) return;
    const auto drift = [&](Index i) { return rounded_[i]->shown / rounded_[i]->exact; };
    std::vector<bool> stuck(recipe_.lines.size(), false);
    for (int round = 0; round < 64; ++round) {
      const auto [low, high] = std::minmax_element(tied.begin(), tied.end(), [&](Index a, Index b) { return drift(a) < drift(b); });
      if (drift(*high) / drift(*low) <= Fraction(1) + recipe_.tolerance()) return;
      const bool first = !stuck[*high] && (stuck[*low] || rounded_[*high]->rung <= rounded_[*low]->rung);
      const Index at = first ? *high : *low;
      if (stuck[*high] && stuck[*low]) return;
      if (!refine(*rounded_[at])) {
        stuck[at] = true;
        continue;
      }
      out[at].text = write(*rounded_[at]);
      const auto pieces = write_pieces(*rounded_[at]);
      out[at].number = pieces.size() == 1 ? pieces[0].number : "";
      out[at].unit = pieces.size() == 1 ? pieces[0].unit : "";
    }
  }

  System system_;
  const Recipe& recipe_;
  Shower shower_;
  std::vector<std::optional<Rounded>> rounded_;
};

void watch(const Recipe& recipe, Report& lacks) {
  if (recipe.factor == Fraction(1)) return;
  if (recipe.factor < Fraction::of(1, 2) || recipe.factor > Fraction(2))
    lacks.add(Code::times_not_tested, {}, "The times are those of the recipe as written; at this size they are not tested.");
  if (recipe.scales && (recipe.factor < recipe.scales->low || recipe.factor > recipe.scales->high))
    lacks.add(Code::outside_scales, {}, "The recipe has been found to hold from " + write_number(recipe.scales->low, true, false) + " to " + write_number(recipe.scales->high, true, false) + " times, and this card is outside that.");
}

}  // namespace

Adapted show(const Recipe& recipe, const Request& request) {
  Adapted out;
  out.recipe = &recipe;
  out.units = request.units;
  out.beside = request.beside;
  Showing first(recipe, request, request.units, &out.lacks);
  first.lines(out.lines);
  first.tails(out.tails);
  first.terms(out.terms);
  first.mentions(out.mentions);
  for (const Made& made : recipe.makes) out.makes.push_back(first.made(made.amount, made.amount_span));
  for (const Part& part : recipe.parts) {
    out.part_makes.emplace_back();
    for (const Made& made : part.makes) out.part_makes.back().push_back(first.made(made.amount, made.amount_span));
  }
  if (recipe.serves) out.serves = first.made(*recipe.serves, recipe.serves_span);
  if (request.beside) {
    Showing second(recipe, request, *request.beside, nullptr);
    second.lines(out.lines_beside);
    second.terms(out.terms_beside);
    second.mentions(out.mentions_beside);
  }
  watch(recipe, out.lacks);
  return out;
}

}  // namespace qtn
