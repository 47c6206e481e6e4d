// A card as one self-contained page: no script, nothing fetched. The look is in src/data/card_css.txt.
#include "data/tables.hpp"
#include "render/drawing.hpp"
#include "render/html_runs.hpp"
#include "render/layout.hpp"
#include "render/render.hpp"

namespace qtn {
namespace {

class Page : HtmlRuns {
 public:
  Page(const Card& card, std::string& out) : HtmlRuns(card, out) {}

  void write(bool first, bool last) {
    if (first) head();
    ink_.mark("<article>\n");
    opening();
    draw(card_.drawing, ink_);
    for (const Section& part : card_.parts) section(part);
    after();
    notes();
    trials();
    ink_.mark("</article>\n");
    if (last) ink_.mark("</main>\n</body>\n</html>\n");
    ink_.flush();
  }

 private:
  void head() {
    ink_.mark("<!doctype html>\n<html lang=\"");
    put_escaped(ink_, card_.language);
    ink_.mark(
        "\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        "<meta name=\"color-scheme\" content=\"light dark\">\n<title>");
    title_words();
    ink_.mark("</title>\n<style>\n");
    ink_.put(data::card_css());
    ink_.mark("</style>\n</head>\n<body>\n<main>\n");
  }

  void title_words() {
    raw(card_.title);
    if (card_.edition.empty()) return;
    ink_.mark(", ");
    raw(card_.edition);
  }

  void opening() {
    ink_.mark("<header>\n<h1>");
    runs(card_.title, Role::name);
    ink_.mark("</h1>\n");
    if (!card_.edition.empty()) {
      ink_.mark("<p class=\"edition\">");
      runs(card_.edition);
      ink_.mark("</p>\n");
    }
    facts(card_.head);
    ink_.mark("</header>\n");
    for (const Remark& remark : card_.remarks) {
      if (remark.kind == Remark::Kind::caution) aside(remark);
    }
    watch_box();
  }

  // All that is to be watched at this size, in one box.
  void watch_box() {
    bool open = false;
    for (const Remark& remark : card_.remarks) {
      if (remark.kind != Remark::Kind::watch) continue;
      if (open) ink_.mark("<p>");
      else ink_.mark("<aside class=\"note watch\"><p><strong>Watch:</strong> ");
      runs(remark.runs);
      ink_.mark("</p>");
      open = true;
    }
    if (open) ink_.mark("</aside>\n");
  }

  void facts(Range32 range) {
    if (range.empty()) return;
    ink_.mark("<dl class=\"facts\">\n");
    for (const Fact& fact : facts_of(card_, range)) {
      ink_.mark("<div><dt>");
      runs(fact.label);
      ink_.mark("</dt><dd>");
      runs(fact.value);
      ink_.mark("</dd></div>\n");
    }
    ink_.mark("</dl>\n");
  }

  void heading(Range32 words) {
    if (words.empty()) return;
    ink_.mark("<h2>");
    runs(words, Role::name);
    ink_.mark("</h2>\n");
  }

  // What is taken on one side, what is done on the other; under one another where there is no room.
  void section(const Section& section) {
    const bool named = !section.title.empty();
    ink_.put(section.hours.empty() && section.grids.empty() ? "<section class=\"part\">\n" : "<section class=\"part day\">\n");
    const bool listed = !section.rows.empty() || (!section.grids.empty() && !card_.list_heading.empty());
    if (named || !section.facts.empty() || listed) {
      ink_.mark("<div class=\"take\">\n");
      if (named) heading(section.title);
      else if (listed) heading(card_.list_heading);
      facts(section.facts);
      if (!section.rows.empty()) table(section.rows);
      ink_.mark("</div>\n");
    }
    if (!section.hours.empty()) hours(section.hours);
    for (const Grid& grid : grids_of(card_, section.grids)) this->grid(grid, section.title);
    if (!section.steps.empty()) {
      ink_.mark("<div class=\"method\">\n");
      if (!named) heading(card_.method_heading);
      steps(section.steps, true);
      ink_.mark("</div>\n");
    }
    ink_.mark("</section>\n");
  }

  // What is done with it later: one ruled panel, its parts named at the left.
  void after() {
    if (card_.after.empty()) return;
    ink_.mark("<section class=\"after\">\n");
    heading(card_.after_heading);
    ink_.mark("<dl>\n");
    for (const Section& block : card_.after) {
      ink_.mark("<div><dt>");
      runs(block.title, Role::name);
      ink_.mark("</dt><dd>\n");
      steps(block.steps, wants_numbers(card_, block.steps));
      ink_.mark("</dd></div>\n");
    }
    ink_.mark("</dl>\n</section>\n");
  }

