// Which sum a question is: a conversion where it ends in a unit, else one of the kitchen formulas.
#include "app/ask.hpp"

#include "app/question.hpp"

namespace qtn {
namespace {

struct KitchenSum {
  bool (*asks)(const Question&);
  std::optional<Sum> (*answer)(const Question&, std::string&);
  std::string_view example;
};

// The first that a question is one of answers it.
constexpr KitchenSum kSums[] = {
    {asks_cure, answer_cure, "2.5 g cure at 6.25 % nitrite in 1 kg meat"},
    {asks_salometer, answer_salometer, "brine at 40 degrees salometer"},
    {asks_brine, answer_brine, "2 % salt in 1 kg meat and 500 g water"},
    {asks_dough, answer_dough, "water for dough at 26 °C, flour 20 °C, room 22 °C, friction 12 °C"},
    {asks_ice, answer_ice, "ice in 10 kg water at 20 °C to 5 °C"},
    {asks_percents, answer_percents, "baker's per cent of 500 g flour, 340 g water, 10 g salt"},
    {asks_thaw, answer_thaw, "thaw 6.5 kg in the fridge"},
    {asks_yield, answer_yield, "buy 5 lb broccoli at 81 % yield"},
    {asks_paste, answer_paste, "370 g pastry at 3 mm"},
    {asks_label, answer_label, "2.4 tbsp on a label"},
    {asks_tin, answer_tin, "23 cm round, 3 cm deep to 26 cm round, 3 cm deep"},
};

std::string not_read() {
  std::string out = "This is no sum that is known. One amount in another unit ends in the unit: \"2 1/4 cups plain flour in g\". The others read like these:";
  for (const KitchenSum& one : kSums) out += "\n  \"" + std::string(one.example) + "\"";
  return out;
}

}  // namespace

std::optional<Sum> ask(const std::string& question, Dialect dialect, std::string& problem) {
  if (asks_conversion(question)) return answer_conversion(question, dialect, problem);
  const std::optional<Question> read = read_question(question, dialect, problem);
  if (!read) return std::nullopt;
  for (const KitchenSum& one : kSums)
    if (one.asks(*read)) return one.answer(*read, problem);
  problem = not_read();
  return std::nullopt;
}

std::string write_sum(const Sum& sum) {
  std::string out = sum.answer + "\n";
  if (!sum.exact.empty()) out += "exactly " + sum.exact + "\n";
  if (!sum.because.empty()) out += "through " + sum.because + "\n";
  if (!sum.rule.empty()) out += "rule: " + sum.rule + "\n";
  for (const std::string& note : sum.notes) out += note + "\n";
  return out;
}

}  // namespace qtn
