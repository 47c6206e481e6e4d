// The drawn day: hours of serving read without colour, each once, in the strip of their own day.
#include <doctest/doctest.h>

#include <string>

#include "render/drawing.hpp"

using namespace qtn;

namespace {

std::size_t count(const std::string& text, std::string_view part) {
  std::size_t seen = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) ++seen;
  return seen;
}

std::string drawn(const Drawing& drawing) {
  std::string out;
  Ink ink(out);
  draw(drawing, ink);
  ink.flush();
  return out;
}

Drawing two_hours() {
  Drawing drawing;
  drawing.title = "Supper", drawing.lanes = {"Cook"};
  Strip strip;
  strip.title = "Saturday 5 December 2026", strip.length = 120;
  strip.hours = {{0, "18:00"}, {60, "19:00"}, {120, "20:00"}};
  strip.bars = {{0, 0, 60, Hour::Kind::hands, "Pie: roll the lid"}, {0, 60, 65, Hour::Kind::hands, "Pie: glaze"}};
  strip.servings = {{30, "At table 18:30: Soup & bread"}, {120, "At table 20:00: Pie"}};
  drawing.strips.push_back(strip);
  return drawing;
}

}  // namespace

TEST_CASE("drawing: each hour of serving is a double rule with its words") {
  const std::string svg = drawn(two_hours());
  CHECK(count(svg, ">At table 18:30: Soup &amp; bread</text>") == 1);
  CHECK(count(svg, ">At table 20:00: Pie</text>") == 1);
  CHECK(count(svg, "<path class=\"serving\"") == 2 * 2 + 1);  // two rules each, and the sign
  // A quarter of the way and all of it, of what is left between the names (96) and the margin (22): 316.5 and 978.
  CHECK(svg.find("d=\"M314 20V") != std::string::npos);
  CHECK(svg.find("d=\"M976 20V") != std::string::npos);
  // One reads away from its rule to the right, the one at the edge to the left.
  CHECK(count(svg, "text-anchor=\"end\"") == 1);
}

TEST_CASE("drawing: names of lanes stay beside the hours when those are pushed sideways") {
  const std::string svg = drawn(two_hours());
  const std::size_t lanes = svg.find("<svg class=\"lanes\""), end = svg.find("</svg>", lanes);
  REQUIRE(lanes != std::string::npos);
  CHECK(svg.find(">Cook</text>") < end);
  CHECK(svg.find("<rect") > end);
  CHECK(svg.find(">Cook</text>") == svg.rfind(">Cook</text>"));
}

TEST_CASE("drawing: signs are told where they are drawn, and never break from their words") {
  Drawing drawing = two_hours();
  CHECK(drawn(drawing).find(" night</span>") == std::string::npos);
  drawing.strips[0].nights = {{100, 120}};
  const std::string svg = drawn(drawing);
  CHECK(svg.find("</svg> night</span>") != std::string::npos);
  CHECK(count(svg, "<span class=\"sign\">") == 5);
}

TEST_CASE("drawing: a bar without room for words has none, and no half word") {
  const std::string svg = drawn(two_hours());
  CHECK(svg.find(">Pie: roll the lid</text>") != std::string::npos);
  CHECK(svg.find("Pie: g") == std::string::npos);
}
