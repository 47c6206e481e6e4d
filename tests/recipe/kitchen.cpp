// The house's own facts (semantics part 8, Kitchen).
#include <doctest/doctest.h>

#include <memory>
#include <string>

#include "larder/allergens.hpp"
#include "recipe/recipe.hpp"

using namespace qtn;

namespace {

struct House {
  explicit House(std::string text) : source(std::make_unique<Source>("kitchen.qtn", "kitchen: Saltmarsh House\n" + std::move(text))) {
    const Tree tree = parse(*source);
    kitchen = check_kitchen(*source, tree, report);
    report.sort();
  }
  std::string codes() const {
    std::string text;
    for (const Diagnostic& one : report.list()) text += std::string(text.empty() ? "" : " ") + std::string(row(one.code).name);
    return text;
  }
  std::string_view at(std::size_t i) const { return source->text(report.list()[i].span); }

  std::unique_ptr<Source> source;
  Report report;
  Kitchen kitchen;
};

std::string codes(const std::string& text) { return House(text).codes(); }
std::string block(const std::string& field, const std::string& line) { return codes(field + ":\n  " + line + "\n"); }

}  // namespace

TEST_CASE("a whole kitchen is silent, and all of it is kept") {
  const House house(
      "measures: British\nwords: British\nlaw: UK\ncurrency: GBP\ncooks: 2\nnight: 21:30 to 06:00\nwork: 4 min\nscale: 5 g\n"
      "rounding: 2 %\nseasoning: gently\n"
      "ovens:\n  Range   conventional, 2 shelves, heats in 25 min, runs 10 °C hot\n  Wall oven\tconventional, 3 shelves, 2 of these\n"
      "hobs:\n  Range top   gas, 6 rings\nfridges:\n  Larder fridge   4 °C, 3 shelves\n  Chest freezer  -18 °C, 200 l\n"
      "tins:\n  Tart tin   23 cm round, 3 cm deep, 2 of these\n  Pie dish  22 x 30 cm, 6 cm deep\n  Basin  1.2 l basin\n"
      "verbs:\n  lacquer  hands, oven\n  plump    wait\n  fold in  hands, cook\n"
      "measures of the house:\n  ladle   120 ml\nwords of the house:\n  swede   neeps\n"
      "ingredients:\n  ripe starter   contains wheat, rye; 1.05 g per ml; 50 g each\n"
      "suppliers:\n  Mill Lane   flour, oats; Tuesdays\nprices:\n  butter   1.95 per 250 g, 2026-01-05\n  eggs  0.35 each\n  milk  1.30 per l\n");
  REQUIRE_MESSAGE(house.report.list().empty(), house.codes());
  const Kitchen& kitchen = house.kitchen;
  CHECK(kitchen.name == "Saltmarsh House");
  CHECK(kitchen.dialect == Dialect::british);
  CHECK(kitchen.law == "UK");
  CHECK(kitchen.currency == "GBP");
  CHECK(kitchen.cooks == 2);
  CHECK(kitchen.night_from == 21 * 60 + 30);
  CHECK(kitchen.night_to == 6 * 60);
  CHECK(kitchen.work.low == Fraction(4));
  CHECK(kitchen.finest == Fraction(5));
  CHECK(kitchen.tolerance == Fraction::of(1, 50));
  CHECK(kitchen.gentle_seasoning);
  CHECK(kitchen.oven == OvenKind::conventional);
  REQUIRE(kitchen.verbs.size() == 3);
  CHECK(kitchen.verbs[0].second.takes == (static_cast<int>(Takes::hands) | static_cast<int>(Takes::oven)));
  CHECK(kitchen.verbs[0].second.attention == Attention::throughout);
  CHECK(kitchen.verbs[0].second.range == Range::food);
  CHECK(kitchen.verbs[1].second.wait);
  CHECK(kitchen.verbs[1].second.range == Range::cook);
  CHECK(kitchen.verbs[1].second.takes == 0);
  CHECK(kitchen.verbs[2].second.range == Range::cook);
  REQUIRE(kitchen.measures.size() == 1);
  CHECK(kitchen.measures[0].amount.low == Fraction(120));
  REQUIRE(kitchen.words_of_house.size() == 1);
  CHECK(kitchen.words_of_house[0].second == "neeps");
  REQUIRE(kitchen.foods.size() == 1);
  CHECK(kitchen.foods[0].food.density.value == Fraction::of(105, 100));
  CHECK(kitchen.foods[0].food.each.value == Fraction(50));
  CHECK(kitchen.facts.size() == 11 + 18);
}