  void hours(Range32 range) {
    ink_.mark("<div class=\"hours\"><table>\n");
    for (const Hour& hour : hours_of(card_, range)) {
      ink_.mark("<tr><td><time datetime=\"");
      put_escaped(ink_, hour.from_utc.empty() ? hour.from_wall : hour.from_utc);
      ink_.mark("\">");
      runs(hour.from, Role::time);
      ink_.mark("</time>");
      if (!hour.until.empty()) {
        ink_.put(hour.rough ? "<span class=\"until\"> ≈ " : "<span class=\"until\"> – ");
        runs(hour.until, Role::time);
        ink_.mark("</span>");
      }
      ink_.mark("</td><th scope=\"row\"><span class=\"dish\">");
      runs(hour.name, Role::name);
      ink_.put(hour.words.empty() ? "</span>" : ":</span> ");
      runs(hour.words);
      if (!hour.aside.empty()) {
        ink_.mark("<span class=\"why\">");
        runs(hour.aside);
        ink_.mark("</span>");
      }
      ink_.mark("</th></tr>\n");
    }
    ink_.mark("</table></div>\n");
  }

  // Wider than a telephone, it is pushed sideways by itself.
  void grid(const Grid& grid, Range32 title) {
    const std::size_t beside = columns_beside(grid);
    const Range32 name = !title.empty() ? title : !card_.list_heading.empty() ? card_.list_heading : card_.title;
    if (grid.narrow) {
      ink_.mark("<div class=\"grid narrow\">");
    } else {
      ink_.mark("<div class=\"grid\" tabindex=\"0\" role=\"group\" aria-label=\"");
      raw(name);
      ink_.mark("\">");
    }
    ink_.put(grid.to_fill ? "<table class=\"fill\">\n" : grid.last_is_total ? "<table class=\"total\">\n" : "<table>\n");
    ink_.mark("<caption>");
    runs(name, Role::name);
    ink_.mark("</caption>\n<thead><tr>");
    for (std::size_t i = 0; i < beside; ++i) {
      ink_.put(is_sum(grid, i) ? "<th scope=\"col\" class=\"sum\">" : "<th scope=\"col\">");
      runs(grid.heads[i]);
      ink_.mark("</th>");
    }
    ink_.mark("</tr></thead>\n");
    // A narrow table has a body for each row and what stands under it.
    if (!grid.narrow) ink_.mark("<tbody>\n");
    for (const std::vector<Range32>& row : grid.rows) {
      if (grid.narrow) ink_.mark("<tbody>\n");
      grid_row(grid, row, beside);
      if (grid.narrow) ink_.mark("</tbody>\n");
    }
    ink_.put(grid.narrow ? "</table></div>\n" : "</tbody>\n</table></div>\n");
  }
  void grid_row(const Grid& grid, const std::vector<Range32>& row, std::size_t beside) {
    const bool under = beside < row.size() && !row[beside].empty();
    ink_.mark("<tr>");
    for (std::size_t i = 0; i < beside; ++i) {
      if (grid.to_fill && i != 0 && (i >= row.size() || row[i].empty())) {
        blank(grid.heads[i]);
        continue;
      }
      ink_.put(i == 0 ? under ? "<th scope=\"rowgroup\">" : "<th scope=\"row\">" : is_sum(grid, i) ? "<td class=\"sum\">" : "<td>");
      if (i < row.size()) runs(row[i], i == 0 ? Role::name : is_sum(grid, i) ? Role::amount : Role::text);
      ink_.put(i == 0 ? "</th>" : "</td>");
    }
    ink_.mark("</tr>\n");
    if (!under) return;
    ink_.mark("<tr class=\"under\"><td colspan=\"");
    ink_.put(std::to_string(beside));
    ink_.mark("\">");
    runs(row[beside]);
    ink_.mark("</td></tr>\n");
  }

  // To be written in; its head goes with it, for a page too narrow to have it above.
  void blank(Range32 head) {
    ink_.mark("<td data-head=\"");
    raw(head);
    ink_.mark("\"></td>");
  }

  void table(Range32 rows) {
    ink_.mark("<table class=\"amounts\"");
    if (!card_.list_heading.empty()) {
      ink_.mark(" aria-label=\"");
      raw(card_.list_heading);
      ink_.mark("\"");
    }
    ink_.mark(">\n");
    const bool two = two_columns(card_, rows);
    if (two && !(card_.first_column.empty() && card_.second_column.empty())) {
      ink_.mark("<thead><tr><th scope=\"col\">");
      runs(card_.first_column);
      ink_.mark("</th><th scope=\"col\">");
      runs(card_.second_column);
      ink_.mark("</th><td></td></tr></thead>\n");
    }
    ink_.mark("<tbody>\n");
    for (const Row& row : rows_of(card_, rows)) line(row, two);
    ink_.mark("</tbody>\n</table>\n");
  }

