#include "diag/snippet.hpp"

#include <algorithm>

#include "diag/glyphs.hpp"

namespace qtn {
namespace {

constexpr int kTab = 4;
constexpr std::string_view kCut = "…";  // stands where a line was cut; one column

}  // namespace

Snippet::Snippet(std::string_view text, Span line, Span place, int width) : line_(line) {
  read(text, clip(place), width);
  draw(first_cell(clip(place), width), width);
}

Span Snippet::clip(Span place) const {
  const auto begin = std::clamp(place.begin, line_.begin, line_.end);
  return {begin, std::clamp(place.end, begin, line_.end)};
}

// Cells from far enough before the place to far enough after it; a line of a megabyte is not walked.
void Snippet::read(std::string_view text, Span place, int width) {
  const auto reach = static_cast<std::uint32_t>(width) * 6;
  std::uint32_t at = place.begin - line_.begin > reach ? place.begin - reach : line_.begin;
  const std::uint32_t end = line_.end - place.begin > reach ? place.begin + reach : line_.end;
  for (int i = 0; at != line_.begin && i < 3 && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80; ++i) ++at;
  more_left_ = at != line_.begin;
  const std::string_view whole = text.substr(0, line_.end);
  while (at < end) {
    const Glyph glyph = glyph_at(whole, at);
    const Span bytes{at, at + static_cast<std::uint32_t>(glyph.bytes)};
    at = bytes.end;
    Shown shown = show(glyph.code);
    const int column = end_column();
    if (glyph.code == '\t') {
      shown.columns = kTab - column % kTab;
      shown.text.assign(static_cast<std::size_t>(shown.columns), ' ');
    } else if (glyph.code == 0xFEFF && bytes.begin == 0) {
      shown = {"", 0};  // the mark that some editors put first says nothing to a cook
    } else if (shown.columns == 0 && (cells_.empty() || cells_.back().columns == 0)) {
      shown = {"◌" + shown.text, 1};  // a mark with no letter to sit on
    } else if (shown.columns == 0) {
      cells_.back().bytes.end = bytes.end;
      cells_.back().text += shown.text;
      continue;
    }
    cells_.push_back({bytes, std::move(shown.text), column, shown.columns});
  }
  more_right_ = at < line_.end;
}

// The first cell to draw, so that the place is seen with something of what stands before it.
std::size_t Snippet::first_cell(Span place, int width) const {
  const auto column_of = [&](std::uint32_t byte) {
    const auto cell = std::find_if(cells_.begin(), cells_.end(), [&](const Cell& c) { return byte < c.bytes.end; });
    return cell == cells_.end() ? end_column() : cell->column;
  };
  const int from = column_of(place.begin);
  const int to = std::max(from + 1, place.empty() ? 0 : column_of(place.end));
  const int total = std::max(end_column(), to);
  if (!more_left_ && (to < width || (total <= width && !more_right_))) return 0;
  const int room = width - 2;  // a cut mark on either side
  int start = from - std::max(room / 5, (room - (to - from)) / 2);
  if (!more_right_) start = std::min(start, total - room);
  const auto cell = std::find_if(cells_.begin(), cells_.end(), [&](const Cell& c) { return c.column >= start; });
  if (cell == cells_.end() && !cells_.empty()) return cells_.size() - 1;
  return static_cast<std::size_t>(cell - cells_.begin());
}

void Snippet::draw(std::size_t first, int width) {
  cells_.erase(cells_.begin(), cells_.begin() + static_cast<std::ptrdiff_t>(first));
  more_left_ = more_left_ || first != 0;
  int column = more_left_ ? 1 : 0;
  if (more_left_) text_ = kCut;
  std::size_t drawn = 0;
  int left = 0;
  for (const Cell& cell : cells_) left += cell.columns;
  for (; drawn < cells_.size(); ++drawn) {
    Cell& cell = cells_[drawn];
    const bool rest_fits = !more_right_ && column + left <= width;
    if (!rest_fits && column + cell.columns > width - 1) break;
    cell.column = column;
    column += cell.columns;
    left -= cell.columns;
    text_ += cell.text;
  }
  more_right_ = more_right_ || drawn != cells_.size();
  cells_.resize(drawn);
  if (more_right_) text_ += kCut;
}

Snippet::Carets Snippet::carets(Span place) const {
  place = clip(place);
  int from = -1, to = -1;
  for (const Cell& cell : cells_) {
    const bool covered = place.empty() ? place.begin >= cell.bytes.begin && place.begin < cell.bytes.end
                                       : place.begin < cell.bytes.end && place.end > cell.bytes.begin;
    if (!covered) continue;
    if (from < 0) from = cell.column;
    to = place.empty() ? cell.column : cell.column + cell.columns;
  }
  if (from < 0) from = more_left_ && cells_.empty() ? 1 : end_column();
  return {from, std::max(1, to - from)};
}

bool Snippet::shows(Span place) const {
  if (place.begin < line_.begin || place.begin > line_.end) return false;
  if (cells_.empty()) return !more_left_ && !more_right_;
  if (place.begin < cells_.front().bytes.begin) return false;
  return place.begin < cells_.back().bytes.end || (!more_right_ && place.begin <= line_.end);
}

}  // namespace qtn
