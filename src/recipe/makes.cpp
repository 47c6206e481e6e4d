#include "recipe/makes.hpp"

namespace qtn {

const std::vector<Made>& makes_of(const Recipe& recipe, Index part) {
  const Part& one = recipe.parts[part];
  return one.makes.empty() && part == recipe.dish ? recipe.makes : one.makes;
}

std::vector<Yield> yields_of(const Recipe& recipe, Index part) {
  std::vector<Yield> yields;
  for (const Made& made : makes_of(recipe, part)) {
    if (made.damaged) continue;
    const Ends base = in_base(made.amount, recipe.dialect);
    const Span span = made.amount_span.empty() ? made.span : made.amount_span;
    yields.push_back({made.amount.dimension(), base, made.amount.manner, made.by_product, false, span});
    if (!made.each) continue;
    const Ends each = in_base(*made.each, recipe.dialect);
    const Manner manner = made.each->manner == Manner::plain ? made.amount.manner : made.each->manner;
    yields.push_back({made.each->dimension(),
                      {base.low * each.low, base.high * each.high},
                      manner,
                      made.by_product,
                      true,
                      made.span.empty() ? span : made.span});
  }
  return yields;
}

bool in_sums(const TakeLine& line) {
  return line.measured() && !line.alternative && !line.struck && !line.splits;
}

const TakeLine& standing(const Recipe& recipe, const TakeLine& line) {
  return line.chosen < recipe.lines.size() ? recipe.lines[line.chosen] : line;
}

bool counts_in_pot(const Recipe& recipe, const Part&, Index step) {
  return recipe.steps[step].kind != StepKindOf::note && !is_other_way(recipe, step, std::nullopt);
}

const Tail* tail_of(const Recipe& recipe, const TakeLine& line, TailKind kind) {
  for (Index i = line.tails.first; i < line.tails.end(); ++i)
    if (recipe.tails[i].kind == kind) return &recipe.tails[i];
  return nullptr;
}

Quantity kept_amount(const Recipe& recipe, const TakeLine& line) {
  const Tail* kept = tail_of(recipe, line, TailKind::taking_up);
  return kept != nullptr && kept->amount ? *kept->amount : line.amount;
}

Fraction middle(const Ends& ends) {
  return ends.low == ends.high ? ends.low : (ends.low + ends.high) * Fraction::of(1, 2);
}

namespace {
// Three figures are as many as a cook reads; nothing is decided on them.
int places_for(const Fraction& size) {
  if (size < Fraction(1)) return 2;
  return size < Fraction(10) ? 1 : 0;
}
}  // namespace

std::string say_amount(const Fraction& base, Dimension dimension) {
  const bool weight = dimension == Dimension::mass, volume = dimension == Dimension::volume;
  if (!weight && !volume) return base.decimal(2);
  if (base.abs() >= Fraction(1000)) return (base / Fraction(1000)).decimal(2) + (weight ? " kg" : " l");
  return base.decimal(places_for(base.abs())) + (weight ? " g" : " ml");
}

std::string say_amount(const Ends& base, Dimension dimension) {
  if (base.low == base.high) return say_amount(base.low, dimension);
  return say_amount(base.low, dimension) + " to " + say_amount(base.high, dimension);
}

std::string say_error(const Fraction& is, const Fraction& should) {
  const Fraction percent = ((is - should) / should).abs() * Fraction(100);
  return percent.decimal(places_for(percent) == 0 ? 0 : 1) + " %";
}

}  // namespace qtn
