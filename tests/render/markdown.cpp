#include <cmark.h>
#include <doctest/doctest.h>

#include <random>
#include <string>
#include <vector>

#include "render/layout.hpp"
#include "render/markdown_escape.hpp"
#include "render/render.hpp"
#include "tests/render/sample.hpp"

using namespace qtn;

namespace {

std::string sheet(const Card& card) {
  std::string out;
  render_markdown(card, out);
  return out;
}

// A block as CommonMark reads it: what it is, and the words in it.
struct Block {
  std::string kind, words;
  bool operator==(const Block&) const = default;
};
std::ostream& operator<<(std::ostream& out, const Block& block) {
  return out << block.kind << ": " << block.words;
}

// Blanks at the ends are the block's own.
std::string trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return std::string(text);
}
std::string blanked(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
  }
  return out;
}

std::vector<Block> read(const std::string& markdown) {
  std::vector<Block> blocks;
  cmark_node* document = cmark_parse_document(markdown.data(), markdown.size(), CMARK_OPT_DEFAULT);
  cmark_iter* iter = cmark_iter_new(document);
  for (cmark_event_type event = cmark_iter_next(iter); event != CMARK_EVENT_DONE; event = cmark_iter_next(iter)) {
    cmark_node* node = cmark_iter_get_node(iter);
    const cmark_node_type type = cmark_node_get_type(node);
    if (event == CMARK_EVENT_EXIT) continue;
    if (type == CMARK_NODE_TEXT || type == CMARK_NODE_CODE) {
      blocks.back().words += cmark_node_get_literal(node);
    } else if (type == CMARK_NODE_SOFTBREAK || type == CMARK_NODE_LINEBREAK) {
      blocks.back().words += "<break>";
    } else if (type == CMARK_NODE_HTML_INLINE || type == CMARK_NODE_IMAGE) {
      blocks.back().words += "<loose>";
    } else if (type == CMARK_NODE_PARAGRAPH || type == CMARK_NODE_HEADING) {
      std::string kind = cmark_node_get_type_string(node);
      for (cmark_node* up = cmark_node_parent(node); up != document; up = cmark_node_parent(up)) {
        kind += std::string(" in ") + cmark_node_get_type_string(up);
      }
      blocks.push_back({kind, ""});
    } else if (type == CMARK_NODE_CODE_BLOCK || type == CMARK_NODE_HTML_BLOCK || type == CMARK_NODE_THEMATIC_BREAK) {
      blocks.push_back({"loose", ""});
    }
  }
  cmark_iter_free(iter);
  cmark_node_free(document);
  for (Block& block : blocks) block.words = trimmed(block.words);
  return blocks;
}

std::string html_of(const std::string& markdown) {
  char* html = cmark_markdown_to_html(markdown.data(), markdown.size(), CMARK_OPT_DEFAULT);
  const std::string out = html;
  cmark_get_default_mem_allocator()->free(html);
  return out;
}

// A card of one title, one fact, one line, one step, one caution; and what should be read back from it.
struct Case {
  Card card;
  std::vector<Block> blocks;
};

class Dice {
 public:
  explicit Dice(unsigned seed) : random_(seed) {}
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(random_() % n); }
  // Short texts out of what CommonMark has marks for, and some words.
  std::string text() {
    static constexpr std::string_view kBits[] = {"*",     "**",
                                                 "_",     "`",
                                                 "``",    "[",
                                                 "]",     "(",
                                                 ")",     "<",
                                                 ">",     "#",
                                                 "+",     "-",
                                                 "--",    "1.",
                                                 "2)",    ".",
                                                 "!",     "&",
                                                 "&amp;", "&#35;",
                                                 "\\",    "|",
                                                 "~",     "~~~",
                                                 "=",     ":",
                                                 "\"",    "'",
                                                 "/",     "a",
                                                 "flour", "x1",
                                                 " ",     " ",
                                                 "  ",    "\t",
                                                 "\n",    "½",
                                                 "é",     "\xc2\xa0",
                                                 "“",     "\xe3\x80\x80",
                                                 "<b>",   "http://a.example",
                                                 "![",    "](x)",
                                                 "::",    "0",
                                                 "12345", ";",
                                                 "amp;"};
    std::string text;
    for (std::size_t n = 1 + below(7); n > 0; --n) text += kBits[below(std::size(kBits))];
    return text;
  }

 private:
  std::mt19937 random_;
};

Range32 random_runs(Dice& dice, test::CardMaker& make, std::string& words) {
  const Range32 range{test::CardMaker::here(make.card.runs), static_cast<std::uint32_t>(1 + dice.below(5))};
  for (std::uint32_t i = 0; i < range.count; ++i) {
    const std::string text = dice.text();
    const auto style = static_cast<std::uint8_t>(dice.below(3) == 0 ? 0 : dice.below(8));
    static constexpr std::string_view kLinks[] = {
        "", "", "", "page.html", "https://a.example/(x)_*[y]?a=b&amp;c d", "javascript:x"};
    make.add({text, Role::text, style, kLinks[dice.below(std::size(kLinks))], {}});
    words += blanked(text);
  }
  return range;
}

