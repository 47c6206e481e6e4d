// The log against the list (semantics part 8, Trials).
#include "recipe/checked.hpp"

#include <doctest/doctest.h>

#include "recipe/dates.hpp"

using namespace qtn;

namespace {

const std::string kPeas =
    "recipe: Peas\ntake:\n  500 g peas\n  4 g salt\n  30 g butter\n"
    "method:\n  Boil [the peas] with [the salt] [boil 5 min]. Stir in [the butter] and [rest 2 min].\n";

Checked peas(const std::string& log, int today = 0) {
  Surroundings around;
  around.today = today;
  return Checked(kPeas + log, around);
}

}  // namespace

TEST_CASE("dates are days of the calendar") {
  Report report;
  CHECK(read_date("1970-01-01", {}, report) == 0);
  CHECK(read_date("2000-03-01", {}, report) == 11017);
  CHECK(read_date("2026-02-11", {}, report) == 20495);
  CHECK(read_date("1969-12-31", {}, report) == -1);
  CHECK(report.list().empty());
  for (int day : {-300000, -1, 0, 59, 60, 11016, 20495, 400000}) CHECK(read_date(write_date(day), {}, report) == day);
  CHECK_FALSE(read_date("2025-02-29", {}, report));
  CHECK_FALSE(read_date("2026-13-01", {}, report));
  CHECK(report.list()[0].code == Code::impossible_date);
  CHECK(report.list()[0].expected == "a day from 01 to 28");
  CHECK(read_date("2024-02-29", {}, report));
}

TEST_CASE("a date in another form is mended where it has one reading") {
  const auto mended = [](std::string_view text) {
    Report report;
    CHECK_FALSE(read_date(text, {}, report));
    REQUIRE(report.list().size() == 1);
    CHECK(report.list()[0].code == Code::date_not_iso);
    return report.list()[0].fixes.empty() ? std::string() : report.list()[0].fixes[0].text;
  };
  CHECK(mended("11 February 2026") == "2026-02-11");
  CHECK(mended("Feb 11, 2026") == "2026-02-11");
  CHECK(mended("2026/2/11") == "2026-02-11");
  CHECK(mended("3rd May 2026") == "2026-05-03");
  CHECK(mended("11/02/2026") == "");
  CHECK(mended("last winter") == "");
}

TEST_CASE("a sound log is silent and its changes find their lines") {
  const Checked one = peas(
      "trial: 2026-01-05\n  salt  2 g -> 3 g\ntrial: 2026-02-11\n  salt  3 g -> 4 g\n  boil  4 min -> 5 min\n"
      "  note: Flat when warm.\ntrial: 2026-03-01\n  cream  20 g -> none\n");
  CHECK_MESSAGE(one.report.list().empty(), one.codes());
  REQUIRE(one.recipe.trials.size() == 3);
  const Log& log = one.recipe.trials[1];
  CHECK(log.day == 20495);
  CHECK(log.notes.size() == 1);
  CHECK(log.changes[0].target.kind == TargetKind::line);
  CHECK(one.recipe.lines[log.changes[0].target.index].name == "salt");
  CHECK(log.changes[1].clause != kNone);
}

TEST_CASE("the order is by date, then down the page") {
  CHECK(peas("trial: 2026-02-11\n  salt  3 g -> 4 g\ntrial: 2026-01-05\n  salt  2 g -> 3 g\n").report.list().empty());
  CHECK(peas("trial: 2026-01-05\n  salt  2 g -> 3 g\ntrial: 2026-01-05\n  salt  3 g -> 4 g\n").report.list().empty());
  CHECK(peas("trial: 2026-01-05\n  salt  3 g -> 4 g\ntrial: 2026-01-05\n  salt  2 g -> 3 g\n").problem(Code::chain_break));
}

