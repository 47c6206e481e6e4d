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

TEST_CASE("draft, tried, standardized: three trials after the last change, each without one") {
  const std::string plain = "trial: 2026-02-01\n  note: Good.\ntrial: 2026-03-01\n  note: Good.\n";
  const std::string changed = "trial: 2026-01-05\n  salt  3 g -> 4 g\n";
  const auto standing = [](const std::string& log) { return peas(log).recipe.standing; };
  CHECK(standing("").tried == Tried::draft);
  CHECK(standing(changed).tried == Tried::tried);
  CHECK(standing(changed).untasted == 0);
  CHECK(standing(changed + plain).tried == Tried::tried);
  CHECK(standing(changed + plain).alike == 2);
  CHECK(standing(changed + plain).untasted == kNone);
  const TrialStanding three = standing(changed + plain + "trial: 2026-04-01\n  note: Good.\n");
  CHECK(three.tried == Tried::standardized);
  CHECK(three.alike == 3);
  // A change is untasted until a later trial, however many like results stood before it.
  const TrialStanding again = standing(plain + "trial: 2026-04-01\n  note: Good.\ntrial: 2026-05-01\n  salt  3 g -> 4 g\n");
  CHECK(again.tried == Tried::tried);
  CHECK(again.untasted == 3);
  CHECK(again.alike == 0);
}

TEST_CASE("a version has no trials of its own") {
  const Checked one = peas("variant: Sweet\n  salt  4 g -> 2 g\ntrial: 2026-01-05\ntrial: 2026-01-06\ntrial: 2026-01-07\n");
  REQUIRE_MESSAGE(one.report.list().empty(), one.codes());
  CHECK(one.recipe.standing.tried == Tried::standardized);
  Report report;
  const auto sweet = variant_of(one.recipe, "Sweet", report);
  REQUIRE(sweet);
  CHECK(sweet->standing.tried == Tried::draft);
}

TEST_CASE("a trial dated after the next one") {
  const std::string later = "trial: 2026-02-14\n  salt  2 g -> 3 g\n", earlier = "trial: 2026-02-07\n  salt  3 g -> 4 g\n";
  const Checked wrong = peas(later + earlier);
  const Diagnostic* problem = wrong.problem(Code::trial_out_of_order);
  REQUIRE(problem);
  CHECK(problem->severity == Severity::error);
  CHECK(wrong.at(problem) == "2026-02-14");
  REQUIRE(problem->labels.size() == 1);
  CHECK(wrong.source->text(problem->labels[0].span) == "2026-02-07");
  CHECK_MESSAGE(wrong.report.list().size() == 1, wrong.codes());
  // Newest first all the way is an order too, and so is oldest first.
  CHECK(peas("trial: 2026-02-14\n  salt  3 g -> 4 g\ntrial: 2026-02-07\n  salt  2 g -> 3 g\ntrial: 2026-02-01\n").report.list().empty());
  // One that stands out of an order is a warning where nothing else speaks against it.
  const Checked odd = peas("trial: 2026-02-01\n  salt  3 g -> 4 g\ntrial: 2026-03-07\ntrial: 2026-02-14\n  note: Good.\n");
  REQUIRE(odd.problem(Code::trial_out_of_order));
  CHECK(odd.problem(Code::trial_out_of_order)->severity == Severity::warning);
  CHECK(odd.at(odd.problem(Code::trial_out_of_order)) == "2026-03-07");
  // A day still to come is told once, with the next trial as its second place.
  const Checked future = peas("trial: 2026-02-01\n  salt  3 g -> 4 g\ntrial: 2027-02-07\ntrial: 2026-02-14\n", 20600);
  CHECK_MESSAGE(future.codes() == "future_date", future.codes());
  REQUIRE(future.problem(Code::future_date)->labels.size() == 1);
  // A break of the chain in either order is the chain's own fault.
  CHECK_FALSE(peas("trial: 2026-02-14\n  salt  2 g -> 3.5 g\ntrial: 2026-02-07\n  salt  3 g -> 4 g\n").problem(Code::trial_out_of_order));
}

namespace {

std::string shares(const std::string& text) {
  const Checked one(text);
  std::string out = one.report.has_errors() ? one.codes() : "";
  constexpr const char* kOf[] = {"nothing", "meat", "flour", "whole"};
  for (const Log& log : one.recipe.trials)
    for (const Change& change : log.changes) {
      out += (out.empty() ? "" : "; ") + std::string(kOf[static_cast<std::size_t>(change.share.of)]);
      if (change.share.of != ShareOf::nothing) out += " " + shares_in_words(change.share);
    }
  return out;
}

const std::string kRest = "method:\n  Mix [everything] and [cook 20 min].\n";

}  // namespace