Case random_case(Dice& dice) {
  test::CardMaker make;
  Case out;
  const auto block = [&](std::string kind, const std::string& words) {
    out.blocks.push_back({std::move(kind), trimmed(words)});
  };
  std::string title, label, value, caution, amount, name, rest, step, note;
  make.card.title = random_runs(dice, make, title);
  make.card.facts.push_back({0, random_runs(dice, make, label), random_runs(dice, make, value)});
  make.card.head = {0, 1};
  make.card.remarks.push_back({Remark::Kind::caution, random_runs(dice, make, caution)});
  make.begin_section("Part");
  Row row;
  row.amount = random_runs(dice, make, amount);
  row.name = random_runs(dice, make, name);
  row.rest = random_runs(dice, make, rest);
  make.card.rows.push_back(row);
  make.step(StepKind::step, "", random_runs(dice, make, step));
  make.step(StepKind::note, "", random_runs(dice, make, note));
  make.card.parts.push_back(make.end_section());
  block("heading", title);
  block("paragraph in item in list", label + ": " + value);
  block("paragraph in block_quote", "Caution: " + caution);
  block("heading", "Part");
  block("paragraph in item in list", amount + " " + name + ", " + rest);
  block("paragraph in item in list", step);
  block("paragraph in block_quote in item in list", note);
  out.card = std::move(make.card);
  return out;
}

// An empty block is no paragraph to CommonMark.
bool all_words(const Case& one) {
  for (const Block& block : one.blocks) {
    if (block.words.empty()) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("a sheet reads well as it stands") {
  const std::string text = sheet(test::tart_card());
  const auto has = [&](std::string_view what) { return text.find(what) != std::string::npos; };
  CHECK(text.substr(0, 33) == "# Leek and farmhouse cheese tart\n");
  CHECK(has("\n* Serves: 6 to 8\n"));
  CHECK(has("\n> **Caution:** Serve hot within two hours, or chill at once.\n"));
  CHECK(has("\n## Shortcrust\n"));
  CHECK(has("\n- 220 g (8 oz) plain flour\n- 110 g (4 oz) butter, cold, in 10 mm dice\n"));
  CHECK(has("\n- 100 g (3½ oz) farmhouse cheddar, grated\n  - or 100 g (3½ oz) blue cheese, crumbled\n"));
  CHECK(has("\n- white pepper, to taste, optional\n"));
  CHECK(has("\n2. By hand: Stir in the water with a *round-ended* knife"));
  CHECK(has("\n\n   By machine: Pulse"));
  CHECK(has("\n   > Note: A dry day"));
  CHECK(has("They must be **quite soft**."));
  CHECK(has("(see [the probe page](notes/probe.html?a=1&amp;b=2))."));
  CHECK(has("No (left out: nutmeg) here."));
  CHECK(has("\n- 2026-02-11: fine salt"));
  CHECK(text.find("\n\n\n") == std::string::npos);
  CHECK(text.find('\\') == std::string::npos);  // nothing in it needs one
}

TEST_CASE("CommonMark reads the blocks that were meant") {
  const std::string html = html_of(sheet(test::tart_card()));
  CHECK(html.find("<li>220 g (8 oz) plain flour</li>") != std::string::npos);
  CHECK(html.find("<a href=\"notes/probe.html?a=1&amp;b=2\">the probe page</a>") != std::string::npos);
  CHECK(html.find("<strong>quite soft</strong>") != std::string::npos);
  CHECK(html.find("<em>round-ended</em>") != std::string::npos);
  CHECK(html.find("<ol start") == std::string::npos);
}

TEST_CASE("weights, code and links where they can stand") {
  test::CardMaker make;
  make.card.title = make.words({{"a"},
                                {"b", Role::text, kEmphasis},
                                {"c "},
                                {" d! ", Role::text, kStrong},
                                {"e ``f`", Role::text, kCode},
                                {" g!"},
                                {"h", Role::text, kStrong, "x(y).html"},
                                {" "},
                                {"(i)", Role::text, kStrong | kEmphasis},
                                {" j"}});
  const std::string html = html_of(sheet(make.card));
  CHECK(html ==
        "<h1>a<em>b</em>c  <strong>d!</strong> <code>e ``f`</code> g!<a href=\"x%28y%29.html\"><strong>h</strong></a> "
        "<em><strong>(i)</strong></em> j</h1>\n");
}

TEST_CASE("a link that begins a block is not taken for a definition") {
  test::CardMaker make;
  make.card.edition = make.words({{"a]: b", Role::text, kCode, "page.html"}});
  CHECK(html_of(sheet(make.card)) == "<p><a href=\"page.html\">a]: b</a></p>\n");
}

TEST_CASE("hostile words stay words in Markdown") {
  const std::vector<Block> plain = read(sheet(test::hostile_card("plain", "page.html")));
  for (std::string_view text : test::kHostile) {
    CAPTURE(text);
    const std::vector<Block> blocks = read(sheet(test::hostile_card(text, "page.html")));
    REQUIRE(blocks.size() == plain.size());
    CHECK(blocks[0].words == trimmed(blanked(text)));
    for (std::size_t i = 0; i < blocks.size(); ++i) CHECK(blocks[i].kind == plain[i].kind);
  }
}

TEST_CASE("the words of random cards come back from CommonMark exactly") {
  int tried = 0;
  for (unsigned seed = 0; seed < 6000; ++seed) {
    Dice dice(seed);
    const Case one = random_case(dice);
    if (!all_words(one)) continue;
    ++tried;
    const std::string markdown = sheet(one.card);
    const std::vector<Block> blocks = read(markdown);
    if (blocks == one.blocks) continue;
    CAPTURE(seed);
    CAPTURE(markdown);
    REQUIRE(blocks.size() == one.blocks.size());
    for (std::size_t i = 0; i < blocks.size(); ++i) CHECK(blocks[i] == one.blocks[i]);
  }
  CHECK(tried > 3000);
}
