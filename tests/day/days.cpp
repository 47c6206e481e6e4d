// Whole days: nights, hands, ovens, hours of the wall, and what is said when there is none.
#include <doctest/doctest.h>

#include <algorithm>

#include "day/clocked.hpp"
#include "day/hours_asked.hpp"

using namespace qtn;

namespace {

std::string recipe(const std::string& name, const std::string& method) {
  return "recipe: " + name + "\nmeasures: British\nserves: 4\ntake:\n  500 g plain flour\n  300 ml water\nmethod:\n" + method;
}

}  // namespace

TEST_CASE("days: no hands in the night unless they are asked for") {
  Clocked bread(recipe("Bread", "  Mix [the flour] with [the water], [knead 10 min].\n\n  [bake 40 min at 220 °C]\n"));
  Report report;
  CHECK(begins(bread.day("2026-03-01 06:50", report), "knead") == "2026-02-28 21:10");  // baked before the night, too
  CHECK(begins(bread.day("2026-03-01 06:50", report, [](DayOrder& order) { order.nights = true; }), "knead") == "2026-03-01 06:00");
  CHECK(begins(bread.day("2026-03-01 07:30", report), "bake") == "2026-03-01 06:50");
}

TEST_CASE("days: what no day between two nights can hold is refused, and never planned weeks before") {
  Clocked stock(recipe("Stock", "  [simmer 18 h] with [the flour] and [the water].\n"));
  Report report;
  CHECK_FALSE(stock.day("2026-03-01 18:00", report).planned);
  REQUIRE(report.list().size() == 1);
  CHECK(report.list().front().code == Code::no_plan);
  CHECK(report.list().front().expected.find("--nights") != std::string::npos);
  Report asked;
  CHECK(begins(stock.day("2026-03-01 18:00", asked, [](DayOrder& order) { order.nights = true; }), "simmer") == "2026-03-01 00:00");
  // What has to stand for weeks reaches back as far as it must.
  Clocked cured("recipe: Paste\nmeasures: British\nserves: 4\nready: after 20 weeks\ntake:\n  500 g plain flour\nmethod:\n  Mix [the flour] [10 min].\n");
  CHECK(begins(cured.day("2026-03-01 18:00", asked), "mix") == "2025-10-12 17:50");
}

TEST_CASE("days: a dish that goes on in the oven, turned up or down, waits for no oven to change") {
  const auto heats = [](DayOrder& order) { order.heats_in = 15; };
  Report report;
  Clocked down(recipe("Bread", "  Mix [the flour] with [the water].\n\n  [bake 20 min at 230 °C].\n\n  [lower to 180 °C] and [bake 30 min at 180 °C].\n"));
  CHECK(begins(down.day("2026-03-01 18:00", report, heats), "bake 20") == "2026-03-01 17:05");
  // Taken out between, it finds the oven as it is.
  Clocked out(recipe("Bread", "  Mix [the flour] with [the water].\n\n  [bake 20 min at 230 °C].\n\n  Turn it out.\n\n  [bake 30 min at 180 °C].\n"));
  CHECK(begins(out.day("2026-03-01 18:00", report, heats), "bake 20") == "2026-03-01 16:55");
}

