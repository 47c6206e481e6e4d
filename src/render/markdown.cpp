// A card in CommonMark that reads well as it stands: headings, lists, numbered steps, remarks as quotations.
#include "render/layout.hpp"
#include "render/markdown_escape.hpp"
#include "render/render.hpp"

namespace qtn {
namespace {

class Sheet {
 public:
  Sheet(const Card& card, std::string& out) : card_(card), out_(out), top_(out.size()) {}

  void write() {
    heading("# ", card_.title);
    if (!card_.edition.empty()) paragraph("", card_.edition);
    facts(card_.head);
    for (const Remark& remark : card_.remarks) {
      if (remark.kind == Remark::Kind::caution) quotation(remark);
    }
    watch_box();
    for (const Section& part : card_.parts) section(part);
    after();
    notes();
    trials();
  }

 private:
  // A blank line between blocks.
  void gap() {
    if (out_.size() > top_) out_ += '\n';
  }
  void begin(std::string_view opening) {
    out_ += opening;
    block_ = out_.size();
  }
  void end() {
    guard_block(out_, block_);
    out_ += '\n';
  }

  void heading(std::string_view opening, Range32 words) {
    if (words.empty()) return;
    gap();
    begin(opening);
    runs(words);
    guard_heading(out_, block_);
    out_ += '\n';
  }
  void paragraph(std::string_view opening, Range32 range) {
    gap();
    begin(opening);
    runs(range);
    end();
  }
  // Another bullet than the ingredients have, so that two lists never run together.
  void facts(Range32 range) {
    if (range.empty()) return;
    gap();
    for (const Fact& fact : facts_of(card_, range)) {
      begin("* ");
      labelled(fact.label);
      runs(fact.value);
      end();
    }
  }
  void labelled(Range32 label) {
    if (label.empty()) return;
    runs(label);
    out_ += ": ";
  }

  void section(const Section& section) {
    const bool named = !section.title.empty();
    heading("## ", named || (section.rows.empty() && section.grids.empty()) ? section.title : card_.list_heading);
    facts(section.facts);
    if (!section.rows.empty()) {
      gap();
      bool parent = false;
      for (const Row& row : rows_of(card_, section.rows)) {
        line(row, row.alternative && parent);
        parent = true;
      }
    }
    hours(section.hours);
    for (const Grid& grid : grids_of(card_, section.grids)) this->grid(grid);
    if (section.steps.empty()) return;
    if (!named) heading("## ", card_.method_heading);
    steps(section.steps, true);
  }

  // What is done with it later, under one heading.
  void after() {
    if (card_.after.empty()) return;
    heading("## ", card_.after_heading);
    for (const Section& block : card_.after) {
      heading("### ", block.title);
      steps(block.steps, wants_numbers(card_, block.steps));
    }
  }

  void hours(Range32 range) {
    if (range.empty()) return;
    gap();
    for (const Hour& hour : hours_of(card_, range)) {
      begin("- ");
      out_ += "**";
      runs(hour.from);
      if (!hour.until.empty()) {
        out_ += hour.rough ? " ≈ " : " – ";
        runs(hour.until);
      }
      out_ += "** ";
      runs(hour.name);
      if (!hour.words.empty()) {
        out_ += ": ";
        runs(hour.words);
      }
      if (!hour.aside.empty()) {
        out_ += " (";
        runs(hour.aside);
        out_ += ')';
      }
      end();
    }
  }

  // A table as most readers of Markdown know it; as it stands it reads in columns too.
  void grid(const Grid& grid) {
    if (grid.heads.empty()) return;
    gap();
    for (const Range32 head : grid.heads) cell(head, false);
    out_ += "|\n";
    for (std::size_t i = 0; i < grid.heads.size(); ++i) out_ += is_sum(grid, i) ? "| ---: " : "| --- ";
    out_ += "|\n";
    for (const std::vector<Range32>& row : grid.rows) {
      for (std::size_t i = 0; i < grid.heads.size(); ++i) cell(i < row.size() ? row[i] : Range32{}, grid.to_fill);
      out_ += "|\n";
    }
  }
  // A bar in the words would end the cell.
  void cell(Range32 range, bool blank) {
    begin("| ");
    runs(range);
    if (range.empty() && blank) out_ += "\\_\\_\\_\\_";
    for (std::size_t at = block_; (at = out_.find('|', at)) != std::string::npos; at += 2) {
      if (at == 0 || out_[at - 1] != '\\') out_.insert(at, 1, '\\');
      else --at;
    }
    out_ += ' ';
  }

  void line(const Row& row, bool inner) {
    begin(inner ? "  - " : "- ");
    if (row.alternative) out_ += kOr;
    runs(row.amount);
    if (!row.second.empty()) {
      out_ += " (";
      runs(row.second);
      out_ += ')';
    }
    if (!row.amount.empty() || !row.second.empty()) out_ += ' ';
    runs(row.name);
    if (!row.rest.empty()) {
      out_ += ", ";
      runs(row.rest);
    }
    end();
  }

  void steps(Range32 range, bool numbers) {
    unsigned number = 0;
    std::string indent;
    StepKind before = StepKind::note;
    for (const CardStep& step : steps_of(card_, range)) {
      gap();
      if (is_aside(step.kind)) {
        out_ += indent;
        begin("> ");
      } else if (!numbers || (number > 0 && shares_number(before, step.kind))) {
        begin(indent);
      } else {
        const std::string opening = std::to_string(++number) + ". ";
        indent.assign(opening.size(), ' ');
        begin(opening);
      }
      if (!is_aside(step.kind)) before = step.kind;
      labelled(step.label);
      runs(step.runs);
      end();
    }
  }

