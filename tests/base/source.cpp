// Places in a text: lines and columns in code points.
#include "base/source.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace qtn;

namespace {

Lines::Place counted(std::string_view text, std::uint32_t offset) {
  Lines::Place place{1, 1};
  for (std::uint32_t i = 0; i < offset; ++i) {
    if (text[i] == '\n') ++place.line, place.column = 1;
    else if ((static_cast<unsigned char>(text[i]) & 0xC0) != 0x80) ++place.column;
  }
  return place;
}

}  // namespace

TEST_CASE("a place is the same whatever was asked before it") {
  const std::string text = "180 °C\n\nhalf a crème\n½ tsp — “salt”\nlast";
  const Lines lines(text);
  std::mt19937 random(7);
  for (int i = 0; i < 2000; ++i) {
    const auto offset = static_cast<std::uint32_t>(random() % (text.size() + 1));
    const Lines::Place got = lines.place(offset), want = counted(text, offset);
    REQUIRE_MESSAGE(got.line == want.line, offset);
    REQUIRE_MESSAGE(got.column == want.column, offset);
  }
}

TEST_CASE("a line of two megabytes is not walked for every place in it") {
  const std::string text(2'000'000, 'x');
  const Lines lines(text);
  std::uint64_t sum = 0;
  for (std::uint32_t at = 0; at + 3 < text.size(); at += 4)  // begin, end and begin again, as a problem is printed
    sum += lines.place(at).column + lines.place(at + 3).column + lines.place(at).column;
  CHECK(sum == 1'500'000'000'000ull);
}
