// Slips that home cooks make, each with what it is told: the code, and what a mended line looks like.
#include "recipe/checked.hpp"

#include <doctest/doctest.h>

using namespace qtn;

namespace {

Checked with(const std::string& list, const std::string& method, const std::string& head = "") {
  return Checked("recipe: Supper\n" + head + "measures: British\ntake:\n" + list + "method:\n  " + method + "\n");
}

// The text with the first fix of the only problem put in.
std::string mended(const std::string& text) {
  const Checked one(text);
  if (one.report.list().size() != 1 || one.report.list()[0].fixes.empty()) return "? " + one.codes();
  const Fix& fix = one.report.list()[0].fixes[0];
  std::string out = text;
  return out.replace(fix.span.begin, fix.span.size(), fix.text);
}
std::string mended_line(const std::string& line) {
  const std::string head = "recipe: Supper\nmeasures: British\ntake:\n  ", tail = "\nmethod:\n  Cook [everything].\n";
  const std::string out = mended(head + line + tail);
  return out.substr(0, 1) == "?" ? out : out.substr(head.size(), out.size() - head.size() - tail.size());
}
std::string mended_step(const std::string& step) {
  const std::string head = "recipe: Supper\ntake:\n  500 g peas\nmethod:\n  [the peas] ";
  const std::string out = mended(head + step + "\n");
  return out.substr(0, 1) == "?" ? out : out.substr(head.size(), out.size() - head.size() - 1);
}

}  // namespace

TEST_CASE("an amount behind its name, a comma that is not there, a mark before the line") {
  const std::pair<const char*, const char*> kLines[] = {
      {"butter 100 g", "100 g butter"},
      {"plain flour - 200 g, sifted", "200 g plain flour, sifted"},
      {"the juice of 2 limes", "2 limes, juice only"},
      {"juice of half a lime", "1/2 lime, juice only"},
      {"grated zest of an orange", "1 orange, grated zest only"},
      {"sea salt to taste", "sea salt, to taste"},
      {"oil for frying", "oil, for frying"},
      {"pinch of pepper", "1 pinch of pepper"},
      {"20 g butter plus extra for greasing", "20 g butter, plus extra for greasing"},
      {"2 tbsp lemon juice (about 1 lemon)", "2 tbsp lemon juice, from about 1 lemon"},
      {"20 g oats + extra for dusting", "20 g oats, plus extra for dusting"},
      {"2 large onions (about 400g), sliced", "2 (about 400g) large onions, sliced"},
      {"1 tbsp mustard (optional)", "1 tbsp mustard, optional"},
      {"- 100 g butter", "100 g butter"},
      {"* 2 leeks, sliced", "2 leeks, sliced"},
      {"• 1 bay leaf", "1 bay leaf"},
  };
  for (const auto& [written, meant] : kLines) CHECK(mended_line(written) == meant);
}

TEST_CASE("the least said after the number, a heat before its time") {
  CHECK(mended_step("[chill min 2 h]") == "[chill at least 2 h]");
  CHECK(mended_step("[chill 2 h or more]") == "[chill at least 2 h]");
  CHECK(mended_step("[chill 2 h+]") == "[chill at least 2 h]");
  CHECK(mended_step("[chill max. 2 h]") == "[chill at most 2 h]");
  CHECK(mended_step("[bake 180 °C 20 min]") == "[bake 20 min at 180 °C]");
  CHECK(mended_step("[bake at 180 °C 20 min]") == "[bake 20 min at 180 °C]");
  CHECK(mended_step("[bake a further 30 min at 180 °C]") == "[bake 30 min at 180 °C]");
  CHECK(mended_step("[core temp 75C]") == "[reads 75 °C]");
  CHECK(with("  500 g peas\n", "[the peas] [bake 20 min at 180 °C 30 min]").codes() == "second_time");
  CHECK(with("  500 g peas\n", "[the peas] [cool to 20 g]").codes() == "wrong_dimension");
}

TEST_CASE("a place behind its bracket") {
  CHECK(mended_step("[rest 1 h] in the fridge.") == "[rest 1 h in the fridge].");
  CHECK(mended_step("Prove [1 h] in a warm oven.") == "Prove [1 h in a warm oven].");
  CHECK(with("  500 g peas\n", "[the peas] [bake 20 min] in the oven. [cool 20 min] and put in the fridge.").codes() == "");
}

TEST_CASE("a head word among the steps") {
  const std::string text = "recipe: Supper\nmakes: 1 dish\ntake:\n  500 g peas\nmethod:\n  Cook [the peas].\n\nkeeps: 2 days chilled\n";
  CHECK(Checked(text).codes() == "head_in_method");
  CHECK(mended(text) == "recipe: Supper\nkeeps: 2 days chilled\nmakes: 1 dish\ntake:\n  500 g peas\nmethod:\n  Cook [the peas].\n\n\n");
  CHECK(with("  500 g peas\n", "Cook [the peas].\n\nTin: line it with paper.").codes() == "");
  CHECK(with("  500 g peas\n", "Cook [the peas].\n\n  keeps: well").codes() == "");
}

TEST_CASE("a list among the steps is one fault, and the names in it are none") {
  const std::string text = "recipe: Buns\ntake:\n  500 g flour\nmethod:\n  Knead [the flour].\n\nFor the glaze:\n  50 g icing sugar\n  1 tbsp water\nmethod:\n  Mix [the icing sugar] and [the water].\n";
  CHECK(Checked(text).codes() == "head_in_method repeated_field");
  CHECK(mended("recipe: Buns\nmeasures: British\ntake:\n  500 g flour\nmethod:\n  Knead [the flour].\n\nFor the glaze:\n  50 g icing sugar\n").find("part: Glaze\ntake:\n  50 g icing sugar") != std::string::npos);
  CHECK(with("  500 g peas\n", "Cook [the peas].\n\nFor the table:\n  more peas.").codes() == "");
}

