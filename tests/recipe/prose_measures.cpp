// Measures outside the brackets: found whole, and bracketed so that the bracket is read (semantics T13).
#include "recipe/checked.hpp"

#include <doctest/doctest.h>

using namespace qtn;

namespace {

Checked step(const std::string& words) {
  return Checked("recipe: Supper\nmeasures: British\noven: conventional\ntake:\n  200 ml milk\nmethod:\n  Warm [the milk]. " + words + "\n");
}
// Every measure that was found in a step, in its order.
std::string found(const std::string& words) {
  const Checked one = step(words);
  std::string out;
  for (const Diagnostic& problem : one.report.list())
    if (problem.code == Code::measure_in_prose) out += (out.empty() ? "" : " | ") + std::string(one.source->text(problem.span));
  return out;
}

}  // namespace

TEST_CASE("a measure in prose is found whole") {
  CHECK(found("Cook for 20 minutes.") == "20 minutes");
  CHECK(found("Cook for 20 to 25 minutes.") == "20 to 25 minutes");
  CHECK(found("Cook for 20–25 mins.") == "20–25 mins");
  CHECK(found("Wait 1 h 30 min.") == "1 h 30 min");
  CHECK(found("Wait ½ hour, then 1½ hours.") == "½ hour | 1½ hours");
  CHECK(found("Wait about 1 1/2 hours.") == "about 1 1/2 hours");
  CHECK(found("Stir in 1 1/2 tsp of it.") == "1 1/2 tsp");
  CHECK(found("Set it to 180C, 180 °C fan or 350F.") == "180C | 180 °C fan | 350F");
  CHECK(found("Set it to 325 °F convection or 350F.") == "325 °F convection | 350F");
  CHECK(found("Heat it to gas 4, or Gas mark 6.") == "gas 4 | Gas mark 6");
  CHECK(found("Roll it 3 mm thick (1/8 inch).") == "3 mm | 1/8 inch");
}

TEST_CASE("ordinary numbers in prose are left alone") {
  for (const char* words : {"Take flour of type 00.", "Have it by half past four with a cup of tea.", "Cut it in 4, or 6 for children.",
                            "Turn the gas down.", "Make 2 cuts, 3 or 4 more to taste.", "Cook until it is 3 cm high."})
    CHECK_MESSAGE(found(words) == "", words);
}

TEST_CASE("a safe bracket is read without another word") {
  for (const char* words : {"Cook for about 20 to 25 minutes.", "Wait 1½ hours.", "Wait 1 h 30 min.", "Heat it to 180 °C fan.", "Heat it to gas 4.",
                            "Roll it 1/8 inch thick."}) {
    Checked one = step(words);
    std::string text(one.source->text());
    const Diagnostic* problem = one.problem(Code::measure_in_prose);
    REQUIRE_MESSAGE(problem != nullptr, words);
    REQUIRE_MESSAGE(problem->fixes.size() == 1, words);
    text.replace(problem->fixes[0].span.begin, problem->fixes[0].span.size(), problem->fixes[0].text);
    CHECK_MESSAGE(Checked(text).codes() == "", text);
  }
  CHECK(step("Stir in 50 ml of it.").problem(Code::measure_in_prose)->fixes.empty());
}

TEST_CASE("an open bracket and an empty method are one fault each") {
  CHECK(step("Then [bake 20 min at 180 °C.").codes() == "open_bracket");
  CHECK(Checked("recipe: Supper\ntake:\n  200 g peas\nmethod:\n").codes() == "empty_block");
}
