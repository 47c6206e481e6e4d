// SVG inside the page. Kinds are told apart by how they are filled, not by colour: hands are solid, what is watched is
// hatched, what waits is an outline; the night is dotted, and an hour of serving is a double rule, as under a sum.
#include "render/drawing.hpp"

#include <algorithm>

#include "render/html_escape.hpp"

namespace qtn {
namespace {

constexpr int kWide = 1000, kNames = 96, kFirst = 76, kRight = 22, kLane = 28, kTop = 24, kBar = 20, kLetter = 9, kServing = 20;
constexpr std::size_t kFewest = 8;  // letters of a label that still tell something

class Drawer {
 public:
  Drawer(const Drawing& drawing, Ink& ink) : drawing_(drawing), ink_(ink) {}

  void write() {
    ink_.mark("<section class=\"drawing\">\n");
    for (std::size_t i = 0; i < drawing_.strips.size(); ++i) strip(drawing_.strips[i], i);
    signs();
    ink_.mark("</section>\n");
  }

 private:
  // What each way of filling means, each with its word so that a line never breaks between them.
  void signs() {
    ink_.mark("<p class=\"signs\">");
    sign("<rect class=\"hands\" x=\"1\" y=\"2\" width=\"24\" height=\"14\"/>", "at work");
    sign("<rect class=\"watched\" fill=\"url(#h0)\" x=\"1\" y=\"2\" width=\"24\" height=\"14\"/>", "somebody about");
    sign("<rect class=\"waits\" x=\"1\" y=\"2\" width=\"24\" height=\"14\"/>", "waits by itself");
    const auto any = [&](const auto& has) { return std::any_of(drawing_.strips.begin(), drawing_.strips.end(), has); };
    if (any([](const Strip& one) { return !one.nights.empty(); }))
      sign("<rect class=\"night\" fill=\"url(#n0)\" x=\"1\" y=\"2\" width=\"24\" height=\"14\"/>", "night");
    if (any([](const Strip& one) { return !one.servings.empty(); })) sign("<path class=\"serving\" d=\"M11 1V17M15 1V17\"/>", "at table");
    ink_.mark("</p>\n");
  }
  void sign(std::string_view shape, std::string_view words) {
    ink_.mark("<span class=\"sign\"><svg viewBox=\"0 0 26 18\" aria-hidden=\"true\">");
    ink_.put(shape);
    ink_.mark("</svg> ");
    ink_.put(words);
    ink_.mark("</span> ");
  }

  void number(int value) { ink_.put(std::to_string(value)); }
  void attribute(std::string_view name, int value) {
    ink_.put(name);
    ink_.mark("=\"");
    number(value);
    ink_.mark("\" ");
  }
  int place(const Strip& strip, int minute) const {
    const int inside = std::clamp(minute, 0, strip.length);
    return kNames + static_cast<int>(static_cast<long>(inside) * (kWide - kNames - kRight) / std::max(1, strip.length));
  }

  void strip(const Strip& strip, std::size_t index) {
    std::vector<std::uint16_t> lanes;  // that have something in this strip
    for (const Bar& bar : strip.bars)
      if (std::find(lanes.begin(), lanes.end(), bar.lane) == lanes.end()) lanes.push_back(bar.lane);
    std::sort(lanes.begin(), lanes.end());
    const int foot = kTop + kLane * static_cast<int>(lanes.size()) + 4, high = foot + kServing * static_cast<int>(strip.servings.size());
    ink_.mark("<h2>");
    put_escaped(ink_, strip.title);
    ink_.mark("</h2>\n<div class=\"strip\" tabindex=\"0\" role=\"group\" aria-label=\"");
    put_escaped(ink_, drawing_.title + ", " + strip.title);
    ink_.mark("\">");
    names(lanes, high);
    ink_.mark("<svg role=\"img\" viewBox=\"");
    number(kFirst);
    ink_.mark(" 0 ");
    number(kWide - kFirst);
    ink_.mark(" ");
    number(high);
    ink_.mark("\"><title>");
    put_escaped(ink_, drawing_.title + ", " + strip.title + ": the same hours as in the list below");
    ink_.mark("</title>\n<defs><pattern id=\"h");
    number(static_cast<int>(index));
    ink_.mark("\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path class=\"hatch\" d=\"M0 0V6\"/></pattern><pattern id=\"n");
    number(static_cast<int>(index));
    ink_.mark("\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\"><circle class=\"dot\" cx=\"2\" cy=\"2\" r=\"1\"/></pattern></defs>\n");
    for (const auto& [from, until] : strip.nights) rect("night", strip, from, until, kTop, foot - kTop, "n", index);
    for (const auto& [minute, text] : strip.hours) hour(strip, minute, text, foot);
    for (const Bar& bar : strip.bars) this->bar(strip, bar, static_cast<int>(std::find(lanes.begin(), lanes.end(), bar.lane) - lanes.begin()), index);
    for (std::size_t s = 0; s < strip.servings.size(); ++s) serving(strip, strip.servings[s].first, strip.servings[s].second, foot + kServing * static_cast<int>(s));
    ink_.mark("</svg></div>\n");
  }

