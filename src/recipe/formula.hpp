// The trade's formula of a checked recipe: what each line is of the flour, or of the named base, and of the whole; part by
// part, and overall with the parts that are taken merged in. All exact; whoever shows it rounds.
#pragma once
#include "larder/composition.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

enum class Inside : std::uint8_t { water, fat, sugars, salt };
inline constexpr std::size_t kInsides = 4;

struct FormulaLine {
  std::string_view name;
  const Food* food = nullptr;
  Fraction grams = Fraction::lost();  // lost: nobody says what it weighs
  bool flour = false;
  bool ranged = false;   // counted at the middle of its range
  bool taken = false;    // a part or another recipe
  bool aside = false;    // for something else than the mixture: `for the top`, `for boiling`
  Index line = kNone;    // of the recipe at hand; kNone when another file has it
  Fraction flour_grams;  // the flour in it
};

struct FormulaTotal {
  Fraction grams;
  std::vector<std::string_view> left_out;  // whose share of it nobody has published
};

enum class FormulaBase : std::uint8_t { none, flour, named };

struct Formula {
  std::string_view name;
  bool unnamed = false;  // of the part that bears the recipe's name
  bool overall = false;  // the parts that are taken are merged in
  std::vector<FormulaLine> lines;
  FormulaBase base = FormulaBase::none;
  std::vector<std::string_view> base_names;    // of a named base
  Fraction base_grams, flour, whole;           // in grams; what nobody can weigh is in none of them
  FormulaTotal totals[kInsides];               // water: all but the flour's own
  bool has_totals = false;                     // of a part that takes another they stand in the overall formula
  std::vector<std::string_view> not_weighed;   // measured, but nobody says what it weighs
  std::vector<std::string_view> not_measured;  // to taste, for the tin
};

// Each part that has lines of its own, then what is made of several. Empty where nothing can be weighed.
std::vector<Formula> formulas_of(const Recipe& recipe);
// Only what is finished: parts that another dough takes in are no formula by themselves. For checks.
std::vector<Formula> whole_formulas_of(const Recipe& recipe);

}  // namespace qtn
