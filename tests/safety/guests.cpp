// What the guests of a menu are taken to do without, and which dishes that leaves them.
#include <doctest/doctest.h>

#include <memory>

#include "safety/guest_words.hpp"
#include "safety/safety.hpp"
#include "syntax/tree.hpp"

using namespace qtn;

namespace {

struct Table {
  Source source;
  Tree tree;
  Report report;
  Recipe menu;
  Table(const std::string& guests, const Surroundings& around = {}, const std::string& rest = "")
      : source("menu.qtn", "menu: Supper\nserve: 2026-03-01 19:00\nguests: " + guests + "\n" + rest), tree(parse(source)), menu(check(source, tree, around, report)) {}
};

AllergenSet of(const char* word) { return allergens_meant(word); }

// "nuts | gluten" as sets, with a mark where more is said than the lists can tell; and the codes of the safety room.
std::string read(const std::string& guests) {
  Table table(guests);
  std::string out;
  Report said;
  for (const GuestNeed& need : guests_of(table.menu, &said)) {
    out += out.empty() ? "" : " | ";
    std::string keys;
    for (const char* word : {"gluten", "milk", "eggs", "fish", "shellfish", "nuts", "peanuts", "soya", "sesame", "celery"})
      if ((need.avoids & of(word)) == of(word)) keys += keys.empty() ? word : std::string(" ") + word;
    out += keys + (need.more ? "+" : "");
  }
  for (const Diagnostic& problem : said.list()) out += " " + std::string(row(problem.code).code);
  return out;
}

}  // namespace

TEST_CASE("the plain forms of a need are read") {
  CHECK(read("8") == "");
  CHECK(read("6 adults, 2 children") == "");
  CHECK(read("8, no allergies") == "");
  CHECK(read("24, 3 without gluten, 1 without milk and eggs") == "gluten | milk eggs");
  CHECK(read("8, 1 without milk, eggs and nuts") == "milk eggs nuts");
  CHECK(read("8: 2 coeliac") == "gluten");
  CHECK(read("8 (2 coeliacs)") == "gluten");
  CHECK(read("8, one with coeliac disease") == "gluten");
  CHECK(read("4, 1 allergic to nuts") == "nuts");
  CHECK(read("4, 1 with a nut allergy") == "nuts");
  CHECK(read("4, 1 no dairy") == "milk");
  CHECK(read("4, 1 nut-free") == "nuts");
  CHECK(read("4, 1 gluten free") == "gluten");
  CHECK(read("4, 1 gluten-free and dairy-free") == "gluten milk");
  CHECK(read("4, 1 lactose intolerant") == "milk");
  CHECK(read("4, 1 who cannot eat shellfish") == "shellfish");
  CHECK(read("4, one who can\u2019t have fish, two without soya") == "fish | soya");
  CHECK(read("3 without gluten 1 without milk") == "gluten | milk");
  CHECK(read("4, coeliac") == "gluten");
  CHECK(read("4, 1 coeliac, no sesame") == "gluten sesame");
}

TEST_CASE("what the lists cannot tell is said, and nothing is dropped") {
  CHECK(read("8, 1 vegan") == "milk eggs fish shellfish+ Q974");
  CHECK(read("8, 2 vegetarians and 1 coeliac") == "fish shellfish+ | gluten Q974");
  CHECK(read("8, 1 vegan without nuts") == "milk eggs fish shellfish nuts+ Q974");
  CHECK(read("8, 1 kosher") == "+ Q974");
  CHECK(read("8, 1 hates green things") == "+ Q975");
  CHECK(read("8, 1 fussy eater without nuts") == "nuts+ Q975");
  CHECK(read("8, 1 nut allergy please") == "nuts");
  CHECK(read("the Millers") == "+ Q975");
  CHECK(read("4, 1 without gravel") == " Q971");
  CHECK(read("4, 1 without milk and gravel") == "milk Q971");
}

TEST_CASE("the place of what is not read is its words alone") {
  const Table table("8, 1 without nuts, 1 hates green things");
  Report said;
  guests_of(table.menu, &said);
  REQUIRE(said.list().size() == 1);
  CHECK(table.menu.slice(said.list()[0].span) == "hates green things");
}

TEST_CASE("dishes are sorted by what is sure") {
  const auto answer = [](const std::string& guests, const std::string& food) {
    Source source("dish.qtn", "recipe: The dish\nmakes: 1 tray\ntake:\n  100 g   " + food + "\nmethod:\n  Mix [everything].\n");
    Report report;
    const Tree tree = parse(source);
    const Recipe dish = check(source, tree, {}, report);
    Surroundings around;
    around.uses.push_back(&dish);
    const Table table(guests, around, "use: The dish from dish.qtn\ntake:\n  1  [The dish]\n");
    const auto needs = guests_of(table.menu, nullptr);
    REQUIRE(needs.size() == 1);
    const GuestNeed& need = needs[0];
    return !need.can.empty() ? "can" : !need.label.empty() ? "label" : !need.open.empty() ? "open" : !need.cannot.empty() ? "cannot" : "none";
  };
  CHECK(answer("4, 1 without nuts", "mixed nuts") == std::string("cannot"));
  CHECK(answer("4, 1 without cashews", "mixed nuts") == std::string("label"));
  CHECK(answer("4, 1 without shellfish", "red curry paste") == std::string("label"));
  CHECK(answer("4, 1 without shellfish", "squid") == std::string("cannot"));
  CHECK(answer("4, 1 coeliac", "pearl barley") == std::string("cannot"));
  CHECK(answer("4, 1 coeliac", "moonflower gum") == std::string("label"));
  CHECK(answer("4, 1 coeliac", "gluten-free flour") == std::string("label"));
  CHECK(answer("4, 1 no dairy", "rice milk") == std::string("can"));
  CHECK(answer("4, 1 vegan", "carrots") == std::string("open"));
  CHECK(answer("4, 1 vegan", "butter") == std::string("cannot"));
}
