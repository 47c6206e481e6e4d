#include <doctest/doctest.h>
#include <fmt/format.h>

#include "diag/glyphs.hpp"
#include "sample.hpp"

using namespace qtn;

namespace {

std::string tag() {
  return std::string(row(any_code()).code) + " error";
}

// Every line no wider than the page, nothing that a terminal would obey.
void check_page(const std::string& text, int width) {
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t end = text.find('\n', from);
    REQUIRE(end != text.npos);
    const std::string line = text.substr(from, end - from);
    INFO(line);
    CHECK(columns_of(line) <= width);
    CHECK(visible(line) == line);
    if (!line.empty()) CHECK(line.back() != ' ');
    from = end + 1;
  }
}

}  // namespace

TEST_CASE("nothing is printed when nothing is wrong") {
  const Source source("tart.qtn", "90 g lard\n");
  CHECK(text_of(source, Report()).empty());
  CHECK(print_text({}, {}).empty());
}

TEST_CASE("a problem with a second place reads as a note") {
  const Source source("tart.qtn", "take:\n  90 g   lard\n\n  Rub [45 g of the lard] into the flour.\n");
  Report report;
  problem(report, span_of(source, "45 g of the lard"), "This says 30 g is left of the lard, and 45 g is asked.")
      .also(span_of(source, "90 g"), "the list has 90 g")
      .expect("at most 30 g")
      .find("45 g")
      .fix(span_of(source, "45 g"), "30 g", "write `30 g`")
      .offer(span_of(source, "90 g"), "105 g", "buy more lard");
  const std::string heading = "tart.qtn, line 4, column 8";
  const std::string gap(80 - heading.size() - tag().size(), ' ');
  CHECK(text_of(source, report) == heading + gap + tag() + R"(
  This says 30 g is left of the lard, and 45 g is asked.
    4 |   Rub [45 g of the lard] into the flour.
      |        ^^^^^^^^^^^^^^^^
    2 |   90 g   lard
      |   ^^^^ the list has 90 g
    Expected: at most 30 g
    Found: 45 g
    Why: It would spoil the tart.
    Mend (safe): write `30 g`.
    You could: buy more lard on line 2.

1 error
)");
}

TEST_CASE("a second place on the same line gets carets under the same line") {
  const Source source("tart.qtn", "Chill 20 min, then chill 2 h.\n");
  Report report;
  problem(report, span_of(source, "2 h")).also(span_of(source, "20 min"), "here it is 20 min");
  CHECK(snippet_of(text_of(source, report)) ==
        "Chill 20 min, then chill 2 h.\n"
        "                         ^^^\n"
        "      ^^^^^^ here it is 20 min\n");
}

TEST_CASE("a second place in another file") {
  const Source tart("tart.qtn", "use: shortcrust\n"), larder("larder.qtn", "a\nb\nshortcrust: 370 g\n");
  Report report;
  problem(report, {5, 15}).also(span_of(larder, "370 g"), "what it makes", "larder.qtn").also({3, 4}, "gone", "x.qtn");
  const Report none;
  const Judged judged[] = {{&larder, &none}, {&tart, &report}};
  const std::string text = print_text(judged, {});
  CHECK(text.find("    In larder.qtn:\n    3 | shortcrust: 370 g\n      |             ^^^^^ what it makes\n") !=
        text.npos);
  CHECK(text.find("    In x.qtn: gone\n") != text.npos);
}

TEST_CASE("the words beside a place go below it when there is no room") {
  const Source source("tart.qtn", "Leave it to stand in a cool larder: 10 min\n");
  Report report;
  problem(report, {0, 5}).also(span_of(source, "10 min"), "the recipe gives it half an hour further up");
  CHECK(snippet_of(text_of(source, report, 50)) ==
        "Leave it to stand in a cool larder: 10 min\n"
        "^^^^^\n"
        "                                    ^^^^^^\n"
        "              the recipe gives it half an\n"
        "              hour further up\n");
}

TEST_CASE("spans over line ends, without width, at the end of the text, and beyond it") {
  const Source source("tart.qtn", "take:\r\n  lard\r\nmethod:\n");
  const auto drawn = [&](Span span) {
    Report report;
    problem(report, span);
    return snippet_of(text_of(source, report));
  };
  CHECK(drawn({0, 20}) == "take:\n^^^^^ (down to line 3)\n");
  CHECK(drawn({0, 7}) == "take:\n^^^^^\n");
  CHECK(drawn({5, 6}) == "take:\n     ^\n");
  CHECK(drawn({9, 9}) == "  lard\n  ^\n");
  CHECK(drawn({23, 23}) == "\n^\n");
  CHECK(drawn({4000, 5000}) == "\n^\n");
}