TEST_CASE("days: what a recipe heats an oven for is baked in that oven") {
  // Of each bake: its heat, the bake whose oven it shares, the one whose heat it takes over.
  const auto bakes = [](const std::string& method) {
    Clocked one(recipe("Bake", method));
    Report unsaid;
    const Board board = board_of(*one.recipe, {}, unsaid);
    DayOrder order;
    order.serve.assign(1, *read_wall("2026-03-01 18:00"));
    const Posed posed = pose(wind(board.order), order, Guesses::kept, true);
    std::vector<Number> named(posed.problem.jobs.size(), kNothing);
    std::string out;
    Number count = 0;
    for (Number j = 0; j < posed.problem.jobs.size(); ++j) {
      const plan::Job& job = posed.problem.jobs[j];
      if (!job.oven) continue;
      named[j] = count++;
      out += (out.empty() ? "" : ", ") + (job.heat >= kUnwrittenHeat ? "?" : std::to_string(job.heat / 10)) + (job.heats ? " heats" : "");
      if (job.one_oven != j) out += " with " + std::to_string(named[job.one_oven]);
      if (job.goes_on != kNothing) out += " from " + std::to_string(named[job.goes_on]);
    }
    return out;
  };
  CHECK(bakes("  ahead: Set the oven going, [heat 20 min at 190 °C].\n\n  Mix [the flour] with [the water] and [bake 20 min at 190 °C].\n\n"
              "  Fill it and [bake 10 min at 190 °C].\n") == "190 heats, 190 with 0 from 0, 190 with 0 from 1");
  // The heat of the heating is that of what it is for; the bake without one goes on at it; between them the fat heats.
  CHECK(bakes("  ahead: [heat 20 min] the oven.\n\n  Put the fat in, [heat 10 min at 220 °C].\n\n  Mix [the flour] with [the water], "
              "[bake 20 min].\n") == "220 heats, 220 with 0 from 0, 220 with 0 from 1");
  CHECK(bakes("  [roast 40 min at 200 °C] with [the flour] and [the water].\n\n  Turn it up, [raise by 20 °C], and [roast 10 min].\n") ==
        "200, 220 with 0 from 0, 220 with 0 from 1");
  CHECK(bakes("  [roast 40 min at 200 °C] with [the flour] and [the water].\n\n  [lower to 160 °C] and [roast 10 min].\n") ==
        "200, 160 with 0 from 0, 160 with 0 from 1");
  // Taken out and baked at another heat: the same oven, as no other is heated; and its change is counted.
  CHECK(bakes("  ahead: [preheat 20 min at 230 °C] the oven.\n\n  [bake 20 min at 230 °C] with [the flour] and [the water].\n\n  Turn it out, "
              "[cool 5 min].\n\n  [bake 30 min at 180 °C].\n") == "230 heats, 230 with 0 from 0, 180 with 0");
  // Another heating is of whichever oven is free, and so is what bakes beside at another heat.
  CHECK(bakes("  ahead: [heat 20 min at 190 °C] the oven.\n\n  [bake 20 min at 190 °C] with [the flour].\n\n  ahead: [heat 20 min at 160 °C] an "
              "oven.\n\n  Wet it with [the water] and [bake 20 min at 160 °C].\n") == "190 heats, 190 with 0 from 0, 160 heats, 160 with 2 from 2");
  CHECK(bakes("  ahead: [heat 20 min at 160 °C] the oven.\n\n  [roast 2 h at 160 °C] with [the flour].\n\n  meanwhile: [roast 1 h at 220 °C] with "
              "[the water].\n") == "160 heats, 160 with 0 from 0, 220");
}

TEST_CASE("days: nothing goes into an oven that is still heating for another dish") {
  // Heating 17:30 to 17:50, rolls till 18:00. The tart would go in at 17:31.
  Clocked both("recipe: Tea\nmeasures: British\nserves: 4\npart: Tart\ntake:\n  300 ml water\nmethod:\n  [bake 29 min at 220 °C] with [the water].\n"
               "part: Rolls\ntake:\n  500 g plain flour\nmethod:\n  ahead: [heat 20 min at 220 °C] the oven.\n\n  [bake 10 min at 220 °C] with [the flour].\n");
  const auto tart = [&](int ovens) {
    Report report;
    const Day day = both.day("2026-03-01 18:00", report, [&](DayOrder& order) { order.ovens = ovens, order.shelves = {2}; });
    CHECK(begins(day, "heat 20") == "2026-03-01 17:30");
    std::string out;
    for (const DayRow& row : day.rows)
      if (row.part == "Tart") out += write_wall(row.begin) + " " + row.why + "\n";
    return out;
  };
  CHECK(tart(1) == "2026-03-01 17:30 else the oven is hot only from 17:50\n");
  CHECK(tart(2) == "2026-03-01 17:31 to be ready at 18:00\n");
}

