// Strengths through the pot against shares worked out here by hand, and curing salts against their limits.
#include <doctest/doctest.h>

#include <random>

#include "tests/recipe/checked.hpp"

using namespace qtn;

namespace {

std::string part(const std::string& take, const std::string& method, const std::string& title = "Test") {
  return "recipe: " + title + "\nmeasures: British\ntake:\n" + take + "method:\n  " + method + "\n";
}
// "2.5": what the pot has at the first strength clause, in per cent, or both ends.
std::string found(const Checked& c) {
  if (c.recipe.found_strengths.empty()) return "?";
  const Ends share = c.recipe.found_strengths.front().share;
  const std::string low = (share.low * Fraction(100)).decimal(3), high = (share.high * Fraction(100)).decimal(3);
  return low == high ? low : low + " to " + high;
}
std::string message(const Checked& c, Code code) {
  const Diagnostic* const problem = c.problem(code);
  return problem == nullptr ? "" : problem->message;
}
const std::string kPickle = "  500 g  beetroot\n  400 g  malt vinegar, 5 % acid\n  100 g  sugar\n";

}  // namespace

TEST_CASE("strength: mixes by weight with all that is in the pot") {
  CHECK(found(Checked(part(kPickle, "[the beetroot] [the vinegar] [the sugar] [at least 2 % acid]"))) == "2");
  CHECK(found(Checked(part(kPickle, "[the vinegar] [at least 2 % acid] [the beetroot] [the sugar]"))) == "5");
  CHECK(found(Checked(part(kPickle, "[half the vinegar] [the beetroot] [the sugar] [at least 1 % acid] [the rest of the vinegar]"))) == "1.25");
  CHECK(found(Checked(part("  100 g  gin, 40 % alcohol\n  300 g  wine, 12 % alcohol\n", "[the gin] [the wine] [at least 19 % alcohol]"))) == "19");
  CHECK(found(Checked(part("  1 kg  water\n  250 g  dark stock, 400 ppm acid\n", "[the water] [the stock] [at most 80 ppm acid]"))) == "0.008");
  // A volume through its density: vinegar of the larder.
  const Checked volume(part("  500 ml  malt vinegar, 5 % acid\n  500 ml  water\n", "[the vinegar] [the water] [at least 2 % acid]"));
  CHECK(volume.codes() == "");
  CHECK(found(volume) != "?");
}

TEST_CASE("strength: too weak, too strong, just right") {
  const std::string all = "[the beetroot] [the vinegar] [the sugar] ";
  CHECK(Checked(part(kPickle, all + "[at least 2 % acid]")).codes() == "");
  CHECK(Checked(part(kPickle, all + "[at most 2 % acid]")).codes() == "");
  CHECK(Checked(part(kPickle, all + "[about 2 % acid]")).codes() == "");
  CHECK(Checked(part(kPickle, all + "[1 to 3 % acid]")).codes() == "");
  CHECK(Checked(part(kPickle, all + "[3 to 4 % acid]")).codes() == "strength_short");
  CHECK(Checked(part(kPickle, all + "[1.5 % acid]")).codes() == "strength_over");
  CHECK(Checked(part(kPickle, all + "[at most 1.9 % acid]")).codes() == "strength_over");
  const Checked weak(part(kPickle, all + "[at least 3 % acid]"));
  CHECK(weak.codes() == "strength_short");
  CHECK(message(weak, Code::strength_short) == "The pot here has 2 % acid, less than the 3 % that it must have.");
  // 1000 g × 1 % missing, each gram of vinegar brings 5 − 3 %: 500 g.
  CHECK(weak.problem(Code::strength_short)->expected.find("about 500 g more malt vinegar") != std::string::npos);
  CHECK(weak.report.has_errors());
}

