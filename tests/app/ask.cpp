// Every example of docs/commands.md is asked and must get the answer that stands there; then what is refused, and why.
#include "app/ask.hpp"

#include <doctest/doctest.h>

#include "files.hpp"

using namespace qtn;

namespace {

Dialect dialect_of(const std::string& text) {
  for (Dialect one : {Dialect::british, Dialect::american, Dialect::australian})
    if (text.find("--measures " + std::string(name_of(one))) != std::string::npos) return one;
  return Dialect::unstated;
}

std::string answer(const std::string& question, Dialect dialect = Dialect::unstated) {
  std::string problem;
  const auto sum = ask(question, dialect, problem);
  return sum ? sum->answer : "refused: " + problem;
}
std::string exact(const std::string& question, Dialect dialect = Dialect::unstated) {
  std::string problem;
  const auto sum = ask(question, dialect, problem);
  return sum ? sum->exact : "refused: " + problem;
}
std::string whole(const std::string& question) {
  std::string problem;
  const auto sum = ask(question, Dialect::unstated, problem);
  return sum ? write_sum(*sum) : "refused: " + problem;
}
bool refused(const std::string& question, const std::string& why) {
  const std::string said = answer(question);
  INFO(said);
  CHECK(said.find(why) != std::string::npos);
  return said.rfind("refused: ", 0) == 0;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out{""};
  for (char c : text) {
    if (c == '\n') out.emplace_back();
    else out.back() += c;
  }
  return out;
}

}  // namespace

TEST_CASE("every example of the page on commands gets its answer") {
  const std::string all = tests::slurp(tests::root() / "docs/commands.md");
  const std::size_t from = all.find("\n## ask\n"), to = all.find("\n## ", from + 1);
  REQUIRE(from != std::string::npos);
  const std::vector<std::string> page = lines_of(all.substr(from, to - from));
  int rows = 0, blocks = 0;
  for (std::size_t i = 0; i < page.size(); ++i) {
    const std::string& line = page[i];
    if (line.rfind("$ quartern ask \"", 0) == 0) {
      const std::size_t end = line.rfind('"');
      std::string expected;
      for (std::size_t next = i + 1; next < page.size() && page[next] != "```"; ++next) expected += page[next] + "\n";
      CHECK(whole(line.substr(16, end - 16)) == expected);
      ++blocks;
    }
    // | what | `question` | answer |
    const std::size_t open = line.find("| `"), close = line.find('`', open + 3), last = line.rfind(" |");
    if (line.rfind("| ", 0) != 0 || open == std::string::npos) continue;
    const std::size_t behind = line.rfind("| ", last - 1);
    if (behind <= close) continue;
    const std::string question = line.substr(open + 3, close - open - 3);
    CAPTURE(question);
    CHECK(answer(question, dialect_of(line)) == line.substr(behind + 2, last - behind - 2));
    std::string problem;
    const auto sum = ask(question, dialect_of(line), problem);
    REQUIRE(sum);
    CHECK(!sum->exact.empty());
    CHECK(sum->rule.find(';') != std::string::npos);  // the rule; its source
    ++rows;
  }
  CHECK(rows >= 20);
  CHECK(blocks == 2);
}

TEST_CASE("dough water: °C and °F are one rule, friction is a difference") {
  CHECK(exact("water for dough at 80 °F, flour 65 °F, room 75 °F, friction 35 °F") == "65 °F");
  CHECK(exact("friction 12 °C, room 22 °C, flour 20 °C, dough 26 °C") == "24 °C");
  CHECK(exact("26 °C dough, 20 °C flour and 22 °C room with 12 °C friction, water?") == "24 °C");
  // The same points written in the other scale; friction of 18 °F is 10 °C, not -7.8.
  CHECK(exact("water for dough at 25 °C, flour 68 °F, room 68 °F, friction 18 °F") == "25 °C");
  CHECK(exact("water for dough at 25 °C, flour 20 °C, room 20 °C, ferment 20 °C, friction 10 °C") == "30 °C");
  CHECK(refused("water for dough at 20 °C, flour 28 °C, room 30 °C, friction 12 °C", "put ice"));
  CHECK(refused("water for dough at 60 °C, flour 5 °C, room 5 °C, friction 0 °C", "hotter than it boils"));
  CHECK(refused("water for dough at 26 °C, flour 20 °C, room 22 °C", "friction"));
  CHECK(refused("water for dough at 26, flour 20 °C, room 22 °C, friction 12 °C", "°C or °F"));
  CHECK(refused("water for dough", "how warm the dough is to be"));
}

TEST_CASE("ice: in any unit, never from the wrong side") {
  CHECK(answer("ice in 10 l water at 68 °F to 41 °F") == "1.5 l ice and 8.5 l water");
  CHECK(answer("ice in 10 kg water at 20 to 5 °C") == "1.5 kg ice and 8.5 kg water");
  CHECK(refused("ice in 10 kg water at 5 °C to 20 °C", "warmer than what is wanted"));
  CHECK(refused("ice in 10 kg water at 5 °C to -2 °C", "not below 0 °C"));
  CHECK(refused("ice in water at 20 °C to 5 °C", "weight of the water"));
  CHECK(refused("ice in -3 kg water at 20 °C to 5 °C", "above 0"));
}

