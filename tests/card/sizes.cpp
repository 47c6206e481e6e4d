// What a card says of a recipe that was made larger, converted, or changed into a version of itself.
#include <doctest/doctest.h>

#include "recipe/dates.hpp"
#include "tests/card/carded.hpp"

namespace qtn {
namespace {

using test::Carded;

constexpr const char* kHead = "recipe: Leek tart\nmeasures: British\n";

std::string with_list(const std::string& lines, const std::string& method, const std::string& head = {}) {
  return kHead + head + "take:\n" + lines + "method:\n  " + method + "\n";
}

TEST_CASE("what a recipe makes agrees in number, weights never do") {
  const std::string head = "makes: 1 tart, and about 150 g chicken fat\n";
  const Carded one(with_list("  400 g leeks\n", "Sweat [the leeks].", head));
  const Carded three(with_list("  400 g leeks\n", "Sweat [the leeks].", head), 3);
  CHECK(one.fact(FactKind::makes) == "Makes: 1 tart and about 150 g chicken fat");
  CHECK(three.fact(FactKind::makes) == "Makes: 3 tarts and about 450 g chicken fat");
}

TEST_CASE("a tin is that of the recipe as written") {
  const Carded three(with_list("  400 g leeks\n", "Sweat [the leeks].", "makes: 1 tart\ntin: 23 cm round\n"), 3);
  CHECK(three.fact(FactKind::tin) == "Tin: 23 cm round, for the recipe as written");
}

TEST_CASE("things bought, what one weighs, and what a percentage is of") {
  const Carded three(with_list("  6 egg yolks, from 6 eggs\n  4 (about 220 g each) chicken legs\n", "Mix [everything]."), 3);
  CHECK(three.row(0) == "18 |  | egg yolks | from 18 eggs");
  CHECK(three.row(1) == "12 | about 220 g each | chicken legs | ");
  const Carded paste(std::string(kHead) +
                     "take: % of plain flour\n  220 g plain flour\n  50 % butter, cold\nmethod:\n  Mix [everything].\n");
  CHECK(paste.row(1) == "110 g |  | butter | cold, 50 % of the plain flour");
}

TEST_CASE("pieces agree in number") {
  const Carded three(with_list("  400 g leeks\n", "Sweat [the leeks]. Cut into [1 slice]."), 3);
  CHECK(three.words(three.card.steps.at(0).runs) == "Sweat the leeks. Cut into 3 slices.");
}

TEST_CASE("a stated equivalent goes where the amount before it was converted") {
  Request american;
  american.units = System::american;
  const std::string text = with_list("  400 g leeks\n", "Keep it cold, [4 °C (39 °F)]. Sweat [the leeks].");
  const Carded converted(text, Fraction(1), american);
  CHECK(converted.words(converted.card.steps.at(0).runs) == "Keep it cold, 39 °F. Sweat the leeks.");
}

TEST_CASE("a chosen alternative keeps the article, a line left out is struck with its amount") {
  const Checked file(with_list("  100 g cheddar\n  or 100 g blue cheese\n  5 g mint\n", "Add [half the cheddar] and [the mint], then [the rest of the cheddar].") +
                     "variant: Plain\n  mint  5 g -> none\n");
  Report report;
  const auto words = [](const Card& card, Range32 range) {
    std::string all;
    for (std::uint32_t i = 0; i < range.count; ++i) all += card.view(card.runs[range.first + i]);
    return all;
  };
  const std::optional<Recipe> blue = with_alternative(file.recipe, "blue cheese", report);
  REQUIRE(blue);
  const Adapted shown = show(*blue, {});
  const Card card = make_card(shown);
  CHECK(words(card, card.steps.at(0).runs).find("half the blue cheese") != std::string::npos);

  const std::optional<Recipe> plain = variant_of(file.recipe, "Plain", report);
  REQUIRE(plain);
  const Adapted other = show(*plain, {});
  const Card left_out = make_card(other);
  const Row& row = left_out.rows.at(2);
  for (const Range32 range : {row.amount, row.name})
    for (std::uint32_t i = 0; i < range.count; ++i) CHECK(left_out.runs[range.first + i].role == Role::struck);
}

TEST_CASE("as of an earlier day, what came in later does not stand in the list") {
  const std::string head = with_list("  100 g cheddar\n  5 g mint\n  or 5 g parsley\n", "Add [the cheddar] and [the mint].");
  const std::string log = "trial: 2026-01-05\n  note: Good.\ntrial: 2026-02-11\n  mint  none -> 5 g\n";
  const auto card_of = [](const std::string& text) {
    const Checked file(text);
    Report report;
    const std::optional<Recipe> then = as_of(file.recipe, read_date("2026-01-05", {}, report).value(), report);
    REQUIRE(then);
    return make_card(show(*then, {}));
  };
  const Card card = card_of(head + log);
  REQUIRE(card.rows.size() == 1);
  // The method is today's: one sentence says what to make of it.
  CHECK(card.text.find("Not in it yet on that day: mint. The method is today's") != std::string::npos);
  const Card plain = card_of(with_list("  100 g cheddar\n  5 g mint\n", "Add [everything].") + log);
  CHECK(plain.rows.size() == 1);
  CHECK(plain.text.find("mint") == std::string::npos);
  // What another thing took the place of stands there by itself.
  const Card before = card_of(with_list("  150 g silken tofu\n", "Whip [the tofu].") + "trial: 2026-01-05\ntrial: 2026-02-05\n  double cream  200 g -> 150 g silken tofu\n");
  CHECK(before.text.find("200 gdouble cream") != std::string::npos);
  CHECK(before.text.find("tofu") == std::string::npos);
}

TEST_CASE("a measure in a preparation converts and does not scale") {
  const std::string text = with_list("  1 kg potatoes, in 20 mm dice, at 18 °C\n  2 apples, cut\n", "Boil [everything] [10 min].");
  Request imperial;
  imperial.units = System::imperial;
  CHECK(Carded(text).row(0) == "1 kg |  | potatoes | in 20 mm dice, at 18 °C");
  CHECK(Carded(text, 2).row(0) == "2 kg |  | potatoes | in 20 mm dice, at 18 °C");
  CHECK(Carded(text, Fraction(1), imperial).row(0) == "2 lb 4 oz |  | potatoes | in ¾ inch dice, at 18 °C");
}

TEST_CASE("a version's time stands among the words of its clause") {
  const Checked file(with_list("  100 g cheddar\n", "Grate [the cheddar]. [bake 30 min (1/2 h) at 180 °C in the oven until golden]") +
                     "variant: Deep\n  bake  30 min -> 40 min\n");
  Report report;
  const std::optional<Recipe> deep = variant_of(file.recipe, "Deep", report);
  REQUIRE(deep);
  const Adapted shown = show(*deep, {});
  const Card card = make_card(shown);
  std::string all;
  for (std::uint32_t i = 0; i < card.steps.at(0).runs.count; ++i) all += card.view(card.runs[card.steps[0].runs.first + i]);
  CHECK(all == "Grate the cheddar. Bake 40 min at 180 °C in the oven until golden.");
}

TEST_CASE("a tasting names the part of what it changed") {
  const Carded card(std::string(kHead) +
                    "part: Base\ntake:\n  1/2 tsp fine salt\nmethod:\n  Stir [the salt].\n"
                    "part: Top\ntake:\n  1 tsp fine salt\nmethod:\n  Fill [the Base] with [the salt].\n"
                    "trial: 2026-02-11\n  [Base] fine salt  1/4 tsp -> 1/2 tsp\n");
  REQUIRE(card.card.trials.size() == 1);
  CHECK(card.words(card.card.trials[0].runs).find("Base: fine salt") == 0);
}

}  // namespace
}  // namespace qtn
