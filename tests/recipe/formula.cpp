// Formulas: per cent of the flour or of the named base and of the whole, parts merged, what ingredients bring.
#include "recipe/formula.hpp"

#include <doctest/doctest.h>

#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

const Formula* named(const std::vector<Formula>& all, std::string_view name, bool overall = false) {
  for (const Formula& one : all)
    if (one.name == name && one.overall == overall) return &one;
  return nullptr;
}
Fraction grams(const Formula& formula, std::string_view name) {
  for (const FormulaLine& line : formula.lines)
    if (line.name == name) return line.grams;
  return Fraction::lost();
}
const FormulaTotal& total(const Formula& formula, Inside which) {
  return formula.totals[static_cast<std::size_t>(which)];
}
// "67.00": what a weight is of the base, in per cent.
std::string of_base(const Formula& formula, const Fraction& weight) {
  return (weight / formula.base_grams * Fraction(100)).decimal(2);
}

const char* const kTwoStage =
    "recipe: Loaf\nmeasures: British\n\npart: Ferment\ntake: % of strong white flour\n  100 %  strong white flour\n"
    "  60 %  water\n  1 %  fresh yeast\nmethod:\n  Mix [everything].\n\npart: Dough\n"
    "take: % of [strong white flour + wholemeal flour]\n  322 g  [Ferment]\n  800 g  strong white flour\n"
    "  20 %  wholemeal flour\n  50 %  water\n  2 %  fine salt\nmethod:\n  Mix [everything].\n";

}  // namespace

TEST_CASE("formula: one dough") {
  const Checked c(
      "recipe: Baguettes\nmakes: 73 pieces of 390 g\nmeasures: British\ntake: % of strong flour\n  100 %  strong flour\n"
      "  67 %  water\n  2 %  fine salt\n  1 %  fresh yeast\n");
  const std::vector<Formula> all = formulas_of(c.recipe);
  REQUIRE(all.size() == 1);
  const Formula& dough = all[0];
  CHECK(dough.base == FormulaBase::flour);
  CHECK(dough.whole == Fraction(28470));
  CHECK(dough.flour == Fraction::of(2847000, 170));
  CHECK(of_base(dough, grams(dough, "water")) == "67");
  CHECK(total(dough, Inside::water).left_out.empty());
  // 67 of water and 69 in a hundred of fresh yeast.
  CHECK(of_base(dough, total(dough, Inside::water).grams) == "67.69");
}

TEST_CASE("formula: a ferment is merged into the overall formula") {
  const Checked c(kTwoStage);
  REQUIRE(c.codes() == "");
  const std::vector<Formula> all = formulas_of(c.recipe);
  REQUIRE(all.size() == 3);
  const Formula* const dough = named(all, "Dough");
  REQUIRE(dough != nullptr);
  CHECK(dough->base == FormulaBase::named);  // the flour inside the ferment is not in its hundred
  CHECK(of_base(*dough, grams(*dough, "Ferment")) == "32.2");
  CHECK_FALSE(dough->has_totals);
  const Formula* const overall = named(all, "Loaf", true);
  REQUIRE(overall != nullptr);
  // 322 g of ferment are 200 of flour, 120 of water, 2 of yeast.
  CHECK(overall->base == FormulaBase::flour);
  CHECK(overall->flour == Fraction(1200));
  CHECK(grams(*overall, "strong white flour") == Fraction(1000));
  CHECK(grams(*overall, "water") == Fraction(620));
  CHECK(grams(*overall, "fresh yeast") == Fraction(2));
  CHECK(overall->whole == dough->whole);
  CHECK(overall->lines[0].flour);
  CHECK(overall->lines[1].flour);
  CHECK(of_base(*overall, grams(*overall, "fine salt")) == "1.67");
}

TEST_CASE("formula: only as much of a ferment as is taken") {
  std::string text = kTwoStage;
  text.replace(text.find("100 %  strong"), 5, "500 g");  // makes 805 g, of which 322 go in
  const Checked c(text);
  REQUIRE(c.report.errors() == 0);
  const std::vector<Formula> all = formulas_of(c.recipe);
  const Formula* const overall = named(all, "Loaf", true);
  REQUIRE(overall != nullptr);
  CHECK(overall->flour == Fraction(1200));
  CHECK(grams(*overall, "water") == Fraction(620));
}

