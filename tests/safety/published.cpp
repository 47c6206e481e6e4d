// The published figures, a row a line, against the functions that use them.
#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <set>
#include <sstream>

#include "safety/allergens.hpp"
#include "safety/figures.hpp"

using namespace qtn;

namespace {

std::vector<std::vector<std::string>> rows(const std::string& name) {
  std::ifstream in(std::string(QTN_SOURCE_DIR) + "/tests/published/safety/" + name);
  std::vector<std::vector<std::string>> out;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    out.emplace_back();
    std::istringstream cells(line);
    for (std::string cell; std::getline(cells, cell, '\t');) out.back().push_back(cell);
  }
  return out;
}

Law law(const std::string& name) { return name == "US" ? Law::US : name == "EU" ? Law::EU : Law::UK; }

Hazard hazard(const std::string& name) {
  for (std::size_t i = 0; i <= static_cast<std::size_t>(Hazard::curing_salt); ++i)
    if (name_of(static_cast<Hazard>(i)) == name) return static_cast<Hazard>(i);
  return Hazard::none;
}

std::set<std::string> groups(AllergenSet contains, AllergenSet label, AllergenList list) {
  std::set<std::string> out;
  for (const std::string& one : groups_of(contains, list)) out.insert(one.substr(0, one.find(" (")));
  for (const std::string& one : groups_of(label, list)) out.insert("label: " + one.substr(0, one.find(" (")));
  return out;
}

std::set<std::string> written(std::string cell) {
  std::set<std::string> out;
  if (cell == "-") return out;
  for (std::size_t at; (at = cell.find("; ")) != std::string::npos; cell = cell.substr(at + 2)) out.insert(cell.substr(0, at));
  out.insert(cell);
  return out;
}

}  // namespace

TEST_CASE("how long a heat must last, to the second") {
  const auto all = rows("core.tsv");
  CHECK(all.size() >= 28);
  for (const auto& row : all) {
    CAPTURE(row[0]);
    const double heat = std::stod(row[3]);
    const double celsius = row[3].ends_with("F") ? (heat - 32) * 5 / 9 : heat;
    const CoreRule* const rule = core_rule(law(row[1]), hazard(row[2]));
    REQUIRE(rule != nullptr);
    const double seconds = seconds_wanted(*rule, celsius);
    if (row[4] == "never") CHECK(std::isinf(seconds));
    else CHECK(std::abs(seconds - std::stod(row[4])) <= 1.0);
  }
}

TEST_CASE("the curve is never laxer than the list that it was drawn through") {
  const CoreRule& rule = *core_rule(Law::UK, Hazard::poultry);
  constexpr std::pair<double, double> kList[] = {{60, 45 * 60}, {65, 600}, {70, 120}, {75, 30}, {80, 6}};  // S8-01 to S8-05
  for (const auto& [celsius, seconds] : kList) {
    CHECK(seconds_wanted(rule, celsius) <= seconds + 0.5);
    CHECK(seconds_wanted(rule, celsius) > seconds * 0.8);
  }
}

TEST_CASE("limits of standing, cooling, keeping and holding") {
  for (const auto& row : rows("limits.tsv")) {
    CAPTURE(row[0]);
    const Law of = law(row[1]);
    const std::string& kind = row[2];
    const double value = kind == "cool minutes" ? cool_limit(of).value
                         : kind == "cool to"    ? cool_limit(of).celsius
                         : kind == "hot"        ? hot_limit(of).value
                         : kind == "cold"       ? cold_limit(of).value
                         : kind == "stand"      ? stand_limit(of).value
                         : kind == "out"        ? out_limit(of).value
                                                : keep_limit(of, hazard(kind.substr(kind.find(", ") + 2))).value;
    CHECK(value == doctest::Approx(std::stod(row[3])));
  }
}

TEST_CASE("what an ingredient brings by each list") {
  const auto all = rows("allergens.tsv");
  CHECK(all.size() >= 45);
  for (const auto& row : all) {
    CAPTURE(row[1]);
    const Brings brought = brings(row[1]);
    CHECK(brought.known);
    CHECK(groups(brought.contains, brought.label, AllergenList::european) == written(row[2]));
    CHECK(groups(brought.contains, brought.label, AllergenList::american) == written(row[3]));
  }
}
