// What a listed name is, and what a mention of it means (semantics 3.1).
#include "recipe/checked.hpp"

#include <doctest/doctest.h>

using namespace qtn;

namespace {

Checked listed(const std::string& list, const std::string& method, std::shared_ptr<const Kitchen> kitchen = nullptr) {
  Surroundings around;
  around.kitchen = std::move(kitchen);
  return Checked("recipe: Supper\nmeasures: British\ntake:\n" + list + "method:\n  " + method + "\n", around);
}

std::string counted(const Checked& one, std::string_view name) {
  const TakeLine& line = one.line(name);
  if (line.name.empty()) return "no such line";
  const Unit& noun = unit(line.written.unit);
  return line.written.low.exact() + (line.written.unit == kNoUnit ? "" : " " + std::string(noun.name));
}

}  // namespace

TEST_CASE("what a name is of stands last, or before its of, in, on or with") {
  const auto codes = [](const std::string& name, const std::string& mention) {
    return listed("  500 g " + name + "\n", "Cook [" + mention + "].").codes();
  };
  CHECK(codes("leg of lamb", "the leg") == "");
  CHECK(codes("leg of lamb", "the lamb") == "");
  CHECK(codes("boned leg of salt marsh lamb", "the leg") == "");
  CHECK(codes("boned leg of salt marsh lamb", "the marsh") == "last_word_differs");
  CHECK(codes("boned leg of lamb", "the boned") == "last_word_differs");
  CHECK(codes("tuna in oil", "the tuna") == "");
  CHECK(codes("ribs with the bone", "the ribs") == "");
  CHECK(codes("butter beans", "the butter") == "last_word_differs");
  // A word that only says which piece of it: the thing alone is no slip.
  CHECK(codes("salmon fillets, skinned", "the salmon") == "");
  CHECK(codes("lamb shoulder", "the lamb") == "");
  CHECK(codes("chicken breast fillets", "the chicken") == "");
  CHECK(codes("garlic cloves", "the garlic") == "");
  CHECK(codes("lemon juice", "the lemon") == "last_word_differs");
  CHECK(codes("chicken stock", "the chicken") == "last_word_differs");
  CHECK(listed("  1 kg leg of lamb\n  200 g leg ham\n", "Cook [the leg] with [the ham].").codes() == "");
  CHECK(listed("  1 kg leg of lamb\n  1 kg duck leg\n", "Cook [the leg].").codes().find("several_meant") != std::string::npos);
}

TEST_CASE("a change may name a thing by the word before its of") {
  const Checked one = listed("  2 kg leg of lamb\n  200 g leg ham\n", "Roast [the leg of lamb] with [the leg ham].\ntrial: 2026-01-05\n  leg  1 kg -> 2 kg");
  CHECK(one.codes() == "");
}

TEST_CASE("a singular noun before a plural describes it and counts nothing") {
  const Checked one = listed(
      "  2 rib steaks\n  4 fillet steaks, trimmed\n  2 to 3 strip steaks on the bone\n  2 ribs celery\n  3 ribs of beef\n  2 head lettuce\n"
      "  1 head chicory\n  2 dozen eggs\n  1 1/2 tin tomatoes\n",
      "Serve [everything].");
  CHECK(counted(one, "rib steaks") == "2");
  CHECK(counted(one, "fillet steaks") == "4");
  CHECK(counted(one, "strip steaks on the bone") == "2");
  CHECK(counted(one, "celery") == "2 rib");
  CHECK(counted(one, "beef") == "3 rib");
  CHECK(counted(one, "lettuce") == "2 head");
  CHECK(counted(one, "chicory") == "1 head");
  CHECK(counted(one, "eggs") == "2 dozen");
  CHECK(counted(one, "tomatoes") == "3/2 tin");
  CHECK(listed("  4 fillet steaks\n", "Fry [2 fillet steaks], then [the rest of the fillet steaks].").codes() == "");
  CHECK(listed("  4 fillet steaks\n", "Fry [5 fillet steaks].").codes() == "more_than_left");
}

TEST_CASE("a noun that the larder knows as part of the name counts nothing") {
  const Checked one = listed("  1 fillet steak\n  4 leaf gelatine\n  3 leaves gelatine\n  1 clove garlic\n", "Serve [everything].");
  CHECK(counted(one, "fillet steak") == "1");
  CHECK(counted(one, "leaf gelatine") == "4");
  CHECK(counted(one, "gelatine") == "3 leaf");
  CHECK(counted(one, "garlic") == "1 clove");
  CHECK(one.recipe.slice(one.line("fillet steak").amount_span) == "1");
}

TEST_CASE("a measure of the house, with any blanks and of behind it") {
  auto kitchen = std::make_shared<Kitchen>();
  kitchen->measures.push_back({"ladle", {Fraction(120), Fraction(120), common().millilitre, Manner::plain, false}});
  kitchen->measures.push_back({"breakfast bowl", {Fraction(400), Fraction(400), common().millilitre, Manner::plain, false}});
  for (const std::string list : {"  2 ladles stock\n", "  2 ladles  stock\n", "  2 ladles \t stock\n", "  2 ladles\u00A0stock\n", "  2 ladles of stock\n",
                                 "  2 ladles  of  stock\n", "  2 Ladles stock\n"}) {
    const Checked one = listed(list, "Warm [the stock].", kitchen);
    CHECK_MESSAGE(one.codes() == "", list);
    CHECK_MESSAGE(one.line("stock").house_measure, list);
    CHECK_MESSAGE(one.line("stock").amount.low == Fraction(240), list);
    CHECK(lower(one.recipe.slice(one.line("stock").amount_span)) == "2 ladles");
  }
  const Checked bowl = listed("  1 breakfast bowl milk\n  2 ladles\n  1 ladle\u2019s worth\n", "Warm [the milk] with [the ladles].", kitchen);
  CHECK(bowl.line("milk").amount.low == Fraction(400));
  CHECK_FALSE(bowl.line("ladles").house_measure);
}