TEST_CASE("what is not said has its usual value") {
  const Kitchen kitchen = House("").kitchen;
  CHECK(kitchen.cooks == 1);
  CHECK(kitchen.tolerance == Fraction::of(1, 20));
  CHECK(kitchen.work.low == Fraction(5));
  CHECK(kitchen.work.unit == common().minute);
  CHECK(kitchen.oven == OvenKind::unstated);
}

TEST_CASE("ovens of two kinds leave a bare temperature open") {
  CHECK(House("ovens:\n  One   fan\n  Two   gas\n").kitchen.oven == OvenKind::unstated);
  CHECK(House("ovens:\n  One   fan\n  Two   fan, 2 shelves\n").kitchen.oven == OvenKind::fan);
}

TEST_CASE("single fields") {
  CHECK(codes("measures: Scottish\n") == "unknown_choice");
  CHECK(codes("words: Welsh\n") == "unknown_choice");
  CHECK(codes("law: XK\n") == "unknown_choice");
  CHECK(codes("seasoning: rashly\n") == "unknown_choice");
  CHECK(codes("way: foot\n") == "unknown_choice");
  CHECK(codes("way: machine\n") == "");
  CHECK(codes("seasoning: in proportion\n") == "");
  CHECK(codes("currency: £\n") == "kitchen_currency");
  CHECK(codes("currency: 123\n") == "kitchen_currency");
  CHECK(codes("night: 22:00 to 24:30\n") == "kitchen_not_a_clock");
  CHECK(codes("night: late\n") == "kitchen_not_a_clock");
  CHECK(codes("night: 22:00 to 22:00\n") == "kitchen_night");
  CHECK(codes("cooks: 0\n") == "kitchen_cooks");
  CHECK(codes("cooks: 1 1/2\n") == "kitchen_cooks");
  CHECK(codes("cooks: 2 to 3\n") == "kitchen_cooks");
  CHECK(codes("cooks: 2 people\n") == "");
  CHECK(codes("cooks: 2 hobs\n") == "unreadable_value");
  CHECK(codes("cooks: 2 kg\n") == "wrong_dimension");
  CHECK(codes("rounding: 20 %\n") == "kitchen_rounding");
  CHECK(codes("rounding: 5 g\n") == "wrong_dimension");
  CHECK(codes("work: 5 g\n") == "wrong_dimension");
  CHECK(codes("work: 0 min\n") == "zero_amount");
  CHECK(codes("scale: 1 min\n") == "wrong_dimension");
  CHECK(codes("scale: fine\n") == "unreadable_value");
  CHECK(codes("law:\n") == "empty_field");
  CHECK(codes("law: UK\nlaw: US\n") == "repeated_field");
  CHECK(codes("ovens:\n") == "empty_field");
  CHECK(codes("serves: 4\n") == "field_out_of_place");
  CHECK(codes("wall: 4\n") != "");
  CHECK(codes("curency: GBP\n") == "unknown_field");
  CHECK(codes("\njust words\n") == "stray_line");
}

TEST_CASE("`measures:` rules wherever it stands") {
  const House house("ingredients:\n  honey   340 g per cup\nmeasures: American\n");
  CHECK_MESSAGE(house.report.list().empty(), house.codes());
  CHECK(house.kitchen.foods[0].food.density.value > Fraction(1));
  CHECK(block("ingredients", "treacle   340 g per cup") == "no_such_measure");
}

