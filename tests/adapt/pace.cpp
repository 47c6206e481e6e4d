// What grows with a recipe, row by row, and scaling back.
#include <random>

#include "adapt/by_hand.hpp"

using namespace qtn;
using namespace qtn::adapt_tests;

namespace {

Fraction amount_of(const Page& page, std::string_view name, const Fraction& k) {
  return scale(page.recipe, k).lines[page.line_at(name)].amount.low;
}

}  // namespace

TEST_CASE("weights, volumes and counts grow in proportion") {
  const Page page("measures: British\n",
                  "  220 g  plain flour\n  1/2 tsp  fine salt\n  3  large eggs\n  200 to 250 ml  water\n");
  CHECK(amount_of(page, "plain flour", Fraction(3)) == Fraction(660));
  CHECK(amount_of(page, "fine salt", Fraction(3)) == Fraction::of(3, 2));
  CHECK(amount_of(page, "large eggs", Fraction::of(1, 2)) == Fraction::of(3, 2));
  const Quantity water = scale(page.recipe, Fraction(2)).lines[3].amount;
  CHECK(water.low == Fraction(400));
  CHECK(water.high == Fraction(500));
}

TEST_CASE("gently: twice is twice, beyond that half as fast") {
  const Page page("",
                  "  1 kg  beef\n  10 g  mace, gently\n  nutmeg, to taste, start with 10 g\n  bay leaf, to taste\n");
  CHECK(amount_of(page, "mace", Fraction::of(1, 2)) == Fraction(5));
  CHECK(amount_of(page, "mace", Fraction(2)) == Fraction(20));
  CHECK(amount_of(page, "mace", Fraction(10)) == Fraction(60));
  CHECK(amount_of(page, "beef", Fraction(10)) == Fraction(10));  // in kg
  const Recipe ten = scale(page.recipe, Fraction(10));
  for (const Tail& tail : ten.tails)
    if (tail.kind == TailKind::start_with) CHECK(tail.amount->low == Fraction(60));
}

TEST_CASE("a kitchen may season gently: the larder's herbs and spices; salt is neither and stays in proportion") {
  Kitchen kitchen;
  kitchen.gentle_seasoning = true;
  const std::string list =
      "  10 g  parsley\n  10 g  ground cumin\n  10 g  fine salt\n  10 g  sea salt flakes\n  10 g  celery salt\n  10 g  plain flour\n"
      "  10 g  sage, fixed\n";
  const Page page("", list, {}, std::make_shared<Kitchen>(kitchen));
  CHECK(amount_of(page, "parsley", Fraction(4)) == Fraction(30));
  CHECK(amount_of(page, "ground cumin", Fraction(4)) == Fraction(30));
  CHECK(amount_of(page, "ground cumin", Fraction(2)) == Fraction(20));
  for (const char* name : {"fine salt", "sea salt flakes", "celery salt", "plain flour"})
    CHECK_MESSAGE(amount_of(page, name, Fraction(4)) == Fraction(40), name);
  CHECK(amount_of(page, "sage", Fraction(4)) == Fraction(10));
  // unwritten: in proportion
  const Page plain("", list, {}, std::make_shared<Kitchen>());
  for (const char* name : {"parsley", "ground cumin", "fine salt"}) CHECK(amount_of(plain, name, Fraction(4)) == Fraction(40));
}

TEST_CASE("fixed stands still, and so does what a step takes of it") {
  const Page page("", "  500 g  flour\n  30 g  butter, fixed, from 40 g\n",
                  "  Melt [20 g of the butter] and rub in [100 g of the flour] and [the rest of the flour]. Add [the "
                  "rest of the butter].");
  const Recipe three = scale(page.recipe, Fraction(3));
  CHECK(three.lines[1].amount.low == Fraction(30));
  CHECK(three.terms[0].amount.low == Fraction(20));
  CHECK(three.terms[1].amount.low == Fraction(300));
  const Card card(page, Fraction(3));
  CHECK(card.line("butter") == "30 g");
  CHECK(card.term(0) == "20 g");
  CHECK(card.term(1) == "300 g");
  for (const Tail& tail : three.tails)
    if (tail.kind == TailKind::from) CHECK(tail.amount->low == Fraction(40));
}

TEST_CASE("percentages, parts and rates say the same; what they come to grows") {
  const Page page("", "  200 g  flour\n  50 % of [the flour]  butter\n");
  const Recipe three = scale(page.recipe, Fraction(3));
  const TakeLine& butter = three.lines[page.line_at("butter")];
  CHECK(butter.written.low == Fraction(50));
  CHECK(butter.amount.low == Fraction(300));
  CHECK(Card(page, Fraction(1)).line("butter") == "100 g");
}

TEST_CASE("tails and second statements grow with their line, sizes do not") {
  const Page page("",
                  "  400 g (14 oz)  leeks, from 550 g\n  4 (220 g each)  chicken legs\n  2 x 400 g tins  tomatoes\n  "
                  "100 ml  vinegar, 5 % acid\n");
  const Recipe two = scale(page.recipe, Fraction(2));
  CHECK(two.stated[0].amount.low == Fraction(28));
  CHECK(two.stated[1].amount.low == Fraction(220));
  CHECK(two.lines[2].pack->low == Fraction(400));
  CHECK(two.lines[2].amount.low == Fraction(1600));
  CHECK(two.lines[2].written.low == Fraction(4));
  for (const Tail& tail : two.tails) {
    if (tail.kind == TailKind::from) CHECK(tail.amount->low == Fraction(1100));
    if (tail.kind == TailKind::strength) CHECK(tail.amount->low == Fraction(5));
  }
}

