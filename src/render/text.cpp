// A card in plain text: amounts in a column, steps numbered, remarks known by their first word.
#include <algorithm>

#include "render/grid_text.hpp"
#include "render/layout.hpp"
#include "render/render.hpp"
#include "render/text_lines.hpp"

namespace qtn {
namespace {

constexpr std::size_t kIndent = 2;
constexpr std::size_t kWatchIndent = 7;  // under the first word behind "Watch: "

class Leaf {
 public:
  Leaf(const Card& card, std::string& out) : card_(card), out_(out), top_(out.size()) {}

  void write() {
    append_lines(out_, words(card_.title), 0);
    if (!card_.edition.empty()) append_lines(out_, words(card_.edition), 0);
    facts(card_.head, 0);
    for (const Remark& remark : card_.remarks) {
      if (remark.kind == Remark::Kind::caution) this->remark(remark);
    }
    watch_box();
    for (const Section& part : card_.parts) section(part);
    after();
    notes();
    trials();
  }

 private:
  std::string words(Range32 range) const { return plain_words(card_, range); }
  void gap() {
    if (out_.size() > top_) out_ += '\n';
  }
  void heading(Range32 range) {
    if (range.empty()) return;
    gap();
    append_lines(out_, words(range), 0);
  }
  // `text` at the right or the left of a column.
  void right(std::string_view text, std::size_t width) {
    out_.append(width - std::min(width, width_of(text)), ' ');
    cell(text);
  }
  void left(std::string_view text, std::size_t width) {
    cell(text);
    out_.append(width - std::min(width, width_of(text)), ' ');
  }
  void cell(std::string_view text) {
    for (char c : text) out_ += c == kHeld ? ' ' : c;
  }

  void facts(Range32 range, std::size_t indent) {
    if (range.empty()) return;
    if (indent == 0) gap();
    std::size_t width = 0;
    for (const Fact& fact : facts_of(card_, range)) width = std::max(width, width_of(words(fact.label)));
    width = std::min(width, kColumns / 3);
    for (const Fact& fact : facts_of(card_, range)) {
      const std::string label = words(fact.label);
      out_.append(indent, ' ');
      left(label, width);
      out_ += "  ";
      append_lines(out_, words(fact.value), indent + std::max(width, width_of(label)) + 2);
    }
  }

  void section(const Section& section) {
    const bool named = !section.title.empty();
    if (named) {
      heading(section.title);
    } else if (!section.rows.empty() || !section.grids.empty()) {
      heading(card_.list_heading);
    }
    facts(section.facts, kIndent);
    if (!section.facts.empty() && !section.rows.empty()) gap();
    table(section.rows);
    hours(section.hours);
    const bool headed = named || !card_.list_heading.empty();
    if (!section.grids.empty() && !(headed && section.rows.empty() && section.facts.empty())) gap();
    for (const Grid& grid : grids_of(card_, section.grids)) render_grid_text(card_, grid, kIndent, out_);
    if (section.steps.empty()) return;
    if (!named) heading(card_.method_heading);
    if (!section.rows.empty() || !section.facts.empty()) {
      if (named) gap();
    }
    steps(section.steps, kIndent, true);
  }

  // What is done with it later: a headed block, the parts named at the left.
  void after() {
    if (card_.after.empty()) return;
    heading(card_.after_heading);
    std::size_t width = 0;
    for (const Section& block : card_.after) width = std::max(width, width_of(words(block.title)));
    const std::size_t column = kIndent + width + 2;
    for (const Section& block : card_.after) {
      const std::string title = words(block.title);
      steps(block.steps, column, wants_numbers(card_, block.steps), std::string(kIndent, ' ') + title + std::string(column - kIndent - width_of(title), ' '));
    }
  }

  // The hour in a column, then what, then who and why on a line of their own.
  void hours(Range32 range) {
    constexpr std::size_t kColumn = kIndent + 19;
    for (const Hour& hour : hours_of(card_, range)) {
      out_.append(kIndent, ' ');
      std::string when = words(hour.from);
      if (!hour.until.empty()) when += (hour.rough ? " ≈ " : " – ") + words(hour.until);
      left(when, kColumn - kIndent);
      std::string text = words(hour.name);
      if (!hour.words.empty()) text += ": " + words(hour.words);
      append_lines(out_, text, kColumn);
      if (hour.aside.empty()) continue;
      out_.append(kColumn, ' ');
      append_lines(out_, "(" + words(hour.aside) + ")", kColumn);
    }
  }

