// Dough water, ice, and the shares of a formula.
#include <algorithm>
#include <span>

#include "app/pipeline.hpp"
#include "app/question.hpp"
#include "formula/dough.hpp"
#include "formula/figures.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

using Keys = std::span<const std::string_view>;
constexpr std::string_view kDough[] = {"dough", "wanted"};
constexpr std::string_view kFlour[] = {"flour"};
constexpr std::string_view kRoom[] = {"room", "kitchen", "air"};
constexpr std::string_view kFriction[] = {"friction", "mixer", "mixing"};
constexpr std::string_view kFerment[] = {"ferment", "preferment", "starter", "leaven", "levain", "sponge", "biga", "poolish"};

// The temperature that is said of a thing: in the words before it, else in those behind.
const Asked* heat_of(const Question& question, Keys keys) {
  for (bool before : {true, false})
    for (const Asked& one : question.amounts)
      for (std::string_view key : keys)
        if ((one.bare() || one.dimension() == Dimension::temperature) && has_word(before ? one.before : one.after, key)) return &one;
  return nullptr;
}

std::string degrees(const Fraction& celsius, UnitId scale, int places) {
  return from_celsius(celsius, scale).decimal(places) + (scale == common().celsius ? " °C" : " °F");
}

// "the friction of the mixer": what is missing, or has no scale.
std::string dough_lacks(const Question& question, const Asked* dough, const Asked* flour, const Asked* room, const Asked* friction) {
  std::string lacks;
  const auto need = [&](const Asked* one, const std::string& what) {
    if (one == nullptr) lacks += (lacks.empty() ? "" : ", ") + what;
  };
  need(dough, "how warm the dough is to be"), need(flour, "the flour"), need(room, "the room"), need(friction, "the friction");
  if (!lacks.empty())
    return "The rule for dough water also wants " + lacks +
           (friction == nullptr ? ". Friction is what mixing warms the dough by: printed figures run from 0 by hand to 25 °F (14 °C) and more in a machine, so measure it on your own mixer." : ".");
  for (const Asked& one : question.amounts)
    if (one.bare()) return "`" + one.written + "` could be °C or °F: write the scale behind it.";
  for (const Asked* one : {dough, flour, room, friction})
    if (one->amount.is_range()) return "`" + one->written + "` is a range; one temperature is wanted.";
  return "";
}

std::string dough_rule(bool ferment) {
  const KitchenFigure& factor = kitchen_figure(ferment ? "dough factor, ferment" : "dough factor");
  return factor.low.exact() + " × dough − flour − room" + (ferment ? " − ferment" : "") + " − friction; " + std::string(factor.source);
}

}  // namespace

bool asks_dough(const Question& question) {
  return question.has("friction") || (question.has("water") && question.has("dough"));
}

std::optional<Sum> answer_dough(const Question& question, std::string& problem) {
  const Asked *dough = heat_of(question, kDough), *flour = heat_of(question, kFlour), *room = heat_of(question, kRoom),
              *friction = heat_of(question, kFriction), *ferment = heat_of(question, kFerment);
  problem = dough_lacks(question, dough, flour, room, friction);
  if (!problem.empty()) return std::nullopt;
  DoughHeat heat{celsius_of(*dough), celsius_of(*flour), celsius_of(*room), celsius_difference(*friction), {}};
  if (ferment != nullptr) heat.ferment = celsius_of(*ferment);
  const Fraction water = water_for(heat);
  const UnitId scale = dough->amount.unit;
  const std::string found = degrees(water, scale, 1);
  if (water < Fraction(0)) {
    problem = "Not possible with water alone: it would have to be at " + found + ". Cool the flour, or put ice in the place of part of the water: ask \"ice in 10 kg water at 20 °C to 5 °C\".";
    return std::nullopt;
  }
  if (water > Fraction(100)) {
    problem = "Not possible: the water would have to be at " + found + ", hotter than it boils. Warm the flour or the room.";
    return std::nullopt;
  }
  Sum sum;
  sum.answer = degrees(water, scale, 0) + " water";
  sum.exact = from_celsius(water, scale).exact() + (scale == common().celsius ? " °C" : " °F");
  sum.rule = dough_rule(ferment != nullptr);
  sum.notes = {"Friction is a difference: 35 °F of it is 19.4 °C. It belongs to one mixer, one speed and one time; measure your own.",
               "The rule knows no weights, so it is right to a degree or two."};
  if (water > Fraction(45)) sum.notes.push_back("Water this hot is mixed with the flour first: it harms yeast that it meets alone (common practice, no source).");
  return sum;
}

bool asks_ice(const Question& question) {
  return question.has("ice") && std::any_of(question.amounts.begin(), question.amounts.end(), [](const Asked& one) { return one.dimension() == Dimension::temperature; });
}