  // An amount that would push the names off a telephone may break.
  static constexpr std::uint32_t kLongAmount = 18;
  std::uint32_t size_of(Range32 range) const {
    std::uint32_t size = 0;
    for (const Run& run : runs_of(card_, range)) size += run.size;
    return size;
  }

  void line(const Row& row, bool two) {
    const bool second = !two && !row.second.empty();
    const bool long_one = size_of(row.amount) + (second ? size_of(row.second) + 3 : 0) > kLongAmount;
    if (row.alternative) {
      ink_.put(long_one ? "<tr class=\"or\"><td class=\"long\"><i>or</i> " : "<tr class=\"or\"><td><i>or</i> ");
    } else {
      ink_.put(long_one ? "<tr><td class=\"long\">" : "<tr><td>");
    }
    runs(row.amount, Role::amount);
    if (two) {
      ink_.mark("</td><td class=\"second\">");
      runs(row.second, Role::second);
    } else if (second) {
      ink_.mark(" <span class=\"second\">(");
      runs(row.second, Role::second);
      ink_.mark(")</span>");
    }
    ink_.mark("</td><th scope=\"row\">");
    runs(row.name, Role::name);
    if (!row.rest.empty()) {
      ink_.mark("<span class=\"rest\">, ");
      runs(row.rest);
      ink_.mark("</span>");
    }
    ink_.mark("</th></tr>\n");
  }

  void steps(Range32 range, bool numbers) {
    bool list = false, item = false;
    StepKind before = StepKind::note;
    for (const CardStep& step : steps_of(card_, range)) {
      const bool note = is_aside(step.kind);
      if (numbers && !note && !(item && shares_number(before, step.kind))) {
        if (item) ink_.mark("</li>\n");
        if (!list) ink_.mark("<ol>\n");
        ink_.mark("<li>");
        list = item = true;
      }
      if (note) {
        ink_.put(step.kind == StepKind::caution ? "<aside class=\"note care\">" : "<aside class=\"note\">");
      }
      ink_.mark("<p>");
      if (!step.label.empty()) {
        ink_.mark("<span class=\"opener\">");
        runs(step.label);
        ink_.mark(":</span> ");
      }
      runs(step.runs);
      ink_.mark("</p>");
      if (note) ink_.mark("</aside>");
      if (!note) before = step.kind;
    }
    if (item) ink_.mark("</li>\n");
    if (list) ink_.mark("</ol>\n");
  }

  void aside(const Remark& remark) {
    if (remark.kind == Remark::Kind::caution) {
      ink_.mark("<aside class=\"caution\"><p>");
    } else {
      ink_.mark("<aside class=\"note\"><p>");
    }
    if (remark.kind != Remark::Kind::note || card_.notes_heading.empty()) {
      ink_.mark("<strong>");
      ink_.put(word_of(remark.kind));
      ink_.mark(":</strong> ");
    }
    runs(remark.runs);
    ink_.mark("</p></aside>\n");
  }

  void notes() {
    bool open = false;
    for (const Remark& remark : card_.remarks) {
      if (stands_first(remark.kind)) continue;
      if (!open) {
        ink_.mark("<section class=\"notes\">\n");
        heading(card_.notes_heading);
        open = true;
      }
      aside(remark);
    }
    if (open) ink_.mark("</section>\n");
  }

  void trials() {
    if (card_.trials.empty()) return;
    ink_.mark("<section class=\"trials\">\n");
    heading(card_.trials_heading);
    ink_.mark("<dl>\n");
    for (const TrialLine& trial : card_.trials) {
      ink_.mark("<div><dt>");
      date(trial.date);
      ink_.mark("</dt><dd>");
      runs(trial.runs);
      ink_.mark("</dd></div>\n");
    }
    ink_.mark("</dl>\n</section>\n");
  }
};

}  // namespace

void render_html(const Card& card, std::string& out) {
  out.reserve(out.size() + data::card_css().size() + 1024 + 3 * card.text.size() + 48 * card.rows.size());
  Page(card, out).write(true, true);
}

void render_html(std::span<const Card> cards, std::string& out) {
  for (const Card& card : cards) Page(card, out).write(&card == &cards.front(), &card == &cards.back());
}

}  // namespace qtn
