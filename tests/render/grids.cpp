// Tables of words and figures in every output.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "render/render.hpp"
#include "tests/render/sample.hpp"

using namespace qtn;

namespace {

// Two columns of words and one of sums, in a section of its own.
Card with_grid(bool to_fill, std::string_view long_word = "tray bake") {
  test::CardMaker maker;
  Grid grid;
  grid.heads = {maker.words("What"), maker.words("For"), maker.words("Costs")};
  grid.sums = {false, false, true};
  grid.rows = {{maker.words("flour | plain"), maker.words(long_word), maker.words("0.90")}, {maker.words("butter"), {}, maker.words("12.40")}};
  grid.to_fill = to_fill;
  grid.last_is_total = !to_fill;
  maker.card.grids.push_back(grid);
  Section section;
  section.title = maker.words("To buy", Role::name);
  section.grids = {0, 1};
  maker.card.parts.push_back(section);
  return maker.card;
}

std::string written(Format format, const Card& card) {
  std::string out;
  render(format, card, out);
  return out;
}

}  // namespace

TEST_CASE("a table in plain text stands in columns, sums at the right") {
  CHECK(written(Format::text, with_grid(false)).find("  What           For        Costs\n"
                                                     "  flour | plain  tray bake   0.90\n"
                                                     "  -------------  ---------  -----\n"
                                                     "  butter                    12.40\n") != std::string::npos);
  CHECK(written(Format::text, with_grid(true)).find("butter         ______     12.40") != std::string::npos);
}

// A line each of an order: its last column stands under it.
Card narrow() {
  test::CardMaker maker;
  Grid grid;
  grid.heads = {maker.words("What"), maker.words("Wanted"), maker.words("Cost"), maker.words("Details")};
  grid.sums = {false, true, true, false};
  grid.rows = {{maker.words("butter"), maker.words("225 g"), maker.words("1.95"), maker.words("for a tart & a pie")}, {maker.words("Together"), {}, maker.words("12.40"), {}}};
  grid.narrow = grid.last_under = grid.last_is_total = true;
  maker.card.grids.push_back(grid);
  Section section;
  section.title = maker.words("Marram Mill", Role::name);
  section.grids = {0, 1};
  maker.card.parts.push_back(section);
  return maker.card;
}

TEST_CASE("the last column of a narrow table stands under its row") {
  CHECK(written(Format::text, narrow()).find("  What      Wanted   Cost\n"
                                              "  butter     225 g   1.95\n"
                                              "    for a tart & a pie\n"
                                              "  --------  ------  -----\n"
                                              "  Together          12.40\n") != std::string::npos);
  const std::string page = written(Format::html, narrow());
  CHECK(page.find("<div class=\"grid narrow\"><table class=\"total\">\n<caption>Marram Mill</caption>\n<thead><tr><th scope=\"col\">What</th>"
                  "<th scope=\"col\" class=\"sum\">Wanted</th><th scope=\"col\" class=\"sum\">Cost</th></tr></thead>\n") != std::string::npos);
  CHECK(page.find("<tbody>\n<tr><th scope=\"rowgroup\">butter</th><td class=\"sum\">225 g</td><td class=\"sum\">1.95</td></tr>\n"
                  "<tr class=\"under\"><td colspan=\"3\">for a tart &amp; a pie</td></tr>\n</tbody>\n") != std::string::npos);
  CHECK(page.find("<tbody>\n<tr><th scope=\"row\">Together</th><td class=\"sum\"></td><td class=\"sum\">12.40</td></tr>\n</tbody>") != std::string::npos);
  CHECK(written(Format::markdown, narrow()).find("| What | Wanted | Cost | Details |\n| --- | ---: | ---: | --- |\n| butter | 225 g | 1.95 | for a tart & a pie |\n") != std::string::npos);
  CHECK(nlohmann::json::parse(written(Format::json, narrow()))["parts"][0]["tables"][0]["total"] == true);
}

TEST_CASE("words of a last column go on in a line below") {
  test::CardMaker maker;
  Grid grid;
  grid.heads = {maker.words("Dish"), maker.words("See the label")};
  grid.rows = {{maker.words("stew"), maker.words("stock, brown ale, Worcestershire sauce, tomato purée, mustard, bread, and the dumplings")}};
  maker.card.grids.push_back(grid);
  Section section;
  section.grids = {0, 1};
  maker.card.parts.push_back(section);
  CHECK(written(Format::text, maker.card).find("  Dish  See the label\n"
                                               "  stew  stock, brown ale, Worcestershire sauce, tomato purée, mustard,\n"
                                               "        bread, and the dumplings\n") != std::string::npos);
}

TEST_CASE("a table too wide for a line of text is told row by row") {
  const std::string text = written(Format::text, with_grid(false, "the tray bake of the second Sunday in the month, and a loaf besides"));
  CHECK(text.find("  flour | plain\n    For: the tray bake") != std::string::npos);
  CHECK(text.find("  butter\n    Costs: 12.40\n") != std::string::npos);
}

TEST_CASE("a bar in a cell does not end it in Markdown") {
  const std::string text = written(Format::markdown, with_grid(true));
  CHECK(text.find("| What | For | Costs |\n| --- | --- | ---: |\n| flour \\| plain | tray bake | 0.90 |\n| butter | \\_\\_\\_\\_ | 12.40 |\n") != std::string::npos);
}

TEST_CASE("a table in HTML says which cell names its row, and has room to write where it is a form") {
  const std::string page = written(Format::html, with_grid(true));
  CHECK(page.find("<table class=\"fill\">\n<caption>To buy</caption>\n<thead><tr><th scope=\"col\">What</th>") != std::string::npos);
  // The head stands in the blank for a page too narrow to have it above; a table that is no form has none.
  CHECK(page.find("<tr><th scope=\"row\">butter</th><td data-head=\"For\"></td><td class=\"sum\">12.40</td></tr>") != std::string::npos);
  CHECK(written(Format::html, with_grid(false)).find("data-head=\"") == std::string::npos);
}

TEST_CASE("a table in JSON") {
  const auto card = nlohmann::json::parse(written(Format::json, with_grid(false)));
  const auto& table = card["parts"][0]["tables"][0];
  CHECK(table["columns"] == nlohmann::json{"What", "For", "Costs"});
  CHECK(table["rows"][1] == nlohmann::json{"butter", "", "12.40"});
}