TEST_CASE("the catalogue's reason is given once, a particular one every time") {
  const Source source("tart.qtn", "lard\nlard\n");
  Report report;
  report.add(any_code(), Severity::warning, {0, 4}, "One.");
  report.add(any_code(), Severity::warning, {5, 9}, "Two.");
  report.add(any_code(), Severity::note, {5, 9}, "Three.").because("Fat melts.");
  const std::string text = text_of(source, report);
  const auto first = text.find("Why:");
  CHECK(text.find("Two.") > first);
  CHECK(text.find("Why: Fat melts.") == text.find("Why:", first + 1));
  CHECK(text.ends_with("\n\n2 warnings, 1 note\n"));
  CHECK(text.find(" warning\n") != text.npos);
  CHECK(text.find(" note\n") != text.npos);
}

TEST_CASE("colour repeats what is said and adds nothing") {
  const Source source("tart.qtn", "Rub [45 g of the lard] into the flour.\n");
  Report report;
  problem(report, {4, 22}).also({5, 9}, "here").expect("30 g").fix({5, 9}, "30 g", "");
  const std::string plain = text_of(source, report), coloured = text_of(source, report, 80, true);
  CHECK(plain.find('\x1b') == plain.npos);
  CHECK(coloured.find("\x1b[1;31m" + tag() + "\x1b[0m") != coloured.npos);
  CHECK(without_colour(coloured) == plain);
  CHECK(plain.find("Mend (safe): write `30 g`.\n") != plain.npos);
}

TEST_CASE("a narrow page") {
  const Source source("tart.qtn", "Rub [45 g of the lard] into the flour until it looks like crumbs.\n");
  Report report;
  problem(report, span_of(source, "flour"), "This file says that 30 g is left of the lard, and 45 g is asked for.")
      .also(span_of(source, "crumbs"), "as fine as breadcrumbs, and no finer than that")
      .fix({5, 9}, "30 g", "write `30 g of the lard that is left` instead of what is there");
  for (int width = 40; width < 90; ++width) check_page(text_of(source, report, width), width);
  CHECK(text_of(source, report, 3) == text_of(source, report, 40));
  const Source deep("kitchen/winter/tarts/tart.qtn", std::string(source.text()));
  CHECK(text_of(deep, report, 40).starts_with("kitchen/winter/tarts/tart.qtn,\n  line 1, column 33  "));
}

TEST_CASE("hostile text in every field stays harmless and within the page") {
  const std::string bad =
      "\x1b[2J\xff\t\xe2\x80\xae\xc2\x9b`" + std::string(90, 'x') + "\xf0\x9f\xa5\xa7\xcc\x81\r\n\x7f";
  const Source source("tart.qtn", bad + bad);
  Report report;
  problem(report, {0, 9}, bad)
      .also({3, 5}, bad)
      .also({3, 5}, bad, "other")
      .expect(bad)
      .find(bad)
      .because(bad)
      .fix({0, 2}, bad, bad)
      .offer({1, 2}, bad, "");
  for (const int width : {40, 80}) check_page(text_of(source, report, width), width);
}

TEST_CASE("random bytes and places") {
  std::uint32_t state = 7;
  const auto next = [&](std::uint32_t below) {
    state = state * 1664525u + 1013904223u;
    return (state >> 8) % below;
  };
  const std::string_view pieces[] = {"a",  "é",    "e\u0301", "面",   "\U0001F967", "\t",
                                     "\n", "\r\n", "\xff",    "\x1b", "\u202e",     "lard "};
  for (int round = 0; round < 400; ++round) {
    std::string text;
    for (std::uint32_t i = next(300); i > 0; --i) text += pieces[next(next(2) == 0 ? 6 : 12)];
    const Source source("t", text);
    Report report;
    const auto size = static_cast<std::uint32_t>(text.size()) + 3;
    for (int i = 0; i < 3; ++i) {
      const std::uint32_t begin = next(size);
      problem(report, {begin, begin + next(40)}).also({next(size), size}, "second");
    }
    const int width = 40 + static_cast<int>(next(80));
    check_page(text_of(source, report, width), width);
  }
}