TEST_CASE("strength: what leaves takes its share, what boils away may not") {
  const std::string brine = "  900 g  water\n  100 g  cure, 10 % salt\n  1 kg  beans\n";
  CHECK(found(Checked(part(brine, "[the water] [the cure] [the beans] [drain] [at least 0.5 % salt]"))) == "0.5");
  CHECK(found(Checked(part(brine, "[the water] [the cure] [the beans] [take out the beans] [at least 0.5 % salt]"))) == "0.5");
  // Half of 1 kg at 1 % is lost: 1 % if the salt went too, 2 % if it stayed.
  const std::string pan = "  900 g  water\n  100 g  cure, 10 % salt\n";
  CHECK(found(Checked(part(pan, "[the water] [the cure] [loses 50 %] [at least 1 % salt]"))) == "1 to 2");
  CHECK(found(Checked(part(pan, "[the water] [the cure] [reduce to 500 g] [at least 1 % salt]"))) == "1 to 2");
  CHECK(Checked(part(pan, "[the water] [the cure] [loses 50 %] [at least 1.5 % salt]")).codes() == "strength_short");
  CHECK(Checked(part(pan, "[the water] [the cure] [loses 50 %] [at most 1.5 % salt]")).codes() == "strength_over");
  CHECK(found(Checked(part(pan, "[the water] [the cure] [gains 100 %] [at least 0.5 % salt]"))) == "0.5 to 1");
}

TEST_CASE("strength: through parts, ranges and what cannot be weighed") {
  const std::string two =
      "recipe: Test\npart: Sharp\ntake:\n  300 g  vinegar, 6 % acid\n  100 g  sugar\nmethod:\n  [the vinegar] [the sugar]\n\n"
      "part: Jar\ntake:\n  500 g  beans\n  [Sharp]\nmethod:\n  [the beans] [the Sharp] [at least 2 % acid]\n";
  const Checked through(two);
  CHECK(found(through) == "2");
  CHECK(through.recipe.parts[0].makeup.strengths.size() == 1);
  CHECK(through.recipe.parts[0].makeup.strengths[0].share.low == Fraction::of(9, 200));
  // 300 to 400 g of 5 % in 400 to 500 g.
  CHECK(found(Checked(part("  300 to 400 g  vinegar, 5 % acid\n  100 g  sugar\n", "[the vinegar] [the sugar] [at least 3.75 % acid]"))) == "3.75 to 4");
  CHECK(Checked(part("  300 to 400 g  vinegar, 5 % acid\n  100 g  sugar\n", "[the vinegar] [the sugar] [at least 3.8 % acid]")).codes() == "strength_short");
  // Nobody knows what a splodge weighs: it can only thin.
  const std::string thin = "  400 g  vinegar, 5 % acid\n  600 g  beans\n  2  splodges\n";
  CHECK(Checked(part(thin, "[the vinegar] [the beans] [the splodges] [at least 2 % acid]")).codes() == "");
  CHECK(Checked(part(thin, "[the vinegar] [the beans] [the splodges] [at least 2.1 % acid]")).codes() == "strength_short");
  CHECK(Checked(part(thin, "[the vinegar] [the beans] [the splodges] [at most 1 % acid]")).codes() == "");
  CHECK(Checked(part("  3  lemons of the house, 5 % acid\n  600 g  beans\n", "[the lemons] [the beans] [at least 2 % acid]")).codes() == "");
}

TEST_CASE("strength: what is not a strength") {
  CHECK(Checked(part("  400 g  vinegar\n", "[the vinegar] [at least 2 % acid]")).codes() == "strength_unsaid");
  CHECK(Checked(part("  400 g  vinegar, 5 % salt\n", "[the vinegar] [at least 2 % acid]")).codes() == "strength_unsaid");
  CHECK(Checked(part("  400 g  vinegar, 105 % acid\n", "[the vinegar]")).codes() == "strength_over_all");
  CHECK(Checked(part("  400 g  vinegar, 5 acid\n", "[the vinegar] [at least 2 % acid]")).codes() == "bare_strength");
  CHECK(Checked(part("  400 g  chocolate, 70 cocoa\n", "[the chocolate]")).codes() == "bare_strength");
  CHECK(Checked(part("  400 g  chocolate, 70 % cocoa solids\n", "[the chocolate]")).codes() == "");
  CHECK(Checked(part("  400 g  chocolate, cut in 5 pieces\n", "[the chocolate]")).codes() == "");
}

