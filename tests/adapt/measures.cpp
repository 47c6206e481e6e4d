// Lines of the list as a card shows them.
#include "adapt/by_hand.hpp"

using namespace qtn;
using namespace qtn::adapt_tests;

namespace {
const Fraction kOnce(1);
Fraction half() {
  return Fraction::of(1, 2);
}
}  // namespace

TEST_CASE("neither scaled nor converted: as written") {
  CHECK(one("500g flour", kOnce) == "500g");
  CHECK(one("1 1/2  tsp fine salt", kOnce) == "1½ tsp");
  CHECK(one("about 33 g butter", kOnce) == "about 33 g");
  CHECK(one("a pinch of salt", kOnce) == "a pinch");
  CHECK(one("100 ml milk", kOnce, System::metric) == "100 ml");
  CHECK(one("2 tbsp honey", kOnce, System::imperial) == "2 tbsp");
  CHECK(one("2 tbsp honey", kOnce, System::metric, "measures: Australian\n") == "2 tbsp");
}

TEST_CASE("rounding: worked examples") {
  CHECK(one("60 g flour", Fraction::of(9, 4)) == "135 g");
  CHECK(one("125 g flour", Fraction::of(9, 4)) == "275 g");
  CHECK(one("250 g flour", Fraction::of(9, 4)) == "550 g");
  CHECK(one("1250 g flour", Fraction::of(9, 4)) == "2.8 kg");
  CHECK(one("15 g flour", Fraction::of(9, 4)) == "34 g");
  CHECK(one("25 g flour", half()) == "13 g");
  CHECK(one("exactly 125 g flour", Fraction::of(9, 4)) == "exactly 280 g");
  CHECK(one("about 125 g flour", Fraction(2)) == "about 250 g");
  CHECK(one("110 g butter", kOnce, System::imperial) == "4 oz");
  CHECK(one("500 g butter", kOnce, System::imperial) == "1 lb 2 oz");
  CHECK(one("30 g butter", kOnce, System::imperial) == "≈ 1 oz");
  CHECK(one("250 ml milk", kOnce, System::american) == "1 cup + 1 tbsp");
  CHECK(one("0.3 tsp fine salt", kOnce, System::american) == "≈ ¼ tsp");
}

TEST_CASE("ranges by both ends") {
  CHECK(one("1 to 2 onions", Fraction(3)) == "3 to 6");
  CHECK(one("200 to 250 g sugar", Fraction(2)) == "400 to 500 g");
  CHECK(one("300 to 600 g sugar", Fraction(2)) == "600 g to 1.2 kg");
  CHECK(one("1/2 to 1 cup milk", Fraction(2), System::written, "measures: American\n") == "1 to 2 cups");
}

TEST_CASE("the exact value in the unit that is shown, and what was changed") {
  const Page page("measures: British\n", "  1250 g  flour\n  500g  lard\n");
  const Card card(page, Fraction::of(9, 4));
  CHECK(card.shown("flour").exact.unit == common().kilogram);
  CHECK(card.shown("flour").exact.low == Fraction::of(28125, 10000));
  CHECK(card.shown("flour").changed);
  CHECK_FALSE(Card(page, kOnce).shown("flour").changed);
  const Page pinch("measures: British\n", "  1 lb  butter\n");
  CHECK(Card(pinch, Fraction::of(1, 2), System::metric).shown("butter").exact.unit == common().gram);
}

TEST_CASE("whose spoons nobody said: scaled they are still spoons") {
  CHECK(one("1 tsp fine salt", Fraction(3), System::written, "") == "1 tbsp");
  CHECK(one("1 cup milk", Fraction(2), System::written, "") == "2 cups");
  CHECK(one("1 tsp fine salt", kOnce, System::american, "") == "1 tsp");
}

TEST_CASE("the Australian tablespoon goes by its 20 ml") {
  CHECK(one("1 tbsp honey", kOnce, System::metric, "measures: Australian\n", Dialect::british) == "1 tbsp + 1 tsp");
  CHECK(one("1 tbsp honey", kOnce, System::american, "measures: Australian\n") == "1 tbsp + 1 tsp");
}