TEST_CASE("days: two ovens of a house have their own shelves") {
  DayOrder order;
  order.ovens = 2, order.shelves = {2, 3};
  CHECK(order.shelves_of_ovens() == std::vector<int>{2, 3});
  order.ovens = 1;
  CHECK(order.shelves_of_ovens() == std::vector<int>{2});
  order.ovens = 3;
  CHECK(order.shelves_of_ovens() == std::vector<int>{2, 2, 2});
}

TEST_CASE("days: what is done outside takes no oven") {
  Report report;
  Clocked two(recipe("Two", "  [grill 40 min outside] half of it.\n\n  meanwhile: [bake 40 min at 160 °C] the rest with [the flour] and [the water].\n"));
  const Day day = two.day("2026-03-01 18:00", report);
  CHECK(begins(day, "grill") == "2026-03-01 17:20");
  CHECK(begins(day, "bake") == "2026-03-01 17:20");
}

TEST_CASE("days: a reason names the step that it is for, and its hour") {
  Report report;
  Clocked tart("recipe: Tart\nmeasures: British\nserves: 4\npart: Filling\ntake:\n  300 ml water\nmethod:\n  Stir [the water] [5 min].\npart: Case\ntake:\n  500 g plain flour\n"
               "method:\n  [bake 20 min at 190 °C] with [the flour], blind. Fill with [the Filling] and [bake 30 min at 190 °C].\n");
  for (const DayRow& row : tart.day("2026-03-01 18:00", report).rows)
    if (row.part == "Filling") CHECK(row.why == "in time for the work at Case at 17:25");
}

TEST_CASE("days: a leap day is a day") {
  Clocked jam(recipe("Paste", "  [rest 24 h] once [the flour] and [the water] are mixed.\n"));
  Report report;
  CHECK(begins(jam.day("2028-03-01 13:00", report), "rest 24 h") == "2028-02-29 13:00");
  CHECK(begins(jam.day("2027-03-01 13:00", report), "rest 24 h") == "2027-02-28 13:00");
}

TEST_CASE("days: where the clocks change, time goes by as it does") {
  Clocked one(recipe("Paste", "  [rest 24 h] once [the flour] and [the water] are mixed.\n"));
  Report report;
  const auto in_london = [](DayOrder& order) { order.hours = *Hours::of("Europe/London"); };
  // 2026-03-29 01:00 becomes 02:00; 2026-10-25 02:00 becomes 01:00.
  CHECK(begins(one.day("2026-03-29 13:00", report, in_london), "rest") == "2026-03-28 12:00");
  CHECK(begins(one.day("2026-10-25 13:00", report, in_london), "rest") == "2026-10-24 14:00");
  CHECK(begins(one.day("2026-10-25 13:00", report), "rest") == "2026-10-24 13:00");
}

TEST_CASE("days: hours that the clocks skip, that come twice, that are over, and zones that are none") {
  Clocked one(recipe("Paste", "  [rest 1 h] once [the flour] and [the water] are mixed.\n"));
  const auto asked = [&](const std::string& zone, const std::string& serve, const char* now = nullptr) {
    Report report;
    const Board board = board_of(*one.recipe, {}, report);
    DayOrder order;
    set_hours(board, zone, read_wall(serve), now == nullptr ? std::nullopt : read_wall(now), order, report);
    return report.list().empty() ? std::string("fine") : std::string(row(report.list().front().code).name);
  };
  CHECK(asked("Europe/London", "2026-03-29 01:30") == "serve_in_gap");
  CHECK(asked("Europe/London", "2026-10-25 01:30") == "serve_twice");
  CHECK(asked("Europe/London", "2026-10-25 03:30") == "fine");
  CHECK(asked("", "2026-03-29 01:30") == "fine");
  CHECK(asked("Middle/Earth", "2026-03-29 01:30") == "unknown_zone");
  CHECK(asked("", "2026-03-29 01:30", "2026-03-29 02:00") == "serve_past");
  CHECK_FALSE(read_wall("2026-02-30 13:00"));
  CHECK_FALSE(read_wall("2026-02-28 25:00"));
  CHECK(write_wall(*read_wall("2026-02-28T13:05")) == "2026-02-28 13:05");
  CHECK(write_day(*read_wall("2026-03-01 13:00")) == "Sunday 1 March 2026");
}

