// SVG inside the page. Kinds are told apart by how they are filled, not by colour: hands are solid, what is watched is
// hatched, what waits is an outline; the night is dotted.
#include "render/drawing.hpp"

#include <algorithm>

#include "render/html_escape.hpp"

namespace qtn {
namespace {

constexpr int kWide = 1000, kNames = 110, kLane = 26, kTop = 22, kBar = 18, kLetter = 8;

class Drawer {
 public:
  Drawer(const Drawing& drawing, Ink& ink) : drawing_(drawing), ink_(ink) {}

  void write() {
    ink_.mark("<section class=\"drawing\">\n");
    for (std::size_t i = 0; i < drawing_.strips.size(); ++i) strip(drawing_.strips[i], i);
    ink_.mark(
        "<p class=\"signs\"><svg viewBox=\"0 0 26 18\" aria-hidden=\"true\"><rect class=\"hands\" x=\"1\" y=\"2\" width=\"24\" height=\"14\"/></svg> at work "
        "<svg viewBox=\"0 0 26 18\" aria-hidden=\"true\"><rect class=\"watched\" fill=\"url(#h0)\" x=\"1\" y=\"2\" width=\"24\" height=\"14\"/></svg> somebody about "
        "<svg viewBox=\"0 0 26 18\" aria-hidden=\"true\"><rect class=\"waits\" x=\"1\" y=\"2\" width=\"24\" height=\"14\"/></svg> waits by itself</p>\n");
    ink_.mark("</section>\n");
  }

 private:
  void number(int value) { ink_.put(std::to_string(value)); }
  void attribute(std::string_view name, int value) {
    ink_.put(name);
    ink_.mark("=\"");
    number(value);
    ink_.mark("\" ");
  }
  int place(const Strip& strip, int minute) const {
    const int inside = std::clamp(minute, 0, strip.length);
    return kNames + static_cast<int>(static_cast<long>(inside) * (kWide - kNames) / std::max(1, strip.length));
  }

  void strip(const Strip& strip, std::size_t index) {
    std::vector<std::uint16_t> lanes;  // that have something in this strip
    for (const Bar& bar : strip.bars)
      if (std::find(lanes.begin(), lanes.end(), bar.lane) == lanes.end()) lanes.push_back(bar.lane);
    std::sort(lanes.begin(), lanes.end());
    const int high = kTop + kLane * static_cast<int>(lanes.size()) + 4;
    ink_.mark("<h2>");
    put_escaped(ink_, strip.title);
    ink_.mark("</h2>\n<div class=\"strip\" tabindex=\"0\" role=\"group\" aria-label=\"");
    put_escaped(ink_, drawing_.title + ", " + strip.title);
    ink_.mark("\"><svg role=\"img\" viewBox=\"0 0 ");
    number(kWide);
    ink_.mark(" ");
    number(high);
    ink_.mark("\"><title>");
    put_escaped(ink_, drawing_.title + ", " + strip.title + ": the same hours as in the list below");
    ink_.mark("</title>\n<defs><pattern id=\"h");
    number(static_cast<int>(index));
    ink_.mark("\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path class=\"hatch\" d=\"M0 0V6\"/></pattern><pattern id=\"n");
    number(static_cast<int>(index));
    ink_.mark("\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\"><circle class=\"dot\" cx=\"2\" cy=\"2\" r=\"1\"/></pattern></defs>\n");
    for (const auto& [from, until] : strip.nights) rect("night", strip, from, until, kTop, high - kTop, "n", index);
    for (const auto& [minute, text] : strip.hours) hour(strip, minute, text, high);
    for (std::size_t l = 0; l < lanes.size(); ++l) {
      ink_.mark("<text class=\"lane\" ");
      attribute("x", 0);
      attribute("y", kTop + kLane * static_cast<int>(l) + 18);
      ink_.mark(">");
      put_escaped(ink_, drawing_.lanes[lanes[l]]);
      ink_.mark("</text>\n");
    }
    for (const Bar& bar : strip.bars) this->bar(strip, bar, static_cast<int>(std::find(lanes.begin(), lanes.end(), bar.lane) - lanes.begin()), index);
    ink_.mark("</svg></div>\n");
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
    attribute("x", std::min(x, kWide - 22));
    attribute("y", 13);
    ink_.mark("text-anchor=\"middle\">");
    put_escaped(ink_, text);
    ink_.mark("</text>\n");
  }

  void bar(const Strip& strip, const Bar& bar, int lane, std::size_t index) {
    const int top = kTop + kLane * lane + 4;
    const char* const kind = bar.kind == Hour::Kind::hands ? "hands" : bar.kind == Hour::Kind::watched ? "watched" : bar.kind == Hour::Kind::waits ? "waits" : "serving";
    rect(kind, strip, bar.from, bar.until, top, kBar, bar.kind == Hour::Kind::watched ? "h" : nullptr, index);
    const int room = place(strip, bar.until) - place(strip, bar.from) - 8;
    const auto letters = static_cast<std::size_t>(std::max(0, room / kLetter));
    if (letters < 3 || bar.label.empty()) return;
    ink_.mark("<text class=\"");
    ink_.put(kind);
    ink_.mark("\" ");
    attribute("x", place(strip, bar.from) + 4);
    attribute("y", top + 14);
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
