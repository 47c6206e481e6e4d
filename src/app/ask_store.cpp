// Thawing and yields.
#include "app/question.hpp"
#include "formula/store.hpp"

namespace qtn {
namespace {

// "2 days 17 h", "7 h 10 min"; up to the next ten minutes, since thawed too long in the cold is thawed.
std::string say_time(const Fraction& minutes) {
  const auto whole = static_cast<long long>((minutes / Fraction(10)).ceil()) * 10;
  const long long days = whole / 1440, hours = whole % 1440 / 60, rest = whole % 60;
  std::string out;
  const auto add = [&](long long number, const char* word) {
    if (number != 0) out += (out.empty() ? "" : " ") + std::to_string(number) + word;
  };
  add(days, days == 1 ? " day" : " days"), add(hours, " h"), add(rest, " min");
  return out.empty() ? "0 min" : out;
}

std::string hours(const Fraction& minutes) { return (minutes / Fraction(60)).exact(); }

}  // namespace

bool asks_thaw(const Question& question) { return question.has_any({"thaw", "thawing", "defrost", "defrosting"}); }

std::optional<Sum> answer_thaw(const Question& question, std::string& problem) {
  const bool fridge = question.has_any({"fridge", "refrigerator", "larder"}), water = question.has("water");
  const bool warm = question.has_any({"room", "worktop", "counter", "kitchen", "outside"}) || question.only(Dimension::temperature) != nullptr;
  if (warm) return problem = "Meat is not thawed in a room: its outside is warm for hours before its middle is soft (advice of the UK Food Standards Agency). The tables with hours a kilogram at room temperature are superseded and not used here. Ask \"in the fridge\" or \"in cold water\".", std::nullopt;
  const Asked* const weight = question.only(Dimension::mass);
  if (weight == nullptr || fridge == water) {
    problem = "Thawing wants one weight and a place: \"thaw 6.5 kg in the fridge\", \"thaw 6.5 kg in cold water\".";
    return std::nullopt;
  }
  const Ends grams = weigh(question, *weight, problem);
  if (grams.low.is_lost()) return std::nullopt;
  const bool american = question.dialect == Dialect::american;
  const ThawPlace place = fridge ? ThawPlace::fridge : ThawPlace::cold_water;
  const Thawing low = thaw(grams.low, place, american), high = thaw(grams.high, place, american);
  Sum sum;
  sum.answer = both(say_time(low.low), say_time(high.high)) + (fridge ? " in the fridge" : " in cold water");
  sum.exact = both(hours(low.low), hours(high.high)) + " h";
  sum.rule = std::string(!fridge ? "30 min a lb, the water changed every 30 min" : american ? "24 h for every 4 to 5 lb" : "10 to 12 h a kg") + "; " + std::string(low.source);
  if (!fridge && !american) sum.notes.push_back("This is the American figure: no British one for cold water is known here.");
  if (fridge) sum.notes.push_back("At 4 °C (40 °F) or below, in a deep dish on the lowest shelf. Thawed so it keeps 1 to 2 days more (USDA FSIS).");
  else sum.notes.push_back("In a bag that does not leak. Thawed so it is cooked at once (USDA FSIS).");
  sum.notes.push_back("Caution: see that no ice is left in the middle before it is cooked. The figures are for whole birds; follow your local code.");
  return sum;
}

bool asks_yield(const Question& question) { return question.has("yield"); }

namespace {

const char* const kForms = "Say which way: \"buy 5 lb broccoli at 81 % yield\", \"edible from 6.25 lb broccoli at 81 % yield\", \"yield of 4.6 kg from 5.2 kg\".";

// 81 % or 0.81; a bare 81 is refused.
Fraction yield_said(const Question& question, std::string& problem) {
  for (const Asked& one : question.amounts) {
    if (one.amount.unit == common().percent) return one.amount.low / Fraction(100);
    if (one.bare() && one.near("yield")) {
      if (one.amount.low.sign() > 0 && one.amount.low <= Fraction(1)) return one.amount.low;
      problem = "A yield of `" + one.written + "` without a unit could be a share or per cent: write `" + one.written + " %`.";
      return Fraction::lost();
    }
  }
  return problem = kForms, Fraction::lost();
}

std::optional<Sum> yield_from_two(const Question& question, std::string& problem) {
  Fraction grams[2];
  int count = 0;
  for (const Asked& one : question.amounts) {
    const Ends base = weigh(question, one, problem);
    if (base.low.is_lost()) return std::nullopt;
    grams[count++] = base.low;
  }
  const bool first_bought = question.amounts[0].near("bought") || question.amounts[0].near("from");
  const bool turned = first_bought && !has_word(question.amounts[1].before, "from");
  const Fraction share = turned ? yield_of(grams[1], grams[0]) : yield_of(grams[0], grams[1]);
  Sum sum;
  sum.answer = (share * Fraction(100)).decimal(1) + " % yield";
  sum.exact = (share * Fraction(100)).exact() + " %";
  sum.rule = "edible ÷ as purchased; Professional Cooking (Wiley)";
  return sum;
}

}  // namespace

std::optional<Sum> answer_yield(const Question& question, std::string& problem) {
  if (question.amounts.size() == 2 && question.amounts[0].dimension() == Dimension::mass && question.amounts[1].dimension() == Dimension::mass) return yield_from_two(question, problem);
  const Fraction yield = yield_said(question, problem);
  if (yield.is_lost()) return std::nullopt;
  if (yield.sign() <= 0) return problem = "A yield lies above 0.", std::nullopt;
  const Asked* amount = question.only(Dimension::mass);
  if (amount == nullptr) amount = question.only(Dimension::volume);
  const bool back = question.has_any({"edible", "left", "bought", "trimmed", "from"});
  const bool buy = question.has_any({"buy", "order", "need", "purchase"});
  if (amount == nullptr || buy == back || amount->amount.low.sign() <= 0) return problem = kForms, std::nullopt;
  const auto found = [&](const Fraction& value) { return buy ? bought_for(value, yield) : edible_of(value, yield); };
  const Fraction low = found(amount->amount.low), high = found(amount->amount.high);
  const std::string symbol = " " + std::string(write_unit(amount->amount.unit, high));
  Sum sum;
  sum.answer = (buy ? "buy " + both(rounded_up(low, 2), rounded_up(high, 2)) : both(rounded_down(low, 2), rounded_down(high, 2))) + symbol + (buy ? "" : " edible");
  sum.exact = both(low.exact(), high.exact()) + symbol;
  sum.rule = std::string(buy ? "edible ÷ yield" : "as purchased × yield") + "; Professional Cooking (Wiley)" + (buy ? "; an order is rounded up" : "; what is left is rounded down");
  sum.notes = {"A yield belongs to one cut: broccoli is printed at 81 %, trimmed at 61 %, as florets at 45.5 %."};
  return sum;
}

}  // namespace qtn
