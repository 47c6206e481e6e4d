// Heads and openers that read well and mean nothing, or something else than they seem to (semantics 1.4).
#include "recipe/checked.hpp"

#include <doctest/doctest.h>

using namespace qtn;

namespace {

std::string head(const std::string& line) {
  return Checked("recipe: Supper\n" + line + "\ntake:\n  500 g peas\nmethod:\n  Boil [the peas] [5 min].\n").codes();
}
std::string steps(const std::string& method) {
  return Checked("recipe: Supper\noven: conventional\ntake:\n  500 g peas\nmethod:\n  Boil [the peas] [5 min].\n" + method).codes();
}

}  // namespace

TEST_CASE("a tin of one width wants a shape, and three sides in a row are no twenty tins") {
  CHECK(head("tin: 23 cm") == "tin_without_room");
  CHECK(head("tin: 20 x 30 x 5 cm") == "tin_without_room");
  for (const char* tin : {"23 cm round", "2 x 20 cm round", "2 x 20 x 30 cm", "20 x 30 cm, 5 cm deep", "1.2 l", "9 x 13 in", "23 cm springform"})
    CHECK_MESSAGE(head(std::string("tin: ") + tin) == "", tin);
}

TEST_CASE("holes of a tray are round, and as many as stand before them") {
  const Checked tray("recipe: X\ntin: 12 x 7 cm holes, 3 cm deep\ntake:\n  100 g plain flour\n");
  REQUIRE(tray.recipe.tin.has_value());
  CHECK(tray.recipe.tin->size.count == Fraction(12));
  CHECK(tray.recipe.tin->size.across == Fraction(70));
  CHECK(tray.recipe.tin->size.shape == TinShape::round);
  CHECK(Checked("recipe: X\ntin: 12 x 7 cm muffin holes\ntake:\n  100 g plain flour\n").recipe.tin->size == TinSize{Fraction(12), TinShape::round, Fraction(70)});
}

TEST_CASE("a pack is no thing that a recipe makes") {
  CHECK(head("makes: 4 x 50 g buns") == "unreadable_value");
  CHECK(head("makes: 4 buns of 125 g") == "");
}

TEST_CASE("a date is a day of the calendar, in one form") {
  CHECK(head("date: 2026-02-30") == "impossible_date");
  CHECK(head("date: 11/02/2026") == "date_not_iso");
  CHECK(head("date: 2026-02-11") == "");
}

TEST_CASE("a picture lies inside the book") {
  CHECK(head("photo: ../peas.jpg") == "use_outside_book");
  CHECK(head("photo: /home/peas.jpg") == "use_outside_book");
  CHECK(head("photo: photos\\peas.jpg") == "use_path_form");
  CHECK(head("photo: photos/peas.jpg") == "");
}

TEST_CASE("ahead of what, and the other way of two") {
  CHECK(steps("\n  ahead: Put a dish in the oven, [heat 5 min at 180 °C].\n") == "opener_out_of_place");
  CHECK(steps("\n  ahead: Put a dish in the oven, [heat 5 min at 180 °C].\n\n  Serve.\n") == "");
  CHECK(steps("\n  by hand: Mash it, [mash 5 min].\n\n  Serve.\n") == "one_way_only");
  CHECK(steps("\n  by machine: Blend it, [blend 1 min].\n\n  by machine: Scrape it down.\n") == "one_way_only");
  CHECK(steps("\n  by hand: Mash it, [mash 5 min].\n\n  by machine: Blend it, [blend 1 min].\n") == "");
}