TEST_CASE("days: a step pinned to an hour holds it, and one that cannot is told") {
  Clocked one(recipe("Bread", "  Mix [the flour] with [the water], [knead 10 min].\n\n  [bake 40 min at 220 °C]\n\n  [cool at least 20 min]\n"));
  Report report;
  CHECK(begins(one.day("2026-03-01 13:00", report, [](DayOrder& order) { order.pins.push_back({"bake", *read_wall("2026-03-01 11:00")}); }), "bake") == "2026-03-01 11:00");
  CHECK(report.list().empty());
  CHECK_FALSE(one.day("2026-03-01 13:00", report, [](DayOrder& order) { order.pins.push_back({"bake", *read_wall("2026-03-01 12:50")}); }).planned);
  REQUIRE(report.list().size() == 1);
  CHECK(report.list().front().code == Code::no_plan);
  Report other;
  CHECK_FALSE(one.day("2026-03-01 13:00", other, [](DayOrder& order) { order.pins.push_back({"fry", 0}); }).planned);
  CHECK(other.list().front().code == Code::pin_names_nothing);
}

TEST_CASE("days: a refusal names what is pinned, the hours, and what helps") {
  Clocked one(recipe("Bread", "  Mix [the flour] with [the water], [knead 10 min].\n\n  [bake 40 min at 220 °C]\n\n  [cool at least 20 min]\n"));
  Report pinned;
  CHECK_FALSE(one.day("2026-03-01 13:00", pinned, [](DayOrder& order) { order.pins.push_back({"bake", *read_wall("2026-03-01 12:50")}); }).planned);
  const std::string& message = pinned.list().front().message;
  CHECK(message.find("`, pinned to 12:50") != std::string::npos);
  CHECK(message.find("it is served at 13:00") != std::string::npos);
  CHECK(pinned.list().front().expected.find("pinned") != std::string::npos);
  // Begun too late: the times of the page that do it, and no others.
  Report late;
  CHECK_FALSE(one.day("2026-03-01 13:00", late, [](DayOrder& order) { order.start = *read_wall("2026-03-01 12:15"); }).planned);
  CHECK(late.list().front().message.find("Bake 40 min") != std::string::npos);
  CHECK(late.list().front().message.find("nothing begins before 12:15 and it is served at 13:00: 5 min too many") != std::string::npos);
  CHECK(late.list().front().message.find("22:00") == std::string::npos);
  // In its place, where the file is at hand.
  Report placed;
  one.day("2026-03-01 13:00", placed, [&](DayOrder& order) { order.start = *read_wall("2026-03-01 12:15"), order.source = one.source.get(); });
  CHECK(placed.list().front().span.size() > 0);
  Report night;
  Clocked long_one(recipe("Stock", "  [simmer 18 h] with [the flour] and [the water].\n"));
  CHECK_FALSE(long_one.day("2026-03-01 18:00", night).planned);
  CHECK(night.list().front().message.find("if nobody works from 22:00 to 06:30") != std::string::npos);
}

TEST_CASE("days: an hour pinned to a gap of the clocks is told") {
  Clocked one(recipe("Paste", "  [rest 1 h] once [the flour] and [the water] are mixed.\n"));
  Report report;
  const Board board = board_of(*one.recipe, {}, report);
  DayOrder order;
  order.pins.push_back({"rest", *read_wall("2026-03-29 01:30")});
  CHECK_FALSE(set_hours(board, "Europe/London", read_wall("2026-03-29 18:00"), std::nullopt, order, report));
  CHECK(report.list().front().code == Code::serve_in_gap);
}

