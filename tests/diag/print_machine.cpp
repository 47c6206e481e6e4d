// The two forms for programs: JSON lines and SARIF.
#include <doctest/doctest.h>

#include <locale>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <vector>

#include "data/tables.hpp"
#include "sample.hpp"

using namespace qtn;
using Json = nlohmann::ordered_json;

namespace {

struct Kitchen {
  Source tart{"winter/leek tart.qtn", "take:\n  ½ tsp  salt, 小麦粉\n"};
  Source larder{"/srv/larder.qtn", "salt: 5 g\r\n"};
  Report tart_report, larder_report;

  Kitchen() {
    problem(tart_report, span_of(tart, "salt"), "Too much salt.")
        .also(span_of(larder, "5 g"), "the larder has 5 g", "/srv/larder.qtn")
        .also({2, 4}, "not at hand", "gone.qtn")
        .expect("a pinch")
        .find("half a spoon")
        .fix(span_of(tart, "½"), "¼", "write `¼`")
        .offer({6, 6}, "or ", "");
    tart_report.add(any_code(), Severity::note, span_of(tart, "小麦粉\n"), "Which flour?");
    larder_report.add(any_code(), Severity::warning, {0, 4}, "Bad \x1b[2J\xff\u009b\u202e name.");
  }
  std::vector<Judged> files() const { return {{&tart, &tart_report}, {&larder, &larder_report}}; }
};

std::vector<Json> lines_of(const std::string& text) {
  std::vector<Json> all;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = text.find('\n', from);
    REQUIRE(end != text.npos);
    all.push_back(Json::parse(text.substr(from, end - from)));
    from = end + 1;
  }
  return all;
}

std::vector<std::string> keys(const Json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  return names;
}

// The members that the SARIF 2.1.0 schema requires, and the types it gives them.
void check_text(const Json& message) {
  REQUIRE(message.is_object());
  REQUIRE(message.at("text").is_string());
}

void check_region(const Json& region) {
  REQUIRE(region.at("byteOffset").get<long>() >= 0);
  REQUIRE(region.at("byteLength").get<long>() >= 0);
  if (!region.contains("startLine")) return;
  for (const char* name : {"startLine", "startColumn", "endLine", "endColumn"})
    REQUIRE(region.at(name).get<long>() >= 1);
  const auto from = std::make_pair(region.at("startLine").get<long>(), region.at("startColumn").get<long>());
  REQUIRE(from <= std::make_pair(region.at("endLine").get<long>(), region.at("endColumn").get<long>()));
}

void check_artifact(const Json& artifact) {
  const auto uri = artifact.at("uri").get<std::string>();
  for (const char c : uri) REQUIRE((c > 0x20 && c < 0x7F && c != '<' && c != '>' && c != '"'));
}

void check_physical(const Json& place) {
  check_artifact(place.at("physicalLocation").at("artifactLocation"));
  check_region(place.at("physicalLocation").at("region"));
}

void check_fix(const Json& fix) {
  check_text(fix.at("description"));
  REQUIRE(!fix.at("artifactChanges").empty());
  for (const Json& change : fix.at("artifactChanges")) {
    check_artifact(change.at("artifactLocation"));
    REQUIRE(!change.at("replacements").empty());
    for (const Json& replacement : change.at("replacements")) {
      check_region(replacement.at("deletedRegion"));
      check_text(replacement.at("insertedContent"));
    }
  }
}

void check_sarif(const Json& log) {
  REQUIRE(log.at("version") == "2.1.0");
  REQUIRE(log.at("$schema").get<std::string>().ends_with("sarif-schema-2.1.0.json"));
  REQUIRE(log.at("runs").size() == 1);
  const Json& run = log.at("runs")[0];
  REQUIRE(run.at("columnKind") == "unicodeCodePoints");
  const Json& driver = run.at("tool").at("driver");
  REQUIRE(driver.at("name").is_string());
  REQUIRE(driver.at("version").is_string());
  std::set<std::string> ids;
  for (const Json& rule : driver.at("rules")) {
    REQUIRE(ids.insert(rule.at("id").get<std::string>()).second);
    REQUIRE(rule.at("name").get<std::string>().find('_') == std::string::npos);
    for (const char* name : {"shortDescription", "fullDescription", "help"}) check_text(rule.at(name));
  }
  REQUIRE(run.at("results").is_array());
  for (const Json& result : run.at("results")) {
    REQUIRE(driver.at("rules").at(result.at("ruleIndex").get<std::size_t>()).at("id") == result.at("ruleId"));
    REQUIRE(std::set<std::string>{"error", "warning", "note"}.contains(result.at("level").get<std::string>()));
    check_text(result.at("message"));
    REQUIRE(result.at("locations").size() == 1);
    check_physical(result.at("locations")[0]);
    if (result.contains("relatedLocations"))
      for (const Json& place : result.at("relatedLocations")) check_physical(place), check_text(place.at("message"));
    if (result.contains("fixes"))
      for (const Json& fix : result.at("fixes")) check_fix(fix);
  }
}

