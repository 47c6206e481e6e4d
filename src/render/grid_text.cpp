#include "render/grid_text.hpp"

#include <algorithm>

#include "render/layout.hpp"
#include "render/text_lines.hpp"

namespace qtn {
namespace {

constexpr std::string_view kBlank = "______";

class Columns {
 public:
  Columns(const Card& card, const Grid& grid, std::size_t indent, std::string& out) : card_(card), grid_(grid), indent_(indent), out_(out) {}

  void write() {
    for (std::size_t i = 0; i < grid_.heads.size(); ++i) {
      std::size_t width = width_of(plain_words(card_, grid_.heads[i]));
      for (std::size_t row = 0; row < grid_.rows.size(); ++row) width = std::max(width, width_of(cell(row, i)));
      widths_.push_back(width);
    }
    std::size_t whole = indent_;
    for (const std::size_t width : widths_) whole += width + 2;
    whole <= kColumns + 2 ? in_columns() : one_by_one();
  }

 private:
  std::string cell(std::size_t row, std::size_t column) const {
    const std::vector<Range32>& cells = grid_.rows[row];
    const std::string text = column < cells.size() ? plain_words(card_, cells[column]) : std::string();
    return text.empty() && grid_.to_fill ? std::string(kBlank) : text;
  }

  template <class Cell>
  void line(Cell cell_of) {
    std::string line(indent_, ' ');
    for (std::size_t i = 0; i < widths_.size(); ++i) {
      const std::string text = cell_of(i);
      const std::string room(widths_[i] - std::min(widths_[i], width_of(text)), ' ');
      if (i > 0) line += "  ";
      line += is_sum(grid_, i) ? room + text : text + room;
    }
    std::replace(line.begin(), line.end(), kHeld, ' ');
    line.erase(line.find_last_not_of(' ') + 1);
    out_ += line + '\n';
  }

  void in_columns() {
    line([&](std::size_t i) { return plain_words(card_, grid_.heads[i]); });
    for (std::size_t row = 0; row < grid_.rows.size(); ++row) {
      if (grid_.last_is_total && row + 1 == grid_.rows.size()) line([&](std::size_t i) { return std::string(widths_[i], '-'); });
      line([&](std::size_t i) { return cell(row, i); });
    }
  }

  // The name on a line of its own, then each head with what stands under it.
  void one_by_one() {
    for (std::size_t row = 0; row < grid_.rows.size(); ++row) {
      out_.append(indent_, ' ');
      append_lines(out_, cell(row, 0), indent_);
      for (std::size_t i = 1; i < widths_.size(); ++i) {
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
