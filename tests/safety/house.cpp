// What the house says of its own ingredients stands beside the table, and takes nothing away from it.
#include <doctest/doctest.h>

#include <memory>

#include "safety/safety.hpp"
#include "safety/allergens.hpp"
#include "syntax/tree.hpp"

using namespace qtn;

namespace {

AllergenSet of(const char* word) { return allergens_meant(word); }

// The sheet of a recipe with this one ingredient, in a house that says this of it.
AllergenSheet sheet(const std::string& food, const HouseFood& house, std::string* codes = nullptr, const std::string& promise = "") {
  Kitchen kitchen;
  kitchen.foods.push_back(house);
  Surroundings around;
  around.kitchen = std::make_shared<Kitchen>(kitchen);
  const Source source("dish.qtn", "recipe: The dish\n" + promise + "take:\n  100 g   " + food + "\nmethod:\n  Mix [everything].\n");
  const Tree tree = parse(source);
  Report report;
  const Recipe recipe = check(source, tree, around, report);
  check_promises(recipe, report);
  if (codes != nullptr)
    for (const Diagnostic& problem : report.list()) *codes += (codes->empty() ? "" : " ") + std::string(row(problem.code).code);
  return allergens_of(recipe);
}

HouseFood says(const char* name, AllergenSet contains, bool nothing_else = false) {
  HouseFood out{name, {}};
  out.allergens_said = true, out.contains = contains, out.nothing_else = nothing_else;
  return out;
}

}  // namespace

TEST_CASE("a house adds to the table") {
  std::string codes;
  const AllergenSheet sauce = sheet("Worcestershire sauce", says("Worcestershire sauce", of("barley")), &codes, "without: fish\n");
  CHECK(sauce.contains() == (of("fish") | of("barley")));
  CHECK((sauce.label() & of("soya")) != 0u);
  CHECK(codes == "Q970");
  const AllergenSheet cube = sheet("stock cube", says("stock cube", of("celery")));
  CHECK(cube.contains() == of("celery"));
  CHECK(cube.label() == (of("wheat") | of("milk") | of("soya")));
}

TEST_CASE("a label that was read to its end decides what only a label could tell") {
  std::string codes;
  const AllergenSheet cube = sheet("stock cube", says("stock cube", of("celery"), true), &codes, "without: gluten, milk\n");
  CHECK(cube.contains() == of("celery"));
  CHECK(cube.label() == 0u);
  CHECK(codes == "");
  // It takes nothing from what the thing is made of.
  CHECK(sheet("Worcestershire sauce", says("Worcestershire sauce", 0, true)).contains() == of("fish"));
}

TEST_CASE("a thing that the table does not know is known by its house") {
  std::string codes;
  const AllergenSheet gum = sheet("moonflower gum", says("moonflower gum", 0, true), &codes, "without: milk\n");
  CHECK(gum.all_known());
  CHECK(codes == "");
}