TEST_CASE("what a change is as a share of the meat, the flour or the whole") {
  // Salt of a filling by its meat: 6 / 1000 and 9 / 1000.
  const std::string filling = "recipe: Filling\nmeasures: British\ntake:\n  1 kg stewing beef\n  9 g fine salt\n  300 g potatoes, diced\n" + kRest;
  CHECK(shares(filling + "trial: 2026-01-05\n  fine salt  6 g -> 9 g\n") == "meat 0.6 % to 0.9 %");
  // Of a dough by its flour; what is written in per cent is a share already.
  CHECK(shares("recipe: Dough\nmeasures: British\ntake:\n  500 g strong white flour\n  300 g water\n  10 g fine salt\n" + kRest +
               "trial: 2026-01-05\n  fine salt  9 g -> 10 g\n  water  325 g -> 300 g\n") == "flour 1.8 % to 2 %; flour 65 % to 60 %");
  CHECK(shares("recipe: Dough\nmeasures: British\ntake: % of strong white flour\n  500 g strong white flour\n  60 % water\n  2 % fine salt\n" + kRest +
               "trial: 2026-01-05\n  fine salt  1.8 % -> 2 %\n") == "nothing");
  // Of a sauce by all of it: (400 + 100) before, and after.
  CHECK(shares("recipe: Sauce\nmeasures: British\ntake:\n  400 g chopped tomatoes\n  100 g onions, chopped\n" + kRest +
               "trial: 2026-01-05\n  onions  none -> 100 g\n") == "whole 0 % to 20 %");
  // The base as it was then: 10 of 1000 g of beef, then 10 of 800.
  CHECK(shares("recipe: Filling\nmeasures: British\ntake:\n  800 g stewing beef\n  10 g fine salt\n  1 kg potatoes, diced\n" + kRest +
               "trial: 2026-01-05\n  fine salt  8 g -> 10 g\ntrial: 2026-01-06\n  stewing beef  1 kg -> 800 g\n") ==
        "meat 0.8 % to 1 %; whole 50 % to 44 %");
  // Nobody knows what a pinch of asafoetida weighs, and a step has no share.
  CHECK(shares("recipe: Filling\nmeasures: British\ntake:\n  1 kg stewing beef\n  2 bunches samphire\n  9 g fine salt\n" + kRest +
               "trial: 2026-01-05\n  samphire  1 bunch -> 2 bunches\n  cook  15 min -> 20 min\n") == "nothing; nothing");
}

TEST_CASE("the amounts as of an earlier day") {
  const Checked one = peas(
      "trial: 2026-01-05\n  salt  2 g -> 3 g\ntrial: 2026-02-11\n  salt  3 g -> 4 g\n  boil  4 min -> 5 min\n"
      "trial: 2026-03-01\n  cream  20 g -> none\n  butter  none -> 30 g\n");
  REQUIRE_MESSAGE(one.report.list().empty(), one.codes());
  const auto then = [&](std::string_view day) {
    Report report;
    const auto date = read_date(day, {}, report);
    std::string out;
    const auto recipe = as_of(one.recipe, date.value(), report);
    for (const Diagnostic& problem : report.list()) out += problem.message;
    if (!recipe) return out;
    for (const TakeLine& line : recipe->lines)
      if (!line.struck) out += (out.empty() ? "" : ", ") + write_plain(line.amount) + " " + std::string(line.name);
    for (const Term& term : recipe->terms)
      if (term.role == TermRole::length) out += ", " + write_plain(term.amount);
    return out + "; " + std::to_string(recipe->trials.size());
  };
  CHECK(then("2026-03-01") == "500 g peas, 4 g salt, 30 g butter, 5 min, 2 min; 3");
  CHECK(then("2026-02-28") == "500 g peas, 4 g salt, 20 g cream, 5 min, 2 min; 2");
  CHECK(then("2026-02-11") == "500 g peas, 4 g salt, 20 g cream, 5 min, 2 min; 2");
  CHECK(then("2026-01-05") == "500 g peas, 3 g salt, 20 g cream, 4 min, 2 min; 1");
  CHECK(then("2026-01-04") == "On 2026-01-04 nobody had tried this recipe yet; the first trial is of 2026-01-05.");
  // The recipe itself is as it was, and an earlier day of an earlier day is that day.
  CHECK(one.line("salt").amount.low == Fraction(4));
  Report report;
  const auto february = as_of(one.recipe, 20495, report);
  REQUIRE(february);
  CHECK(february->standing.tried == Tried::tried);
  const auto january = as_of(*february, 20458, report);
  REQUIRE(january);
  CHECK(january->trials.size() == 1);
}

TEST_CASE("another thing in a line's place is put back") {
  const Checked one(
      "recipe: Fool\nmeasures: British\ntake:\n  150 g silken tofu\n  300 g gooseberries\nmethod:\n  Mash [the gooseberries] and fold in [the tofu].\n"
      "trial: 2026-01-05\ntrial: 2026-02-05\n  double cream  200 g -> 120 g silken tofu\ntrial: 2026-03-05\n  silken tofu  120 g -> 150 g\n");
  REQUIRE_MESSAGE(one.report.list().empty(), one.codes());
  Report report;
  const auto then = as_of(one.recipe, read_date("2026-01-05", {}, report).value(), report);
  REQUIRE(then);
  CHECK(report.list().empty());
  const TakeLine& tofu = then->lines[0];
  REQUIRE(tofu.chosen != kNone);
  CHECK(then->lines[tofu.chosen].name == "double cream");
  CHECK(then->lines[tofu.chosen].amount.low == Fraction(200));
}

TEST_CASE("what cannot be undone is told with its place") {
  const Checked one = peas("trial: 2026-01-05\ntrial: 2026-02-11\n  rest  5 min -> none\n");
  REQUIRE_MESSAGE(one.report.list().empty(), one.codes());
  Report report;
  CHECK_FALSE(as_of(one.recipe, 20458, report));
  REQUIRE(report.list().size() == 1);
  CHECK(report.list()[0].code == Code::cannot_undo);
  CHECK(one.at(&report.list()[0]) == "rest  5 min -> none");
  CHECK_FALSE(as_of(peas("").recipe, 20458, report));
  CHECK(report.list()[1].code == Code::no_trial_yet);
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
