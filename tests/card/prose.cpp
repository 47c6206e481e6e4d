// Prose through CommonMark: marks to styles, clauses put back in their places, nothing that a hostile text can forge.
#include "card/prose.hpp"

#include <cmark.h>
#include <doctest/doctest.h>

#include <cstdlib>

#include "tests/card/said.hpp"

namespace qtn {
namespace {

using test::Written;
using test::step_of;
using test::text_of;

TEST_CASE("inline marks become styles") {
  CHECK(text_of("plain words").marked() == "plain words");
  CHECK(text_of("*soft* and **stiff** and `code`").marked() == "/soft/ and #stiff# and `code`");
  CHECK(text_of("***both***").marked() == "/#both#/");
  CHECK(text_of("round*ed* snake_case_word").marked() == "round/ed/ snake_case_word");
  CHECK(text_of("salt &amp; pepper, 5 &deg;C, soft & sweet").marked() == "salt & pepper, 5 °C, soft & sweet");
  CHECK(text_of("\\[8 slices\\] \\*not soft\\*").marked() == "[8 slices] *not soft*");
}

TEST_CASE("links are kept, images and link definitions are plain text") {
  const Written link = text_of("see [the page](notes/a.html \"T\"), then go on");
  CHECK(link.marked() == "see <the page=notes/a.html>, then go on");
  CHECK(text_of("<https://example.org/a>").marked() == "<https://example.org/a=https://example.org/a>");
  CHECK(text_of("![a tart](tart.png)").marked() == "![a tart](tart.png)");
  CHECK(text_of("[tart]: /x \"y\"").marked() == "[tart]: /x \"y\"");
  CHECK(text_of("[tart] and [the oven][x]").marked() == "[tart] and [the oven][x]");
}

TEST_CASE("raw HTML is text") {
  CHECK(text_of("a <b>bold</b> move").marked() == "a <b>bold</b> move");
  CHECK(text_of("<script>alert(1)</script>").marked() == "<script>alert(1)</script>");
  CHECK(text_of("<!-- *x* --> y").marked() == "<!-- *x* --> y");
}

TEST_CASE("no line opens a block") {
  for (const char* line : {"- *a*", "+ *a*", "1. *a*", "2) *a*", "> *a*", "# *a*", "```*a*", "~~~*a*", "    *a*", "<div>*a*",
                           "***", "---*a*", "===*a*", "<!-- *a*"}) {
    CAPTURE(line);
    const std::string two = std::string("one\n") + line;
    for (const std::string& text : {std::string(line), two, std::string(line) + "\ntwo"}) {
      const std::string said = text_of(text).text();
      CHECK(said.find("\xEE") == std::string::npos);
      CHECK(said.find('\n') == std::string::npos);
      CHECK_FALSE(said.empty());
    }
  }
  CHECK(text_of("one\n- *two*\r\n> three").marked() == "one - /two/ > three");
  CHECK(text_of("*one*\r- two\r\rthree").marked() == "/one/ - two three");
}

TEST_CASE("clauses keep their places, and take the weight of the words around them") {
  CHECK(step_of({"Rub ", "[0]", " into *", "[1]", "* and **so", "[2]", " on**."}).marked() ==
        "Rub {0} into /{1}/ and #so{2} on#.");
  CHECK(step_of({"[0]", "*soft*", "[1]", "_firm_", "[2]"}).marked() == "{0}/soft/{1}/firm/{2}");
  CHECK(step_of({"a `code` ", "[0]", " b\\"}).marked() == "a `code` {0} b\\");
  CHECK(step_of({"*one\n", "[0]", "two*"}).marked() == "/one {0}two/");
  CHECK(step_of({"no marks ", "[0]", " here"}).marked() == "no marks {0} here");
  CHECK(step_of({"Stir ", "[0]", " as on ", "[a page](b)", ", and ", "[1]", "."}).marked() ==
        "Stir {0} as on <a page=b>, and {1}.");
  CHECK(step_of({"[0]", " ", "[a page](b)", " ", "[1]"}).marked() == "{0} <a page=b> {1}");
}

TEST_CASE("a clause is never lost, doubled or forged") {
  // Each of these draws a clause into something that CommonMark would swallow or repeat.
  CHECK(step_of({"*x* <http://a", "[0]", "b>"}).count_own() == 1);
  CHECK(step_of({"*x* <a title='", "[0]", "'>"}).count_own() == 1);
  CHECK(step_of({"`a ", "[0]", " b`"}).count_own() == 1);
  CHECK(step_of({"[a](<b", "[0]", "c>)"}).count_own() == 1);
  CHECK(step_of({"![a](<b", "[0]", "c> \"t\")"}).count_own() == 1);
  CHECK(step_of({"[a](b \"", "[0]", "\")"}).count_own() == 1);
  for (const char* forged : {"{\xEE\x80\x81" "0\xEE\x80\x81}", "{&#xE001;0&#xE001;}", "{&#57345;0&#57345;}",
                             "\xEE\x80\x80 ", "&#xe000;"}) {
    CAPTURE(forged);
    const Written said = step_of({std::string("*x* ") + forged + " ", "[0]", " y"});
    CHECK(said.count_own() == 1);
    CHECK(said.text().find("{0} y") != std::string::npos);
    CHECK(said.text().find("\xEE") != std::string::npos);  // a private-use character of the writer's own stays
  }
}

TEST_CASE("a text that uses up the private characters is printed as written") {
  std::string all = "*x* ";
  for (unsigned i = 0; i < 4096; ++i) {
    const char sign[] = {'\xEE', static_cast<char>(0x80u | i >> 6), static_cast<char>(0x80u | (i & 0x3Fu)), '\0'};
    all += sign;
  }
  CHECK(text_of(all).text() == all);
}

TEST_CASE("bad bytes never crash, and do not reach the card") {
  const std::string nul("*a*\0b", 5);
  CHECK(text_of(nul).clean() == "a\xEF\xBF\xBD" "b");
  CHECK(text_of("a\xFF *b* \xC3").clean() == "a\xEF\xBF\xBD b \xEF\xBF\xBD");
  CHECK(text_of("a\xFF plain").clean() == "a\xEF\xBF\xBD plain");
  CHECK(text_of(std::string("nul\0plain", 9)).clean() == "nul\xEF\xBF\xBDplain");
  CHECK(text_of("\xED\xA0\x80 \xF4\x90\x80\x80 \xC0\xAF").clean().find('\xED') == std::string::npos);
  CHECK(text_of("tab\there\x1B[31m").clean() == "tab here [31m");
}

TEST_CASE("nesting and length stay linear") {
  for (const char* unit : {"*", "_", "`", "<", "![", "[", "](", "&", "\\", "**a", "*a_", "<!--", "<?", "<![CDATA[", "![]()",
                           "[a](<b", "`a``"}) {
    CAPTURE(unit);
    std::string text;
    while (text.size() < 400'000) text += unit;
    CHECK_FALSE(text_of(text).text().empty());
    text.resize(16'000);
    CHECK_FALSE(text_of(text).text().empty());
  }
}

// What cmark's own page says, without its tags: the other side of the property. `image` when it found one.
std::string by_cmark(const std::string& text, bool& image) {
  char* const html = cmark_markdown_to_html(text.data(), text.size(), CMARK_OPT_DEFAULT);
  std::string page(html), plain;
  std::free(html);
  image = page.find("<img") != std::string::npos;
  for (std::size_t i = 0; i < page.size();) {
    if (page[i] == '<') {
      i = page.find('>', i) + 1;
      continue;
    }
    const auto entity = [&](std::string_view name, char c) {
      if (page.compare(i, name.size(), name) != 0) return false;
      plain += c;
      i += name.size();
      return true;
    };
    if (entity("&lt;", '<') || entity("&gt;", '>') || entity("&amp;", '&') || entity("&quot;", '"')) continue;
    plain += page[i++];
  }
  return test::single_blanks(plain);
}

TEST_CASE("property: a marked step reads as cmark's own rendering does") {
  // No raw HTML and no images: those print as text here, on purpose. Lines begin with words, so that none is a block.
  static constexpr const char* kParts[] = {"*",  "**", "_",   "`",   "``",    " ",      "\\*",   "\\", "&amp;", "&",
                                           "soft", "a",  "1",  ".",   "é",     "(x)",    "<b@c.de>", "![", "!", "]",
                                           "[a](b)", "–", "%", "\nand ", "°C", "&#233;", "&copy;", "\"", "'", ": "};
  std::uint32_t seed = 7;
  const auto pick = [&](std::uint32_t n) {
    seed = seed * 1664525u + 1013904223u;
    return (seed >> 16) % n;
  };
  int marked = 0;
  for (int round = 0; round < 20'000; ++round) {
    std::string text = "Stir ";
    for (std::uint32_t i = 0, n = 1 + pick(14); i < n; ++i) text += kParts[pick(std::size(kParts))];
    CAPTURE(text);
    bool image = false;
    const std::string wanted = by_cmark(text, image);
    if (image) continue;
    const std::string said = test::single_blanks(text_of(text).text());
    REQUIRE(said == wanted);
    marked += first_mark(text) < text.size();
  }
  CHECK(marked > 10'000);
}

TEST_CASE("property: clauses between the pieces change nothing of what stands around them") {
  static constexpr const char* kParts[] = {"*", "**", "_", "`", " ", " ", "\\*", "&amp;", "soft", "a", ".", "é", "(x)",
                                           "\nand ", "°C", " & ", ", ", "~", "~", "~", "[a](b)", "[a b](c.d)"};
  std::uint32_t seed = 11;
  const auto pick = [&](std::uint32_t n) {
    seed = seed * 1664525u + 1013904223u;
    return (seed >> 16) % n;
  };
  for (int round = 0; round < 20'000; ++round) {
    // ~ is a clause; a link is a piece of its own, as the reader of files tells them.
    std::vector<std::string> pieces{"Stir "};
    std::string text = "Stir ";
    bool open = true;
    int clauses = 0;
    for (std::uint32_t i = 0, n = 1 + pick(14); i < n; ++i) {
      const std::string part = kParts[pick(std::size(kParts))];
      if (part == "~" && clauses < 9) {
        const std::string number = std::to_string(clauses++);
        pieces.push_back("[" + number + "]");
        text += "{" + number + "}";
        open = false;
      } else if (part.front() == '[') {
        pieces.push_back(part);
        text += part;
        open = false;
      } else {
        if (!open) pieces.emplace_back();
        pieces.back() += part;
        text += part;
        open = true;
      }
    }
    CAPTURE(text);
    bool image = false;
    const std::string wanted = by_cmark(text, image);
    const Written said = step_of(pieces);
    REQUIRE(test::single_blanks(said.text()) == wanted);
    REQUIRE(said.count_own() == clauses);
  }
}

}  // namespace
}  // namespace qtn
