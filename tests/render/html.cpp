#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "data/tables.hpp"
#include "render/html_escape.hpp"
#include "render/layout.hpp"
#include "render/render.hpp"
#include "tests/render/sample.hpp"

using namespace qtn;

namespace {

std::string page(const Card& card) {
  std::string out;
  render_html(card, out);
  return out;
}
std::size_t count(std::string_view text, std::string_view what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string_view::npos; at = text.find(what, at + what.size())) ++n;
  return n;
}
bool has(std::string_view text, std::string_view what) {
  return text.find(what) != std::string_view::npos;
}

// The names of the elements in order, each closed in its turn; "" where one is not.
std::string skeleton(std::string_view html) {
  std::string names;
  std::vector<std::string> open;
  for (std::size_t at = html.find('<'); at != std::string_view::npos; at = html.find('<', at + 1)) {
    const std::size_t end = html.find('>', at);
    if (end == std::string_view::npos) return "";
    const std::string tag(html.substr(at + 1, html.find_first_of(" >", at) - at - 1));
    if (tag == "!doctype" || tag == "meta") continue;
    if (tag[0] != '/') {
      open.push_back(tag);
      names += tag + ' ';
    } else {
      if (open.empty() || open.back() != tag.substr(1)) return "";
      open.pop_back();
    }
  }
  return open.empty() ? names : "";
}

}  // namespace

TEST_CASE("a page stands by itself") {
  const std::string html = page(test::tart_card());
  CHECK(html.substr(0, 40) == "<!doctype html>\n<html lang=\"en-GB\">\n<hea");
  CHECK(has(html, "<meta charset=\"utf-8\">"));
  CHECK(has(html, "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"));
  CHECK(has(html, "<title>Leek and farmhouse cheese tart, as written, grams and ounces</title>"));
  CHECK_FALSE(has(html, "<script"));
  CHECK_FALSE(has(html, "http"));
  CHECK_FALSE(has(html, "url("));
  CHECK_FALSE(has(html, "@import"));
  CHECK(skeleton(html) != "");
  CHECK(count(html, "<h1>") == 1);
  CHECK(count(html, "<h2>") == 6);
  CHECK(count(html, "<ol>") == 3);
}

TEST_CASE("what is done with a dish later is one panel behind the method, its parts named") {
  Card card = test::tart_card();
  card.after.push_back(card.after.front());
  card.after.back().kind = AfterKind::keep;
  const std::string html = page(card);
  const std::size_t panel = html.find("<section class=\"after\">"), end = html.find("</section>", panel);
  REQUIRE(count(html, "<section class=\"after\">") == 1);
  CHECK(html.rfind("<div class=\"method\">") < panel);
  CHECK(html.find("<section class=\"notes\">") > end);
  const std::string inside = html.substr(panel, end - panel);
  CHECK(has(inside, "<h2>Once it is made</h2>"));
  CHECK(count(inside, "<dt>To reheat</dt>") == 2);
  CHECK_FALSE(has(inside, "<li>"));  // a single step has no number
  std::string text, markdown;
  render_text(card, text), render_markdown(card, markdown);
  CHECK(has(text, "\nOnce it is made\n  To reheat  Bake 12 min"));
  CHECK(count(markdown, "\n## Once it is made\n\n### To reheat\n\nBake 12 min") == 1);
  CHECK(count(markdown, "\n### To reheat\n") == 2);
  card.after.clear();
  CHECK_FALSE(has(page(card), "Once it is made"));
}

