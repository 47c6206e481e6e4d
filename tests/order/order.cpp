// What is bought for a list: as bought, added up, in packs, by supplier, on its day.
#include <doctest/doctest.h>

#include "order/goods.hpp"
#include "order/ordered.hpp"

using namespace qtn;

namespace {

// A list in two parts, since one list never has two lines of one name.
std::string both(const std::string& first, const std::string& second) {
  const Ordered one({}, "recipe: Dish\nserves: 2\nmeasures: British\npart: Base\ntake:\n  " + first +
                            "\nmethod:\n  Mix [everything].\n\npart: Top\ntake:\n  " + second + "\nmethod:\n  Mix [everything] with [the Base].\n");
  REQUIRE(!one.report.has_errors());
  return told(one.bought());
}

std::string bought(const std::string& lines, const std::string& kitchen = {}) {
  const Ordered one(kitchen, list(lines));
  std::string codes;
  for (const Diagnostic& problem : one.report.list()) codes += problem.message + " ";
  REQUIRE_MESSAGE(!one.report.has_errors(), codes);
  return told(one.bought());
}

}  // namespace

TEST_CASE("what is bought stands behind `from`, else nothing is added for trimming") {
  CHECK(bought("500 g leeks, trimmed, from 700 g") == "leeks 700 g");
  CHECK(bought("500 g leeks, trimmed") == "leeks 500 g");
  CHECK(bought("150 g lemon juice, from 4 lemons") == "lemons 4");
  CHECK(bought("3 egg yolks, from 3 large eggs\n  2 large eggs") == "large eggs 5");
  CHECK(bought("60 g beef dripping, taking up 45 g") == "beef dripping 60 g");
  CHECK(bought("600 g shell-on prawns, giving 330 g tails and 230 g shells") == "shell-on prawns 600 g");
  CHECK(bought("2 to 3 shallots") == "shallots 3");
}

TEST_CASE("lines that are not ordered") {
  CHECK(bought("1 l water\n  500 ml cold water\n  1 l soaking water\n  20 g butter") == "butter 20 g");
  CHECK(bought("500 ml sparkling water") == "sparkling water 500 ml");
  CHECK(bought("1 l water", "prices:\n  water  0.60 per 5 l\n") == "water 1 l");
  CHECK(bought("100 g butter\n  or 80 g lard") == "butter 100 g");
  const Ordered salted({}, list("20 g butter\n  fine salt, to taste, start with 3 g\n  flour, for dusting"));
  const Purchases all = salted.bought();
  REQUIRE(all.also.size() == 2);
  CHECK(all.also[0].name == "fine salt");
  CHECK(all.also[0].words == "to taste, to start with 3 g (Dish)");
  CHECK(all.also[1].words == "for dusting (Dish)");
}

TEST_CASE("the same thing is added up across names and units, where a source says how") {
  CHECK(bought("100 g plain flour\n  50 g all-purpose flour\n  20 g sifted plain flour") == "plain flour 170 g");
  CHECK(bought("2 large eggs\n  2 medium eggs") == "large eggs 2; medium eggs 2");
  CHECK(bought("3 sprigs fresh thyme\n  1 tsp dried thyme") == "dried thyme 5 ml; fresh thyme 3 sprigs");
  CHECK(both("50 g whole milk", "100 ml whole milk") == "whole milk 153 g");
  CHECK(both("100 g saffron buns", "2 saffron buns") == "saffron buns 100 g; saffron buns 2");
  CHECK(both("100 g samphire jelly", "50 ml samphire jelly") == "samphire jelly 100 g; samphire jelly 50 ml");
  CHECK(both("2 shallots, 40 g each", "100 g shallots") == "shallots 180 g");
  CHECK(bought("500 g chicken wings\n  500 g chicken legs") == "chicken legs 500 g; chicken wings 500 g");
}

TEST_CASE("packs are rounded up and what is left is said") {
  const Ordered one("currency: GBP\nprices:\n  butter  1.95 per 250 g, 2026-01-05\n  plain flour  1.10 per kg\n  eggs  3.20 per 12\n  lemons  0.35 each\n",
                    list("260 g butter\n  150 g plain flour\n  5 eggs\n  1/2 lemon"));
  const Purchases all = one.bought();
  REQUIRE(all.deliveries.size() == 1);
  const auto& lines = all.deliveries[0].lines;
  REQUIRE(lines.size() == 4);
  CHECK(lines[0].packs == Fraction(2));
  CHECK(lines[0].left == Fraction(240));
  CHECK(lines[0].cost == Fraction::of(39, 10));
  CHECK(lines[1].left == Fraction(7));  // eggs
  CHECK(lines[2].packs == Fraction(1));  // half a lemon is bought as a lemon
  CHECK(lines[3].packs.is_lost());       // flour is sold by weight
  CHECK(lines[3].cost == Fraction::of(165, 1000));
  CHECK(all.cost == Fraction::of(39, 10) + Fraction::of(16, 5) + Fraction::of(7, 20) + Fraction::of(165, 1000));
  const Ordered tins({}, list("2 x 400 g tins chopped tomatoes"), Fraction::of(3, 2));
  const Purchases opened = tins.bought();
  CHECK(told(opened) == "chopped tomatoes 1.2 kg");
  CHECK(opened.deliveries[0].lines[0].packs == Fraction(3));
  CHECK(opened.deliveries[0].lines[0].pack_words == "400 g tins");
}

