// Semantics of scaling: what grows, what grows gently, what stays, and that all of it can be taken back.
#include <doctest/doctest.h>

#include "tests/adapt/shown.hpp"

using namespace qtn;

namespace {

const char* const kStew = R"(recipe: Harbour stew
makes: 2.5 l, and about 150 g fat
serves: 6 to 8
measures: British
take:
  1.5 kg (3 lb 5 oz)   shin, from 1.8 kg
  2 (about 110 g each) onions
  2 x 400 g tins       tomatoes
  400 to 500 ml        water
  10 g                 fine salt, gently
  1                    bay leaf, fixed
  1/2 tsp each         thyme and sage, dried
  60 g                 lard, taking up 20 g
                       vinegar, to taste, start with 20 ml
method:
  Brown [1 kg of the shin] at [180 °C]. Cut [the onions] in [5 mm] dice, then add [everything].
  [simmer 2 h], [reduce to 2.5 l], [weigh 2.6 kg] and shape into [8 rounds] of [150 g].
)";

const char* const kLoaf = R"(recipe: House loaf
makes: 2 loaves
take: % of strong white flour
  500 g  strong white flour
  65 %   water
  2 %    fine salt
method:
  Mix [everything] and [bake 40 min at 220 °C].
)";

Fraction low(const Recipe& recipe, std::string_view name) {
  for (const TakeLine& line : recipe.lines)
    if (line.name == name) return line.amount.low;
  return Fraction::lost();
}

Fraction term(const Recipe& recipe, TermRole role) {
  for (const Term& one : recipe.terms)
    if (one.role == role) return one.amount.low;
  return Fraction::lost();
}

Fraction tail(const Recipe& recipe, TailKind kind) {
  for (const Tail& one : recipe.tails)
    if (one.kind == kind && one.amount) return one.amount->low;
  return Fraction::lost();
}

void same_amounts(const Recipe& a, const Recipe& b) {
  for (std::size_t i = 0; i < a.lines.size(); ++i) {
    CAPTURE(a.lines[i].name);
    CHECK(a.lines[i].amount == b.lines[i].amount);
    CHECK(a.lines[i].written == b.lines[i].written);
  }
  for (std::size_t i = 0; i < a.terms.size(); ++i) CHECK(a.terms[i].amount == b.terms[i].amount);
  for (std::size_t i = 0; i < a.tails.size(); ++i) CHECK(a.tails[i].amount == b.tails[i].amount);
  for (std::size_t i = 0; i < a.stated.size(); ++i) CHECK(a.stated[i].amount == b.stated[i].amount);
  for (std::size_t i = 0; i < a.makes.size(); ++i) CHECK(a.makes[i].amount == b.makes[i].amount);
  for (std::size_t p = 0; p < a.parts.size(); ++p)
    for (std::size_t i = 0; i < a.parts[p].makes.size(); ++i)
      CHECK(a.parts[p].makes[i].amount == b.parts[p].makes[i].amount);
  CHECK(a.serves == b.serves);
  CHECK(a.factor == b.factor);
}

}  // namespace

TEST_CASE("amounts of the list grow in proportion, both ends of a range") {
  const Checked stew(kStew);
  const Recipe three = scale(stew.recipe, Fraction(3));
  CHECK(low(three, "shin") == Fraction::of(9, 2));
  CHECK(low(three, "onions") == Fraction(6));
  CHECK(low(three, "tomatoes") == low(stew.recipe, "tomatoes") * Fraction(3));
  CHECK(low(three, "water") == Fraction(1200));
  for (const TakeLine& line : three.lines)
    if (line.name == "water") CHECK(line.amount.high == Fraction(1500));
  CHECK(three.factor == Fraction(3));
}

TEST_CASE("gently: in proportion up to twice, half as fast beyond; fixed not at all") {
  const Checked stew(kStew);
  CHECK(low(scale(stew.recipe, Fraction::of(1, 2)), "fine salt") == Fraction(5));
  CHECK(low(scale(stew.recipe, Fraction(2)), "fine salt") == Fraction(20));
  CHECK(low(scale(stew.recipe, Fraction(3)), "fine salt") == Fraction(25));
  CHECK(low(scale(stew.recipe, Fraction(10)), "fine salt") == Fraction(60));
  CHECK(low(scale(stew.recipe, Fraction(10)), "bay leaf") == Fraction(1));
}

TEST_CASE("tails: as bought and taken up in proportion, a start for tasting gently") {
  const Checked stew(kStew);
  const Recipe three = scale(stew.recipe, Fraction(3));
  CHECK(tail(three, TailKind::from) == Fraction::of(27, 5));
  CHECK(tail(three, TailKind::taking_up) == Fraction(60));
  CHECK(tail(three, TailKind::start_with) == Fraction(50));
}