TEST_CASE("amounts, steps and facts of a page") {
  const std::string html = page(test::tart_card());
  CHECK(has(html, "<div><dt>Serves</dt><dd>6 to 8</dd></div>"));
  CHECK(has(html, "<tr><td>220 g</td><td class=\"second\">8 oz</td><th scope=\"row\">plain flour</th></tr>"));
  CHECK(has(html, "butter<span class=\"rest\">, cold, in 10 mm dice</span></th>"));
  CHECK(has(html, "<tr class=\"or\"><td><i>or</i> 100 g</td>"));
  CHECK(has(html, "<th scope=\"col\">grams</th><th scope=\"col\">ounces</th>"));
  CHECK(has(html, "<time datetime=\"PT15M\">15 min</time>"));
  CHECK(has(html, "<b class=\"time\">30 to 35 min</b>"));
  CHECK(has(html, "<b class=\"heat\">170 °C</b>"));
  CHECK(has(html, "<s>nutmeg</s>"));
  CHECK(has(html, "<a href=\"notes/probe.html?a=1&amp;b=2\">the probe page</a>"));
  CHECK(has(html, "<dt><time>2026-02-11</time></dt>"));
  CHECK(has(html, "<aside class=\"caution\"><p><strong>Caution:</strong> Serve hot"));
  // Two ways of one step, and a note, share its number.
  CHECK(has(html,
            "</p><p><span class=\"opener\">By machine:</span> Pulse four times, tip out and press together.</p>"
            "<aside class=\"note\">"));
}

TEST_CASE("no text breaks out of a page") {
  const std::string plain = skeleton(page(test::hostile_card("plain words", "page.html")));
  REQUIRE(plain != "");
  for (std::string_view text : test::kHostile) {
    CAPTURE(text);
    CHECK(skeleton(page(test::hostile_card(text, "page.html"))) == plain);
  }
  const std::string quoted = page(test::hostile_card("x", "a\" onclick=\"b"));
  CHECK(has(quoted, "<a href=\"a&quot; onclick=&quot;b\">x</a>"));
}

TEST_CASE("links that a card may have") {
  for (std::string_view good :
       {"http://example.org/", "https://example.org/?a=b:c", "HTTPS://example.org", "mailto:house@example.org",
        "page.html", "../a/b.html", "/a", "#tart", "a/b:c", "?x:y"}) {
    CAPTURE(good);
    CHECK(may_link(good));
  }
  for (std::string_view bad :
       {"", "javascript:alert(1)", "JavaScript:x", "data:text/html,x", "vbscript:x", "file:///a", " javascript:x",
        "java\nscript:x", "\tpage.html", "//example.org", "\\\\example.org", "x:y", ":x", "java\x01script:x"}) {
    CAPTURE(bad);
    CHECK_FALSE(may_link(bad));
    CHECK_FALSE(has(page(test::hostile_card("words", bad)), "<a "));
  }
}

TEST_CASE("escaping finds each of the four characters wherever it stands") {
  for (std::size_t size = 0; size < 40; ++size) {
    for (std::size_t at = 0; at < size; ++at) {
      for (char special : {'&', '<', '>', '"'}) {
        std::string text(size, 'a');
        text[at] = special;
        CHECK(first_special(text) == at);
      }
    }
    CHECK(first_special(std::string(size, '\xe2')) == size);
    CHECK(first_special(std::string(size, '\'')) == size);
  }
}

TEST_CASE("a long text with marks far apart is escaped whole, in any order of pieces") {
  std::string text;
  for (int i = 0; i < 3000; ++i) text += i % 701 == 0 ? "<&>" : "flour ";
  std::string out, expected;
  Ink ink(out), other(expected);
  CleanText clean(text);
  for (std::size_t piece = 0; piece < 400; ++piece) {
    const std::size_t begin = piece * 7919 % (text.size() - 5000), size = piece % 7 == 0 ? 4999 : piece % 40;
    clean.put(ink, begin, size);
    put_escaped(other, std::string_view(text).substr(begin, size));
  }
  ink.flush();
  other.flush();
  CHECK(out == expected);
}

TEST_CASE("the style sheet cannot end its element") {
  CHECK_FALSE(has(data::card_css(), "<"));
  CHECK(has(data::card_css(), "prefers-color-scheme: dark"));
  CHECK(has(data::card_css(), "@media print"));
}