TEST_CASE("lines of blocks") {
  CHECK(block("ovens", "Range conventional") == "kitchen_fact_form");
  CHECK(block("ovens", "Range   wood") == "kitchen_oven_fact");
  CHECK(block("ovens", "Range   fan, 2 doors") == "kitchen_oven_fact");
  CHECK(block("ovens", "Range   fan, heats in 25 g") == "wrong_dimension");
  CHECK(block("ovens", "Range   fan, heats in 20 to 25 min") == "kitchen_oven_fact");
  CHECK(block("ovens", "Range   fan, runs 10 °C") == "kitchen_oven_fact");
  CHECK(block("ovens", "Range   fan, runs 10 min hot") == "wrong_dimension");
  CHECK(block("ovens", "Range   fan, gas") == "kitchen_said_twice");
  CHECK(block("ovens", "Range   fan, 0 shelves") == "kitchen_oven_fact");
  CHECK(block("hobs", "Top   4 knobs") == "kitchen_hob_fact");
  CHECK(block("fridges", "Cold   4 °C, old") == "kitchen_fridge_fact");
  CHECK(block("fridges", "Cold   4 min") == "wrong_dimension");
  CHECK(block("tins", "Tart   large") == "kitchen_tin_fact");
  CHECK(block("tins", "Tart   23 round") == "kitchen_tin_fact");
  CHECK(block("tins", "Tart   2 of these") == "kitchen_tin_fact");
  CHECK(block("tins", "Tart   0 cm round") == "kitchen_tin_fact");
  CHECK(block("verbs", "lacquer   brush") == "kitchen_verb_fact");
  CHECK(block("verbs", "bake   oven") == "kitchen_verb_listed");
  CHECK(block("verbs", "lacquer   hands, hands") == "kitchen_said_twice");
  CHECK(block("measures of the house", "mug   20 cm") == "wrong_dimension");
  CHECK(block("measures of the house", "mug   big") == "kitchen_measure_fact");
  CHECK(block("measures of the house", "mug   0 ml") == "zero_amount");
  CHECK(block("measures of the house", "pint   500 ml") == "kitchen_measure_is_unit");
  CHECK(block("words of the house", "swede   neeps, tumshies") == "kitchen_fact_form");
  CHECK(block("suppliers", "Mill   oats, oats") == "kitchen_said_twice");
  CHECK(codes("tins:\n  Tart tin   23 cm round\n  tart tins   20 cm round\n") == "kitchen_name_repeated");
}

TEST_CASE("ingredients of the house") {
  CHECK(block("ingredients", "starter   sour") == "kitchen_food_fact");
  CHECK(block("ingredients", "starter   1.05 g per g") == "wrong_dimension");
  CHECK(block("ingredients", "starter   1.05 ml per g") == "wrong_dimension");
  CHECK(block("ingredients", "starter   5 min each") == "wrong_dimension");
  CHECK(block("ingredients", "starter   0 g per ml") == "zero_amount");
  CHECK(block("ingredients", "starter   1 g per 0 ml") == "zero_amount");
  CHECK(block("ingredients", "starter   105 g per 100 ml; 1.1 g per ml") == "kitchen_said_twice");
  CHECK(block("ingredients", "starter   1,05 g per ml") == "comma_in_number");
  CHECK(block("ingredients", "starter   contains wheet") == "kitchen_allergen");
  CHECK(block("ingredients", "starter   contains wheat, milc; 50 g each") == "kitchen_allergen");
  CHECK(block("ingredients", "sherry   contains alcohol, sulphites") == "");
  CHECK(block("ingredients", "stock cube   contains celery, nothing else") == "");
  const House label("ingredients:\n  stock cube   contains celery, nothing else\n  trail mix   contains nuts\n");
  REQUIRE(label.kitchen.foods.size() == 2);
  CHECK(label.kitchen.foods[0].nothing_else);
  CHECK_FALSE(label.kitchen.foods[1].nothing_else);
  CHECK(label.kitchen.foods[1].contains == allergens_held("nuts"));
  CHECK(block("ingredients", "plain flour   2 g per ml") == "kitchen_density_far");
  CHECK(block("ingredients", "plain flour   0.53 g per ml") == "");
  // What the table says of flour accuses no flour of another name.
  CHECK(block("ingredients", "toasted hazel flour   2 g per ml") == "");
}

