// Eggs, tins, pinches, pieces, portions.
#include "adapt/by_hand.hpp"

using namespace qtn;
using namespace qtn::adapt_tests;

namespace {
Fraction half() {
  return Fraction::of(1, 2);
}
}  // namespace

TEST_CASE("whole within tolerance, else halves with their weight") {
  const Page page("measures: American\n", "  3  large eggs\n");
  const Card card(page, half());
  CHECK(card.line("large eggs") == "1½ (75 g)");
  CHECK(card.count(Code::whole_thing_splits) == 1);
  CHECK(one("3 large eggs", Fraction::of(33, 100), System::written, "measures: American\n") == "1");
  CHECK(one("3 large eggs", Fraction(2)) == "6");
  CHECK(one("4 cloves garlic", Fraction(2)) == "8 cloves");
  CHECK(one("1 slice ham", Fraction(3)) == "3 slices");
}

TEST_CASE("what the page halves itself, and what a step takes, is no warning") {
  const Page lemon("", "  1/2  lemon\n");
  CHECK(Card(lemon, Fraction(3)).count(Code::whole_thing_splits) == 0);
  const Page eggs("measures: American\n", "  3  large eggs\n", "  Beat [half the eggs], then [the rest of the eggs].");
  const Card card(eggs, Fraction(1));
  CHECK(card.mention(0) == "1½ (75 g)");
  CHECK(card.count(Code::whole_thing_splits) == 0);
}

TEST_CASE("packs while they come out whole, else their weight") {
  const Page page("measures: British\n", "  2 x 400 g tins  tomatoes\n");
  CHECK(Card(page, Fraction(1)).line("tomatoes") == "2 x 400 g tins");
  CHECK(Card(page, Fraction::of(3, 2)).line("tomatoes") == "3 x 400 g tins");
  CHECK(Card(page, half()).line("tomatoes") == "1 x 400 g tin");
  CHECK(Card(page, Fraction::of(5, 4)).line("tomatoes") == "1 kg");
  CHECK(Card(page, Fraction::of(3, 2), System::american).line("tomatoes") == "3 x 400 g tins");
}

TEST_CASE("pinches up to four, then a spoon, and never less than one") {
  CHECK(one("1 pinch fine salt", Fraction(3)) == "3 pinches");
  CHECK(one("1 pinch fine salt", Fraction::of(1, 4)) == "1 pinch");
  CHECK(one("2 pinches fine salt", Fraction::of(3, 4)) == "2 pinches");
  CHECK(one("1 pinch fine salt", Fraction(8)) == "≈ ½ tsp");
  CHECK(one("2 drops vanilla extract", Fraction(30)) == "≈ 1 tsp");
  CHECK(one("1 pinch fine salt", Fraction(1), System::american) == "1 pinch");
}

TEST_CASE("pieces to the nearest and at least one, portions and things made down") {
  const Page page("makes: 8 rounds, 1.2 kg\nserves: 4 to 6\n", "  1 kg  flour\n", "  Cut into [8 rounds].");
  const Card card(page, Fraction::of(4, 5));
  CHECK(card.term(0) == "6");
  CHECK(card.adapted.makes[0].text == "6");
  CHECK(card.adapted.makes[1].text == "950 g");
  CHECK(card.adapted.serves.text == "3 to 4");
  CHECK(Card(page, Fraction::of(1, 100)).term(0) == "1");
  const Page tart("makes: 1 tart\n", "  1 kg  flour\n");
  CHECK(Card(tart, Fraction::of(676, 529)).adapted.makes[0].text == "1");
  CHECK(Card(tart, half()).adapted.makes[0].text == "½");
  CHECK(Card(tart, Fraction::of(748, 1000)).adapted.makes[0].text == "¾");
  CHECK(Card(tart, Fraction::of(7, 10)).adapted.makes[0].text == "⅔");
}

TEST_CASE("pieces that do not come out even weigh what there is, shared out") {
  const Page page("", "  1.7 kg  flour\n", "  Divide into [2 pieces of 850 g].");
  const auto terms = [&](const Fraction& k) { const Card card(page, k); return card.term(0) + " of " + card.term(1); };
  CHECK(terms(Fraction(2)) == "4 of 850 g");
  CHECK(terms(Fraction::of(1, 3)) == "1 of 575 g");
  CHECK(terms(Fraction::of(13, 10)) == "3 of 750 g");
  CHECK(terms(Fraction::of(51, 50)) == "2 of 850 g");
}

TEST_CASE("what is bought rounds up") {
  const auto bought = [](const std::string& line, const Fraction& k, System units) {
    const Page page("measures: British\n", line);
    return Card(page, k, units).adapted.tails.at(0).text;
  };
  CHECK(bought("  6  egg yolks, from 6 eggs\n", Fraction::of(5, 4), System::written) == "8");
  CHECK(bought("  500 g  leeks, from 711 g\n", Fraction(2), System::written) == "1.45 kg");
  CHECK(bought("  500 g  leeks, from 700 g\n", Fraction(1), System::imperial) == "1 lb 9 oz");
  CHECK(bought("  500 g  leeks, from 700 g\n", Fraction::of(1, 3), System::imperial) == "8¼ oz");
  CHECK(bought("  500 g  leeks, from 700 g\n", Fraction(1), System::written) == "700 g");
}

TEST_CASE("sizes outside what was tried") {
  const Page page("scales: 1/2 to 2\n", "  1 kg  flour\n", "  [bake 20 min at 180 °C]");
  CHECK(Card(page, Fraction(2)).adapted.lacks.list().empty());
  const Card card(page, Fraction(3));
  CHECK(card.count(Code::outside_scales) == 1);
  CHECK(card.count(Code::times_not_tested) == 1);
  CHECK(Card(Page("", "  1 kg  flour\n"), Fraction(3)).adapted.lacks.list().empty());
}
