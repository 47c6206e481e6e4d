// Published times as plans: every row of tests/published/day/plans.tsv.
#include <doctest/doctest.h>

#include <sstream>

#include "day/clocked.hpp"
#include "files.hpp"
#include "words/fold.hpp"

using namespace qtn;

TEST_CASE("published times come out as plans") {
  std::istringstream rows(tests::slurp(tests::root() / "tests/published/day/plans.tsv"));
  int count = 0;
  for (std::string line; std::getline(rows, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> cells;
    std::istringstream row(line);
    for (std::string cell; std::getline(row, cell, '\t');) cells.push_back(cell);
    CAPTURE(line);
    REQUIRE(cells.size() >= 7);
    std::string method = "  ";
    for (const char c : cells[2]) method += c == '|' ? "\n\n  " : std::string(1, c);
    const std::string name = cells[1].substr(cells[1].find(' ', cells[1].find(' ') + 1) + 1);
    Clocked one("recipe: Test\nmeasures: British\nserves: 4\ntake:\n  " + cells[1] + "\nmethod:\n  Take [the " + name + "].\n\n" + method + "\n");
    for (const Diagnostic& problem : one.report.list()) CHECK_MESSAGE(problem.severity != Severity::error, problem.message);
    Report report;
    const bool nights = cells.size() > 7 && cells[7] == "NIGHTS";
    const Day day = one.day(cells[3], report, [&](DayOrder& order) { order.nights = nights; });
    std::string begin = "no such step";
    for (const DayRow& found : day.rows)
      if (lower(found.words).find(cells[4]) != std::string::npos) begin = write_wall(found.begin);
    CHECK(begin == cells[5]);
    if (cells.size() > 7 && cells[7].rfind("DISAGREE ", 0) == 0) CHECK(begin.substr(11) != cells[7].substr(9, 5));
    ++count;
  }
  CHECK(count >= 20);
}