TEST_CASE("what leaves the pot has a name and went in before") {
  const std::string list = "  1 kg beef bones\n  2 l water\n  2 onions\n";
  CHECK(with(list, "[the bones] [the water] [the onions]. [take out]").codes() == "take_out_what");
  CHECK(with(list, "[the bones] [the water] [the onions]. [discard]").codes() == "take_out_what");
  CHECK(with(list, "[the bones] [the water] [the onions]. [drain] [discard the rest]").codes() == "");
  CHECK(with(list, "[the water] [the onions] [strain out the bones] [the bones]").codes() == "not_in_pot");
  CHECK(with(list, "[everything] [strain out the bones]").codes() == "");
  CHECK(with(list, "[everything] [discard 3 l of the water]").codes() == "more_than_left");
  CHECK(with("  1 kg prawns, giving 400 g tails and 600 g shells\n", "[discard the shells]. Fry [the tails].").codes() == "");
}

TEST_CASE("names by what was done to them, groups by everything") {
  const std::string list = "  2 onions, sliced\n  5 spring onions, chopped\n  100 g butter, melted\n";
  CHECK(with(list, "[the sliced onions] [the chopped onions] [the melted butter]").codes() == "");
  CHECK(with("  1 lemon, zest only\n", "[the lemon zest]").codes() == "");
  CHECK(with(list, "[the onions] [the spring onions] [the melted lard] [the butter]").codes() == "unknown_name");
  CHECK(mended("recipe: Supper\ntake:\n  500 g peas\nmethod:\n  Cook [all the ingredients].\n").find("[everything]") != std::string::npos);
}

TEST_CASE("a name that is nowhere: the nearest by what it is, or no brackets") {
  CHECK(mended_step("[the soft peas]") == "[the peas]");
  CHECK(mended_step("[the mash]") == "the mash");
  CHECK(with("  500 g lamb neck\n  600 ml lamb or chicken stock\n", "[lamb] [the stock]").codes() == "one_line_one_thing");
  CHECK(with("  2 tbsp oil for frying\n", "[the oil]").codes() == "");
  CHECK(Checked("recipe: Stew\nuse: Stew from test.qtn\ntake:\n  100 g [Stew]\nmethod:\n  [the Stew]\n").codes().find("part_ring") == std::string::npos);
}

TEST_CASE("of a range the rest may be left when the least went in") {
  CHECK(with("  100 to 120 g flour\n", "[100 g of the flour], then [the rest of the flour]").codes() == "");
  CHECK(with("  100 g flour\n", "[100 g of the flour], then [the rest of the flour]").codes() == "nothing_left");
}

TEST_CASE("so many of what the other part counts") {
  const auto taking = [](const std::string& makes, const std::string& line) {
    return Checked("recipe: Tart\npart: Paste\n" + makes + "take:\n  300 g flour\nmethod:\n  [the flour]\npart: Pie\ntake:\n  " + line + "\nmethod:\n  [the Paste]\n").codes();
  };
  CHECK(taking("makes: 2 sheets, 300 g\n", "2 sheets [Paste]") == "");
  CHECK(taking("makes: 300 g\n", "300 g [Paste]") == "");
  CHECK(taking("makes: 300 g\n", "2 sheets [Paste]") == "not_what_it_makes");
  CHECK(taking("", "2 sheets [Paste]") == "not_what_it_makes");
  CHECK(taking("makes: 2 sheets, 300 g\n", "2 portions [Paste]") == "not_what_it_makes");
}

TEST_CASE("a limit names what is listed or made") {
  CHECK(with("  3 kg legs of lamb\n", "[the lamb]", "at most: 2 legs of lamb at a time\n").codes() == "");
  CHECK(with("  3 kg plums\n", "[the plums]", "makes: 12 jars\nat most: 6 jars at a time\n").codes() == "");
  CHECK(with("  3 kg plums\n", "[the plums]", "at most: 2 kg plumbs at a time\n").codes() == "unknown_name");
}

TEST_CASE("words of other kitchens for a field") {
  const auto head = [](const std::string& line) { return mended("recipe: Supper\n" + line + "\ntake:\n  500 g peas\nmethod:\n  Cook [the peas].\n").substr(15); };
  CHECK(head("servings: 4").substr(0, 10) == "serves: 4\n");
  CHECK(head("yield: 1 pie").substr(0, 13) == "makes: 1 pie\n");
  CHECK(head("serve: 4").substr(0, 10) == "serves: 4\n");
  CHECK(Checked("recipe: Supper\nprep time: 20 min\ntake:\n  500 g peas\nmethod:\n  Cook [the peas].\n").codes() == "unknown_field");
  CHECK(Checked("recipe: Supper\ningredients:\n  500 g peas\nmethod:\n  Cook [the peas].\n").codes() == "unknown_field");
  // One cause, one report: the first line alone says what a file is.
  CHECK(Checked("cake: Lemon\ntake:\n  500 g peas\nmethod:\n  Cook [the peas].\n").codes() == "no_kind");
}

TEST_CASE("a bracket that runs into the next step is one fault") {
  CHECK(with("  500 g peas\n", "[the peas] [bake 20 min\n\n  at 190 °C].").codes() == "open_bracket");
  CHECK(Checked("recipe: X\npart: A\ntake:\n  500 g peas\nmethod:\n  [the peas]\npart: A\ntake:\n  500 g peas\nmethod:\n  [the peas]\n").codes() == "same_part_name");
}
