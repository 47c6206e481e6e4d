// Another tin, and pastry rolled out for one.
#include "app/question.hpp"
#include "formula/figures.hpp"
#include "formula/paste.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

struct TwoTins {
  TinSize before, after;
};
std::optional<TwoTins> tins_of(const Question& question) {
  for (std::string_view joint : {" to ", " into ", " -> ", " → "}) {
    for (std::size_t at = question.text.find(joint); at != std::string::npos; at = question.text.find(joint, at + 1)) {
      const auto before = tin_size_of(trim(std::string_view(question.text).substr(0, at)), question.dialect);
      const auto after = before ? tin_size_of(trim(std::string_view(question.text).substr(at + joint.size())), question.dialect) : std::nullopt;
      if (before && after) return TwoTins{*before, *after};
    }
  }
  return std::nullopt;
}

// The tin that stands between "for" and the thickness.
std::optional<TinSize> tin_to_line(const Question& question) {
  const std::size_t begin = question.text.find(" for "), end = question.text.rfind(" at ");
  if (begin == std::string::npos || end == std::string::npos || end < begin + 5) return std::nullopt;
  std::string_view text = trim(std::string_view(question.text).substr(begin + 5, end - begin - 5));
  for (std::string_view word : {"a ", "an ", "the "})
    if (text.substr(0, word.size()) == word) text.remove_prefix(word.size());
  if (text.size() > 4 && text.substr(text.size() - 4) == " tin") text.remove_suffix(4);
  return tin_size_of(text, question.dialect);
}

std::string density_said() {
  const KitchenFigure& density = kitchen_figure("paste density");
  return density.low.decimal(1) + " g per ml of raw short paste, " + std::string(density.source);
}

std::string square_cm(const Fraction& square_mm) { return (square_mm / Fraction(100)).decimal(0) + " cm²"; }

// Behind "at", or the only length of the question.
const Asked* thickness(const Question& question) {
  const Asked* last = nullptr;
  for (const Asked& one : question.amounts)
    if (one.dimension() == Dimension::length) last = &one;
  return last;
}

}  // namespace

bool asks_paste(const Question& question) {
  return question.has_any({"pastry", "paste", "shortcrust"}) && thickness(question) != nullptr;
}

std::optional<Sum> answer_paste(const Question& question, std::string& problem) {
  const Asked* const thick = thickness(question);
  const Fraction mm = thick->amount.low * size_of(thick->amount.unit, question.dialect);
  if (mm.sign() <= 0 || thick->amount.is_range()) return problem = "Pastry has one thickness, above 0: \"370 g pastry at 3 mm\".", std::nullopt;
  Sum sum;
  sum.because = density_said();
  if (const Asked* const weight = question.only(Dimension::mass); weight != nullptr) {
    const Ends grams = weigh(question, *weight, problem);
    if (grams.low.is_lost()) return std::nullopt;
    const Fraction area = paste_covers(grams.low, mm);
    sum.answer = square_cm(area) + ", or a round " + (widest_round(area) / Fraction(10)).decimal(1) + " cm wide";
    sum.exact = (area / Fraction(100)).exact() + " cm²";
    sum.rule = "weight ÷ density ÷ thickness; geometry";
    sum.notes = {"Nothing is taken off for trimmings."};
    return sum;
  }
  const std::optional<TinSize> tin = tin_to_line(question);
  const Fraction lining = tin ? lining_of(*tin) : Fraction::lost();
  if (lining.is_lost()) {
    problem = "Pastry wants a weight, or a tin with its depth, and how thick: \"370 g pastry at 3 mm\", \"pastry for 23 cm round, 3 cm deep at 3 mm\".";
    return std::nullopt;
  }
  const Fraction grams = paste_for(lining, mm);
  sum.answer = rounded_up(grams, 0) + " g pastry, for " + square_cm(lining);
  sum.exact = grams.exact() + " g";
  sum.rule = "floor and sides × thickness × density; geometry";
  sum.notes = {"Nothing is added for trimmings or a rim: most cooks roll out a tenth more (common practice, no source)."};
  return sum;
}

bool asks_tin(const Question& question) { return tins_of(question).has_value(); }

std::optional<Sum> answer_tin(const Question& question, std::string& problem) {
  const std::optional<TwoTins> tins = tins_of(question);
  const TinFactor found = tins ? tin_factor(tins->before, tins->after) : TinFactor{};
  if (found.factor.is_lost()) {
    problem = "These two tins cannot be compared: give the width of both, or what both hold.";
    return std::nullopt;
  }
  Sum sum;
  sum.answer = found.factor.decimal(2) + " times the recipe";
  sum.exact = found.factor.exact();
  sum.rule = found.by_top ? "by their tops, since a depth is not given; geometry" : "by what they hold to the brim; geometry";
  sum.notes = {"The baking time belongs to the tin that was tried."};
  return sum;
}

}  // namespace qtn