TEST_CASE("one tail of two ingredients grows once") {
  const Page page("measures: British\n", "  1/2 tsp each  dried thyme and dried sage, from 4 g\n");
  REQUIRE(page.recipe.lines.size() == 2);
  const Recipe three = scale(page.recipe, Fraction(3));
  CHECK(three.lines[0].amount.low == Fraction::of(3, 2));
  CHECK(three.lines[1].amount.low == Fraction::of(3, 2));
  for (const Tail& tail : three.tails)
    if (tail.kind == TailKind::from) CHECK(tail.amount->low == Fraction(12));
}

TEST_CASE("what comes out of a line goes at its pace") {
  const Page page("", "  400 g  shell-on prawns, fixed, giving 250 g prawns and 150 g shells\n",
                  "  Fry [the prawns]; boil [the shells].");
  const Recipe three = scale(page.recipe, Fraction(3));
  CHECK(three.lines[page.line_at("prawns")].amount.low == Fraction(250));
}

TEST_CASE("in the method: what is taken grows; times, heat, measures, piece weights and loads stand") {
  const Page page("", "  1 kg  flour\n  2 l  water\n",
                  "  Mix [100 g (3 1/2 oz) of the flour] with [the water] and [the rest of the flour] [about 5 min]. "
                  "[reduce to 1.5 l], [loses 10 %]. "
                  "Roll to [3 mm], [8 rounds of 150 g]. [bake 20 min at 190 °C, 6 at a time] until it [reads 78 °C]. "
                  "[weigh 2 kg].");
  const Recipe two = scale(page.recipe, Fraction(2));
  for (std::size_t t = 0; t < two.terms.size(); ++t) {
    const Term &before = page.recipe.terms[t], &after = two.terms[t];
    const Fraction ratio = after.amount.low / before.amount.low;
    INFO("term " << t << " " << std::string(two.slice(after.span)));
    switch (before.role) {
      case TermRole::use:
      case TermRole::equivalent:
      case TermRole::to:
      case TermRole::checkpoint:
      case TermRole::pieces:
        CHECK(ratio == Fraction(2));
        break;
      default:
        CHECK(ratio == Fraction(1));
    }
  }
}

TEST_CASE("makes, what comes off, serves; jars keep their size") {
  const Page page("makes: 10 jars of 330 g, and about 150 g fat\nserves: 6 to 8\n", "  1 kg  fruit\n");
  const Recipe half = scale(page.recipe, Fraction::of(1, 2));
  CHECK(half.makes[0].amount.low == Fraction(5));
  CHECK(half.makes[0].each->low == Fraction(330));
  CHECK(half.makes[1].amount.low == Fraction(75));
  CHECK(half.serves->high == Fraction(4));
  CHECK(half.factor == Fraction::of(1, 2));
}

TEST_CASE("scaling back gives the very amounts, whatever was done in between") {
  std::mt19937 random(20);
  const auto number = [&](int most) { return std::to_string(1 + random() % static_cast<unsigned>(most)); };
  const char* const ends[] = {"", ", gently", ", fixed", ", from 3 kg", ", gently, from 2 kg"};
  for (int round = 0; round < 200; ++round) {
    std::string take;
    for (int line = 0; line < 8; ++line) {
      const char* const units[] = {" g", " ml", " tsp", " oz", ""};
      take += "  " + number(900) + units[random() % 5] + "  thing" + std::string(1, static_cast<char>('a' + line)) +
              ends[random() % 5] + "\n";
    }
    take += "  spice, to taste, start with " + number(30) + " g\n";
    const Page page("makes: " + number(20) + " pies\nserves: " + number(5) + " to 9\nmeasures: British\n", take,
                    "  Take [1/3 of the thinga], [8 rounds].");
    const Fraction k = Fraction::of(1 + static_cast<int>(random() % 90), 1 + static_cast<int>(random() % 30));
    const Fraction more = Fraction::of(1 + static_cast<int>(random() % 9), 1 + static_cast<int>(random() % 5));
    const Recipe back = scale(scale(scale(page.recipe, k), more), Fraction(1) / (k * more));
    CHECK(back.factor == Fraction(1));
    for (std::size_t i = 0; i < back.lines.size(); ++i) {
      CHECK(back.lines[i].amount == page.recipe.lines[i].amount);
      CHECK(back.lines[i].written == page.recipe.lines[i].written);
    }
    for (std::size_t i = 0; i < back.tails.size(); ++i) CHECK(back.tails[i].amount == page.recipe.tails[i].amount);
    for (std::size_t i = 0; i < back.terms.size(); ++i) CHECK(back.terms[i].amount == page.recipe.terms[i].amount);
    CHECK(back.makes[0].amount == page.recipe.makes[0].amount);
    CHECK(*back.serves == *page.recipe.serves);
  }
}
