// Solving, printing and solving again is stable. Lists are made at random, from a fixed seed: shares of one base or of
// two, shares of the whole, rates, parts; anchored by a line, by `makes:`, by pieces of a weight.
#include <doctest/doctest.h>

#include <cstdint>
#include <string>
#include <vector>

#include "recipe/formula.hpp"
#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  int upto(int most) {  // 1 to most
    state_ = state_ * 6364136223846793005u + 1442695040888963407u;
    return static_cast<int>((state_ >> 33) % static_cast<std::uint64_t>(most)) + 1;
  }

 private:
  std::uint64_t state_;
};

constexpr const char* kNames[] = {"water", "butter", "fine salt", "dried yeast", "caster sugar", "honey", "whole milk"};

struct Page {
  std::string head, makes;
  std::vector<std::pair<std::string, std::string>> lines;  // amount, name
  std::string text() const {
    std::string out = "recipe: Test\nmeasures: British\n" + makes + "take:" + head + "\n";
    for (const auto& [amount, name] : lines) out += "  " + amount + "  " + name + "\n";
    return out;
  }
};

std::string tenths(int value) {
  return std::to_string(value / 10) + "." + std::to_string(value % 10);
}

Page page(Dice& dice) {
  Page out;
  const bool two = dice.upto(2) == 1;
  const int form = dice.upto(4);
  if (form == 1) {  // parts
    out.head = " parts";
    for (int i = 0; i < 2 + dice.upto(4); ++i) out.lines.push_back({std::to_string(dice.upto(9)) + " parts", kNames[i]});
    out.makes = "makes: " + std::to_string(dice.upto(4000)) + " g\n";
    return out;
  }
  out.head = two ? " % of [strong white flour + rye flour]" : " % of strong white flour";
  const int rye = two ? dice.upto(600) : 0;
  out.lines.push_back({tenths(1000 - rye) + " %", "strong white flour"});
  if (two) out.lines.push_back({tenths(rye) + " %", "rye flour"});
  for (int i = 0; i < dice.upto(6); ++i) out.lines.push_back({tenths(dice.upto(900)) + " %", kNames[i]});
  if (dice.upto(3) == 1) out.lines.push_back({std::to_string(dice.upto(40)) + " g per kg of [the strong white flour]", "malt extract"});
  if (dice.upto(3) == 1) out.lines.push_back({tenths(dice.upto(100)) + " % of [the strong white flour + the water]", "olive oil"});
  if (form == 2) out.lines[0].first += " (" + std::to_string(dice.upto(5000)) + " g)";
  if (form == 3) out.makes = "makes: " + std::to_string(dice.upto(50)) + " pieces of " + std::to_string(dice.upto(900)) + " g\n";
  if (form == 4) out.makes = "makes: " + tenths(dice.upto(300)) + " kg\n";
  return out;
}

// "11400/17 g": the grammar reads a fraction of any size.
std::string exact(const Fraction& grams) {
  return grams.exact() + " g";
}

}  // namespace

TEST_CASE("ratios: solved amounts in place of the shares solve to the same") {
  Dice dice(20260211);
  for (int i = 0; i < 600; ++i) {
    const Page written = page(dice);
    const Checked first(written.text());
    INFO(written.text());
    REQUIRE(first.report.errors() == 0);
    REQUIRE(first.recipe.lines.size() == written.lines.size());
    // All of them as grams; then one that fixes the size, the rest as they were.
    Page all = written, one = written;
    for (std::size_t l = 0; l < written.lines.size(); ++l)
      all.lines[l].first = exact(first.recipe.lines[l].amount.low);
    std::size_t keep = 0;
    for (std::size_t l = 0; l < written.lines.size(); ++l) {
      std::string& amount = one.lines[l].first;
      amount = amount.substr(0, amount.find(" ("));
      if (amount.find(" of ") == std::string::npos && dice.upto(3) == 1) keep = l;
    }
    one.lines[keep].first += " (" + exact(first.recipe.lines[keep].amount.low) + ")";
    one.makes.clear();
    for (const Page* again : {&all, &one}) {
      const Checked second(again->text());
      INFO(again->text());
      REQUIRE(second.report.errors() == 0);
      for (std::size_t l = 0; l < written.lines.size(); ++l)
        CHECK(second.recipe.lines[l].amount.low == first.recipe.lines[l].amount.low);
    }
  }
}

TEST_CASE("ratios: the formula's per cent, written down, makes the same weights") {
  Dice dice(7);
  int met = 0;
  for (int i = 0; i < 300; ++i) {
    const Page written = page(dice);
    const Checked first(written.text());
    const std::vector<Formula> formulas = formulas_of(first.recipe);
    REQUIRE(formulas.size() == 1);
    const Formula& formula = formulas[0];
    if (formula.base != FormulaBase::flour) continue;
    ++met;
    Page again = written;
    again.makes = "makes: " + exact(formula.whole) + "\n";
    for (std::size_t l = 0; l < written.lines.size(); ++l)
      again.lines[l].first = (formula.lines[l].grams / formula.flour * Fraction(100)).exact() + " %";
    const Checked second(again.text());
    INFO(again.text());
    REQUIRE(second.report.errors() == 0);
    for (std::size_t l = 0; l < written.lines.size(); ++l)
      CHECK(second.recipe.lines[l].amount.low == formula.lines[l].grams);
  }
  CHECK(met >= 100);
}
