// A baker's ledger: names at the left, figures at the right under one another, a rule above each sum.
#include <algorithm>
#include <array>

#include "render/ledger.hpp"
#include "render/text_lines.hpp"

namespace qtn {
namespace {

constexpr std::size_t kIndent = 2, kGap = 3;
constexpr std::size_t kFigures = 3;  // grams, of the base, of the whole

struct Line {
  std::string name;
  std::array<std::string, kFigures> figures;
};

class Page {
 public:
  Page(const LedgerTable& table, std::string& out) : table_(table), out_(out) {}

  void write() {
    collect();
    measure();
    const bool based = table_.base != FormulaBase::none;
    line({plain_text(table_.title),
          {"grams", !based ? "" : table_.base == FormulaBase::flour ? "of flour" : "of base", "of whole"}});
    rule();
    for (const Line& one : rows_) line(one);
    rule();
    line(together_);
    if (!totals_.empty()) out_ += '\n';
    for (const Line& one : totals_) line(one);
    if (table_.base == FormulaBase::named) note("Base: " + table_.base_name + ".", true);
    for (std::size_t i = 0; i < table_.notes.size(); ++i)
      note(table_.notes[i], i == 0 && table_.base != FormulaBase::named);
  }

 private:
  static std::string per_cent(const LedgerFigure& figure) {
    return figure.text.empty() ? figure.text : figure.text + " %";
  }

  void collect() {
    const auto row = [](const LedgerRow& one) {
      const std::string grams = one.grams.text.empty() ? "?" : one.grams.text;
      return Line{plain_text(one.name), {grams, per_cent(one.of_base), per_cent(one.of_whole)}};
    };
    for (const LedgerRow& one : table_.rows) rows_.push_back(row(one));
    together_ = row(table_.together);
    for (const LedgerTotal& one : table_.totals)
      totals_.push_back({one.name, {one.grams.text, per_cent(one.of_flour), per_cent(one.of_whole)}});
  }

  void measure() {
    name_width_ = std::max<std::size_t>(width_of(plain_text(table_.title)), 24);
    const auto widen = [&](const Line& one) {
      name_width_ = std::max(name_width_, width_of(one.name));
      for (std::size_t i = 0; i < kFigures; ++i) widths_[i] = std::max(widths_[i], width_of(one.figures[i]));
    };
    for (const Line& one : rows_) widen(one);
    for (const Line& one : totals_) widen(one);
    widen(together_);
    name_width_ = std::min<std::size_t>(name_width_, 40);
    if (table_.base == FormulaBase::none) widths_[1] = 0;
  }

  void line(const Line& one) {
    out_.append(kIndent, ' ');
    out_ += one.name;
    std::size_t at = width_of(one.name);
    if (at > name_width_) out_ += '\n', out_.append(kIndent, ' '), at = 0;
    out_.append(name_width_ - at, ' ');
    for (std::size_t i = 0; i < kFigures; ++i) {
      if (widths_[i] == 0) continue;
      out_.append(kGap + widths_[i] - std::min(widths_[i], width_of(one.figures[i])), ' ');
      out_ += one.figures[i];
    }
    while (out_.back() == ' ') out_.pop_back();
    out_ += '\n';
  }

  void rule() {
    std::size_t width = name_width_;
    for (const std::size_t one : widths_) width += one == 0 ? 0 : kGap + one;
    out_.append(kIndent, ' ');
    out_.append(width, '-');
    out_ += '\n';
  }

  void note(const std::string& text, bool first) {
    if (first) out_ += '\n';
    out_.append(kIndent, ' ');
    append_lines(out_, plain_text(text), kIndent);
  }

  const LedgerTable& table_;
  std::string& out_;
  std::vector<Line> rows_, totals_;
  Line together_;
  std::size_t name_width_ = 0;
  std::array<std::size_t, kFigures> widths_{5, 8, 8};  // of their headings
};

}  // namespace

void render_ledger_text(const Ledger& ledger, std::string& out) {
  append_lines(out, plain_text(ledger.title), 0);
  if (!ledger.edition.empty()) append_lines(out, plain_text(ledger.edition), 0);
  for (const LedgerTable& table : ledger.tables) {
    out += '\n';
    Page(table, out).write();
  }
}

}  // namespace qtn
