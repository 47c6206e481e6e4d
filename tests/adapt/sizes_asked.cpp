// Sizes asked for by a tin or by what there is, and the rounder size that is offered.
#include <doctest/doctest.h>

#include <random>

#include "tests/adapt/shown.hpp"

using namespace qtn;

namespace {

TinSize round_of(std::int64_t across, std::int64_t deep) {
  TinSize size;
  size.shape = TinShape::round, size.across = Fraction(across), size.deep = Fraction(deep);
  return size;
}

Fraction for_tin(const std::string& head, const TinSize& size, Report& report) {
  const Checked made(listed(head, "  300 g  plain flour\n"));
  Request request;
  request.tin = Tin{size, {}};
  request.tin_text = "the other";
  return factor_of(made.recipe, request, report);
}

Fraction from(const std::string& lines, const Quantity& have, const std::string& thing, Report& report) {
  const Checked made(listed("", lines));
  Request request;
  request.have = have, request.have_thing = thing;
  return factor_of(made.recipe, request, report);
}

// Is every line of this card exactly what it says? Read back from the card's own text.
bool reads_exactly(const Resized& card) {
  for (std::size_t i = 0; i < card.recipe.lines.size(); ++i) {
    const Checked again(listed("", "  " + card.shown.lines[i].text + "  salt\n"));
    if (again.recipe.lines.empty() || again.recipe.lines[0].amount.is_lost()) return false;
    const Ends said = in_base(again.recipe.lines[0].amount, Dialect::british);
    if (!(said.low == in_base(card.recipe.lines[i].amount, Dialect::british).low)) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("another tin") {
  Report report;
  CHECK(for_tin("tin: 23 cm round, 3 cm deep\n", round_of(260, 30), report) == Fraction::of(676, 529));
  CHECK(for_tin("tin: 23 cm round, 3 cm deep\n", round_of(230, 60), report) == Fraction(2));
  CHECK(for_tin("tin: 2 x 20 cm round, 4 cm deep\n", round_of(200, 40), report) == Fraction::of(1, 2));
  CHECK(!report.has_errors());
  for_tin("", round_of(230, 30), report);
  CHECK(report.errors() == 1);
  Report other;
  for_tin("tin: 1.2 l basin\n", TinSize{Fraction(1), TinShape::square, Fraction(200)}, other);
  CHECK(other.errors() == 1);
}

TEST_CASE("the tins of the house have names") {
  const Source source("kitchen.qtn", "kitchen: Saltmarsh House\ntins:\n  Tart tin   23 cm round, 3 cm deep\n");
  Report report;
  Surroundings around;
  around.kitchen = std::make_shared<const Kitchen>(check_kitchen(source, parse(source), report));
  REQUIRE(!report.has_errors());
  const Checked made(listed("tin: 23 cm round, 6 cm deep\n", "  300 g  plain flour\n"), around);
  Request request;
  request.tin_text = "tart tin";
  CHECK(factor_of(made.recipe, request, report) == Fraction::of(1, 2));
  request.tin_text = "bath";
  factor_of(made.recipe, request, report);
  CHECK(report.errors() == 1);
}

TEST_CASE("another size says which tins it wants, in the reader's measures") {
  const Source source("kitchen.qtn", "kitchen: Saltmarsh House\ntins:\n  Loaf tin   23 x 13 cm, 7 cm deep\n  Roasting tin   33 x 23 cm, 6 cm deep\n");
  Report report;
  Surroundings around;
  around.kitchen = std::make_shared<const Kitchen>(check_kitchen(source, parse(source), report));
  const auto said = [&](const std::string& tin, const Fraction& k, System units) {
    const Resized made(listed("measures: British\ntin: " + tin + "\n", "  300 g  plain flour\n"), k, in(units), around);
    for (const Diagnostic& one : made.shown.lacks.list())
      if (one.code == Code::tin_for_size) return one.message.substr(one.message.find("; ") + 2);
    return std::string();
  };
  CHECK(said("2 x 23 x 13 cm, 7 cm deep", Fraction::of(5, 2), System::written) == "so much fills 5 of that size.");
  CHECK(said("2 x 23 x 13 cm, 7 cm deep", Fraction::of(1, 2), System::written) == "so much fills 1 of that size.");
  CHECK(said("22 x 30 cm, 6 cm deep", Fraction::of(27, 25), System::written) == "");  // it goes into the same tin
  // Five loaf tins hold as much as two and a half pie dishes, and are no pie dishes.
  CHECK(said("22 x 30 cm, 6 cm deep", Fraction::of(5, 2), System::written) == "so much wants room for 10 l to the brim, 2½ of that size, or the Roasting tin, 2 times.");
  CHECK(said("22 x 30 cm, 6 cm deep", Fraction::of(23, 20), System::imperial) ==
        "so much wants room for 8 pints to the brim, 1.15 of that size, or the Roasting tin.");
}

TEST_CASE("what there is, used up") {
  Report report;
  CHECK(from("  800 g  lamb shoulder, boned\n", quantity(Fraction::of(13, 10), common().kilogram), "lamb shoulder", report) == Fraction::of(13, 8));
  // As bought, where the line says what was bought.
  CHECK(from("  800 g  lamb shoulder, from 1 kg\n", quantity(Fraction(1300), common().gram), "lamb shoulder", report) == Fraction::of(13, 10));
  CHECK(from("  4  large eggs\n", quantity(Fraction(6)), "eggs", report) == Fraction::of(3, 2));
  CHECK(!report.has_errors());
  from("  100 g  butter\n", quantity(Fraction(6)), "lard", report);
  CHECK(report.errors() == 1);
  Report tie;
  from("  100 g  plain flour\n  50 g  rice flour\n", quantity(Fraction(200), common().gram), "flour", tie);
  CHECK(tie.errors() == 1);
  Report still;
  from("  5 g  salt, fixed\n", quantity(Fraction(200), common().gram), "salt", still);
  CHECK(still.errors() == 1);
}

TEST_CASE("a rounder size is the nearest there is: every other one within reach was tried") {
  std::mt19937 random(7);
  const auto pick = [&](int low, int high) { return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1)); };
  int offered = 0, none = 0;
  for (int trial = 0; trial < 60; ++trial) {
    std::string lines;
    std::vector<Fraction> amounts;
    static constexpr std::string_view kNames[] = {"flour", "sugar", "oats"};
    for (int i = 0; i < 3; ++i) {
      amounts.push_back(Fraction(pick(1, 30) * 10));
      lines += "  " + amounts.back().exact() + " g  " + std::string(kNames[i]) + "\n";
    }
    const Fraction asked = Fraction::of(pick(11, 45), 10);
    const Checked made(listed("", lines));
    const auto card = [&](const Fraction& k) { return reads_exactly(Resized(listed("", lines), k)); };
    if (card(asked)) continue;
    // Grams are shown in whole grams at the finest, so a factor that fits makes whole grams of every line.
    std::optional<Fraction> best;
    const Fraction low = asked * Fraction::of(97, 100), high = asked * Fraction::of(103, 100);
    for (Wide grams = (amounts[0] * low).ceil(); Fraction::of(grams, 1) <= amounts[0] * high; ++grams) {
      const Fraction k = Fraction::of(grams, 1) / amounts[0], away = (k - asked).abs();
      const bool nearer = !best || away < (*best - asked).abs() || (away == (*best - asked).abs() && k < *best);
      if (nearer && card(k)) best = k;
    }
    const Resized shown(listed("", lines), asked);
    CHECK(shown.said(Code::rounder_size) == (best ? 1 : 0));
    if (best) {
      ++offered;
      for (const Diagnostic& one : shown.shown.lacks.list())
        if (one.code == Code::rounder_size) CHECK_MESSAGE(one.message.find("At " + write_times(*best) + " times") == 0, one.message);
    } else {
      ++none;
    }
  }
  CHECK(offered > 5);
  CHECK(none > 5);
}