TEST_CASE("cure: a per cent is never a bare number, and what may harm goes down") {
  CHECK(exact("2.5 g cure at 6.25 % nitrite in 1 kg meat") == "625/4 ppm");
  CHECK(exact("1 kg meat with 2.5 g cure of 6.25 per cent nitrite") == "625/4 ppm");
  CHECK(exact("1 oz cure at 6.25 % nitrite in 25 lb meat") == "625/4 ppm");
  CHECK(exact("2.5 g cure at 6.25 % nitrite in 1 kg meat and 20 g salt") == "625/4 ppm");  // salt is no meat
  CHECK(exact("2.5 g cure at 6.25 % nitrite in 1 kg meat, 980 g water and 20 g salt") == "625/8 ppm");
  CHECK(answer("156 ppm from cure at 6.25 % nitrite in 17 lb meat") == "19.24 g cure, rounded down");
  CHECK(answer("156 ppm from cure at 6.25 % nitrite in 7 lb 8 oz meat") == "8.49 g cure, rounded down");
  CHECK(refused("2.5 g cure at 6.25 nitrite in 1 kg meat", "hundred times"));
  CHECK(refused("156 ppm from cure at 6.25 nitrite in 17 lb meat", "hundred times"));
  CHECK(refused("2.5 g cure in 1 kg meat", "packet"));
  CHECK(refused("2.5 g cure at 6.25 % nitrite", "weight of the meat"));
  CHECK(refused("2,5 g cure at 6.25 % nitrite in 1 kg meat", "comma"));
  CHECK(refused("2.5 g cure at 120 % nitrite in 1 kg meat", "not possible"));
  CHECK(refused("2.5 g cure at 6.25 % nitrite in 2 cups meat", "Say whose"));
  for (const char* question : {"2.5 g cure at 6.25 % nitrite in 1 kg meat", "156 ppm from cure at 6.25 % nitrite in 17 lb meat"}) {
    const std::string said = whole(question);
    CHECK(said.find("Caution:") != std::string::npos);
    CHECK(said.find("follow your local code") != std::string::npos);
    CHECK(said.find("USDA FSIS Directive 7620.3") != std::string::npos);
    CHECK(said.find("OVER 120 ppm: bacon") != std::string::npos);
    CHECK(said.find("LOOK AGAIN") == std::string::npos);
  }
  CHECK(whole("2.5 g cure at 0.0625 % nitrite in 1 kg meat").find("LOOK AGAIN") != std::string::npos);
}

TEST_CASE("brine: the base is said, and the other one named") {
  const std::string said = whole("2 % salt in 1 kg meat and 500 g water");
  CHECK(said.find("share of meat and water together, 1500 g") != std::string::npos);
  CHECK(said.find("would want 24 g") != std::string::npos);
  CHECK(whole("10 g salt in 500 g meat and 490 g water").find("1 % of everything") != std::string::npos);
  CHECK(refused("2 salt in 1 kg meat and 500 g water", "grams or per cent"));
}

TEST_CASE("thawing: no figures for a warm room") {
  CHECK(answer("defrost 6 to 7 kg turkey in the fridge") == "2 days 12 h to 3 days 12 h in the fridge");
  CHECK(refused("thaw 6.5 kg at room temperature", "superseded"));
  CHECK(refused("thaw 6.5 kg in water at 20 °C", "superseded"));
  CHECK(refused("thaw 6.5 kg", "in the fridge"));
  CHECK(refused("thaw a turkey in the fridge", "one weight"));
  CHECK(whole("thaw 6.5 kg in the fridge").find("Caution:") != std::string::npos);
}

TEST_CASE("yields: which way is said, a bare number is a share or nothing") {
  CHECK(exact("buy 5 lb broccoli at 0.81 yield") == "500/81 lb");
  CHECK(exact("yield of 2.5 kg bought, 1.75 kg edible") == "70 %");
  CHECK(refused("buy 5 lb broccoli at 81 yield", "81 %"));
  CHECK(refused("5 lb broccoli at 81 % yield", "which way"));
  CHECK(refused("buy 5 lb broccoli at 0 % yield", "above 0"));
}

TEST_CASE("per cents: of the flour, of everything") {
  CHECK(answer("bakers' percentages of 400 g strong white flour, 100 g rye flour, 340 g water") ==
        "strong white flour 80 %, rye flour 20 %, water 68 %; together 168 %");
  CHECK(refused("baker's per cent of 340 g water, 10 g salt", "true per cent"));
  CHECK(refused("baker's per cent of 500 g flour, 3 stones", "cannot be weighed"));
}

TEST_CASE("tins and pastry") {
  CHECK(exact("23 cm round to 26 cm round") == "676/529");
  CHECK(exact("21 cm square, 5 cm deep into 1 l basin") == "200/441");
  CHECK(refused("pastry for 23 cm round at 3 mm", "depth"));
  CHECK(refused("370 g pastry at 0 mm", "above 0"));
  CHECK(answer("500 g pastry in oz") == "17.64 oz");  // still a conversion
}

TEST_CASE("what is no sum is told which there are") {
  CHECK(refused("hello", "thaw 6.5 kg in the fridge"));
  CHECK(refused("", "no sum"));
  CHECK(refused(std::string(5000, 'x'), "a line or two"));
  for (const char* hostile : {"1/0 kg ice at 5 °C", "°", "½½½", "9999999999999999999999 kg ice at 20 °C to 5 °C", "water dough 1e9 °C friction", "-", "to to to", "% % %", "thaw 0 kg in the fridge"})
    CHECK(refused(hostile, "refused"));
}