TEST_CASE("prices") {
  CHECK(block("prices", "butter   1.95") == "kitchen_price_fact");
  CHECK(block("prices", "butter   £1.95 per 250 g") == "kitchen_price_fact");
  CHECK(House("prices:\n  butter   £1.95 per 250 g\n").report.list()[0].fixes.size() == 1);
  CHECK(block("prices", "butter   1,95 per 250 g") == "comma_in_number");
  CHECK(block("prices", "butter   1.95 per 250 g, 2026-02-30") == "impossible_date");
  CHECK(block("prices", "butter   1.95 per 250 g, 5 January 2026") == "date_not_iso");
  CHECK(block("prices", "butter   1.95 g per 250 g") == "wrong_dimension");
  CHECK(block("prices", "butter   1.95 per 20 min") == "wrong_dimension");
  CHECK(block("prices", "butter   0 per kg") == "zero_amount");
  CHECK(block("prices", "butter   1.95 per lump of it") == "kitchen_price_fact");
  CHECK(block("prices", "cress   0.80 per punnet, 2026-01-05") == "");
  CHECK(block("prices", "butter   1.95 per 0 g") == "pack_of_nothing");
  CHECK(block("prices", "eggs   3.20 per 0") == "pack_of_nothing");
  CHECK(block("prices", "butter   -1.95 per kg") != "");
  CHECK(block("prices", "butter   1.95 per kg\n  butter   2.10 per kg") == "kitchen_name_repeated");
}

TEST_CASE("prices are kept: money, pack, day") {
  const House house("prices:\n  butter  1.95 per 250 g, 2026-01-05\n  plain flour  1.10 per kg\n  salt  0.85 per 1 kg\n  eggs  3.20 per 12\n  lemons  0.35 each\n  cress  0.80 per punnet\n");
  const auto& all = house.kitchen.prices;
  REQUIRE(all.size() == 6);
  CHECK(all[0].money == Fraction::of(39, 20));
  CHECK(all[0].pack.low == Fraction(250));
  CHECK(all[0].day == 20458);  // days since 1970-01-01
  CHECK_FALSE(all[0].loose);
  CHECK(all[1].loose);        // by weight
  CHECK_FALSE(all[2].loose);  // a bag
  CHECK_FALSE(all[3].loose);
  CHECK(all[4].loose);
  CHECK_FALSE(all[5].loose);
}

TEST_CASE("prices in two currencies") {
  const std::string pounds = "currency: GBP\nprices:\n  butter   ";
  CHECK(codes(pounds + "1.95 per kg\n") == "");
  CHECK(codes(pounds + "£1.95 per kg\n") == "kitchen_price_fact");
  CHECK(codes(pounds + "1.95 GBP per kg\n") == "kitchen_price_fact");
  CHECK(codes(pounds + "€1.95 per kg\n") == "two_currencies");
  CHECK(codes(pounds + "1.95 EUR per kg\n") == "two_currencies");
  CHECK(codes(pounds + "$0.35 each\n") == "two_currencies");
  CHECK(codes("prices:\n  butter  1.95 EUR per kg\ncurrency: GBP\n") == "two_currencies");
  CHECK(codes("prices:\n  butter  €1.95 per kg\n  salt  £1 per kg\n") == "kitchen_price_fact two_currencies");
  // A sign of the house's own money is taken out for certain; another's never.
  CHECK(House(pounds + "£1.95 per kg\n").report.list()[0].fixes.size() == 1);
  CHECK(House(pounds + "€1.95 per kg\n").report.list()[0].fixes.empty());
}

TEST_CASE("a price of a day to come") {
  const auto told = [](int today) {
    const Source source("kitchen.qtn", "kitchen: K\nprices:\n  butter  1.95 per kg, 2026-01-05\n");
    Report report;
    check_kitchen(source, parse(source), report, today);
    return report.warnings();
  };
  CHECK(told(0) == 0);
  CHECK(told(20457) == 1);
  CHECK(told(20458) == 0);
}

