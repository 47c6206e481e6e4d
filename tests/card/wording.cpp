// Cards in asked words: lists, mentions that follow their line, prose, verbs of clauses, oven words, the house's own.
#include <doctest/doctest.h>

#include "tests/card/carded.hpp"

namespace qtn {
namespace {

using test::Carded;

Request in(AskedWords words) {
  Request request;
  request.words = words;
  return request;
}

struct Worded : Carded {
  explicit Worded(const std::string& rest, AskedWords words = AskedWords::american, const std::string& head = "measures: British\nwords: British\n")
      : Carded("recipe: Supper\n" + head + rest, Fraction(1), in(words)) {}
  std::string remark(std::size_t at) const { return at < card.remarks.size() ? this->words(card.remarks[at].runs) : "?"; }
};

TEST_CASE("the list, its mentions and safe prose change; ambiguous words in prose stay") {
  const Worded card("take:\n  2 aubergines\n  1 red pepper\n  100 g bicarbonate of soda\nmethod:\n"
                    "  Fry [the aubergines] in a frying pan with [the pepper] and [the bicarbonate], pepper and pudding, without colour.\n");
  CHECK(card.row(0) == "2 |  | eggplants | ");
  CHECK(card.row(1) == "1 |  | red bell pepper | ");
  CHECK(card.row(2) == "100 g |  | baking soda | ");
  CHECK(card.step(0) == "Fry n{the eggplants} in a skillet with n{the pepper} and n{the baking soda}, pepper and pudding, without color.");
  CHECK(card.card.language == "en-US");
  CHECK(card.card.remarks.empty());
}

TEST_CASE("what is not the same thing is said in both words once, with the reason") {
  const Worded card("take:\n  200 g self-raising flour\n  100 g cornflour\nmethod:\n  Mix [the self-raising flour] and [the cornflour].\n");
  CHECK(card.row(0) == "200 g |  | self-raising (self-rising) flour | ");
  CHECK(card.row(1) == "100 g |  | cornstarch | ");
  CHECK(card.step(0) == "Mix n{the self-raising flour} and n{the cornstarch}.");
  REQUIRE(card.card.remarks.size() == 1);
  CHECK(card.remark(0).find("salt") != std::string::npos);
}

TEST_CASE("two things of one part that have one name abroad keep their own") {
  const Worded card("take:\n  1 tsp vanilla essence\n  1 tsp vanilla extract\n  100 g cornflour\nmethod:\n  Stir [the vanilla essence] into [the cornflour], then [the vanilla extract].\n");
  CHECK(card.row(0) == "1 tsp |  | vanilla essence (vanilla extract) | ");
  CHECK(card.row(1) == "1 tsp |  | vanilla extract | ");
  CHECK(card.step(0) == "Stir n{the vanilla essence} into n{the cornstarch}, then n{the vanilla extract}.");
}

TEST_CASE("the verb of a clause changes in front of it, too, and an apostrophe finds its s") {
  const Worded card("take:\n  400 g haddock\n  200 g prawns\nmethod:\n  Grill [the haddock], [grill 8 min]. The prawns' shells go with [the prawns].\n");
  CHECK(card.step(0) == "Broil n{the haddock}, broil t{8 min}. The shrimp's shells go with n{the shrimp}.");
}

TEST_CASE("American corn flour is never cornflour") {
  const Worded card("take:\n  200 g corn flour\n  100 g cornstarch\nmethod:\n  Mix [the corn flour] and [the cornstarch].\n", AskedWords::british, "measures: American\nwords: American\n");
  CHECK(card.row(0) == "200 g |  | corn (maize) flour | ");
  CHECK(card.row(1) == "100 g |  | cornflour | ");
  CHECK(card.remark(0).find("starch") != std::string::npos);
  CHECK(card.card.language == "en-GB");
}

TEST_CASE("listed names among other text") {
  const Worded card("at most: 4 kg stewing beef at a time\ntake:\n  9 kg stewing beef\n  or 8 kg braising beef\n  600 g beef shin, giving 500 g stewing steak and 100 g bones\nmethod:\n  Fry [the stewing beef], [the stewing steak] and [the bones].\n");
  CHECK(card.fact(FactKind::batch).starts_with("Batch: at most 4 kg stew beef at a time"));
  CHECK(card.row(1).find("beef chuck") != std::string::npos);
  CHECK(card.row(2) == "600 g |  | beef foreshank | giving 500 g stew beef and 100 g bones");
}

TEST_CASE("both: at first mention only, never in a title") {
  const Worded card("part: Aubergine mash\ntake:\n  500 g minced beef\n  2 aubergines\nmethod:\n  Fry [the minced beef] with [the aubergines] in a frying pan, a large frying pan. Aubergines drink oil.\n", AskedWords::both);
  CHECK(card.words(card.card.parts[0].title) == "Aubergine mash");
  CHECK(card.row(0) == "500 g |  | minced (ground) beef | ");
  CHECK(card.row(1) == "2 |  | aubergines (eggplants) | ");
  CHECK(card.step(0) == "Fry n{the minced beef} with n{the aubergines} in a frying pan (skillet), a large frying pan. Aubergines drink oil.");
  CHECK(card.card.language == "en-GB");
}

TEST_CASE("grill and broil: the verb of a clause alone") {
  const Worded card("take:\n  4 lamb cutlets\nmethod:\n  [grill 5 min]. Grill [the lamb cutlets], [10 min]. Light the grill, and put them under the grill.\n");
  CHECK(card.step(0) == "Broil t{5 min}. Broil n{the lamb chops}, t{10 min}. Light the grill, and put them under the broiler.");
  const Worded outside("take:\n  4 lamb cutlets\nmethod:\n  [barbecue 5 min].\n");
  CHECK(outside.step(0) == "Grill t{5 min}.");
  const Worded back("take:\n  4 lamb chops\nmethod:\n  [broil 5 min]. [grill 3 min].\n", AskedWords::british, "measures: American\nwords: American\n");
  CHECK(back.step(0) == "Grill t{5 min}. Barbecue t{3 min}.");
}

TEST_CASE("oven words follow the oven's figures, and a gas mark is °F") {
  const std::string text = "take:\n  200 g oats\nmethod:\n  [bake 20 min at 180 °C]. [bake 20 min at 160 °C fan]. [bake 5 min at gas 4]. [bake 5 min at 180 °C (350 °F, gas 4)]. A fan of the fan oven.\n";
  const Worded card("oven: conventional\n" + text);
  CHECK(card.step(0) == "Bake t{20 min} at C{180 °C (convection 160 °C)}. Bake t{20 min} at C{160 °C convection}. Bake t{5 min} at C{350 °F}. "
                        "Bake t{5 min} at C{180 °C} (2{350 °F}). A fan of the convection oven.");
  CHECK(card.fact(FactKind::oven) == "Oven: conventional");
  const Worded own("oven: conventional\n" + text, AskedWords::british);
  CHECK(own.step(0).find("gas 4") != std::string::npos);
  CHECK(own.step(0).find("convection") == std::string::npos);
  const Worded abroad("take:\n  200 g oats\nmethod:\n  [bake 20 min at 325 °F convection].\n", AskedWords::british, "measures: American\nwords: American\n");
  CHECK(abroad.step(0) == "Bake t{20 min} at C{325 °F fan}.");
}

TEST_CASE("a tin is a pan in a recipe that has one; behind a number it is a can") {
  const Worded card("tin: 23 cm round, 3 cm deep\ntake:\n  2 x 400 g tins chopped tomatoes\nmethod:\n  Butter the tin and fill it with [the tomatoes].\n");
  CHECK(card.row(0) == "2 x 400 g cans |  | chopped tomatoes | ");
  CHECK(card.step(0) == "Butter the pan and fill it with n{the tomatoes}.");
  CHECK(card.fact(FactKind::tin) == "Pan: 23 cm round, 3 cm deep");
}

TEST_CASE("words in their own country stay as they are") {
  const std::string text = "take:\n  2 aubergines\n  1 eggplant\nmethod:\n  Fry [the aubergines] and [the eggplant].\n";
  const Worded card(text, AskedWords::british), plain(text, AskedWords::as_written);
  CHECK(card.row(1) == "1 |  | eggplant | ");
  CHECK(card.card.text == plain.card.text);
}

TEST_CASE("a page that does not say whose words it has") {
  const Worded card("take:\n  2 aubergines\n  1 red pepper\n  200 g prawns\nmethod:\n  Fry [everything].\n", AskedWords::american, "");
  CHECK(card.row(0) == "2 |  | eggplants | ");
  CHECK(card.row(1) == "1 |  | red pepper | ");
  CHECK(card.row(2) == "200 g |  | prawns | ");
}

TEST_CASE("the house's own words, on its own cards and on no others") {
  const std::string text = "take:\n  200 g chestnut mushrooms\n  1 swede\n  1 red pepper\nmethod:\n  Fry [the mushrooms] and [the swede] with [the red pepper]. Swedes keep, and red pepper too.\n";
  const auto house = [&](AskedWords words) {
    auto kitchen = std::make_shared<Kitchen>();
    kitchen->words = WordsOf::british;
    kitchen->words_of_house = {{"chestnut mushrooms", "brown caps"}, {"swede", "neeps"}, {"red pepper", "capsicum"}};
    Surroundings around;
    around.kitchen = kitchen;
    return std::make_unique<Carded>("recipe: Supper\n" + text, Fraction(1), in(words), around);
  };
  for (const AskedWords words : {AskedWords::as_written, AskedWords::british}) {
    const auto card = house(words);
    CHECK(card->row(0) == "200 g |  | brown caps | ");
    CHECK(card->row(1) == "1 |  | neeps | ");
    CHECK(card->row(2) == "1 |  | capsicum | ");
    CHECK(card->step(0) == "Fry n{the brown caps} and n{the neeps} with n{the capsicum}. Neeps keep, and red pepper too.");
  }
  const auto abroad = house(AskedWords::american);
  CHECK(abroad->row(0) == "200 g |  | cremini mushrooms | ");
  CHECK(abroad->row(1) == "1 |  | rutabaga | ");
}

TEST_CASE("links, code and amounts keep their letters") {
  const Worded card("note: [courgette](http://x.org/courgette) and `courgette`\ntake:\n  2 courgettes\nmethod:\n  Fry [the courgettes].\n");
  CHECK(card.remark(0) == "zucchini and courgette");
  CHECK(card.card.links[1] == "http://x.org/courgette");
}

}  // namespace
}  // namespace qtn