TEST_CASE("cure: ppm on the green weight of the meat") {
  const auto sausage = [](const std::string& cure) {
    return Checked(part("  1 kg  pork shoulder, minced\n  " + cure + "\n  20 g  fine salt\n", "[the shoulder] [the curing salt] [the fine salt]"));
  };
  CHECK(sausage("2.5 g  curing salt, 6.25 % nitrite").codes() == "");  // 156.25, which the limit of 156 is printed for
  CHECK(sausage("2.6 g  curing salt, 5.88 % nitrite").codes() == "");  // 152.9
  const Checked over = sausage("2.6 g  curing salt, 6.25 % nitrite");  // 162.5
  CHECK(over.codes() == "cure_over_limit");
  CHECK(over.report.has_errors());
  CHECK(over.at(over.problem(Code::cure_over_limit)) == "2.6 g");
  CHECK(message(over, Code::cure_over_limit) == "This comes to 163 ppm of nitrite on the green meat (1 kg), over 156 ppm, the limit for sausage and other minced meat.");
  const Diagnostic& said = *over.problem(Code::cure_over_limit);
  REQUIRE(said.fixes.size() == 1);
  CHECK(said.fixes[0].text == "2.4 g");  // 156 ppm of 1 kg over 6.25 %, rounded down
  CHECK(said.expected == "at most 156 ppm, which is 2.4 g of it");
  CHECK(said.why.find("USDA FSIS Directive 7620.3") != std::string::npos);
  CHECK(said.why.find("follow your local code") != std::string::npos);
  CHECK(sausage("2.5 g  curing salt, 6.25 nitrite").codes() == "bare_strength");
  CHECK(sausage("2.5 g  curing salt (6.25)").codes().find("bare_strength") == 0);
  CHECK(sausage("2.5 g  curing salt, nitrite 6.25 %").codes() == "bare_strength");
  CHECK(sausage("2.5 g  curing salt").codes() == "cure_strength_unsaid");
  CHECK(sausage("2.5 g  curing salt, 6.25 % nitrite, gently").codes() == "cure_out_of_step");
  CHECK(sausage("2.5 g  curing salt, 6.25 % nitrite, fixed").codes() == "cure_out_of_step");
  CHECK(sausage("2 to 3 g  curing salt, 6.25 % nitrite").codes() == "cure_over_limit");
  CHECK(Checked(part("  1 kg  pork\n  2.5 g  curing salt, 6.25 % nitrite\n", "Mince [the pork] with [the curing salt]. [at most 150 nitrite]")).codes() == "bare_strength");
}

TEST_CASE("cure: which limit, as the page tells") {
  // 3 g of 6.25 % on 1 kg: 187.5 ppm.
  const auto with = [](const std::string& title, const std::string& meat, const std::string& more, const std::string& verb) {
    return Checked(part("  1 kg  " + meat + "\n  3 g  curing salt, 6.25 % nitrite\n" + more, verb + " [the " + meat + "] with [the curing salt]." + (more.empty() ? "" : " [the water]"), title));
  };
  CHECK(with("Supper", "pork loin", "", "Mix").codes() == "cure_over_limit");  // nothing tells: the strictest, 156
  CHECK(message(with("Supper", "pork loin", "", "Mix"), Code::cure_over_limit).find("the strictest limit that may hold") != std::string::npos);
  CHECK(with("Dry-cured ham", "pork leg", "", "Mix").codes() == "");        // 625
  CHECK(with("Supper", "pork loin", "", "Rub").codes() == "");              // 625
  CHECK(with("Bacon", "pork loin", "", "Rub").codes() == "");               // 200
  CHECK(with("Supper", "pork belly", "", "Rub").codes() == "");             // 200
  CHECK(with("Supper", "pork loin", "", "Mince").codes() == "cure_over_limit");
  CHECK(with("Salami", "pork loin", "", "Rub").codes() == "cure_over_limit");
  // With 200 g of water in all 1203 g: 155.9 ppm, under the 200 of a pickle and over the 120 of bacon in one.
  CHECK(with("Supper", "pork loin", "  200 g  water\n", "Cover").codes() == "");
  CHECK(with("Supper", "pork belly", "  200 g  water\n", "Cover").codes() == "cure_over_limit");
  // A moistened cure is no pickle.
  CHECK(with("Supper", "pork loin", "  50 g  water\n", "Cover").codes() == "cure_over_limit");
}