TEST_CASE("a break in the chain is told with both places") {
  const Checked one = peas("trial: 2026-01-05\n  salt  2 g -> 3 g\ntrial: 2026-02-11\n  salt  3.5 g -> 4 g\n");
  const Diagnostic* problem = one.problem(Code::chain_break);
  REQUIRE(problem);
  CHECK(one.at(problem) == "3.5 g");
  REQUIRE(problem->labels.size() == 1);
  CHECK(one.source->text(problem->labels[0].span) == "3 g");
  CHECK(problem->fixes.empty());
  CHECK(one.report.list().size() == 1);
}

TEST_CASE("the break of a step's time stands between its trials") {
  const Checked one = peas("trial: 2026-01-05\n  boil  2 min -> 3 min\ntrial: 2026-02-11\n  boil  4 min -> 5 min\n");
  CHECK(one.codes() == "chain_break");
}

TEST_CASE("a list that differs from the newest trial has two ways out, neither certain") {
  const Checked one = peas("trial: 2026-01-05\n  salt  2 g -> 3 g\n");
  const Diagnostic* problem = one.problem(Code::list_differs);
  REQUIRE(problem);
  CHECK(one.at(problem) == "3 g");
  REQUIRE(problem->fixes.size() == 2);
  CHECK(problem->fixes[0].certainty == Certainty::choice);
  CHECK(one.source->text(problem->fixes[0].span) == "4 g");
  CHECK(problem->fixes[0].text == "3 g");
  CHECK(problem->fixes[1].text == "4 g");
}

TEST_CASE("amounts of one size agree whatever they are written in") {
  CHECK(Checked("recipe: R\nmeasures: British\ntake:\n  1/2 tsp salt\nmethod:\n  Eat [the salt].\ntrial: 2026-01-05\n  salt  1/4 tsp -> 2.5 ml\n")
            .report.list()
            .empty());
  CHECK(Checked("recipe: R\ntake:\n  2 cloves garlic\nmethod:\n  Eat [the garlic].\ntrial: 2026-01-05\n  garlic  1 -> 2\n").report.list().empty());
  CHECK(Checked("recipe: R\ntake:\n  250 g (9 oz) flour\nmethod:\n  Eat [the flour].\ntrial: 2026-01-05\n  flour  8 oz -> 9 oz\n").report.list().empty());
}

TEST_CASE("dates that cannot be are said once, and nothing follows from them") {
  const Checked one = peas("trial: 2026-02-30\n  salt  2 g -> 9 g\n");
  CHECK(one.codes() == "impossible_date");
  CHECK(peas("trial: 2026-02-11\n  salt  3 g -> 4 g\n", 20494).codes() == "future_date");
  CHECK(peas("trial: 2026-02-11\n  salt  3 g -> 4 g\n", 20495).codes() == "");
  CHECK(peas("trial:\n  salt  3 g -> 4 g\n").codes() == "log_without_name");
}

TEST_CASE("names of changes") {
  const std::string log = "trial: 2026-01-05\n";
  CHECK(peas(log + "  slat  3 g -> 4 g\n").codes() == "change_of_nothing");
  CHECK(peas(log + "  [Sauce] salt  3 g -> 4 g\n").codes() == "change_of_nothing");
  CHECK(peas(log + "  bake  20 min -> 25 min\n").codes() == "change_of_nothing");
  CHECK(peas(log + "  salt  3 min -> 4 min\n").codes() == "change_of_kind");
  CHECK(peas(log + "  boil  3 g -> 4 g\n").codes() == "change_of_kind");
  CHECK(peas(log + "  salt  3 g -> 4 g\n  salt  4 g -> 4 g\n").problem(Code::changed_twice));
  CHECK(peas(log + "  salt  none -> none\n").codes() == "none_to_none");
  CHECK(peas(log + "  salt  4 g -> 4 g\n").codes() == "no_change");
  CHECK(peas(log + "  butter  30 g -> none\n").codes() == "list_differs");
  CHECK(peas(log + "  salt  none -> 4 g\n").codes() == "");
}

