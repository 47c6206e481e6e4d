// Whole cards: facts, rows, steps, remarks and tastings, in their order and their words.
#include <doctest/doctest.h>

#include "tests/card/carded.hpp"

namespace qtn {
namespace {

using test::Carded;

constexpr const char* kHead = "recipe: Leek tart\nmeasures: British\n";

std::string with_list(const std::string& lines, const std::string& method) {
  return std::string(kHead) + "take:\n" + lines + "method:\n  " + method + "\n";
}

TEST_CASE("facts of the head") {
  const Carded tart(
      "recipe: Leek *and* cheese tart\nmakes: 1 tart\nserves: 6 to 8\ntin: 23 cm round, 3 cm deep\nmeasures: British\n"
      "words: British\noven: conventional\nsource: Saltmarsh House,\n  winter book\nneeds: a *deep* tin\n"
      "keeps: 2 days chilled, 3 months frozen\nready: after 2 weeks\nat most: 1.5 kg leeks at a time\nscales: 1/2 to 4\n"
      "date: 2026-01-05\nby: the kitchen\ntake:\n  400 g leeks\nmethod:\n  [bake 20 min at 190 °C] [the leeks].\n");
  CHECK(tart.words(tart.card.title) == "Leek and cheese tart");
  CHECK(tart.fact(FactKind::makes) == "Makes: 1 tart");
  CHECK(tart.fact(FactKind::serves) == "Serves: 6 to 8");
  CHECK(tart.fact(FactKind::tin) == "Tin: 23 cm round, 3 cm deep");
  CHECK(tart.fact(FactKind::oven) == "Oven: conventional");
  CHECK(tart.fact(FactKind::keeps) == "Keeps: 2 days chilled, 3 months frozen");
  CHECK(tart.fact(FactKind::ready) == "Ready: at its best after 2 weeks");
  CHECK(tart.fact(FactKind::needs) == "Needs: a deep tin");
  CHECK(tart.fact(FactKind::scales) == "Scales: found to hold from ½ to 4 times");
  CHECK(tart.fact(FactKind::batch) == "Batch: at most 1.5 kg leeks at a time");
  CHECK(tart.fact(FactKind::source) == "Source: Saltmarsh House, winter book");
  CHECK(tart.fact(FactKind::by) == "By: the kitchen");
  CHECK(tart.fact(FactKind::date) == "Date: 2026-01-05");
  CHECK(tart.card.edition.empty());
  CHECK(tart.card.language == "en-GB");
  CHECK(tart.words(tart.card.list_heading) == "You need");
  CHECK(tart.words(tart.card.method_heading) == "Method");
}

TEST_CASE("American words") {
  const Carded cake(
      "recipe: Cake\nmakes: 1 cake\ntin: 9 in round\nmeasures: American\nwords: American\ntake:\n  8 oz sugar\nmethod:\n"
      "  Beat [the sugar].\n");
  CHECK(cake.fact(FactKind::tin) == "Pan: 9 in round");
  CHECK(cake.card.language == "en-US");
}

TEST_CASE("an edition says its size, and what it makes agrees with it") {
  const std::string text = "recipe: Tart\nmakes: 1 tart\nserves: 6 to 8\ntake:\n  400 g leeks\nmethod:\n  Sweat [the leeks].\n";
  const Carded three(text, 3), half(text, Fraction::of(1, 2));
  CHECK(three.words(three.card.edition) == "3 times the recipe");
  CHECK(three.fact(FactKind::makes) == "Makes: 3 tarts");
  CHECK(three.fact(FactKind::serves) == "Serves: 18 to 24");
  CHECK(half.words(half.card.edition) == "half the recipe");
}

TEST_CASE("one unnamed part has no title; several have theirs") {
  const Carded plain(with_list("  400 g leeks\n", "Sweat [the leeks]."));
  REQUIRE(plain.card.parts.size() == 1);
  CHECK(plain.card.parts[0].title.empty());
  const Carded two(std::string(kHead) +
                   "part: Base\nmakes: 370 g\nkeeps: 2 days chilled\ntake:\n  370 g flour\nmethod:\n  Rub [the flour].\n"
                   "part: Tart\ntake:\n  400 g leeks\nmethod:\n  Fill [the Base] with [the leeks].\n");
  REQUIRE(two.card.parts.size() == 2);
  CHECK(two.words(two.card.parts[0].title) == "Base");
  CHECK(two.card.parts[0].facts.count == 2);
  CHECK(two.card.parts[1].rows.count == 1);
  CHECK(two.card.parts[1].steps.count == 1);
}

TEST_CASE("rows") {
  const Carded list(with_list("  220 g (8 oz) plain flour, sifted\n"
                              "  2 x 400 g tins tomatoes\n"
                              "  400 g leeks, trimmed, from 550 g\n"
                              "  500 ml oil, taking up 60 g\n"
                              "  10 g mint, optional\n"
                              "  pepper, to taste, start with 2 g\n"
                              "  100 g vinegar, 5 % acid\n"
                              "  50 g rice flour, plus extra for dusting\n"
                              "  400 g prawns, giving 250 g prawn tails and 120 g prawn shells\n"
                              "  100 g cheddar, grated\n  or 100 g blue cheese, crumbled\n",
                              "Mix [everything]."));
  CHECK(list.row(0) == "220 g | 8 oz | plain flour | sifted");
  CHECK(list.row(1) == "2 x 400 g tins |  | tomatoes | ");
  CHECK(list.row(2) == "400 g |  | leeks | trimmed, from 550 g as bought");
  CHECK(list.row(3) == "500 ml |  | oil | taking up 60 g");
  CHECK(list.row(4) == "10 g |  | mint | optional");
  CHECK(list.card.rows[4].optional);
  CHECK(list.row(5).find("to taste, start with 2 g") != std::string::npos);
  CHECK(list.row(6) == "100 g |  | vinegar | 5 % acid");
  CHECK(list.row(7) == "50 g |  | rice flour | plus extra for dusting");
  CHECK(list.row(8) == "400 g |  | prawns | giving 250 g prawn tails and 120 g prawn shells");
  CHECK(list.row(9) == "100 g |  | cheddar | grated");
  CHECK(list.row(10) == "100 g |  | blue cheese | crumbled");
  CHECK_FALSE(list.card.rows[9].alternative);
  CHECK(list.card.rows[10].alternative);
  CHECK(list.card.rows.size() == 11);
  CHECK(list.roles(list.card.rows[0].amount) == "a{220 g}");
  CHECK(list.roles(list.card.rows[0].second) == "2{8 oz}");
  CHECK(list.roles(list.card.rows[0].name) == "n{plain flour}");
}

TEST_CASE("what was stated beside an amount goes when that is changed") {
  const Carded list(with_list("  220 g (8 oz) plain flour\n  1 lemon\n", "Mix [everything]."), 3);
  CHECK(list.row(0) == "650 g |  | plain flour | ");
  CHECK(list.row(1) == "3 |  | lemons | ");
}

TEST_CASE("a second column") {
  Request request;
  request.units = System::metric;
  request.beside = System::imperial;
  const Carded list(with_list("  400 g leeks\n", "Sweat [the leeks], [bake 20 min at 190 °C]."), Fraction(1), request);
  CHECK(list.card.second);
  CHECK(list.row(0) == "400 g | 14 oz | leeks | ");
  CHECK(list.words(list.card.first_column) == "Metric");
  CHECK(list.words(list.card.second_column) == "Imperial");
}

TEST_CASE("clauses print without their brackets, in roles") {
  const Carded card(with_list("  400 g leeks\n  30 g butter\n  100 g cheddar\n",
                              "Sweat [the leeks] in [the\n  butter], covered, [15 min]. Add [half the cheddar] and\n"
                              "  [40 g of the cheddar], [bake 20 to 25 min at 190 °C], roll to [3 mm] until it [reads 78 °C]."));
  CHECK(card.step(0) ==
        "Sweat n{the leeks} in n{the butter}, covered, t{15 min}. Add half n{the cheddar} s{(50 g)} and "
        "a{40 g} of n{the cheddar}, bake t{20 to 25 min} at C{190 °C}, roll to m{3 mm} until it reads r{78 °C}.");
}

TEST_CASE("emphasis goes through a clause, and a link stays one") {
  const Carded card(with_list("  400 g leeks\n", "*Sweat [the leeks] gently*, as on [the page](notes/a.html)."));
  const Range32 runs = card.card.steps.at(0).runs;
  CHECK(card.words(runs) == "Sweat the leeks gently, as on the page.");
  for (std::uint32_t i = 0; i < runs.count; ++i) {
    const Run& run = card.card.runs[runs.first + i];
    if (run.role == Role::name) CHECK(run.style == kEmphasis);
    if (card.card.view(run) == "the page") CHECK(card.card.links.at(run.link) == "notes/a.html");
  }
}

TEST_CASE("openers and notes") {
  const Carded card(with_list("  400 g leeks\n",
                              "Sweat [the leeks].\n\n  meanwhile: Wash up.\n\n  by hand: Chop.\n\n  by machine: Pulse.\n"
                              "\n  ahead: Heat the oven.\n\n  Serve.\n  note: A [cold] day."));
  REQUIRE(card.card.steps.size() == 7);
  constexpr StepKind kKinds[] = {StepKind::step,       StepKind::meanwhile, StepKind::by_hand, StepKind::by_machine,
                                 StepKind::ahead, StepKind::step,      StepKind::note};
  constexpr const char* kLabels[] = {"", "Meanwhile", "By hand", "By machine", "Ahead", "", "Note"};
  for (std::size_t i = 0; i < std::size(kKinds); ++i) {
    CHECK(card.card.steps[i].kind == kKinds[i]);
    CHECK(card.words(card.card.steps[i].label) == kLabels[i]);
  }
  CHECK(card.step(6) == "A [cold] day.");
}

TEST_CASE("blocks after the dish") {
  const Carded card(with_list("  400 g leeks\n", "Sweat [the leeks].") +
                    "to keep:\n  Cover it.\nto reheat:\n  [bake 12 min at 160 °C].\n");
  REQUIRE(card.card.after.size() == 2);
  CHECK(card.words(card.card.after_heading) == "Once it is made");
  CHECK(card.words(card.card.after[0].title) == "To keep");
  CHECK(card.card.after[0].kind == AfterKind::keep);
  CHECK(card.card.after[1].kind == AfterKind::reheat);
  CHECK(card.words(card.card.after[1].title) == "To reheat");
  CHECK(card.card.after[1].steps.count == 1);
}

TEST_CASE("a card without blocks after the dish has no panel for them") {
  const Carded card(with_list("  400 g leeks\n", "Sweat [the leeks]."));
  CHECK(card.card.after.empty());
  CHECK(card.card.after_heading.empty());
}

TEST_CASE("remarks and tastings, newest first") {
  const Carded card(std::string(kHead) +
                    "note: Look at **the** [page](a.html).\ncaution: Serve hot.\ntake:\n  1/2 tsp fine salt\nmethod:\n"
                    "  Stir [the salt].\ntrial: 2026-01-20\n  note: Good.\ntrial: 2026-02-11\n"
                    "  fine salt  1/4 tsp -> 1/2 tsp\n  note: Flat when tasted warm.\n");
  bool caution = false, note = false;
  for (const Remark& one : card.card.remarks) {
    caution = caution || (one.kind == Remark::Kind::caution && card.words(one.runs) == "Serve hot.");
    note = note || (one.kind == Remark::Kind::note && card.words(one.runs) == "Look at the page.");
  }
  CHECK(caution);
  CHECK(note);
  REQUIRE(card.card.trials.size() == 2);
  CHECK(card.words(card.card.trials_heading) == "Tastings");
  CHECK(card.words(card.card.trials[0].date) == "2026-02-11");
  CHECK(card.words(card.card.trials[0].runs).find("fine salt") == 0);
  CHECK(card.words(card.card.trials[0].runs).find("Flat when tasted warm.") != std::string::npos);
  CHECK(card.words(card.card.trials[1].runs) == "No change. Good.");
}

TEST_CASE("notes with a figure are of the recipe as written, since nobody works them out anew") {
  const auto heading = [](const std::string& note, const Fraction& k) {
    const Carded card("recipe: Loaf\nnote: " + note + "\ntake:\n  1 kg plain flour\nmethod:\n  Sift [the flour].\n", k);
    return card.words(card.card.notes_heading);
  };
  CHECK(heading("Water in all 680 g.", 1) == "Notes");
  CHECK(heading("Water in all 680 g.", 3) == "Notes on the recipe as written");
  CHECK(heading("Keep it dry.", 3) == "Notes");
}

TEST_CASE("whose cups and spoons a card has is said where they are other sizes elsewhere") {
  const auto measures = [](const std::string& dialect, const std::string& line) {
    return Carded("recipe: X\nmeasures: " + dialect + "\ntake:\n  " + line + "\nmethod:\n  Sift [the flour].\n").fact(FactKind::measures);
  };
  CHECK(measures("Australian", "1 cup plain flour") == "Measures: Australian: 1 cup is 250 ml");
  CHECK(measures("American", "2 tbsp plain flour") == "Measures: American: 1 tbsp is 14.8 ml");
  CHECK(measures("British", "2 tbsp plain flour") == "");
  CHECK(measures("Australian", "100 g plain flour") == "");
}

TEST_CASE("times that were not tested at this size are something to watch") {
  const Carded card(with_list("  400 g leeks\n", "Sweat [the leeks] [15 min]."), 5);
  bool watch = false;
  for (const Remark& one : card.card.remarks) watch = watch || one.kind == Remark::Kind::watch;
  CHECK(watch);
}

TEST_CASE("every run lies in the text, whatever the file holds") {
  const std::string whole =
      with_list("  220 g (8 oz) plain flour, sifted\n  3 eggs\n  or 50 g oil\n",
                "*Rub [the flour] with [half the eggs]*, see [a](b), `[x]`, [bake 20 min at 190 °C (375 °F)] <b>.\n\n"
                "  by hand: [rest overnight] &amp; go.\n  note: \\[so\\]") +
      "to keep:\n  [chill 2 h].\ntrial: 2026-02-11\n  plain flour 200 g -> 220 g\n";
  std::uint32_t seed = 3;
  const auto pick = [&](std::size_t n) {
    seed = seed * 1664525u + 1013904223u;
    return (seed >> 8) % static_cast<std::uint32_t>(n);
  };
  std::size_t runs = 0;
  for (int round = 0; round < 3'000; ++round) {
    std::string text = whole;
    for (std::uint32_t i = 0, n = 1 + pick(4); i < n; ++i) {
      const std::size_t at = pick(text.size());
      switch (pick(3)) {
        case 0: text[at] = static_cast<char>(pick(256)); break;
        case 1: text.erase(at, 1 + pick(5)); break;
        default: text.insert(at, 1, "[]*`<&\n:(,"[pick(10)]); break;
      }
    }
    const Carded card(text, Fraction(static_cast<std::int64_t>(1 + pick(3))));
    runs += card.card.runs.size();
    for (const Run& run : card.card.runs) {
      REQUIRE(std::size_t{run.begin} + run.size <= card.card.text.size());
      REQUIRE(run.link < card.card.links.size());
      REQUIRE(run.exact < card.card.exacts.size());
    }
  }
  CHECK(runs > 90'000);
}

TEST_CASE("a second statement of what a step takes is printed, and goes where the amount changes") {
  const std::string text = with_list("  200 g  cheddar\n", "Stir in [100 g (3 1/2 oz) of the cheddar], then [the rest of the cheddar].");
  Request imperial, beside;
  imperial.units = System::imperial;
  beside.beside = System::imperial;
  const auto first = [](const Carded& card) { return card.step(0).substr(0, card.step(0).find(" of ")); };
  CHECK(first(Carded(text)) == "Stir in a{100 g} (2{3½ oz})");
  CHECK(first(Carded(text, 1, beside)) == "Stir in a{100 g} 2{(3½ oz)}");
  CHECK(first(Carded(text, 1, imperial)) == "Stir in a{3½ oz}");
  CHECK(first(Carded(text, 3)) == "Stir in a{300 g}");
}

}  // namespace
}  // namespace qtn