  void quotation(const Remark& remark) {
    gap();
    begin("> ");
    if (remark.kind != Remark::Kind::note || card_.notes_heading.empty()) {
      out_ += "**";
      out_ += word_of(remark.kind);
      out_ += ":** ";
    }
    runs(remark.runs);
    end();
  }

  // All that is to be watched at this size, in one quotation.
  void watch_box() {
    bool open = false;
    for (const Remark& remark : card_.remarks) {
      if (remark.kind != Remark::Kind::watch) continue;
      if (open) {
        out_ += ">\n";
        begin("> ");
        runs(remark.runs);
        end();
      } else {
        quotation(remark);
      }
      open = true;
    }
  }

  void notes() {
    bool open = false;
    for (const Remark& remark : card_.remarks) {
      if (stands_first(remark.kind)) continue;
      if (!open) heading("## ", card_.notes_heading);
      open = true;
      quotation(remark);
    }
  }

  void trials() {
    if (card_.trials.empty()) return;
    heading("## ", card_.trials_heading);
    gap();
    for (const TrialLine& trial : card_.trials) {
      begin("- ");
      labelled(trial.date);
      runs(trial.runs);
      end();
    }
  }

  // Runs of one link, then runs of one weight in it, then runs of code in that.
  using Runs = std::span<const Run>;
  template <class Same>
  static std::size_t stretch(Runs runs, std::size_t from, Same same) {
    std::size_t to = from + 1;
    while (to < runs.size() && same(runs[from], runs[to])) ++to;
    return to;
  }

  void runs(Range32 range) {
    const Runs all = runs_of(card_, range);
    for (std::size_t i = 0; i < all.size();) {
      const std::size_t to = stretch(all, i, [](const Run& a, const Run& b) { return a.link == b.link; });
      const std::string_view target = link_of(card_, all[i]);
      if (!target.empty()) {
        if (out_.size() > block_ && out_.back() == '!') out_.insert(out_.size() - 1, 1, '\\');  // or it is an image
        out_ += '[';
      }
      weights(all.subspan(i, to - i), target.empty() ? next_character(all, to) : ']');
      if (!target.empty()) {
        out_ += "](";
        append_destination(out_, target);
        out_ += ')';
      }
      i = to;
    }
  }

  void weights(Runs all, char after) {
    constexpr int kWeight = kStrong | kEmphasis;
    for (std::size_t i = 0; i < all.size();) {
      const std::size_t to =
          stretch(all, i, [](const Run& a, const Run& b) { return ((a.style ^ b.style) & kWeight) == 0; });
      const std::size_t at = out_.size();
      words(all.subspan(i, to - i));
      const char next = to < all.size() ? next_character(all, to) : after;
      emphasize(at, (all[i].style & kStrong ? 2u : 0u) + (all[i].style & kEmphasis ? 1u : 0u), next);
      i = to;
    }
  }

  // Puts the marks around what was written from `at` on, blanks at its ends left outside.
  void emphasize(std::size_t at, std::size_t stars, char after) {
    std::size_t first = at, last = out_.size();
    while (first < last && out_[first] == ' ') ++first;
    while (last > first && out_[last - 1] == ' ') --last;
    if (stars == 0 || first == last) return;
    if (first == closed_) return;  // marks that touch would be read as one
    const char before = first > block_ ? out_[first - 1] : ' ';
    const std::string_view core = std::string_view(out_).substr(first, last - first);
    if (!can_emphasize(before, core, last < out_.size() ? ' ' : after)) return;
    out_.insert(last, stars, '*');
    out_.insert(first, stars, '*');
    closed_ = last + 2 * stars;
  }

  void words(Runs all) {
    for (std::size_t i = 0; i < all.size();) {
      const std::size_t to = stretch(all, i, [](const Run& a, const Run& b) {
        return ((a.style ^ b.style) & kCode) == 0 && (a.role == Role::struck) == (b.role == Role::struck);
      });
      std::string text;
      for (const Run& run : all.subspan(i, to - i)) text += card_.view(run);
      const bool struck = all[i].role == Role::struck;
      if (struck) out_ += kLeftOut;
      if ((all[i].style & kCode) && can_fence(text, !link_of(card_, all[i]).empty())) {
        append_code_span(out_, text);
        fenced_ = out_.size();
      } else {
        append_markdown(out_, text);
      }
      if (struck) out_ += ')';
      i = to;
    }
  }

  // Fences that touch would be read as one; a ] in the code of a link could end its text, or make it a definition.
  bool can_fence(std::string_view code, bool in_link) const {
    return out_.size() != fenced_ && !(in_link && code.find(']') != std::string_view::npos);
  }

  // What will be written next, as far as emphasis must know: a blank at the end, a mark for whatever opens with one.
  char next_character(Runs all, std::size_t at) const {
    for (; at < all.size(); ++at) {
      if (all[at].role == Role::struck || (all[at].style & kCode) != 0 || !link_of(card_, all[at]).empty()) return '(';
      if (all[at].size == 0) continue;
      const char c = card_.text[all[at].begin];
      return static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? ' ' : c;
    }
    return ' ';
  }

  const Card& card_;
  std::string& out_;
  std::size_t top_;
  std::size_t block_ = 0;  // where the content of the present block begins
  // Just behind the last closing mark of emphasis, and of code.
  std::size_t closed_ = std::string::npos, fenced_ = std::string::npos;
};

}  // namespace

void render_markdown(const Card& card, std::string& out) {
  out.reserve(out.size() + 512 + 2 * card.text.size());
  Sheet(card, out).write();
}

}  // namespace qtn