TEST_CASE("cure: by way of a pickle of its own, and once only") {
  const auto beef = [](const std::string& grams, const std::string& after) {
    return Checked("recipe: Salt beef\npart: Pickle\ntake:\n  1 kg  water\n  60 g  fine salt\n  " + grams +
                   " g  curing salt, 6.25 % nitrite\nmethod:\n  [the water] [the fine salt] [the curing salt]\n\npart: Beef\ntake:\n  2 kg  beef silverside\nmethod:\n"
                   "  [the silverside] [the Pickle] [cure 5 days] [discard the Pickle]\n" + after);
  };
  CHECK(beef("9.6", "").codes() == "");  // 600 mg in 3.07 kg: 195 ppm
  CHECK(beef("10", "").codes() == "cure_over_limit");  // 203.6
  CHECK(beef("10", "").at(beef("10", "").problem(Code::cure_over_limit)) == "10 g");
  // The beef goes on with what it has; in the next part nothing new is said of it.
  const std::string pie = "\npart: Pie\ntake:\n  [Beef]\n  100 g  carrots\nmethod:\n  [the Beef] [the carrots]\n";
  CHECK(beef("9.6", pie).codes() == "");
  CHECK(beef("10", pie).codes() == "cure_over_limit");
  CHECK(Checked(part("  1 kg  water\n  100 g  fine salt\n  10 g  curing salt, 6.25 % nitrite\n", "[the water] [the fine salt] [the curing salt]")).codes() == "");
  CHECK(Checked(part("  1 kg  haunch\n  2 g  curing salt, 6.25 % nitrite\n", "[the haunch] [the curing salt]")).codes() == "cure_not_weighed");
  CHECK(Checked(part("  1  pork leg\n  2 g  curing salt, 6.25 % nitrite\n", "[the leg] [the curing salt]")).codes() == "cure_not_weighed");
  CHECK(Checked(part("  1 kg  chicken stock\n  20 g  curing salt, 6.25 % nitrite\n", "[the stock] [the curing salt]")).codes() == "");
}

TEST_CASE("strength: scaling by k leaves every strength as it was") {
  std::mt19937 random(11);
  for (int run = 0; run < 60; ++run) {
    const int vinegar = std::uniform_int_distribution(50, 900)(random), beans = std::uniform_int_distribution(50, 900)(random);
    const int acid = std::uniform_int_distribution(1, 12)(random), k = std::uniform_int_distribution(2, 40)(random);
    const auto made = [&](int times) {
      return Checked(part("  " + std::to_string(vinegar * times) + " g  vinegar, " + std::to_string(acid) + " % acid\n  " + std::to_string(beans * times) +
                              " g  beans\n",
                          "[the vinegar] [half the beans] [loses 10 %] [drain] [the rest of the beans] [at least 0.01 % acid]"));
    };
    const Checked one = made(1), many = made(k);
    REQUIRE(one.recipe.found_strengths.size() == 1);
    CHECK(one.recipe.found_strengths[0].share.low == many.recipe.found_strengths[0].share.low);
    CHECK(one.recipe.found_strengths[0].share.high == many.recipe.found_strengths[0].share.high);
    REQUIRE(one.recipe.parts[0].makeup.strengths.size() == 1);
    CHECK(one.recipe.parts[0].makeup.strengths[0].share.low == many.recipe.parts[0].makeup.strengths[0].share.low);
  }
}

TEST_CASE("strength: a hostile file is given up on, not waited for") {
  std::string take, method;
  for (int i = 0; i < 4000; ++i) {
    take += "  10 g  thing" + std::to_string(i) + " pork, 1 % nitrite" + std::to_string(i) + "\n";
    method += "[the thing" + std::to_string(i) + " pork] [discard the thing" + std::to_string(i) + " pork] [at least 1 % nitrite" + std::to_string(i) + "]\n";
  }
  const Checked c(part(take, method));
  CHECK(c.recipe.lines.size() == 4000);
}
