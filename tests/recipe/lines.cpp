// One line of the list by itself: what cooks write, and what they are told (semantics 1.2, 1.3 and 1.5).
#include "recipe/checked.hpp"

#include <doctest/doctest.h>

using namespace qtn;

namespace {

Checked list(const std::string& line) {
  return Checked("recipe: Supper\nmeasures: British\ntake:\n  " + line + "\n  500 g peas\nmethod:\n  Boil [everything] [5 min].\n");
}
std::string codes(const std::string& line) { return list(line).codes(); }
// What the one problem of a line would have it be, and whether that is certain.
std::string mended(const std::string& line, Certainty certainty) {
  const Checked one = list(line);
  if (one.report.list().size() != 1 || one.report.list()[0].fixes.empty()) return "?";
  const Fix& fix = one.report.list()[0].fixes[0];
  if (fix.certainty != certainty) return "?";
  std::string text = line;
  const auto begin = static_cast<std::size_t>(fix.span.begin) - std::string(one.source->text()).find(line);
  return text.replace(begin, fix.span.size(), fix.text);
}

}  // namespace

TEST_CASE("a step in the list is no thing without an amount") {
  CHECK(codes("Melt the butter") == "method_in_list");
  CHECK(codes("roast the beef") == "method_in_list");
  CHECK(codes("white pepper") == "no_amount");
}

TEST_CASE("an onion is one onion, a little oil is no number") {
  CHECK(mended("an onion, sliced", Certainty::choice) == "1 onion, sliced");
  CHECK(mended("a large egg", Certainty::choice) == "1 large egg");
  CHECK(mended("a little oil", Certainty::choice) == "a little oil, to taste");
}

TEST_CASE("each wants two names") {
  CHECK(codes("1/2 tsp each salt, pepper") == "unreadable_line");
  CHECK(codes("1/2 tsp each salt and pepper") == "");
}

TEST_CASE("what comes out of a line is no more than the line") {
  CHECK(codes("1 kg whole prawns, giving 500 g prawns and 600 g shells") == "more_than_the_line");
  CHECK(Checked("recipe: Soup\ntake:\n  1 kg whole prawns, giving 400 g prawns and 0.6 kg shells\nmethod:\n  Boil [the shells], add [the prawns] [5 min].\n").codes() == "");
  CHECK(codes("1 l sunflower oil, taking up 2 kg") == "more_than_the_line");
  CHECK(codes("1 l sunflower oil, taking up 60 g") == "");
}

TEST_CASE("behind the comma an amount of its own kind") {
  CHECK(codes("20 g flour, from 10 min") == "wrong_dimension");
  CHECK(codes("4 chicken legs, 20 min each") == "wrong_dimension");
  CHECK(codes("5 g malt vinegar, 150 % acid") == "strength_over_all");
  CHECK(codes("5 g malt vinegar, 150 ppm acid") == "");
  CHECK(codes("20 g flour, at 19:00") == "field_out_of_place");
  CHECK(codes("500 g cooked beans, from 220 g dried beans") == "");
}

TEST_CASE("packs and second statements as cooks write them") {
  CHECK(mended("1 (400 g) tin tomatoes", Certainty::safe) == "1 x 400 g tin tomatoes");
  CHECK(mended("2 (400 g) tins tomatoes", Certainty::choice) == "2 x 400 g tins tomatoes");
  CHECK(mended("2x 400 g tins tomatoes", Certainty::safe) == "2 x 400 g tins tomatoes");
  CHECK(mended("2x400 g tins tomatoes", Certainty::safe) == "2 x 400 g tins tomatoes");
  CHECK(mended("400g/14oz flour", Certainty::safe) == "400 g (14 oz) flour");
  CHECK(mended("400 g / 14 oz flour", Certainty::safe) == "400 g (14 oz) flour");
  CHECK(mended("400 g/14 oz flour", Certainty::safe) == "400 g (14 oz) flour");
}

TEST_CASE("a word that is nearly a unit is asked about, the words of the trade are not") {
  CHECK(mended("250 grms flour", Certainty::choice) == "250 grams flour");
  CHECK(mended("3 kgs rye flour", Certainty::choice) == "3 kg rye flour");
  CHECK(mended("2 tabelspoons oil", Certainty::choice) == "2 tablespoons oil");
  for (const char* line : {"4 mint leaves", "3 pinto beans", "2 round steaks", "4 lime leaves", "6 pine nuts", "2 onions", "6 grape tomatoes", "4 potato cakes"})
    CHECK_MESSAGE(codes(line) == "", line);
}

TEST_CASE("a step has a length, no time of day") {
  const auto clause = [](const std::string& text) { return Checked("recipe: Supper\noven: conventional\ntake:\n  500 g peas\nmethod:\n  Bake [the peas]. " + text + "\n"); };
  CHECK(clause("[bake at 13:00]").problem(Code::time_form)->fixes.empty());
  CHECK(clause("[bake 1:30 at 180 °C]").problem(Code::time_form)->fixes.size() == 1);
}
