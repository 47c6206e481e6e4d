#include "diag/snippet.hpp"

#include <doctest/doctest.h>

#include <chrono>

#include "diag/glyphs.hpp"
#include "sample.hpp"

using namespace qtn;

namespace {

// The line and its carets, as drawn for the place of `what` on a one-line text.
std::string drawn(const std::string& text, std::string_view what, int width = 60) {
  const Source source("t", text);
  const Span place = span_of(source, what);
  const Snippet snippet(source.text(), {0, static_cast<std::uint32_t>(text.size())}, place, width);
  const auto carets = snippet.carets(place);
  return snippet.text() + "\n" + std::string(static_cast<std::size_t>(carets.at), ' ') +
         std::string(static_cast<std::size_t>(carets.count), '^');
}

}  // namespace

TEST_CASE("tabs are opened to stops of four") {
  CHECK(drawn("\t90 g\tlard", "lard") == "    90 g    lard\n            ^^^^");
  CHECK(drawn("a\tb", "\t") == "a   b\n ^^^");
}

TEST_CASE("combining marks, wide characters and pictures") {
  CHECK(drawn("cre\u0300me fraiche", "fraiche") == "cre\u0300me fraiche\n      ^^^^^^^");
  CHECK(drawn("cre\u0300me", "e\u0300") == "cre\u0300me\n  ^");
  CHECK(drawn("小麦粉 220 g", "220 g") == "小麦粉 220 g\n       ^^^^^");
  CHECK(drawn("小麦粉 220 g", "麦") == "小麦粉 220 g\n  ^^");
  CHECK(drawn("\U0001F967 tart", "tart") == "\U0001F967 tart\n   ^^^^");
  CHECK(drawn("½ tsp", "tsp") == "½ tsp\n  ^^^");
  CHECK(drawn("\u0301x", "x") == "◌\u0301x\n ^");
}

TEST_CASE("damaged and hidden bytes are seen and take their columns") {
  CHECK(drawn("a\xff\xfe lard", "lard") == "a\uFFFD\uFFFD lard\n    ^^^^");
  CHECK(drawn("\xe2\x82 lard", "lard") == "\uFFFD\uFFFD lard\n   ^^^^");
  CHECK(drawn("\x1b[31mlard", "lard") == "␛[31mlard\n     ^^^^");
  CHECK(drawn("a\u202e lard", "lard") == "a<U+202E> lard\n          ^^^^");
  CHECK(drawn("\uFEFFlard", "lard") == "lard\n^^^^");
  CHECK(drawn(std::string("a\0b", 3), "b") == "a␀b\n  ^");
  CHECK(visible("\x7f\u0085\U000E0041\n") == "␡<U+0085><U+E0041>␊");
}

TEST_CASE("what is not UTF-8 is one damaged byte at a time") {
  for (const std::string_view bad : {"\xc0\xaf", "\xed\xa0\x80", "\xf4\x90\x80\x80", "\xe0\x80\x80", "\x80", "\xf8"}) {
    const Glyph glyph = glyph_at(bad, 0);
    CHECK(glyph.code == 0xFFFD);
    CHECK(glyph.bytes == 1);
  }
  CHECK(glyph_at("\U0010FFFF", 0).code == 0x10FFFF);
}

TEST_CASE("a long line is cut around the place") {
  const std::string text =
      "Rub the butter and the lard into the flour until it looks like fine crumbs, then chill it well";
  CHECK(drawn(text, "butter", 30) == "Rub the butter and the lard i…\n        ^^^^^^");
  CHECK(drawn(text, "until", 30) == "… the flour until it looks li…\n            ^^^^^");
  CHECK(drawn(text, "well", 30) == "…e crumbs, then chill it well\n                         ^^^^");
  const std::string whole = drawn(text, text, 30);
  CHECK(whole == "Rub the butter and the lard i…\n^^^^^^^^^^^^^^^^^^^^^^^^^^^^^");
}

TEST_CASE("a place in the middle of a long line is seen at any width") {
  std::string text;
  for (int i = 0; i < 50; ++i) text += "ab面e\u0301\t";
  text += "LARD";
  for (int i = 0; i < 50; ++i) text += "ab面e\u0301\t";
  for (int width = 20; width < 200; ++width) {
    const std::string both = drawn(text, "LARD", width);
    const std::string line = both.substr(0, both.find('\n')), carets = both.substr(both.find('\n') + 1);
    CHECK(columns_of(line) <= width);
    CHECK(columns_of(line.substr(0, line.find("LARD"))) == static_cast<int>(carets.find('^')));
    CHECK(carets.ends_with(" ^^^^"));
  }
}

TEST_CASE("a line of a megabyte is not walked") {
  const Source source("t", std::string(1000000, 'x') + "LARD" + std::string(1000000, 'y'));
  const Span line{0, 2000004}, place{1000000, 1000004};
  const auto start = std::chrono::steady_clock::now();
  for (int i = 0; i < 100; ++i) CHECK(Snippet(source.text(), line, place, 80).text().find("LARD") != std::string::npos);
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(2));
}

TEST_CASE("sentences are wrapped at spaces, quoted phrases whole") {
  using Lines = std::vector<std::string>;
  CHECK(wrap("", 20) == Lines{""});
  CHECK(wrap("Rub the butter into  the flour", 12) == Lines{"Rub the", "butter into", "the flour"});
  CHECK(wrap("You may write `30 g` here", 17) == Lines{"You may write", "`30 g` here"});
  CHECK(wrap("one\ntwo", 20) == Lines{"one", "two"});
  CHECK(wrap("abcdefghij", 4) == Lines{"abcd", "efgh", "ij"});
  CHECK(wrap("面面面 面", 5) == Lines{"面面", "面 面"});
  CHECK(wrap("an `unclosed phrase here", 12) == Lines{"an `unclosed", "phrase here"});
}
