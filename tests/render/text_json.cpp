#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <sstream>
#include <string>

#include "render/json_text.hpp"
#include "render/render.hpp"
#include "render/text_lines.hpp"
#include "tests/render/sample.hpp"

using namespace qtn;
using nlohmann::json;

namespace {

std::string written(Format format, const Card& card) {
  std::string out;
  render(format, card, out);
  return out;
}

}  // namespace

TEST_CASE("the formats table") {
  CHECK(format_names() == "markdown, html, text, json");
  REQUIRE(find_format("html") != nullptr);
  CHECK(find_format("html")->format == Format::html);
  CHECK(find_format("markdown")->ending == "md");
  CHECK(find_format("pdf") == nullptr);
}

TEST_CASE("each format appends and leaves what was there") {
  const Card card = test::tart_card();
  for (Format format : {Format::markdown, Format::html, Format::text, Format::json}) {
    std::string out = "before\n";
    render(format, card, out);
    CHECK(out == "before\n" + written(format, card));
  }
}

TEST_CASE("an empty card harms nothing") {
  for (Format format : {Format::markdown, Format::html, Format::text, Format::json}) {
    CHECK_NOTHROW(written(format, Card()));
  }
}

TEST_CASE("plain text stands in columns") {
  const std::string text = written(Format::text, test::tart_card());
  CAPTURE(text);
  const auto has = [&](std::string_view what) { return text.find(what) != std::string::npos; };
  CHECK(text.substr(0, 31) == "Leek and farmhouse cheese tart\n");
  CHECK(has("\nServes  6 to 8\n"));
  CHECK(has("\nCaution: Serve hot within two hours, or chill at once.\n"));
  CHECK(has("\n   grams  ounces\n"));
  CHECK(has("\n   220 g  8 oz    plain flour\n   110 g  4 oz    butter, cold, in 10 mm dice\n"));
  CHECK(has("\n     100 g  3½ oz    farmhouse cheddar, grated\n  or 100 g  3½ oz    blue cheese, crumbled\n"));
  CHECK(has("\n                     white pepper, to taste, optional\n"));
  CHECK(has("\n  1.  Rub the butter into"));
  CHECK(has("\n      By machine: Pulse"));
  CHECK(has("page (notes/probe.html?a=1&b=2)"));
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    CAPTURE(line);
    CHECK(width_of(line) <= kColumns);
    CHECK((line.empty() || line.back() != ' '));
  }
}

TEST_CASE("an amount or a time is not broken over two lines") {
  const std::string text = written(Format::text, test::tart_card());
  for (std::string_view held : {"about 5 min", "rest at least 1 h", "30 to 35 min", "170 °C", "at least 20 min"}) {
    CAPTURE(held);
    CHECK(text.find(held) != std::string::npos);
  }
}

TEST_CASE("a terminal gets no orders from a card") {
  const std::string text = written(Format::text, test::hostile_card("a\x1b[31mb\x07 \xc2\x9b c\x1f", "page.html"));
  for (char c : text) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
  CHECK(text.find("\xc2\x9b") == std::string::npos);
}

TEST_CASE("JSON holds the words and the exact amounts") {
  const json card = json::parse(written(Format::json, test::tart_card()));
  CHECK(card["title"] == "Leek and farmhouse cheese tart");
  CHECK(card["language"] == "en-GB");
  CHECK(card["facts"][1] == json{{"kind", "serves"}, {"label", "Serves"}, {"text", "6 to 8"}});
  const json& part = card["parts"][0];
  CHECK(part["title"] == "Shortcrust");
  CHECK(part["lines"][0] == json::parse(R"({"amount": "220 g", "exact": {"low": "220", "high": "220", "unit": "g"},
    "second": "8 oz", "name": "plain flour", "rest": "", "alternative": false, "optional": false, "rough": false})"));
  CHECK(part["lines"][2]["exact"]["low"] == "1/2");
  CHECK(part["lines"][3]["rough"] == true);
  CHECK(part["steps"][1]["kind"] == "by hand");
  CHECK(part["steps"][0]["runs"][1] == json{{"role", "name"}, {"text", "the butter"}});
  const json& bake = card["parts"][2]["steps"][2];
  CHECK(bake["runs"][7]["exact"] == json::parse(R"({"low": "30", "high": "35", "unit": "min"})"));
  CHECK(bake["runs"][13]["link"] == "notes/probe.html?a=1&b=2");
  CHECK(card["parts"][1]["lines"][4]["alternative"] == true);
  CHECK_FALSE(card["parts"][1]["lines"][5].contains("exact"));
  CHECK(card["remarks"][0]["kind"] == "caution");
  CHECK(card["trials"][0]["date"] == "2026-02-11");
  CHECK(card["after"][0]["title"] == "To reheat");
  CHECK(card["after"][0]["kind"] == "reheat");
}

TEST_CASE("JSON gives hostile words back, and is valid whatever the bytes") {
  for (std::string_view text : test::kHostile) {
    const json card = json::parse(written(Format::json, test::hostile_card(text, "javascript:x")));
    CHECK(card["title"] == std::string(text));
    CHECK_FALSE(card["parts"][0]["steps"][0]["runs"][2].contains("link"));
  }
  for (std::string_view broken :
       {"\xff", "a\xc3", "\xe2\x82", "\xed\xa0\x80", "\xf4\x90\x80\x80", "\xc0\xaf", "\xf0\x9f\x8d"}) {
    std::string out;
    append_json_string(out, broken);
    CHECK(json::accept(out));
  }
  std::string out;
  append_json_string(out, std::string_view("\0\x01\n\"\\\x7f é", 9));
  CHECK(json::parse(out) == std::string("\0\x01\n\"\\\x7f é", 9));
}