TEST_CASE("days: a dish goes on in the oven that it is in") {
  Clocked two(recipe("Two", "  [bake 30 min at 220 °C] the one half of [the flour] with [the water].\n\n  [bake 30 min at 160 °C].\n\n"
                            "  meanwhile: [bake 55 min at 180 °C] the other half.\n"));
  Report report;
  const Day day = two.day("2026-03-01 18:00", report, [](DayOrder& order) { order.ovens = 2; });
  int first = -1, second = -1;
  for (const DayRow& row : day.rows) {
    if (row.words.find("220") != std::string::npos) first = row.oven;
    if (row.words.find("160") != std::string::npos) second = row.oven;
  }
  CHECK(first >= 0);
  CHECK(first == second);
}

TEST_CASE("days: turns and the waits between them are told apart") {
  Clocked one(recipe("Puff", "  Mix [the flour] with [the water].\n\n  Roll it out and [turn 3 times, chill 30 min between].\n"));
  Report report;
  const Day day = one.day("2026-03-01 18:00", report);
  CHECK(begins(day, "turn (2 of 3)") != "?");
  CHECK(begins(day, "chill 30 min") != "?");
  for (const DayRow& row : day.rows) CHECK(row.words.find("between") == std::string::npos);
}

TEST_CASE("days: an oven that takes no time to change its heat is said to") {
  Clocked two(recipe("Two", "  [bake 30 min at 220 °C] with [the flour].\n\n  Turn it out.\n\n  [bake 30 min at 160 °C] with [the water].\n"));
  Report report;
  const auto said = [&](Minute heats) {
    const Day day = two.day("2026-03-01 18:00", report, [&](DayOrder& order) { order.heats_in = heats; });
    return std::any_of(day.assumptions.begin(), day.assumptions.end(), [](const std::string& one) { return one.find("change its heat at once") != std::string::npos; });
  };
  CHECK(said(0));
  CHECK_FALSE(said(15));
}

TEST_CASE("days: begun at an hour, served as early as can be") {
  Clocked one(recipe("Bread", "  Mix [the flour] with [the water], [knead 10 min].\n\n  [bake 40 min at 220 °C]\n"));
  Report report;
  const Day day = one.day("2026-03-01 13:00", report, [](DayOrder& order) { order.serve.clear(), order.start = *read_wall("2026-03-01 10:00"); });
  REQUIRE(day.planned);
  CHECK(write_wall(day.end) == "2026-03-01 10:50");
  CHECK(write_wall(day.begin) == "2026-03-01 10:00");
}

TEST_CASE("days: planned again, what was planned stays where it can") {
  Clocked one(recipe("Bread", "  Mix [the flour] with [the water], [knead 10 min].\n\n  [bake 40 min at 220 °C]\n\n  [cool at least 20 min]\n"));
  Report report;
  const Day first = one.day("2026-03-01 13:00", report);
  std::vector<Settled> settled;
  for (const DayRow& row : first.rows) settled.push_back({row.key, row.begin - 30});  // as if it had begun half an hour early
  const Day again = one.day("2026-03-01 13:00", report, [&](DayOrder& order) { order.settled = settled; });
  for (std::size_t i = 0; i < again.rows.size(); ++i) CHECK(again.rows[i].begin == first.rows[i].begin - 30);
  CHECK(again.moved.empty());
  settled.back().wall += 25 * 60;  // that cannot stay
  const Day moved = one.day("2026-03-01 13:00", report, [&](DayOrder& order) { order.settled = settled; });
  CHECK(moved.planned);
  CHECK(moved.moved.size() == 1);
}