TEST_CASE("formula: its own last batch makes only more of the same") {
  const Checked c(
      "recipe: Levain\nmakes: 220 g\nmeasures: British\ntake: % of all flour\n  20 g  [Levain], from the last batch\n"
      "  100 g  strong flour\n  100 g  water\n");
  const std::vector<Formula> all = whole_formulas_of(c.recipe);
  REQUIRE(all.size() == 1);
  CHECK(all[0].whole == Fraction(220));
  CHECK(all[0].flour == Fraction(110));
}

TEST_CASE("formula: a recipe from another file, at the size that is taken") {
  const Checked levain(
      "recipe: Levain\nmakes: 400 g\nmeasures: British\ntake: % of strong flour\n  100 %  strong flour\n  100 %  "
      "water\n");
  Surroundings around;
  around.uses = {&levain.recipe};
  const Checked c(
      "recipe: Loaf\nmeasures: British\nuse: Levain from levain.qtn\ntake: % of all flour\n  200 g  [Levain]\n"
      "  900 g  strong flour\n  60 %  water\n  2 %  fine salt\n",
      around);
  REQUIRE(c.codes() == "");
  const std::vector<Formula> all = formulas_of(c.recipe);
  const Formula* const overall = named(all, "Loaf", true);
  REQUIRE(overall != nullptr);
  CHECK(overall->flour == Fraction(1000));
  CHECK(grams(*overall, "water") == Fraction(700));
  CHECK(of_base(*overall, grams(*overall, "fine salt")) == "2");
}

TEST_CASE("formula: a filling is no part of the pastry's formula") {
  const Checked c(
      "recipe: Tart\nmeasures: British\n\npart: Pastry\ntake: % of plain flour\n  200 g  plain flour\n  50 %  butter\n"
      "method:\n  Rub [the butter] into [the flour].\n\npart: Filling\ntake:\n  400 g  leeks\nmethod:\n  Sweat [the "
      "leeks].\n\npart: Tart\nmethod:\n  Line with [the Pastry], fill with [the Filling].\n");
  REQUIRE(c.codes() == "");
  const std::vector<Formula> all = formulas_of(c.recipe);
  REQUIRE(all.size() == 3);
  CHECK(named(all, "Pastry")->base == FormulaBase::flour);
  CHECK(named(all, "Filling")->base == FormulaBase::none);
  const Formula* const overall = named(all, "Tart", true);
  REQUIRE(overall != nullptr);
  CHECK(overall->base == FormulaBase::none);
  CHECK(overall->whole == Fraction(700));
}

TEST_CASE("formula: what is in the ingredients, and what nobody knows of them") {
  const Checked c(
      "recipe: Brioche\nmeasures: British\ntake:\n  500 g  strong white flour\n  200 g  unsalted butter\n"
      "  100 g  whole milk\n  100 g  double cream\n  10 g  fine salt\n  3  odd fruits\n         icing sugar, to taste\n");
  const std::vector<Formula> all = formulas_of(c.recipe);
  REQUIRE(all.size() == 1);
  const FormulaTotal& water = total(all[0], Inside::water);
  CHECK(water.grams == Fraction::of(1794 * 2, 100) + Fraction::of(8813, 100) + Fraction::of(2, 100));
  CHECK(water.left_out == std::vector<std::string_view>{"double cream"});
  CHECK(all[0].not_weighed == std::vector<std::string_view>{"odd fruits"});
  CHECK(all[0].not_measured == std::vector<std::string_view>{"icing sugar"});
  CHECK(total(all[0], Inside::salt).left_out == std::vector<std::string_view>{"double cream"});
  // 10 g of salt; 2 mg of sodium in 100 g of flour, 11 of butter, 43 of milk, times 2.5.
  CHECK(total(all[0], Inside::salt).grams == Fraction(10) + Fraction::of(5 * (2 * 5 + 11 * 2 + 43), 2 * 1000));
}