TEST_CASE("stated equivalents follow, the weight of one does not") {
  const Checked stew(kStew);
  const Recipe three = scale(stew.recipe, Fraction(3));
  REQUIRE(three.stated.size() == stew.recipe.stated.size());
  int each = 0, whole = 0;
  for (std::size_t i = 0; i < three.stated.size(); ++i) {
    const Fraction k = three.stated[i].amount.low / stew.recipe.stated[i].amount.low;
    CHECK(k == Fraction(three.stated[i].each ? 1 : 3));
    (three.stated[i].each ? each : whole) += 1;
  }
  CHECK(each == 1);
  CHECK(whole >= 1);
}

TEST_CASE("what two lines share is scaled once") {
  const Checked pair(
      listed("measures: British\n", "  500 g  plain flour\n  1/2 tsp (2.5 ml) each  thyme and sage, from 4 g\n"));
  const Recipe three = scale(pair.recipe, Fraction(3));
  for (std::size_t i = 0; i < three.stated.size(); ++i)
    CHECK(three.stated[i].amount.low == pair.recipe.stated[i].amount.low * Fraction(3));
  CHECK(tail(three, TailKind::from) == tail(pair.recipe, TailKind::from) * Fraction(3));
  same_amounts(scale(three, Fraction::of(1, 3)), pair.recipe);
}

TEST_CASE("in the method, what is taken, weighed and cut grows; heat, time and size do not") {
  const Checked stew(kStew);
  const Recipe three = scale(stew.recipe, Fraction(3));
  const auto grows = [&](TermRole role) { return term(three, role) / term(stew.recipe, role); };
  CHECK(grows(TermRole::use) == Fraction(3));
  CHECK(grows(TermRole::to) == Fraction(3));
  CHECK(grows(TermRole::checkpoint) == Fraction(3));
  CHECK(grows(TermRole::pieces) == Fraction(3));
  CHECK(grows(TermRole::length) == Fraction(1));
  CHECK(grows(TermRole::temperature) == Fraction(1));
  CHECK(grows(TermRole::measure) == Fraction(1));
}

TEST_CASE("down to a temperature stays, down to a volume grows") {
  const Checked one(listed("", "  1 l  milk\n") + "  [cool to 40 °C], then [reduce to 600 ml].\n");
  const Recipe twice = scale(one.recipe, Fraction(2));
  std::string all;
  for (const Term& each : twice.terms)
    if (each.role == TermRole::to) all += each.amount.low.exact() + " ";
  CHECK(all == "40 1200 ");
}

TEST_CASE("percentages stay, their results grow") {
  const Checked loaf(kLoaf);
  const Recipe three = scale(loaf.recipe, Fraction(3));
  for (const TakeLine& line : three.lines) {
    if (line.name == "water") {
      CHECK(line.written.low == Fraction(65));
      CHECK(line.amount.low == Fraction(975));
    }
  }
  CHECK(low(three, "strong white flour") == Fraction(1500));
}

TEST_CASE("what it makes, what else comes off and whom it feeds") {
  const Checked stew(kStew);
  const Recipe three = scale(stew.recipe, Fraction(3));
  REQUIRE(three.makes.size() == 2);
  CHECK(three.makes[0].amount.low == Fraction::of(15, 2));
  CHECK(three.makes[1].amount.low == Fraction(450));
  REQUIRE(three.serves.has_value());
  CHECK(three.serves->low == Fraction(18));
  CHECK(three.serves->high == Fraction(24));
  const Checked jars(listed("makes: 10 jars of 30 g\n", "  300 g  plain flour\n"));
  const Recipe twice = scale(jars.recipe, Fraction(2));
  REQUIRE(twice.makes.size() == 1);
  CHECK(twice.makes[0].amount.low == Fraction(20));
  REQUIRE(twice.makes[0].each.has_value());
  CHECK(twice.makes[0].each->low == Fraction(30));
}

TEST_CASE("a kitchen may season gently") {
  auto kitchen = std::make_shared<Kitchen>();
  kitchen->gentle_seasoning = true;
  Surroundings around;
  around.kitchen = kitchen;
  const Checked one(listed("measures: British\n", "  500 g  plain flour\n  10 g  ground cumin\n"), around);
  REQUIRE(one.line("ground cumin").food != nullptr);
  REQUIRE(one.line("ground cumin").food->seasoning);
  CHECK(low(scale(one.recipe, Fraction(10)), "ground cumin") == Fraction(60));
  CHECK(low(scale(one.recipe, Fraction(10)), "plain flour") == Fraction(5000));
}

TEST_CASE("scaling back is exact, also past the bend of gently and in two goes") {
  const Fraction sizes[] = {Fraction::of(1, 3), Fraction::of(7, 5),  Fraction(2),
                            Fraction(3),        Fraction::of(10, 3), Fraction(10)};
  for (const char* text : {kStew, kLoaf}) {
    const Checked one(text);
    for (const Fraction& k : sizes) {
      CAPTURE(k.exact());
      same_amounts(scale(scale(one.recipe, k), Fraction(1) / k), one.recipe);
      same_amounts(scale(scale(one.recipe, k), Fraction(4)), scale(one.recipe, k * Fraction(4)));
    }
  }
}