TEST_CASE("days: one oven of two heats is told as the reason when it cannot be") {
  Clocked one(recipe("Two bakes", "  [bake exactly 40 min at 220 °C] half of it.\n\n  meanwhile: [bake exactly 40 min at 160 °C] the rest with [the flour] and [the water].\n\n  Serve.\n"));
  Report report;
  const Day day = one.day("2026-03-01 13:00", report);
  CHECK(day.planned);  // one after the other
  CHECK(day.proven);
  Report tight;
  const Day none = one.day("2026-03-01 13:00", tight, [](DayOrder& order) { order.start = *read_wall("2026-03-01 12:15"); });
  CHECK_FALSE(none.planned);
  REQUIRE(tight.list().size() == 1);
  CHECK(tight.list().front().message.find("cannot all have the oven") != std::string::npos);
  CHECK(tight.list().front().expected.find("another oven") != std::string::npos);
}

TEST_CASE("days: an oven that is still heating is told as the reason when it cannot be") {
  // Heating 17:30 to 17:50; the tart, mixed from 17:30, is not ready before 17:31 and must be in by then.
  Clocked both("recipe: Tea\nmeasures: British\nserves: 4\npart: Tart\ntake:\n  300 ml water\nmethod:\n  Mix [the water] [1 min], [bake 29 min at 220 °C].\n"
               "part: Rolls\ntake:\n  500 g plain flour\nmethod:\n  ahead: [heat 20 min at 220 °C] the oven.\n\n  [bake 10 min at 220 °C] with [the flour].\n");
  const auto told = [&](int ovens) {
    Report report;
    both.day("2026-03-01 18:00", report, [&](DayOrder& order) { order.ovens = ovens, order.shelves = {2}, order.start = *read_wall("2026-03-01 17:30"); });
    return report.list().empty() ? "" : report.list().front().message + " Expected: " + report.list().front().expected;
  };
  CHECK(told(1).find("cannot all find the oven hot") != std::string::npos);
  CHECK(told(1).find("another oven") != std::string::npos);
  CHECK(told(2).empty());
}

TEST_CASE("days: cooked meat that stands too long is named, with the law's figure") {
  Clocked one("recipe: Chicken\nmeasures: British\nserves: 4\nready: after 4 h\ntake:\n  1 kg chicken thighs\nmethod:\n  [roast 40 min at 200 °C] with [the chicken thighs] in a tin.\n\n  [rest at least 4 h]\n");
  Report report;
  const Day day = one.day("2026-03-01 18:00", report);
  REQUIRE(day.cautions.size() == 1);
  CHECK(day.cautions[0].find("63 °C") != std::string::npos);
  CHECK(day.cautions[0].find("local code") != std::string::npos);
  Clocked bread(recipe("Bread", "  [bake 40 min at 220 °C] with [the flour] and [the water].\n\n  [cool at least 4 h]\n"));
  CHECK(bread.day("2026-03-01 18:00", report).cautions.empty());
}

TEST_CASE("days: where the food says when a wait is over, room is kept for the longest of it") {
  Report report;
  const std::string served = "2026-03-01 18:00";
  Clocked signed_wait(recipe("Sauce", "  Stir [the flour] into [the water], [simmer 10 min].\n\n  [cool at most 90 min to 8 °C].\n\n  Stir it [5 min].\n"));
  CHECK(begins(signed_wait.day(served, report), "cool") == "2026-03-01 16:25");
  Clocked needed(recipe("Paste", "  Mix [the flour] with [the water], [knead 10 min].\n\n  [chill 20 min, if needed].\n\n  Roll it [5 min].\n"));
  CHECK(begins(needed.day(served, report), "chill") == "2026-03-01 17:35");
  // The cook's own choice is as short as the page lets it be.
  Clocked chosen(recipe("Paste", "  Mix [the flour] with [the water], [knead 10 min].\n\n  [chill at most 20 min].\n\n  Roll it [5 min].\n"));
  CHECK(begins(chosen.day(served, report), "chill") == "2026-03-01 17:55");
}