TEST_CASE("suppliers: what they bring, then when") {
  const House house(
      "suppliers:\n  Mill  flour, oats; Tuesdays\n  Dairy  milk; every day but Sunday; 2 days ahead\n  Fish  haddock; when the boats go out\n"
      "  Stores  sugar, salt; Monday to Friday\n  Garden  leeks; Mon, Thu\n  Butcher  beef, Wednesdays and Saturdays\n  Weekend  cake; Friday to Monday\n");
  REQUIRE_MESSAGE(house.report.list().empty(), house.codes());
  const auto& all = house.kitchen.suppliers;
  REQUIRE(all.size() == 7);
  CHECK(all[0].foods == std::vector<std::string_view>{"flour", "oats"});
  CHECK(all[0].days == 0b10);
  CHECK(all[0].when == "Tuesdays");
  CHECK(all[1].days == 0b0111111);
  CHECK(all[1].ahead == 2);
  CHECK(all[2].days == 0);
  CHECK(all[2].when == "when the boats go out");
  CHECK(all[3].days == 0b11111);
  CHECK(all[4].days == 0b1001);
  CHECK(all[5].foods == std::vector<std::string_view>{"beef"});
  CHECK(all[5].days == 0b100100);
  CHECK(all[6].days == 0b1110001);
  CHECK(block("suppliers", "Mill  flour\n  Mill  oats") == "kitchen_name_repeated");
  CHECK(block("suppliers", "Mill  flour\n  Stores  sugar, flour") == "food_of_two_suppliers");
  CHECK(block("suppliers", "Mill  milk\n  Stores  buttermilk") == "");
}

TEST_CASE("a house's own weights come before the table's") {
  const House house("ingredients:\n  farmhouse cheddar   0.48 g per ml\n");
  REQUIRE(house.kitchen.food("farmhouse cheddar"));
  CHECK(house.kitchen.food("mature farmhouse cheddar"));
  CHECK(house.kitchen.food("cheddar") == nullptr);
}

TEST_CASE("damaged kitchens do no harm") {
  for (const char* text : {"ovens:\n  a  ,\n", "ovens:\n  a   ;,;\n", "tins:\n  a   x x\n", "prices:\n  a   per\n", "prices:\n  a    per kg\n",
                           "ingredients:\n  a   contains\n", "ingredients:\n  a    each\n", "ovens:\n  a   runs hot\n", "ovens:\n  a   heats in \n",
                           "verbs:\n  1   2\n", "measures of the house:\n  a   1/0 ml\n", "night:  to \n", "currency:\n\nlaw:\n", "tins:\n  a   1/0 cm round\n",
                           "fridges:\n  a   99999999999999999999 l\n", "words of the house:\n  a   ,\n"})
    CHECK_MESSAGE(codes(text) != "", text);
}

TEST_CASE("words of the house: rings with both places, one word for two, the name of another food") {
  const std::string field = "words of the house:\n";
  CHECK(codes(field + "  swede   neeps\n  chestnut mushrooms   brown caps\n") == "");
  CHECK(codes(field + "  swede   neeps\n  chestnut mushrooms   brown caps\n  brown caps   tumshies of old\n") == "");  // a chain that ends
  const House two(field + "  swede   neeps\n  neeps   Swedes\n");
  REQUIRE(two.codes() == "house_words_ring");
  CHECK(two.at(0) == "neeps");
  REQUIRE(two.report.list()[0].labels.size() == 1);
  CHECK(two.source->text(two.report.list()[0].labels[0].span) == "Swedes");
  const House three(field + "  start   one\n  one   two\n  two   three\n  three   one\n");
  REQUIRE(three.codes() == "house_words_ring");
  CHECK(three.report.list()[0].labels.size() == 2);
  CHECK(codes(field + "  swede   the swedes\n") == "house_words_ring");
  CHECK(codes(field + "  swede   neeps\n  Swedes   tumshies\n") == "kitchen_name_repeated");
  CHECK(codes(field + "  swede   tumshies\n  turnips   tumshies\n") == "house_word_shared");
  CHECK(codes(field + "  prawns   shellies\n  king prawns   shellies\n") == "");
  CHECK(codes(field + "  cornflour   corn flour\n") == "house_word_of_another");
  CHECK(codes(field + "  cornflour   cornstarch\n") == "");
}