std::optional<Sum> answer_ice(const Question& question, std::string& problem) {
  const Asked *water = nullptr, *tap = nullptr, *wanted = nullptr;
  for (const Asked& one : question.amounts) {
    const bool weight = one.dimension() == Dimension::mass || one.dimension() == Dimension::volume;
    if (weight && water == nullptr) water = &one;
    if (one.dimension() != Dimension::temperature) continue;
    if (one.amount.is_range() || (tap != nullptr && wanted == nullptr)) wanted = &one;
    if (tap == nullptr) tap = &one;
  }
  if (water == nullptr || tap == nullptr || wanted == nullptr) {
    problem = "Ice wants the weight of the water, how warm it comes from the tap, and how cold it is to be: \"ice in 10 kg water at 20 °C to 5 °C\".";
    return std::nullopt;
  }
  // A litre of water is a kilogram here, whatever else stands beside it.
  Asked plain = *water;
  plain.after = "water";
  const Ends grams = weigh(question, plain, problem);
  if (grams.low.is_lost()) return std::nullopt;
  const Fraction from = celsius_of(*tap), to = to_celsius(wanted->amount.high, wanted->amount.unit);
  const Fraction ice = ice_in(grams.low, from, to);
  if (ice.is_lost() || from > Fraction(100)) {
    problem = "Ice cools water that is warmer than what is wanted, and not below 0 °C; here it is " + degrees(from, tap->amount.unit, 1) + " and is to be " + degrees(to, wanted->amount.unit, 1) + ".";
    return std::nullopt;
  }
  const UnitId unit = water->amount.unit;
  const Fraction share = ice / grams.low, in_unit = share * water->amount.low;
  const std::string symbol = " " + std::string(write_unit(unit, in_unit));
  Sum sum;
  sum.answer = in_unit.decimal(2) + symbol + " ice and " + (water->amount.low - in_unit).decimal(2) + symbol + " water";
  sum.exact = in_unit.exact() + symbol + " ice";
  const KitchenFigure& melting = kitchen_figure("ice melting");
  sum.rule = "water × (tap − wanted) ÷ (tap + " + melting.low.decimal(1) + " °C), what the melting ice takes up; " + std::string(melting.source);
  sum.notes = {"Weigh the ice and count it as water in the formula; it is reckoned at 0 °C, and the bowl and the room are left out."};
  return sum;
}

bool asks_percents(const Question& question) {
  const bool cent = question.has_any({"percent", "percentage", "percentages", "cent"});
  return cent && question.has_any({"baker's", "bakers'", "bakers", "baker", "true"});
}

namespace {

// What stands behind "of" as lines of a list, read by the list's own rules.
std::string list_of(const std::string& text) {
  const std::size_t of = text.find(" of ");
  std::string list;
  for (std::size_t at = of == std::string::npos ? text.size() : of + 4; at < text.size(); ++at) list += text[at] == ',' || text[at] == ';' ? '\n' : text[at];
  for (std::size_t at = list.find(" and "); at != std::string::npos; at = list.find(" and ", at)) list.replace(at, 5, "\n");
  std::string lines;
  for (std::size_t from = 0; from <= list.size();) {
    const std::size_t end = std::min(list.find('\n', from), list.size());
    std::string_view one = trim(std::string_view(list).substr(from, end - from));
    if (one.substr(0, 4) == "and ") one.remove_prefix(4);
    if (!one.empty()) lines += "  " + std::string(one) + "\n";
    from = end + 1;
  }
  return lines;
}

}  // namespace

std::optional<Sum> answer_percents(const Question& question, std::string& problem) {
  const bool of_all = question.has("true");
  const std::string head = question.dialect == Dialect::unstated ? "" : "measures: " + std::string(name_of(question.dialect)) + "\n";
  const Source source("sum", "recipe: sum\n" + head + "take:\n" + list_of(question.text));
  Workbench bench;
  Report report;
  const Recipe recipe = compile(source, {}, bench, report);
  std::vector<Fraction> weights;
  Fraction flour, all;
  for (const TakeLine& line : recipe.lines) {
    const Fraction grams = line.measured() ? grams_of(recipe, line, line.amount).low : Fraction::lost();
    if (grams.is_lost()) {
      problem = "`" + std::string(trim(recipe.slice(line.span))) + "` cannot be weighed here: give its weight.";
      return std::nullopt;
    }
    weights.push_back(grams);
    all += grams;
    if (is_flour(line)) flour += grams;
  }
  const Fraction base = of_all ? all : flour;
  if (weights.empty() || base.sign() <= 0 || !recipe.damaged.empty()) {
    problem = weights.empty() || !recipe.damaged.empty() ? "The list is not read: write \"baker's per cent of 500 g flour, 340 g water, 10 g salt\"." : "Baker's per cent is of the flour, and there is none in this list. Of everything together it is \"true per cent of …\".";
    return std::nullopt;
  }
  Sum sum;
  const std::vector<Fraction> shares = percents_of(weights, base);
  Fraction together;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    const std::string name(recipe.lines[i].name);
    sum.answer += (i == 0 ? "" : ", ") + name + " " + shares[i].decimal(2) + " %";
    sum.exact += (i == 0 ? "" : ", ") + name + " " + shares[i].exact();
    together += shares[i];
  }
  sum.answer += "; together " + together.decimal(2) + " %";
  sum.rule = of_all ? "weight ÷ the weight of everything, which is " + all.decimal(1) + " g; a bakery company's recipe book, p. 65"
                    : "weight ÷ the weight of all flour, which is " + flour.decimal(1) + " g; Professional Cooking (Wiley)";
  return sum;
}

}  // namespace qtn