TEST_CASE("a version is bought and paid for at its own amount") {
  const std::string kitchen = "currency: GBP\nprices:\n  double cream  2.00 per l\n  yogurt  3.00 per kg\n  eggs  0.25 each\n";
  const Ordered one(kitchen, "recipe: Dish\nserves: 2\nmeasures: British\ntake:\n  150 ml double cream\n  or 100 g yogurt\n  2 eggs\nmethod:\n  Mix [everything].\n\nvariant: Lean\n  eggs  2 -> 50 g yogurt\n");
  REQUIRE_FALSE(one.report.has_errors());
  Report report;
  for (const bool lean : {false, true}) {
    const auto version = lean ? variant_of(*one.recipe, "Lean", report) : with_alternative(*one.recipe, "yogurt", report);
    REQUIRE(version);
    std::vector<Board> boards;
    boards.push_back(board_of(*version, {}, report));
    CHECK(told(purchases_of(boards, {}, {})) == (lean ? "double cream 150 ml; yogurt 50 g" : "eggs 2; yogurt 100 g"));
    // 0.15 l at 2.00 and 0.05 kg at 3.00; two eggs at 0.25 and 0.1 kg at 3.00
    CHECK(costing_of(*version, boards.front(), 0).cost == (lean ? Fraction::of(45, 100) : Fraction::of(80, 100)));
  }
  CHECK_FALSE(report.has_errors());
}

TEST_CASE("a thing has the name that the largest want of it has") {
  const Ordered one({}, "recipe: Dish\nserves: 2\nmeasures: British\npart: Glaze\ntake:\n  1 large egg\nmethod:\n  Beat [the egg].\n\npart: Dish\ntake:\n  4 large eggs\nmethod:\n  Mix [the eggs] with [the Glaze].\n");
  REQUIRE_FALSE(one.report.has_errors());
  CHECK(told(one.bought()) == "large eggs 5");
}

TEST_CASE("a dozen is twelve") {
  const Ordered one("currency: GBP\nprices:\n  eggs  3.60 per dozen\n", list("1 dozen eggs\n  3 egg yolks, from 3 eggs"));
  REQUIRE_FALSE(one.report.has_errors());
  CHECK(told(one.bought()) == "eggs 15");
  CHECK(one.costs().cost == Fraction::of(450, 100));  // 15 at 0.30
  CHECK(one.bought().cost == Fraction::of(720, 100));  // two boxes
}

TEST_CASE("a price may be for so many things") {
  const Ordered one("currency: GBP\nprices:\n  thyme  0.90 per 12 sprigs\n  bread  1.20 per 6 slices\n", list("4 sprigs thyme\n  7 slices bread"));
  REQUIRE_FALSE(one.report.has_errors());
  CHECK(one.costs().cost == Fraction::of(30, 100) + Fraction::of(140, 100));
  const Purchases all = one.bought();
  REQUIRE(all.deliveries.size() == 1);
  REQUIRE(all.deliveries[0].lines.size() == 2);
  CHECK(all.deliveries[0].lines[0].packs == Fraction(2));
  CHECK(all.deliveries[0].lines[0].left == Fraction(5));
  CHECK(all.deliveries[0].lines[1].packs == Fraction(1));
}

TEST_CASE("who brings what") {
  CHECK(brings("flour", "strong white flour") == 1);
  CHECK(brings("haddock", "haddock fillets") == 1);
  CHECK(brings("plain flour", "all-purpose flour") > 1);
  CHECK(brings("butter", "peanut butter") == 0);
  CHECK(brings("butter", "butter beans") == 0);
  CHECK(brings("milk", "coconut milk") == 0);
  CHECK(brings("cream", "brown bread ice cream") == 0);
  const std::string kitchen = "suppliers:\n  Marram Mill   flour, oats; Tuesdays\n  Staithe Dairy  milk, butter; every day but Sunday; 2 days ahead\n";
  const Ordered one(kitchen, list("100 g plain flour\n  50 g butter\n  10 g nutmeg"));
  const Purchases all = one.bought(*read_wall("2026-03-01 13:00"));  // a Sunday
  REQUIRE(all.deliveries.size() == 3);
  CHECK(all.deliveries[0].supplier->name == "Marram Mill");
  CHECK(write_wall(*all.deliveries[0].comes) == "2026-02-24 00:00");
  CHECK(write_wall(*all.deliveries[0].order_by) == "2026-02-23 00:00");
  CHECK(write_wall(*all.deliveries[1].comes) == "2026-02-28 00:00");
  CHECK(write_wall(*all.deliveries[1].order_by) == "2026-02-26 00:00");
  CHECK(all.deliveries[2].supplier == nullptr);
  CHECK_FALSE(all.deliveries[2].comes);
}

TEST_CASE("what takes days is wanted days before") {
  const Ordered one("suppliers:\n  Dairy  butter; every day\n",
                    "recipe: Dish\nserves: 2\ntake:\n  50 g butter\nmethod:\n  Mix [the butter]. [chill overnight in the fridge].\n\n  [rest 30 h in the fridge].\n");
  const Purchases all = one.bought(*read_wall("2026-03-04 13:00"));
  REQUIRE(all.deliveries.size() == 1);
  CHECK(write_wall(*all.deliveries[0].needed) == "2026-03-02 00:00");
  CHECK(write_wall(*all.deliveries[0].comes) == "2026-03-01 00:00");
}
