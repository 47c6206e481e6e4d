// Phase 7: is a formula far outside what is usual for its kind? A note, and only where the kind is plain and nothing that
// counts is unknown.
#include <algorithm>

#include "recipe/formula.hpp"
#include "recipe/formula_ranges.hpp"
#include "recipe/phases.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::size_t kMostLines = 200;  // a longer list is no formula

bool is_yeast(const Food* food) {
  return food != nullptr && (food->name == "dried yeast" || food->name == "fresh yeast");
}
bool is_salt(const Food* food) {
  const Composition* const row = food == nullptr ? nullptr : composition_of(*food);
  return row != nullptr && row->salt == Fraction(1);
}
bool is_egg(const Food* food) {
  return food != nullptr && (food->name == "egg" || food->name == "egg white" || food->name == "egg yolk" ||
                             food->name.ends_with(" egg"));
}

// What a line has of it, in grams; lost where nobody has published it.
Fraction measured(const FormulaLine& line, Measured of) {
  const auto all_if = [&](bool is) { return is ? line.grams : Fraction(0); };
  const Composition* const row = line.food == nullptr ? nullptr : composition_of(*line.food);
  const auto share = [&](const Fraction Composition::* inside) {
    return row == nullptr ? Fraction::lost() : row->*inside * line.grams;
  };
  switch (of) {
    case Measured::water:
      return line.flour ? Fraction(0) : share(&Composition::water);
    case Measured::fat:
      return share(&Composition::fat);
    case Measured::sugars:
      return share(&Composition::sugars);
    case Measured::salt:
      return all_if(is_salt(line.food));
    case Measured::yeast:
      return all_if(is_yeast(line.food));
    default:
      return all_if(is_egg(line.food));
  }
}

// Do the words stand in the name, in this order? Most names are told apart by their letters, without being folded.
bool has_words(std::string_view name, const std::vector<std::string>& words) {
  const std::string& last = words.back();
  const auto same = [](char a, char b) { return (a | 0x20) == b; };
  if (std::search(name.begin(), name.end(), last.begin(), last.end(), same) == name.end()) return false;
  const std::vector<std::string> in = fold_name(name);
  return std::search(in.begin(), in.end(), words.begin(), words.end()) != in.end();
}

class Check {
 public:
  Check(const Recipe& recipe, Report& report) : recipe_(recipe), report_(report) {}

  void run() {
    if (!worth_it()) return;
    for (const Formula& formula : whole_formulas_of(recipe_)) {
      if (!formula.not_weighed.empty() || formula.flour.sign() <= 0) continue;
      for (const FormulaRange& range : formula_ranges())
        if (is_of_kind(formula, range)) compare(formula, range);
    }
  }

 private:
  // Most recipes are none of these kinds, and are told so without being worked out.
  bool worth_it() const {
    if (recipe_.lines.size() > kMostLines || recipe_.kind != FileKind::recipe) return false;
    const bool yeast = std::any_of(recipe_.lines.begin(), recipe_.lines.end(),
                                   [](const TakeLine& line) { return is_yeast(line.food); });
    return yeast || std::any_of(formula_ranges().begin(), formula_ranges().end(), [&](const FormulaRange& range) {
             return !range.words.empty() && is_named(range);
           });
  }
  bool is_named(const FormulaRange& range) const {
    if (has_words(recipe_.title, range.words)) return true;
    return std::any_of(recipe_.parts.begin(), recipe_.parts.end(),
                       [&](const Part& part) { return !part.unnamed && has_words(part.name, range.words); });
  }

  bool is_of_kind(const Formula& formula, const FormulaRange& range) const {
    if (formula.flour < range.flour * formula.whole) return false;
    if (!range.words.empty() && !has_words(formula.name, range.words)) return false;
    return !range.yeast || std::any_of(formula.lines.begin(), formula.lines.end(),
                                       [](const FormulaLine& line) { return is_yeast(line.food); });
  }

  void compare(const Formula& formula, const FormulaRange& range) {
    // The other lines are all there is to bring it, and no flour is more than a quarter fat or sugar.
    const Fraction others = formula.whole - formula.flour;
    if (range.least.is_lost() && others <= (range.most - Fraction::of(1, 4)) * formula.flour) return;
    const Fraction enough = range.least * formula.flour;  // lost where there is no least
    Fraction sum, brings;
    const FormulaLine* most = nullptr;  // the line that brings the most of it
    for (const FormulaLine& line : formula.lines) {
      if (line.grams.is_zero()) continue;
      const Fraction grams = measured(line, range.of);
      if (grams.is_lost()) return;  // nothing is said on a guess
      sum += grams;
      if (grams > brings) brings = grams, most = &line;
      if (range.most.is_lost() && sum >= enough) return;
    }
    const Fraction share = sum / formula.flour;
    const bool low = share < range.least, high = share > range.most;
    if (high || (low && !may_be_more(formula, range.of))) say(formula, range, share, most);
  }

  // Water, as needed: how much goes in is the cook's affair.
  static bool may_be_more(const Formula& formula, Measured of) {
    return std::any_of(formula.not_measured.begin(), formula.not_measured.end(), [&](std::string_view name) {
      const Food* const food = Larder::standard().find(name);
      if (food == nullptr) return true;
      FormulaLine line;
      line.food = food;
      line.grams = Fraction(1);
      const Fraction share = measured(line, of);
      return share.is_lost() || share > Fraction::of(1, 2);
    });
  }

  void say(const Formula& formula, const FormulaRange& range, const Fraction& share, const FormulaLine* most) {
    const auto per_cent = [](const Fraction& value) {
      return (value * Fraction(100)).decimal(value < Fraction::of(1, 10) ? 1 : 0) + " %";
    };
    const FormulaLine* flour = nullptr;
    for (const FormulaLine& line : formula.lines)
      if (line.flour && line.line != kNone && flour == nullptr) flour = &line;
    if (most == nullptr || most->line == kNone) most = flour;
    const Span at = most == nullptr ? recipe_.parts[recipe_.dish].span : recipe_.lines[most->line].span;
    const std::string size = share < range.usual ? "very little" : "very much";
    auto& problem = report_.add(Code::formula_far, at,
                                "There is " + per_cent(share) + " of " + std::string(range.of_word) +
                                    " to the flour, " + size + " for a " + std::string(range.kind) + ".");
    problem.expect("about " + per_cent(range.usual) + ", as is usual (" + std::string(range.source) + ")")
        .find(per_cent(share) + " of the flour's weight");
    if (flour != nullptr && flour != most) problem.also(recipe_.lines[flour->line].span, "the flour");
  }

  const Recipe& recipe_;
  Report& report_;
};

}  // namespace

void check_formula(const Recipe& recipe, Report& report) {
  if (report.has_errors()) return;  // what follows from a mistake is silent
  Check(recipe, report).run();
}

}  // namespace qtn