  // In a picture of their own, which stays where it is when the hours are pushed sideways.
  void names(const std::vector<std::uint16_t>& lanes, int high) {
    ink_.mark("<svg class=\"lanes\" aria-hidden=\"true\" viewBox=\"0 0 ");
    number(kFirst);
    ink_.mark(" ");
    number(high);
    ink_.mark("\">\n");
    for (std::size_t l = 0; l < lanes.size(); ++l) {
      ink_.mark("<text class=\"lane\" ");
      attribute("x", 0);
      attribute("y", kTop + kLane * static_cast<int>(l) + 19);
      ink_.mark(">");
      put_escaped(ink_, drawing_.lanes[lanes[l]]);
      ink_.mark("</text>\n");
    }
    ink_.mark("</svg>");
  }

  void rect(const char* kind, const Strip& strip, int from, int until, int top, int high, const char* fill, std::size_t index) {
    const int left = place(strip, from), right = std::max(left + 3, place(strip, until));
    ink_.mark("<rect class=\"");
    ink_.put(kind);
    ink_.mark("\" ");
    attribute("x", left);
    attribute("y", top);
    attribute("width", right - left);
    attribute("height", high);
    if (fill != nullptr) {
      ink_.mark("fill=\"url(#");
      ink_.put(fill);
      number(static_cast<int>(index));
      ink_.mark(")\" ");
    }
    ink_.mark("/>\n");
  }

  void hour(const Strip& strip, int minute, const std::string& text, int high) {
    const int x = place(strip, minute);
    ink_.mark("<path class=\"tick\" d=\"M");
    number(x);
    ink_.mark(" ");
    number(kTop - 4);
    ink_.mark("V");
    number(high);
    ink_.mark("\"/><text class=\"axis\" ");
    attribute("x", x);
    attribute("y", 14);
    ink_.mark("text-anchor=\"middle\">");
    put_escaped(ink_, text);
    ink_.mark("</text>\n");
  }

  // Over all lanes and down to its own line of words, which stand on the side that has more room.
  void serving(const Strip& strip, int minute, const std::string& words, int top) {
    const int x = place(strip, minute), foot = top + kServing - 3;
    for (const int at : {x - 2, x + 2}) {
      ink_.mark("<path class=\"serving\" d=\"M");
      number(at);
      ink_.mark(" ");
      number(kTop - 4);
      ink_.mark("V");
      number(foot);
      ink_.mark("\"/>");
    }
    const bool before = x > kWide / 2;
    ink_.mark("<text class=\"serving\" ");
    attribute("x", before ? x - 8 : x + 8);
    attribute("y", foot - 2);
    ink_.put(before ? "text-anchor=\"end\">" : ">");
    put_escaped(ink_, shortened(words, static_cast<std::size_t>((before ? x - 8 - kFirst : kWide - x - 8) / kLetter)));
    ink_.mark("</text>\n");
  }

  void bar(const Strip& strip, const Bar& bar, int lane, std::size_t index) {
    const int top = kTop + kLane * lane + 4;
    const char* const kind = bar.kind == Hour::Kind::hands ? "hands" : bar.kind == Hour::Kind::watched ? "watched" : bar.kind == Hour::Kind::waits ? "waits" : "serving";
    if (bar.kind == Hour::Kind::watched) rect("ground", strip, bar.from, bar.until, top, kBar, nullptr, index);  // or the marks of the axis show through
    rect(kind, strip, bar.from, bar.until, top, kBar, bar.kind == Hour::Kind::watched ? "h" : nullptr, index);
    const int room = place(strip, bar.until) - place(strip, bar.from) - 8;
    const auto letters = static_cast<std::size_t>(std::max(0, room / kLetter));
    if (letters < std::min(kFewest, bar.label.size()) || bar.label.empty()) return;
    ink_.mark("<text class=\"");
    ink_.put(kind);
    ink_.mark("\" ");
    attribute("x", place(strip, bar.from) + 4);
    attribute("y", top + 15);
    ink_.mark(">");
    put_escaped(ink_, shortened(bar.label, letters));
    ink_.mark("</text>\n");
  }

  // As much as there is room for, never half a letter.
  static std::string shortened(const std::string& text, std::size_t letters) {
    std::size_t bytes = 0, seen = 0;
    while (bytes < text.size() && seen < letters) {
      ++bytes;
      while (bytes < text.size() && (static_cast<unsigned char>(text[bytes]) & 0xC0) == 0x80) ++bytes;
      ++seen;
    }
    if (bytes == text.size()) return text;
    return text.substr(0, bytes) + "…";
  }

  const Drawing& drawing_;
  Ink& ink_;
};

}  // namespace

void draw(const Drawing& drawing, Ink& ink) {
  if (!drawing.empty()) Drawer(drawing, ink).write();
}

}  // namespace qtn