TEST_CASE("days: what has risen is baked, and what has cooled may stand") {
  Report report;
  const std::string rise = "  Mix [the flour] with [the water], [knead 10 min].\n\n  [prove 1 h].\n\n  [bake 40 min at 220 °C].\n";
  Clocked bread(recipe("Bread", rise + "\n  [cool 1 h].\n\n  Slice it [5 min].\n"));
  const auto late_slice = [](DayOrder& order) { order.pins.push_back({"Bread: slice", read_wall("2026-03-01 17:00").value()}); };
  const auto late_bake = [](DayOrder& order) { order.pins.push_back({"Bread: bake", read_wall("2026-03-01 12:00").value()}); };
  const Day day = bread.day("2026-03-01 18:00", report, late_bake);
  CHECK(begins(day, "prove") == "2026-03-01 11:00");
  CHECK(begins(day, "cool") == "2026-03-01 12:40");
  CHECK(begins(bread.day("2026-03-01 18:00", report, late_slice), "prove") == "2026-03-01 14:20");
  CHECK(report.list().empty());
}

TEST_CASE("days: a wait that the next deed follows at once begins as the step before it ends, and lasts longer") {
  Report report;
  Clocked loaf(recipe("Loaf", "  Mix [the flour] with [the water], [bake 1 h at 160 °C].\n\n  [cool 30 min] in the tin, then slice it [5 min].\n"));
  const Day day = loaf.day("2026-03-01 18:00", report, [](DayOrder& order) { order.pins.push_back({"Loaf: bake", read_wall("2026-03-01 10:00").value()}); });
  for (const DayRow& row : day.rows) {
    if (row.words.find("Cool") == std::string::npos) continue;
    CHECK(write_wall(row.begin) == "2026-03-01 11:00");
    CHECK(write_wall(row.least_end) == "2026-03-01 11:30");
    CHECK(write_wall(row.end) == "2026-03-01 17:55");
  }
}

TEST_CASE("days: raw food in a pause of its making is told to be kept cold") {
  Report report;
  const auto at_ten = [](DayOrder& order) { order.pins.push_back({"Joint: rub", read_wall("2026-03-01 10:00").value()}); };
  const std::string head = "recipe: Joint\nmeasures: British\nserves: 4\ntake:\n  2 kg ";
  const std::string method = "\nmethod:\n  [rub 10 min] into [the ";
  Clocked lamb(head + "leg of lamb" + method + "leg of lamb].\n\n  [roast 1 h at 200 °C].\n");
  const Day day = lamb.day("2026-03-01 18:00", report, at_ten);
  REQUIRE(day.cautions.size() == 1);
  CHECK(day.cautions.front().find("between 10:10 and 17:00") != std::string::npos);
  CHECK(lamb.day("2026-03-01 11:20", report, at_ten).cautions.empty());  // within the time in hand
  Clocked carrots(head + "carrots" + method + "carrots].\n\n  [roast 1 h at 200 °C].\n");
  CHECK(carrots.day("2026-03-01 18:00", report, at_ten).cautions.empty());
}

TEST_CASE("days: work in front of a bake or a wait in one sentence takes somebody") {
  Report report;
  Clocked tart(recipe("Tart", "  Slice [the flour] over [the water] and [bake 29 min at 180 °C].\n"));
  const Day day = tart.day("2026-03-01 18:00", report);
  CHECK(begins(day, "slice") == "2026-03-01 17:26");
  CHECK(begins(day, "bake") == "2026-03-01 17:31");
  CHECK(day.hands_on == 5);
  Clocked roast(recipe("Roast", "  Bake [the flour] with [the water], [bake 29 min at 180 °C].\n\n  Turn the heat down and [bake 10 min at 150 °C].\n"));
  CHECK(roast.day("2026-03-01 18:00", report).hands_on == 0);
}

TEST_CASE("days: an instruction whose first word is no known verb is work all the same, and a remark is none") {
  Report report;
  Clocked one(recipe("Skewers", "  Thread [the flour] on skewers. Swirl the rest on top. They are best hot. [grill 15 min] with [the water].\n"));
  const Day day = one.day("2026-03-01 18:00", report);
  CHECK(begins(day, "thread") == "2026-03-01 17:35");
  CHECK(begins(day, "swirl") == "2026-03-01 17:40");
  CHECK(begins(day, "best hot") == "?");
}

