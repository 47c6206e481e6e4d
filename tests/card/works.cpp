// What a card works out beyond its amounts: times by weight, batches and rounds, what stands instead of what.
#include <doctest/doctest.h>

#include "tests/card/carded.hpp"

namespace qtn {
namespace {

using test::Carded;

constexpr const char* kHead = "recipe: Roast\nmeasures: British\noven: conventional\n";

std::string roast(const std::string& lines, const std::string& method, const std::string& head = {}) {
  return kHead + head + "take:\n" + lines + "method:\n  " + method + "\n";
}

// The time in minutes before rounding, from the run that the total stands in.
std::string exact_minutes(const Carded& card) {
  const ByWeight& total = card.adapted.by_weight.at(0);
  return total.time.exact.low.exact() + " to " + total.time.exact.high.exact();
}

TEST_CASE("a time by weight is added up, exact, and rounded as times are") {
  // Worked by hand: 2.25 kg at 20 min per 450 g and 20 min is 5 x 20 + 20 = 120; 2 kg is 40/9 x 20 + 20 = 980/9 = 108.9.
  const std::string rule = "[roast 20 min per 450 g of the lamb, plus 20 min, at 180 °C].";
  const Carded heavy(roast("  2.25 kg lamb\n", rule)), light(roast("  2 kg lamb\n", rule));
  CHECK(exact_minutes(heavy) == "120 to 120");
  CHECK(exact_minutes(light) == "980/9 to 980/9");
  CHECK(heavy.step(0) ==
        "Roast t{20 min} per 450 g of n{the lamb}, plus t{20 min} (t{2 h} for a{2.3 kg}), at C{180 °C (fan 160 °C)}.");
  CHECK(light.words(light.card.steps.at(0).runs).find("(1 h 50 min for 2 kg)") != std::string::npos);
}

TEST_CASE("a larger piece roasts longer, more pieces do not") {
  const std::string rule = "[roast 20 min per 500 g of the lamb, plus 20 min].";
  CHECK(exact_minutes(Carded(roast("  2 kg lamb\n", rule), 2)) == "180 to 180");
  CHECK(exact_minutes(Carded(roast("  2 kg lamb\n", rule, "makes: 1 joint\n"), Fraction::of(3, 2))) == "140 to 140");
  const Carded two(roast("  2 kg lamb\n", rule, "makes: 1 joint\n"), 2);
  CHECK(exact_minutes(two) == "100 to 100");
  CHECK(two.words(two.card.steps.at(0).runs).find("(1 h 40 min for each of 2 kg)") != std::string::npos);
  const std::string birds = roast("  2 (about 1.5 kg each) chickens\n", "[roast 20 min per 500 g of the chickens, plus 20 min].");
  CHECK(exact_minutes(Carded(birds)) == "80 to 80");
  CHECK(exact_minutes(Carded(birds, 3)) == "80 to 80");
}

TEST_CASE("a range of weights or times is a range of time") {
  const Carded card(roast("  2 to 2.5 kg lamb\n", "[roast 20 to 25 min per 500 g of the lamb, plus 20 min]."));
  CHECK(exact_minutes(card) == "100 to 145");
  CHECK(card.words(card.card.steps.at(0).runs).find("(1 h 40 min to 2 h 25 min for 2 to 2.5 kg)") != std::string::npos);
}

TEST_CASE("the weight is that of the place: what brine gave it counts") {
  const Carded card(roast("  2 kg lamb\n  1 kg water\n",
                          "Cover [the lamb] with [the water]. [take out the lamb] [the lamb gains 5 %] "
                          "[roast 20 min per 500 g of the lamb, plus 20 min]."));
  CHECK(exact_minutes(card) == "104 to 104");
}

TEST_CASE("where the weight is not known, the card says what is lacking") {
  const Carded unnamed(roast("  2 kg lamb\n  1 kg potatoes\n", "Put [the lamb] on [the potatoes]. [roast 20 min per 500 g plus 20 min]."));
  CHECK(unnamed.adapted.by_weight.empty());
  REQUIRE(unnamed.card.remarks.size() == 1);
  CHECK(unnamed.card.remarks[0].kind == Remark::Kind::lacking);
  CHECK(unnamed.words(unnamed.card.remarks[0].runs).starts_with("Nothing says what the time by weight goes by"));
  const Carded unweighed(roast("  1 saddle\n", "[roast 20 min per 500 g of the saddle, plus 20 min]."));
  REQUIRE(unweighed.card.remarks.size() == 1);
  CHECK(unweighed.words(unweighed.card.remarks[0].runs).starts_with("What the saddle weighs at that place is not known"));
  const Carded alone(roast("  2 kg lamb\n", "[roast 20 min per 500 g plus 20 min]."));
  CHECK(exact_minutes(alone) == "100 to 100");
}

TEST_CASE("more than a batch takes is shared out in equal ones") {
  const std::string jam = roast("  1.2 kg rhubarb\n", "Cook [the rhubarb].", "at most: 2.4 kg rhubarb at a time\n");
  CHECK(Carded(jam, 2).fact(FactKind::batch) == "Batch: at most 2.4 kg rhubarb at a time");
  CHECK(Carded(jam, 3).fact(FactKind::batch) == "Batch: at most 2.4 kg rhubarb at a time: 2 batches of 1.8 kg");
  const std::string straws = roast("  400 g cheddar\n", "Cook [the cheddar].", "makes: 24 straws\nat most: 48 at a time\n");
  CHECK(Carded(straws, 3).fact(FactKind::batch) == "Batch: at most 48 at a time: 2 batches of 36");
  CHECK(Carded(straws, Fraction::of(37, 8)).fact(FactKind::batch) == "Batch: at most 48 at a time: 3 batches of 37");
  CHECK(Carded(straws, Fraction::of(25, 6)).fact(FactKind::batch) == "Batch: at most 48 at a time: 3 batches of 33 to 34");
}

TEST_CASE("a step says how many rounds its load takes") {
  const auto step = [](const std::string& lines, const std::string& method, const Fraction& k) {
    const Carded card(roast(lines, method), k);
    return card.words(card.card.steps.at(0).runs);
  };
  const std::string fry = "Coat [the fillets]. [fry 6 min, 2 at a time] until gold.";
  CHECK(step("  2 fillets\n", fry, 1) == "Coat the fillets. Fry 6 min, 2 at a time until gold.");
  CHECK(step("  2 fillets\n", fry, 6) == "Coat the fillets. Fry 6 min, 2 at a time (6 rounds) until gold.");
  CHECK(step("  2 fillets\n", fry, Fraction::of(5, 2)) ==
        "Coat the fillets. Fry 6 min, 2 at a time (3 rounds of 1 to 2) until gold.");
  CHECK(step("  400 g dough\n", "Roll [the dough], cut [24 straws] and [bake 15 min, 12 at a time].", 2) ==
        "Roll the dough, cut 48 straws and bake 15 min, 12 at a time (4 rounds).");
  CHECK(step("  400 g dough\n", "Roll [the dough], cut [24 roasts of 15 g] and [bake 15 min, 12 at a time].", 1) ==
        "Roll the dough, cut 24 roasts of 15 g and bake 15 min, 12 at a time (2 rounds).");
  // Nobody says which of two is meant.
  CHECK(step("  4 fillets\n  6 eggs\n", "Dip [the fillets] in [the eggs]. [fry 6 min, 2 at a time].", 1) ==
        "Dip the fillets in the eggs. Fry 6 min, 2 at a time.");
}

TEST_CASE("an alternative says what it stands instead of") {
  const Checked checked(roast("  250 g butter\n  or 200 g lard\n", "Melt [the butter]."));
  Report report;
  const auto picked = with_alternative(checked.recipe, "lard", report);
  REQUIRE(picked.has_value());
  const Adapted adapted = show(*picked, {});
  const Card card = make_card(adapted);
  CHECK(card.text.find("with lard instead of butter") != std::string::npos);
  CHECK(card.text.find("200 glardinstead of butter") != std::string::npos);  // the row, its runs one after another
  CHECK(card.text.find("Melt the lard.") != std::string::npos);
}

TEST_CASE("amounts in tastings are shown as everywhere") {
  const std::string text = roast("  1/2 tsp fine salt\n  50 g sugar\n", "Mix [the salt] and [the sugar].") +
                           "trial: 2026-02-11\n  fine salt  1/4 tsp -> 1/2 tsp\n  sugar  100 g -> 50 g\n";
  const Carded card(text);
  REQUIRE(card.card.trials.size() == 1);
  CHECK(card.words(card.card.trials[0].runs) == "fine salt ¼ tsp → ½ tsp (1.5 % to 5.7 % of the whole); sugar 100 g → 50 g (99 % to 94 % of the whole)");
  Request imperial;
  imperial.units = System::imperial;
  const Carded ounces(text, 3, imperial);
  CHECK(ounces.words(ounces.card.trials[0].runs) == "fine salt ¼ tsp → ½ tsp (1.5 % to 5.7 % of the whole); sugar 3½ oz → 1¾ oz (99 % to 94 % of the whole)");
}

TEST_CASE("a menu says when it is at table, and for whom") {
  const Carded menu("menu: Sunday\nserves: 8\nserve: 2026-03-01 13:00\nguests: 8, 1 without fish\nmethod:\n  Carve.\n");
  CHECK(menu.fact(FactKind::serve) == "At table: 2026-03-01 13:00");
  CHECK(menu.fact(FactKind::guests) == "Guests: 8, 1 without fish");
}

TEST_CASE("one and several, in the list and in the steps") {
  const std::string text = roast("  2 bay leaves\n  1 egg\n", "Beat [the egg] with [the bay leaves].");
  const Carded half(text, Fraction::of(1, 2)), three(text, 3);
  CHECK(half.row(0) == "1 |  | bay leaf | ");
  CHECK(half.words(half.card.steps.at(0).runs) == "Beat the egg with the bay leaf.");
  CHECK(three.words(three.card.steps.at(0).runs) == "Beat the eggs with the bay leaves.");
}

TEST_CASE("a step that ends in a clause ends in a full stop") {
  const Carded card(roast("  400 g leeks\n", "Sweat [the leeks]. [cool 20 min]"));
  CHECK(card.words(card.card.steps.at(0).runs) == "Sweat the leeks. Cool 20 min.");
}

TEST_CASE("the second column says nothing twice") {
  Request beside;
  beside.beside = System::imperial;
  const Carded card(roast("  1/2 tsp fine salt\n  up to 1 tbsp oil\n  400 g leeks\n", "Mix [everything] at [180 °C]."), 1, beside);
  CHECK(card.row(0) == "½ tsp |  | fine salt | ");
  CHECK(card.row(1) == "up to 1 tbsp |  | oil | ");
  CHECK(card.row(2) == "400 g | 14 oz | leeks | ");
  const Carded legs(roast("  4 (about 220 g each) chicken legs\n", "Mix [everything]."), 1, beside);
  CHECK(legs.row(0) == "4 |  | chicken legs | about 220 g each");
}

}  // namespace
}  // namespace qtn
