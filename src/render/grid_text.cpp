#include "render/grid_text.hpp"

#include <algorithm>

#include "render/layout.hpp"
#include "render/text_lines.hpp"

namespace qtn {
namespace {

constexpr std::string_view kBlank = "______";
constexpr std::size_t kLeast = 24;  // a column of words narrower than this is no column

class Columns {
 public:
  Columns(const Card& card, const Grid& grid, std::size_t indent, std::string& out) : card_(card), grid_(grid), indent_(indent), out_(out) {}

  void write() {
    for (std::size_t i = 0; i < columns_beside(grid_); ++i) {
      std::size_t width = width_of(plain_words(card_, grid_.heads[i]));
      for (std::size_t row = 0; row < grid_.rows.size(); ++row) width = std::max(width, width_of(cell(row, i)));
      widths_.push_back(width);
    }
    if (widths_.empty()) return;
    std::size_t others = indent_;
    for (const std::size_t width : widths_) others += width + 2;
    others -= widths_.back() + 2;
    // Words of the last column may go on in a line below.
    const bool may_break = !grid_.to_fill && !is_sum(grid_, widths_.size() - 1) && others + kLeast <= kColumns;
    others + widths_.back() <= kColumns || may_break ? in_columns() : one_by_one();
  }

 private:
  std::string cell(std::size_t row, std::size_t column) const {
    const std::vector<Range32>& cells = grid_.rows[row];
    const std::string text = column < cells.size() ? plain_words(card_, cells[column]) : std::string();
    return text.empty() && grid_.to_fill ? std::string(kBlank) : text;
  }

  template <class Cell>
  void line(Cell cell_of) {
    out_.append(indent_, ' ');
    std::size_t column = indent_;
    for (std::size_t i = 0; i + 1 < widths_.size(); column += widths_[i] + 2, ++i) {
      const std::string text = cell_of(i);
      const std::string room(widths_[i] - std::min(widths_[i], width_of(text)), ' ');
      plain(is_sum(grid_, i) ? room + text + "  " : text + room + "  ");
    }
    const std::string last = cell_of(widths_.size() - 1);
    if (is_sum(grid_, widths_.size() - 1)) out_.append(widths_.back() - std::min(widths_.back(), width_of(last)), ' ');
    append_lines(out_, last, column);
  }
  void plain(std::string text) {
    std::replace(text.begin(), text.end(), kHeld, ' ');
    out_ += text;
  }

  void in_columns() {
    line([&](std::size_t i) { return plain_words(card_, grid_.heads[i]); });
    for (std::size_t row = 0; row < grid_.rows.size(); ++row) {
      if (grid_.last_is_total && row + 1 == grid_.rows.size()) line([&](std::size_t i) { return std::string(widths_[i], '-'); });
      line([&](std::size_t i) { return cell(row, i); });
      if (widths_.size() < grid_.heads.size()) under(row);
    }
  }

  void under(std::size_t row) {
    const std::string text = cell(row, grid_.heads.size() - 1);
    if (text.empty()) return;
    out_.append(indent_ + 2, ' ');
    append_lines(out_, text, indent_ + 2);
  }

  // The name on a line of its own, then each head with what stands under it.
  void one_by_one() {
    for (std::size_t row = 0; row < grid_.rows.size(); ++row) {
      out_.append(indent_, ' ');
      append_lines(out_, cell(row, 0), indent_);
      for (std::size_t i = 1; i < grid_.heads.size(); ++i) {
        const std::string text = cell(row, i);
        if (text.empty()) continue;
        out_.append(indent_ + 2, ' ');
        append_lines(out_, plain_words(card_, grid_.heads[i]) + ": " + text, indent_ + 4);
      }
    }
  }

  const Card& card_;
  const Grid& grid_;
  std::size_t indent_;
  std::string& out_;
  std::vector<std::size_t> widths_;
};

}  // namespace

void render_grid_text(const Card& card, const Grid& grid, std::size_t indent, std::string& out) { Columns(card, grid, indent, out).write(); }

}  // namespace qtn