TEST_CASE("American cups of flour are a weight elsewhere, of milk a volume") {
  const std::string american = "measures: American\n";
  CHECK(one("2 cups plain flour", kOnce, System::metric, american) == "250 g");
  CHECK(one("2 cups plain flour", kOnce, System::imperial, american) == "9 oz");
  CHECK(one("1 cup whole milk", kOnce, System::metric, american) == "240 ml");
  CHECK(one("1 tbsp fine salt", kOnce, System::metric, american) == "1 tbsp");
  CHECK(one("1/2 cup honey", Fraction(3), System::written, american) == "1½ cups");
  CHECK(one("2 tbsp whole milk", Fraction(2), System::written, american) == "¼ cup");
}

TEST_CASE("no density: it stays as written, and that is said once") {
  const Page page("measures: American\n", "  1 cup  spelt flour\n",
                  "  Mix [half the flour], then [the rest of the flour].");
  const Card card(page, kOnce, System::metric);
  CHECK(card.line("spelt flour") == "1 cup");
  CHECK(card.count(Code::no_density) == 1);
  CHECK(Card(page, Fraction(2), System::metric).line("spelt flour") == "2 cups");
  CHECK(Card(page, kOnce).count(Code::no_density) == 0);
}

TEST_CASE("the writer's own second statement comes before any conversion") {
  CHECK(one("220 g (8 oz) butter", kOnce, System::imperial) == "8 oz");
  CHECK(one("1 cup (130 g) spelt flour", kOnce, System::metric, "measures: American\n") == "130 g");
  CHECK(one("1 cup (130 g) spelt flour", Fraction(2), System::metric, "measures: American\n") == "260 g");
}

TEST_CASE("to American: by the cup what is published by the cup, else pounds and ounces") {
  CHECK(one("250 g plain flour", kOnce, System::american) == "2 cups");
  CHECK(one("200 g granulated sugar", kOnce, System::american) == "1 cup");
  CHECK(one("50 g butter", kOnce, System::american) == "3½ tbsp");
  CHECK(one("500 g leeks", kOnce, System::american) == "1 lb 2 oz");
  CHECK(one("500 g stewing beef", kOnce, System::american) == "1 lb 2 oz");
  CHECK(one("8 g dried yeast", kOnce, System::american) == "2 tsp");
  CHECK(one("3 large eggs", kOnce, System::american) == "3");
}

TEST_CASE("too little for ounces: a spoon where the density is known, else the page's grams") {
  CHECK(one("3 g saffron", kOnce, System::imperial).find("oz") == std::string::npos);
  CHECK(one("0.4 g some rennet", Fraction::of(3, 2)) == "0.6 g");
}

TEST_CASE("imperial volumes") {
  CHECK(one("568 ml whole milk", kOnce, System::imperial) == "1 pint");
  CHECK(one("140 ml whole milk", kOnce, System::imperial) == "¼ pint");
  CHECK(one("1 pint whole milk", kOnce, System::metric) == "575 ml");
}

TEST_CASE("house measures stand as written, and scaled come out in millilitres") {
  Kitchen kitchen;
  const UnitId ml = common().millilitre;
  kitchen.measures.push_back({"ladle", {Fraction(120), Fraction(120), ml, Manner::plain, false}});
  const Page page("", "  2 ladles stock\n", {}, std::make_shared<Kitchen>(kitchen));
  CHECK(Card(page, kOnce).line("stock") == "2 ladles");
  CHECK(Card(page, Fraction(2)).line("stock") == "475 ml");
}

TEST_CASE("lines of one ratio drift by at most one tolerance") {
  const Page tied("", "  281.25 g  flour\n  40/9 % of [the flour]  sugar\n");
  const Card card(tied, kOnce);
  CHECK(card.line("flour") == "281.25 g");
  CHECK(card.line("sugar") == "13 g");
  const Page scaled("", "  125 g  flour\n  40/9 % of [the flour]  sugar\n");
  const Card twice(scaled, Fraction::of(9, 4));
  CHECK(twice.line("flour") == "280 g");
  CHECK(twice.line("sugar") == "13 g");
}