TEST_CASE("formula: a sauce is not measured by its flour") {
  const Checked c(
      "recipe: White sauce\nmeasures: British\ntake:\n  30 g  plain flour\n  30 g  butter\n  500 g  whole milk\n");
  CHECK(formulas_of(c.recipe).at(0).base == FormulaBase::none);
  const Checked pastry("recipe: Paste\nmeasures: British\ntake:\n  300 g  plain flour\n  150 g  butter\n");
  CHECK(formulas_of(pastry.recipe).at(0).base == FormulaBase::flour);
}

TEST_CASE("formula: parts that take one another without end or in great number") {
  std::string text = "recipe: Many\nmeasures: British\n";
  for (int i = 0; i < 1500; ++i) {
    text += "\npart: Dough" + std::string(static_cast<std::size_t>(i % 7) + 1, 'a') + std::to_string(i) + "x\ntake:\n  500 g  plain flour\n  5 g  dried yeast\n";
    if (i > 0) text += "  100 g  [Dough" + std::string(static_cast<std::size_t>((i - 1) % 7) + 1, 'a') + std::to_string(i - 1) + "x]\n";
  }
  const Checked c(text);
  CHECK(formulas_of(c.recipe).size() <= 2 * c.recipe.parts.size());
}

// ---- plausibility --------------------------------------------------------------------------------------------------
namespace {
std::string bread(const std::string& more, const std::string& name = "Loaf") {
  return "recipe: " + name + "\nmeasures: British\ntake:\n  500 g  strong white flour\n  10 g  fresh yeast\n" + more;
}
}  // namespace

TEST_CASE("formula: a dough that cannot be one is pointed at") {
  const Checked dry(bread("  78 g  water\n"));
  REQUIRE(dry.codes() == "formula_far");
  CHECK(dry.problem(Code::formula_far)->severity == Severity::note);
  CHECK(dry.problem(Code::formula_far)->message ==
        "There is 17 % of water to the flour, very little for a yeast bread.");
  CHECK(dry.at(dry.problem(Code::formula_far)) == "78 g  water");
  const Checked salty(bread("  325 g  water\n  21 g  fine salt\n"));
  REQUIRE(salty.codes() == "formula_far");
  CHECK(salty.at(salty.problem(Code::formula_far)) == "21 g  fine salt");
  CHECK(Checked("recipe: Loaf\ntake:\n  500 g  plain flour\n  300 g  water\n  101 g  fresh yeast\n").codes() ==
        "formula_far");
  CHECK(Checked("recipe: Pancakes\nmeasures: British\ntake:\n  500 g  plain flour\n  100 g  whole milk\n").codes() ==
        "formula_far");
}

TEST_CASE("formula: what may well be meant is not") {
  for (const char* sound : {
           "  325 g  water\n  20 g  fine salt\n",                      // four in a hundred is the limit
           "  160 g  water\n",                                         // bagels are stiff
           "  600 g  water\n",                                         // a batter for crumpets
           "  50 g  water\n         water, as needed\n",               // the cook's affair
           "  50 g  water\n  200 g  double cream\n",                   // nobody has published what is in it
           "  50 g  water\n  3  odd fruits\n",                         // nor what these weigh
           "  300 g  water\n  10 g  fine salt\n  30 g  sea salt flakes, for the top\n",
           "  300 g  water\n  10 g  fine salt\n  1500 g  boiled water, for the tray\n  60 g  coarse salt, for the tray\n",
           "  100 g  whole milk\n  250 g  eggs\n  300 g  unsalted butter\n",
       })
    CHECK_MESSAGE(Checked(bread(sound)).codes() == "", sound);
  // No yeast, little flour, or a ferment that a dough takes.
  CHECK(Checked("recipe: Crackers\ntake:\n  500 g  plain flour\n  60 g  water\n").codes() == "");
  CHECK(Checked("recipe: Oatcakes\ntake:\n  50 g  plain flour\n  200 g  oatmeal\n  5 g  dried yeast\n  400 g  water\n"
                "  6 g  fine salt\n")
            .codes() == "");
  CHECK(Checked("recipe: Loaf\n\npart: Old dough\nmakes: 228 g\ntake:\n  200 g  plain flour\n  20 g  water\n  8 g  fresh "
                "yeast\nmethod:\n  Mix [everything].\n\npart: Dough\ntake:\n  228 g  [Old dough]\n  300 g  plain flour\n"
                "  300 g  water\nmethod:\n  Mix [everything].\n")
            .codes() == "");
}