  std::string amount_of(const Row& row, bool two) const {
    std::string amount(row.alternative ? kOr : "");
    amount += words(row.amount);
    if (!two && !row.second.empty()) amount += " (" + words(row.second) + ")";
    while (!amount.empty() && amount.back() == ' ') amount.pop_back();
    return amount;
  }

  void table(Range32 rows) {
    if (rows.empty()) return;
    const bool two = two_columns(card_, rows);
    const bool heads = two && !(card_.first_column.empty() && card_.second_column.empty());
    const std::string first_head = words(card_.first_column), second_head = words(card_.second_column);
    std::size_t first = heads ? width_of(first_head) : 0;
    std::size_t second = heads ? width_of(second_head) : 0;
    for (const Row& row : rows_of(card_, rows)) {
      first = std::max(first, width_of(amount_of(row, two)));
      if (two) second = std::max(second, width_of(words(row.second)));
    }
    // A wide amount stands out of its column rather than leave no room for the names.
    first = std::min(first, two ? kColumns / 4 : kColumns * 2 / 5);
    second = std::min(second, kColumns / 3);
    if (heads) {
      out_.append(kIndent, ' ');
      right(first_head, first);
      out_ += "  ";
      cell(second_head);
      out_ += '\n';
    }
    for (const Row& row : rows_of(card_, rows)) line(row, first, second);
  }

  void line(const Row& row, std::size_t first, std::size_t second) {
    out_.append(kIndent, ' ');
    right(amount_of(row, second > 0), first);
    out_ += "  ";
    std::size_t column = kIndent + first + 2;
    if (second > 0) {
      left(words(row.second), second);
      out_ += "  ";
      column += second + 2;
    }
    std::string name = words(row.name);
    if (!row.rest.empty()) name += ", " + words(row.rest);
    append_lines(out_, name, column);
  }

  // `lead`: what stands before the first of them, as wide as the indent.
  void steps(Range32 range, std::size_t indent, bool numbers, std::string lead = {}) {
    unsigned number = 0;
    StepKind before = StepKind::note;
    for (const CardStep& step : steps_of(card_, range)) {
      std::string opening;
      if (!is_aside(step.kind)) {
        if (number == 0 || !shares_number(before, step.kind)) opening = std::to_string(++number) + ".";
        before = step.kind;
      }
      if (lead.empty()) lead.assign(indent, ' ');
      cell(lead);
      lead.clear();
      if (numbers) right(opening, 2), out_ += "  ";
      std::string text = words(step.label);
      if (!text.empty()) text += ": ";
      text += words(step.runs);
      append_lines(out_, text, indent + (numbers ? std::max<std::size_t>(2, opening.size()) + 2 : 0));
    }
  }

  void remark(const Remark& remark) {
    gap();
    std::string text(word_of(remark.kind));
    text += ": " + words(remark.runs);
    append_lines(out_, text, 0);
  }

  // All that is to be watched at this size, together.
  void watch_box() {
    bool open = false;
    for (const Remark& remark : card_.remarks) {
      if (remark.kind != Remark::Kind::watch) continue;
      if (!open) gap();
      const std::string front = open ? std::string(kWatchIndent, kHeld) : std::string(word_of(remark.kind)) + ": ";
      append_lines(out_, front + words(remark.runs), kWatchIndent);
      open = true;
    }
  }

  void notes() {
    bool open = false;
    for (const Remark& remark : card_.remarks) {
      if (stands_first(remark.kind)) continue;
      if (!open) heading(card_.notes_heading);
      if (remark.kind != Remark::Kind::note || card_.notes_heading.empty()) {
        this->remark(remark);
      } else {
        if (open) gap();
        out_.append(kIndent, ' ');
        append_lines(out_, words(remark.runs), kIndent);
      }
      open = true;
    }
  }

  void trials() {
    if (card_.trials.empty()) return;
    heading(card_.trials_heading);
    for (const TrialLine& trial : card_.trials) {
      const std::string date = words(trial.date);
      out_.append(kIndent, ' ');
      cell(date);
      out_ += "  ";
      append_lines(out_, words(trial.runs), kIndent + width_of(date) + 2);
    }
  }

  const Card& card_;
  std::string& out_;
  std::size_t top_;
};

}  // namespace

void render_text(const Card& card, std::string& out) {
  Leaf(card, out).write();
}

}  // namespace qtn
