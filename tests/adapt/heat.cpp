// Amounts in the method: heat, lengths, what is taken.
#include "adapt/by_hand.hpp"

using namespace qtn;
using namespace qtn::adapt_tests;

namespace {

const Fraction kOnce(1);

std::string term(const std::string& head, const std::string& clause, System units, std::size_t at = 0,
                 const Fraction& k = kOnce) {
  const Page page(head, "  1 kg  flour\n", "  Do [" + clause + "].");
  const Card card(page, k, units);
  REQUIRE(card.adapted.terms.size() > at);
  return card.term(at);
}

std::string heat(const std::string& oven, const std::string& at, System units) {
  return term(oven.empty() ? "" : "oven: " + oven + "\n", "bake 20 min at " + at, units, 1);
}

}  // namespace

TEST_CASE("an oven has two settings, where the recipe says which one it means") {
  CHECK(heat("conventional", "180 °C", System::written) == "180 °C (fan 160 °C)");
  CHECK(heat("conventional", "175 °C", System::metric) == "175 °C (fan 155 °C)");
  CHECK(heat("conventional", "180 to 200 °C", System::written) == "180 to 200 °C (fan 160 to 180 °C)");
  CHECK(heat("fan", "160 °C", System::written) == "160 °C fan (180 °C)");
  CHECK(heat("conventional", "160 °C fan", System::written) == "160 °C fan");
  CHECK(heat("convection", "160 °C", System::written) == "160 °C fan (180 °C)");
  CHECK(heat("", "180 °C", System::written) == "180 °C");
  CHECK(heat("conventional", "70 °C", System::written) == "70 °C");
}

TEST_CASE("to °F by the oven's steps, for a plain oven") {
  CHECK(heat("conventional", "180 °C", System::american) == "350 °F");
  CHECK(heat("conventional", "190 °C", System::american) == "375 °F");
  CHECK(heat("conventional", "200 °C", System::american) == "400 °F");
  CHECK(heat("", "160 °C", System::american) == "325 °F");
  CHECK(heat("fan", "160 °C", System::american) == "350 °F");
  CHECK(heat("", "160 °C fan", System::american) == "350 °F");
  CHECK(heat("", "350 °F", System::metric) == "180 °C");
  // The American word for a fan oven: its 325 °F, 163 °C, is 180 °C and a bit in a plain one.
  CHECK(heat("", "325 °F convection", System::metric) == "180 °C");
  CHECK(heat("", "325 °F convection", System::metric) == heat("", "325 °F fan", System::metric));
  CHECK(heat("", "350 °F", System::american) == "350 °F");
}

TEST_CASE("gas marks by their table") {
  CHECK(heat("", "gas 4", System::written) == "gas 4");
  CHECK(heat("", "gas 4", System::imperial) == "gas 4");
  CHECK(heat("", "gas 4", System::metric) == "180 °C");
  CHECK(heat("", "gas 3", System::metric) == "170 °C");
  CHECK(heat("", "gas 3", System::american) == "325 °F");
}

TEST_CASE("readings, oil and fridges to the degree; a place rules over its verb; differences") {
  CHECK(term("", "reads 78 °C", System::american) == "172 °F");
  CHECK(term("", "fry 3 min at 175 °C", System::american, 1) == "347 °F");
  CHECK(term("", "rest 1 h in the fridge at 4 °C", System::american, 1) == "39 °F");
  CHECK(term("", "freeze at -18 °C", System::american) == "0 °F");
  CHECK(term("oven: conventional\n", "keep warm 1 h in the oven at 120 °C", System::written, 1) ==
        "120 °C (fan 100 °C)");
  CHECK(term("oven: conventional\n", "raise by 10 °C", System::written) == "10 °C");
  CHECK(term("", "raise by 10 °C", System::american) == "18 °F");
}

TEST_CASE("a stated equivalent: the reader's own scale first, in the page's figures") {
  const std::string head = "oven: conventional\n";
  CHECK(term(head, "180 °C (355 °F)", System::written) == "180 °C");
  CHECK(term(head, "180 °C (355 °F)", System::american, 0) == "355 °F");
  CHECK(term(head, "180 °C (355 °F)", System::american, 1) == "180 °C");
}

TEST_CASE("times stand, lengths convert") {
  CHECK(term("", "bake 30 to 35 min", System::american, 0, Fraction(3)) == "30 to 35 min");
  CHECK(term("", "3 mm", System::american) == "≈ ⅛ inch");
  CHECK(term("", "3 mm", System::metric, 0, Fraction(3)) == "3 mm");
  CHECK(term("", "1 inch", System::metric) == "2.5 cm");
}

TEST_CASE("what a mention takes") {
  const Page page("measures: British\n", "  400 g  cheddar\n  2 tsp  fine salt\n  300 ml  milk\n",
                  "  Beat [half the cheddar], [1/4 of the salt] and [100 ml of the milk]; then [the rest of the "
                  "cheddar], [the rest of the salt] and [the rest of the milk].");
  const Card card(page, kOnce);
  CHECK(card.mention(0) == "200 g");
  CHECK(card.mention(1) == "½ tsp");
  CHECK(card.mention(2).empty());
  CHECK(card.mention(3) == "200 g");
  CHECK(card.mention(4) == "1½ tsp");
  CHECK(card.mention(5) == "200 ml");
  const Card ounces(page, Fraction(2), System::imperial);
  CHECK(ounces.mention(0) == "14 oz");
  CHECK(ounces.term(1) == "7 fl oz");
  const Page whole("", "  400 g  cheddar\n", "  Beat [the cheddar].");
  CHECK(Card(whole, Fraction(2)).mention(0).empty());
}

TEST_CASE("a second column beside the first") {
  const Page page("measures: British\n", "  225 g  butter\n",
                  "  Take [half the butter] and [the rest of the butter]. [bake 20 min at 180 °C]");
  Request request;
  request.beside = System::imperial;
  const Adapted adapted = show(page.recipe, request);
  CHECK(adapted.lines[0].text == "225 g");
  CHECK(adapted.lines_beside[0].text == "8 oz");
  CHECK(adapted.mentions_beside[0].text == "4 oz");
  request.beside = System::american;
  CHECK(show(page.recipe, request).terms_beside.back().text == "350 °F");
}
