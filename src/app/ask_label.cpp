// What one serving measures, as an American label says it.
#include "app/question.hpp"
#include "formula/label.hpp"

namespace qtn {

bool asks_label(const Question& question) { return question.has("label"); }

std::optional<Sum> answer_label(const Question& question, std::string& problem) {
  const Asked* const amount = question.amounts.size() == 1 ? &question.amounts[0] : nullptr;
  const OnLabel found = amount != nullptr && !amount->amount.is_range() ? on_label(amount->amount.low, amount->amount.unit) : OnLabel{};
  if (found.value.is_lost()) {
    problem = "A label wants one amount in cups, tbsp, tsp, oz, fl oz, g or ml: \"2.4 tbsp on a label\".";
    return std::nullopt;
  }
  const bool decimal = is_decimal(found.unit);
  const std::string symbol = " " + std::string(write_unit(found.unit, found.value));
  Sum sum;
  sum.answer = write_number(found.value, true, decimal) + symbol + " on a label";
  sum.exact = found.value.exact() + symbol;
  sum.rule = "what one serving measures, to the steps of an American label, half way up; " + std::string(found.source);
  sum.notes = {"A label's cup is 240 ml, its tbsp 15 ml, its tsp 5 ml, its oz 28 g. Elsewhere other rules hold: follow your local code."};
  return sum;
}

}  // namespace qtn
