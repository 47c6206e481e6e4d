#include "diag/nearest.hpp"

#include <algorithm>
#include <array>

#include "diag/glyphs.hpp"

namespace qtn {
namespace {

// Code points without case (ASCII and the Latin letters of Western Europe). Longer than this is no word: the rest
// is not looked at, and nothing is near it.
constexpr std::size_t kLongest = 64;
struct Letters {
  std::array<char32_t, kLongest> at;
  std::size_t size = 0;
  bool too_long = false;

  explicit Letters(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
      if (size == kLongest) {
        too_long = true;
        return;
      }
      const Glyph glyph = glyph_at(text, i);
      const char32_t c = glyph.code;
      const bool capital = (c >= 'A' && c <= 'Z') || (c >= 0xC0 && c <= 0xDE && c != 0xD7);
      at[size++] = capital ? c + 0x20 : c;
      i += glyph.bytes;
    }
  }
};

// Optimal string alignment, row by row.
int distance(const Letters& a, const Letters& b, int most) {
  const int far = most + 1;
  const int gap = static_cast<int>(std::max(a.size, b.size) - std::min(a.size, b.size));
  if (gap > most || a.too_long || b.too_long) return far;
  using Row = std::array<int, kLongest + 1>;
  Row rows[3];
  Row *older = &rows[0], *before = &rows[1], *now = &rows[2];
  for (std::size_t j = 0; j <= b.size; ++j) (*before)[j] = static_cast<int>(j);
  int least_before = 0;
  for (std::size_t i = 1; i <= a.size; ++i) {
    int least = (*now)[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size; ++j) {
      const bool same = a.at[i - 1] == b.at[j - 1];
      int cost = std::min({(*before)[j] + 1, (*now)[j - 1] + 1, (*before)[j - 1] + (same ? 0 : 1)});
      if (i > 1 && j > 1 && a.at[i - 1] == b.at[j - 2] && a.at[i - 2] == b.at[j - 1])
        cost = std::min(cost, (*older)[j - 2] + 1);
      (*now)[j] = cost;
      least = std::min(least, cost);
    }
    // A swap reaches back two rows, so both must be too far.
    if (least > most && least_before > most) return far;
    least_before = least;
    std::swap(older, before);
    std::swap(before, now);
  }
  return std::min((*before)[b.size], far);
}

}  // namespace

int distance(std::string_view a, std::string_view b, int most) {
  return distance(Letters(a), Letters(b), most);
}

std::vector<std::string_view> nearest(std::string_view wrong, std::span<const std::string_view> known,
                                      std::size_t limit) {
  const Letters from(wrong);
  if (from.size == 0 || from.too_long || limit == 0) return {};
  const int most = std::max(1, static_cast<int>(from.size / 3));
  struct Near {
    int distance;
    std::string_view word;
  };
  std::vector<Near> near;
  for (const std::string_view word : known) {
    if (word.size() + static_cast<std::size_t>(most) < from.size) continue;  // it has no more letters than bytes
    const Letters to(word);
    const int steps = distance(from, to, most);
    if (steps > most || steps >= static_cast<int>(std::max(from.size, to.size))) continue;
    if (std::none_of(near.begin(), near.end(), [&](const Near& n) { return n.word == word; }))
      near.push_back({steps, word});
  }
  std::stable_sort(near.begin(), near.end(), [](const Near& a, const Near& b) { return a.distance < b.distance; });
  std::vector<std::string_view> words;
  for (std::size_t i = 0; i < near.size() && i < limit; ++i) words.push_back(near[i].word);
  return words;
}

std::string did_you_mean(std::span<const std::string_view> words) {
  if (words.empty()) return {};
  std::string text = "Did you mean ";
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i != 0) text += i + 1 == words.size() ? " or " : ", ";
    text.append("`").append(words[i]).append("`");
  }
  return text + "?";
}

}  // namespace qtn