TEST_CASE("a thing in the place of another") {
  CHECK(peas("trial: 2026-01-05\n  dripping  40 g -> 30 g butter\n").codes() == "");
  CHECK(peas("trial: 2026-01-05\n  dripping  40 g -> 20 g butter\n").codes() == "list_differs");
  CHECK(peas("trial: 2026-01-05\n  dripping  40 g -> 30 g lard\n").codes() == "change_of_nothing");
  CHECK(peas("trial: 2026-01-05\n  dripping  50 g -> 40 g\ntrial: 2026-02-05\n  dripping  40 g -> 30 g butter\n").codes() == "");
}

TEST_CASE("two parts with one line, two steps of one verb") {
  const std::string text =
      "recipe: Pie\npart: Paste\ntake:\n  200 g flour\n  2 g salt\nmethod:\n  Mix [the flour] and [the salt].\n"
      "part: Pie\ntake:\n  300 g beef\n  3 g salt\nmethod:\n  Fry [the beef] with [the salt] [fry 5 min], fill [the Paste], "
      "[bake 20 min at 200 °C], then [bake 30 min at 180 °C].\n";
  CHECK(Checked(text + "trial: 2026-01-05\n  salt  1 g -> 2 g\n").codes() == "change_of_several");
  CHECK(Checked(text + "trial: 2026-01-05\n  [Paste] salt  1 g -> 2 g\n").codes() == "");
  const Checked baked(text + "trial: 2026-01-05\n  bake  35 min -> 30 min\n  bake  25 min -> 20 min\n");
  CHECK_MESSAGE(baked.codes() == "", baked.codes());
  CHECK(baked.recipe.trials[0].changes[0].clause != baked.recipe.trials[0].changes[1].clause);
  CHECK(Checked(text + "trial: 2026-01-05\n  bake  190 °C -> 180 °C\n").codes() == "");
  CHECK(Checked(text + "trial: 2026-01-05\n  bake  35 min -> 40 min\n").codes() == "list_differs");
}

TEST_CASE("lines of a log that are no change") {
  const Checked one = peas("trial: 2026-01-05\n  A little flat.\n");
  const Diagnostic* problem = one.problem(Code::bad_change);
  REQUIRE(problem);
  REQUIRE(problem->fixes.size() == 1);
  CHECK(problem->fixes[0].text == "note: ");
  CHECK(peas("trial: 2026-01-05\n  salt  3 g => 4 g\n").problem(Code::bad_change)->fixes[0].text == "->");
  CHECK(peas("trial: 2026-01-05\n  salt -> 4 g\n").codes() == "bad_change");
}

TEST_CASE("standardized: three trials after the last change, each without one") {
  const std::string plain = "trial: 2026-02-01\n  note: Good.\ntrial: 2026-03-01\n  note: Good.\n";
  const std::string changed = "trial: 2026-01-05\n  salt  3 g -> 4 g\n";
  CHECK_FALSE(peas("").recipe.standardized);
  CHECK_FALSE(peas(changed + plain).recipe.standardized);
  CHECK(peas(changed + plain + "trial: 2026-04-01\n  note: Good.\n").recipe.standardized);
  CHECK_FALSE(peas(plain + "trial: 2026-04-01\n  note: Good.\ntrial: 2026-05-01\n  salt  3 g -> 4 g\n").recipe.standardized);
}