// Nothing that a terminal obeys, whatever the words were.
void check_harmless(const std::string& text) {
  for (const char c : text) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
  for (const char* bad : {"\u009b", "\u202e", "\x7f", "\xff"}) CHECK(text.find(bad) == text.npos);
}

}  // namespace

TEST_CASE("a JSON object a line, with every member always there") {
  const Kitchen kitchen;
  const std::string text = print_json(kitchen.files());
  check_harmless(text);
  const auto all = lines_of(text);
  REQUIRE(all.size() == 3);
  const std::vector<std::string> members = {"code",    "severity",  "title",  "file", "line",    "column",
                                            "endLine", "endColumn", "begin",  "end",  "message", "expected",
                                            "found",   "why",       "others", "fixes"};
  for (const Json& line : all) CHECK(keys(line) == members);
  const Json& first = all[0];
  CHECK(first["code"] == row(any_code()).code);
  CHECK(first["title"] == row(any_code()).title);
  CHECK(first["severity"] == "error");
  CHECK(first["file"] == "winter/leek tart.qtn");
  CHECK(first["line"] == 2);
  CHECK(first["column"] == 10);
  CHECK(first["endColumn"] == 14);
  CHECK(first["begin"] == 16);
  CHECK(first["end"] == 20);
  CHECK(first["expected"] == "a pinch");
  CHECK(first["why"] == "It would spoil the tart.");
  CHECK(first["others"][0]["file"] == "/srv/larder.qtn");
  CHECK(first["others"][0]["column"] == 7);
  CHECK(first["others"][1]["line"].is_null());
  CHECK(first["others"][1]["begin"] == 2);
  CHECK(first["fixes"][0]["certainty"] == "safe");
  CHECK(first["fixes"][0]["text"] == "¼");
  CHECK(first["fixes"][0]["end"] == 10);
  CHECK(first["fixes"][1]["certainty"] == "choice");
  CHECK(all[1]["endLine"] == 3);  // the line end is part of the place
  CHECK(all[1]["endColumn"] == 1);
  CHECK(all[1]["why"] == row(any_code()).why);
  CHECK(all[2]["message"] == "Bad \x1b[2J\uFFFD\u009b\u202e name.");
}

TEST_CASE("SARIF has what the schema requires") {
  const Kitchen kitchen;
  const std::string text = print_sarif(kitchen.files(), "0.1.0");
  check_harmless(text);
  const Json log = Json::parse(text);
  check_sarif(log);
  const Json& run = log["runs"][0];
  CHECK(run["tool"]["driver"]["rules"].size() == 1);
  REQUIRE(run["results"].size() == 3);
  const Json& first = run["results"][0];
  CHECK(first["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] == "winter/leek%20tart.qtn");
  CHECK(first["relatedLocations"][0]["physicalLocation"]["artifactLocation"]["uri"] == "file:///srv/larder.qtn");
  CHECK(first["relatedLocations"].size() == 2);
  CHECK(first["fixes"].size() == 2);
  CHECK(first["fixes"][1]["artifactChanges"][0]["replacements"][0]["deletedRegion"]["byteLength"] == 0);
  CHECK(first["properties"]["expected"] == "a pinch");
  CHECK(run["results"][2]["level"] == "warning");
}

TEST_CASE("nothing wrong: no JSON, and a SARIF log without results") {
  const Source source("tart.qtn", "lard\n");
  const Report report;
  const Judged judged[] = {{&source, &report}};
  CHECK(print_json(judged).empty());
  const Json log = Json::parse(print_sarif(judged, "0.1.0"));
  check_sarif(log);
  CHECK(log["runs"][0]["results"].empty());
}

TEST_CASE("the same bytes whatever the locale") {
  struct Points : std::numpunct<char> {
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\1"; }
  };
  const Source source("tart.qtn", std::string(5000, '\n') + "lard");
  Report report;
  problem(report, {5000, 5004});
  const Judged judged[] = {{&source, &report}};
  const auto all = [&] { return print_text(judged, {}) + print_json(judged) + print_sarif(judged, "1"); };
  const std::string plain = all();
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new Points));
  CHECK(all() == plain);
  std::locale::global(before);
}

TEST_CASE("a page for a code, in either case") {
  CHECK(explain("").empty());
  CHECK(explain("Q999x").empty());
  for (const data::Page& page : data::pages()) {
    std::string lower(page.code);
    for (char& c : lower) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c + 32 : c);
    CHECK(explain(page.code) == page.text);
    CHECK(explain(lower) == page.text);
  }
}