TEST_CASE("days: a part that is listed without an amount is made before it is taken, and a rise begins with its dough") {
  Report report;
  Clocked cake("recipe: Cake\nmeasures: British\nserves: 2\npart: Paste\ntake:\n  200 g butter\nmethod:\n  Mix [the butter] [5 min].\n\n  [rest 2 h].\n\npart: Cake\ntake:\n  [Paste]\n  100 g plain flour\n"
               "method:\n  Roll [the Paste] over [the flour], [roll 5 min].\n\n  [chill 5 h].\n");
  CHECK(begins(cake.day("2026-03-01 18:00", report), "mix") == "2026-03-01 10:50");
  Clocked dough(recipe("Rolls", "  [mix 5 min] [the flour] with [the water].\n\n  [rise 1 h].\n\n  [bake 15 min at 230 °C].\n"));
  const Day day = dough.day("2026-03-01 18:00", report, [](DayOrder& order) { order.pins.push_back({"Rolls: mix", read_wall("2026-03-01 09:00").value()}); });
  CHECK(begins(day, "rise") == "2026-03-01 09:05");
  CHECK(begins(day, "bake") == "2026-03-01 10:05");
}

TEST_CASE("days: no oven is left hot through the night") {
  Report report;
  Clocked scones(recipe("Scones", "  [heat 20 min at 220 °C].\n\n  Rub [the flour] into [the water], [rub 5 min].\n\n  [bake 12 min at 220 °C].\n"));
  const Day day = scones.day("2026-03-01 06:50", report);
  CHECK(begins(day, "bake") == "2026-02-28 21:48");  // and not before breakfast, from an oven lit the evening before
}

TEST_CASE("days: raw food that this plan leaves out for long is told, and a rest that begins late is, too")  {
  Report report;
  const std::string head = "recipe: Skewers\nmeasures: British\nserves: 4\ntake:\n  600 g chicken thighs, diced\nmethod:\n";
  Clocked out(head + "  Rub [the chicken], [rub 5 min].\n\n  [marinate at least 1 h].\n\n  [grill 15 min] until the middle [reads 75 °C].\n");
  const auto rubbed = [](DayOrder& order) { order.pins.push_back({"rub", read_wall("2026-03-01 09:00").value()}); };
  const Day day = out.day("2026-03-01 18:00", report, rubbed);
  REQUIRE(day.cautions.size() == 1);
  CHECK(day.cautions.front().find("waits raw from 09:05 to 17:45") != std::string::npos);
  CHECK(out.day("2026-03-01 11:00", report, rubbed).cautions.empty());
  Clocked cold(head + "  Rub [the chicken], [rub 5 min].\n\n  [marinate at least 1 h in the fridge].\n\n  [grill 15 min] until the middle [reads 75 °C].\n");
  CHECK(cold.day("2026-03-01 18:00", report, rubbed).cautions.empty());
  Clocked late(recipe("Bread", "  Mix [the flour] with [the water], [bake 1 h at 200 °C].\n\n  [rest 10 to 30 min].\n\n  Slice it [5 min].\n"));
  const Day rested = late.day("2026-03-01 18:00", report, [](DayOrder& order) { order.pins.push_back({"bake", read_wall("2026-03-01 15:00").value()}); });
  REQUIRE(rested.cautions.size() == 1);
  CHECK(rested.cautions.front().find("the step before it is over at 16:00") != std::string::npos);
}

TEST_CASE("days: what moves into the fridge does not move by itself in the night") {
  Report report;
  Clocked paste(recipe("Paste", "  [mix 5 min] [the flour] and [the water].\n\n  [rest at least 2 h], then [chill overnight].\n\n  [bake 20 min at 180 °C].\n"));
  const Day day = paste.day("2026-03-01 18:00", report);
  REQUIRE(day.planned);
  CHECK(begins(day, "chill") == "2026-02-28 22:00");
}