TEST_CASE("changes of counted nouns, parts and measures of the house are read and held against the list") {
  auto kitchen = std::make_shared<Kitchen>();
  kitchen->measures.push_back({"small ladle", {Fraction(60), Fraction(60), common().millilitre, Manner::plain, false}});
  kitchen->measures.push_back({"ladle", {Fraction(120), Fraction(120), common().millilitre, Manner::plain, false}});
  const auto broth = [&](const std::string& log) {
    Surroundings around;
    around.kitchen = kitchen;
    return Checked(
        "recipe: Broth\nmeasures: British\npart: Dressing\nmakes: 400 ml\ntake: parts\n  3 parts olive oil\n  1 part cider vinegar\n"
        "method:\n  Shake [the oil] with [the vinegar].\npart: Broth\ntake:\n  3 cloves garlic\n  3 ladles  chicken stock\n"
        "  2 small ladles of cream\n  2 pinches salt\n  4 large eggs\n"
        "method:\n  Mix [the garlic], [the stock], [the cream], [the salt] and [the eggs] with [the Dressing].\n"
        "trial: 2026-01-05\n" + log,
        around);
  };
  const auto codes = [&](const std::string& log) { return broth(log).codes(); };
  // read, resolved, silent where the list agrees
  for (const std::string log :
       {"  garlic  2 cloves -> 3 cloves\n", "  garlic  a clove -> 3 cloves\n", "  garlic  2 -> 3 cloves\n", "  garlic  2 cloves -> 3\n",
        "  garlic  2 to 4 cloves -> 3 cloves\n", "  garlic  none -> 3 cloves\n", "  garlic  2 cloves garlic -> 3 cloves garlic\n",
        "  olive oil  2 parts -> 3 parts\n", "  olive oil  2 -> 3 parts\n", "  vinegar  2 parts -> 1 part\n",
        "  chicken stock  2 ladles -> 3 ladles\n", "  stock  1 ladle -> 360 ml\n", "  cream  3 small ladles -> 2 small ladles\n",
        "  salt  3 pinches -> 2 pinches\n", "  eggs  3 large eggs -> 4 large eggs\n", "  large eggs  3 -> 4 large eggs\n",
        "  shallot  2 cloves -> 3 cloves garlic\n", "  water  2 ladles -> 3 ladles of chicken stock\n"})
    CHECK_MESSAGE(codes(log) == "", log << codes(log));
  // held against the list
  for (const std::string log :
       {"  garlic  2 cloves -> 4 cloves\n", "  garlic  2 cloves -> 3 heads\n", "  garlic  2 cloves -> 3 parts\n", "  olive oil  3 parts -> 2 parts\n",
        "  olive oil  2 parts -> 3 cloves\n", "  chicken stock  2 ladles -> 4 ladles\n", "  chicken stock  2 ladles -> 3 small ladles\n",
        "  chicken stock  2 ladles -> 3 cloves\n", "  cream  3 small ladles -> 2 ladles\n", "  salt  2 pinches -> 3 pinches\n"})
    CHECK_MESSAGE(codes(log) == "list_differs", log << codes(log));
  CHECK(codes("  garlic  3 cloves -> 3 cloves\n") == "no_change");
  CHECK(codes("  garlic  1 clove -> 2 cloves\ntrial: 2026-02-05\n  garlic  2 heads -> 3 cloves\n") == "chain_break");
  CHECK(codes("  chicken stock  1 ladle -> 2 ladles\ntrial: 2026-02-05\n  chicken stock  2 ladles -> 3 ladles\n") == "");
  CHECK(codes("  leek  2 cloves -> 3 cloves\n") == "change_of_nothing");
  CHECK(codes("  mix  2 cloves -> 3 cloves\n") == "change_of_kind");
  // the noun belongs to the amount
  const Checked one = broth("  garlic  2 cloves -> 4 cloves\n");
  const Diagnostic* const problem = one.problem(Code::list_differs);
  REQUIRE(problem);
  CHECK(one.at(problem) == "4 cloves");
  REQUIRE(problem->fixes.size() == 2);
  CHECK(problem->fixes[1].text == "3 cloves");
  CHECK(broth("  stock  2 ladles -> 3 ladles\n").recipe.trials[0].changes[0].before->low == Fraction(240));
  // what counts nothing is no amount
  const Checked glove = broth("  garlic  2 gloves -> 3 cloves\n");
  CHECK(glove.codes() == "bad_change");
  CHECK(glove.at(glove.problem(Code::bad_change)) == "gloves");
}
