// Problems for people: a note in the margin, as a second cook would write it. Colour only repeats what words say.
#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "diag/glyphs.hpp"
#include "diag/print_parts.hpp"
#include "diag/snippet.hpp"

namespace qtn {
namespace {

constexpr int kNarrowest = 40;  // a narrower page is written as if it had these columns
constexpr int kReadable = 100;  // sentences are not spread wider than this
constexpr int kIndent = 4;

enum class Ink { plain, strong, faint, error, warning, note, mend };
constexpr std::string_view kInk[] = {"", "\x1b[1m", "\x1b[2m", "\x1b[1;31m", "\x1b[1;33m", "\x1b[1;36m", "\x1b[32m"};

Ink ink_of(Severity severity) {
  return severity == Severity::error ? Ink::error : severity == Severity::warning ? Ink::warning : Ink::note;
}

std::string spaces(int count) {
  return std::string(static_cast<std::size_t>(std::max(0, count)), ' ');
}

std::string counted(std::size_t count, std::string_view what) {
  return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
}

class TextPrinter {
 public:
  TextPrinter(std::span<const Judged> files, const PrintStyle& style)
      : places_(files),
        colour_(style.colour),
        page_(std::max(kNarrowest, style.width)),
        measure_(std::min(page_, kReadable)),
        why_said_(all_codes().size(), false) {}

  void problem(const Source& home, const Diagnostic& problem);
  void closing(std::span<const Judged> files);
  std::string take() { return std::move(out_); }

 private:
  // A line of a source that has been drawn, so that a second place on it gets carets and not the line again.
  struct Drawn {
    const Source* source;
    std::uint32_t line;
    Snippet snippet;
  };

  void heading(const Source& home, const Diagnostic& problem);
  void place(const Source& source, Span span, std::string_view text, Ink ink);
  void carets(Snippet::Carets carets, std::string_view text, Ink ink);
  void second_place(const Source& home, const Label& label);
  void mend(const Source& home, const Diagnostic& problem, const Fix& fix);
  void sentence(std::string_view head, std::string_view text, int indent, Ink head_ink, Ink ink = Ink::plain);
  void gutter(std::string_view number);
  int gutter_width() const { return kIndent + digits_ + 3; }
  void set_digits(const Source& home, const Diagnostic& problem);
  std::string paint(std::string_view text, Ink ink) const {
    if (!colour_ || ink == Ink::plain || text.empty()) return std::string(text);
    return fmt::format("{}{}\x1b[0m", kInk[static_cast<std::size_t>(ink)], text);
  }

  Places places_;
  bool colour_;
  int page_;                    // columns of the page
  int measure_;                 // columns of a sentence
  std::vector<bool> why_said_;  // the catalogue's reason is given once a code
  int digits_ = 1;              // of the line numbers of the problem at hand
  std::optional<Drawn> drawn_;
  std::string out_;
};

void TextPrinter::problem(const Source& home, const Diagnostic& problem) {
  drawn_.reset();
  set_digits(home, problem);
  heading(home, problem);
  sentence("", problem.message, 2, Ink::plain, Ink::strong);
  place(home, problem.span, "", ink_of(problem.severity));
  for (const Label& label : problem.labels) second_place(home, label);
  if (!problem.expected.empty()) sentence("Expected:", problem.expected, kIndent, Ink::strong);
  if (!problem.found.empty()) sentence("Found:", problem.found, kIndent, Ink::strong);
  const auto index = static_cast<std::size_t>(problem.code);
  if (!problem.why.empty() || !why_said_[index]) {
    if (!why(problem).empty()) sentence("Why:", why(problem), kIndent, Ink::strong);
    if (problem.why.empty()) why_said_[index] = true;
  }
  for (const Fix& fix : problem.fixes) mend(home, problem, fix);
  out_ += '\n';
}

// The place on the left, the code and the word on the right; below each other where the page is too narrow.
void TextPrinter::heading(const Source& home, const Diagnostic& problem) {
  const auto at = places_.region(home, problem.span).from;
  const std::string name = visible(home.name());
  const std::string spot = fmt::format("line {}, column {}", at.line, at.column);
  const std::string tag = fmt::format("{} {}", row(problem.code).code, word(problem.severity));
  const int tag_size = columns_of(tag);
  const auto right = [&](int used) { return spaces(std::max(2, measure_ - used - tag_size)); };
  const int name_size = columns_of(name), whole = name_size + 2 + columns_of(spot);
  out_ += paint(name, Ink::strong);
  if (whole + 2 + tag_size <= measure_) {
    out_ += ", " + spot + right(whole);
  } else {
    out_ += ",\n  " + spot + right(2 + columns_of(spot));
  }
  out_ += paint(tag, ink_of(problem.severity)) + '\n';
}

void TextPrinter::set_digits(const Source& home, const Diagnostic& problem) {
  std::uint32_t largest = places_.region(home, problem.span).from.line;
  for (const Label& label : problem.labels)
    if (const Source* source = places_.find(label, home))
      largest = std::max(largest, places_.region(*source, label.span).from.line);
  digits_ = static_cast<int>(std::to_string(largest).size());
}

void TextPrinter::gutter(std::string_view number) {
  const std::string text = spaces(kIndent + digits_ - static_cast<int>(number.size())) + std::string(number) + " |";
  out_ += paint(text, Ink::faint) + ' ';
}

void TextPrinter::place(const Source& source, Span span, std::string_view text, Ink ink) {
  const auto region = places_.region(source, span);
  const bool again =
      drawn_ && drawn_->source == &source && drawn_->line == region.from.line && drawn_->snippet.shows(region.span);
  if (!again) {
    const Span line = places_.lines(source).line(region.from.line);
    drawn_.emplace(Drawn{&source, region.from.line, {source.text(), line, region.span, page_ - gutter_width()}});
    gutter(std::to_string(region.from.line));
    out_ += drawn_->snippet.text();
    while (out_.back() == ' ') out_.pop_back();
    out_ += '\n';
  }
  const auto last = region.span.empty() ? region.from : places_.region(source, {span.end - 1, span.end}).from;
  std::string beside(text);
  if (last.line > region.from.line) beside += fmt::format("{}(down to line {})", text.empty() ? "" : " ", last.line);
  carets(drawn_->snippet.carets(region.span), beside, ink);
}

// The carets, and the words beside them, or below where there is no room beside.
void TextPrinter::carets(Snippet::Carets carets, std::string_view text, Ink ink) {
  gutter("");
  out_ += spaces(carets.at) + paint(std::string(static_cast<std::size_t>(carets.count), '^'), ink);
  const std::string shown = visible(text);
  const int room = page_ - gutter_width();
  if (text.empty() || carets.at + carets.count + 1 + columns_of(shown) <= room) {
    out_ += (text.empty() ? "" : " ") + paint(shown, ink) + '\n';
    return;
  }
  out_ += '\n';
  const int indent = std::min(carets.at, room / 3);
  for (const std::string& line : wrap(text, std::min(room, kReadable) - indent)) {
    gutter("");
    out_ += spaces(indent) + paint(line, ink) + '\n';
  }
}

void TextPrinter::second_place(const Source& home, const Label& label) {
  const Source* source = places_.find(label, home);
  if (source == nullptr) return sentence("In " + visible(label.file) + ":", label.text, kIndent, Ink::strong);
  if (source != &home && !(drawn_ && drawn_->source == source))
    sentence("In " + visible(source->name()) + ":", "", kIndent, Ink::strong);
  place(*source, label.span, label.text, Ink::note);
}

void TextPrinter::mend(const Source& home, const Diagnostic& problem, const Fix& fix) {
  std::string what = fix.title;
  if (what.empty()) {
    what = fix.text.empty() ? "take this out" : fmt::format("{} `{}`", fix.span.empty() ? "add" : "write", fix.text);
  }
  const auto line = places_.region(home, fix.span).from.line;
  if (line != places_.region(home, problem.span).from.line) what += fmt::format(" on line {}", line);
  if (std::string_view(".?!").find(what.back()) == std::string_view::npos) what += '.';
  sentence(fix.certainty == Certainty::safe ? "Mend (safe):" : "You could:", what, kIndent, Ink::mend);
}

// `head` and `text` as a paragraph; lines after the first stand in by two more.
void TextPrinter::sentence(std::string_view head, std::string_view text, int indent, Ink head_ink, Ink ink) {
  const bool headed = !head.empty();
  std::string whole(head);
  if (headed && !text.empty()) whole += ' ';
  whole += text;
  const int hang = headed ? 2 : 0;
  bool first = true;
  for (std::string_view line : wrap(whole, measure_ - indent - hang)) {
    out_ += spaces(first || line.empty() ? indent : indent + hang);
    if (first && line.starts_with(head)) {
      out_ += paint(head, head_ink);
      line.remove_prefix(head.size());
    }
    out_ += paint(line, ink) + '\n';
    first = false;
  }
}

void TextPrinter::closing(std::span<const Judged> files) {
  std::size_t counts[3] = {};
  for (const Judged& file : files)
    for (const Diagnostic& problem : file.report->list()) ++counts[static_cast<std::size_t>(problem.severity)];
  std::string text;
  for (const Severity severity : {Severity::error, Severity::warning, Severity::note}) {
    const std::size_t count = counts[static_cast<std::size_t>(severity)];
    if (count != 0) text += (text.empty() ? "" : ", ") + paint(counted(count, word(severity)), ink_of(severity));
  }
  out_ += text + '\n';
}

}  // namespace

std::string print_text(std::span<const Judged> files, const PrintStyle& style) {
  if (std::all_of(files.begin(), files.end(), [](const Judged& f) { return f.report->list().empty(); })) return {};
  TextPrinter printer(files, style);
  for (const Judged& file : files)
    for (const Diagnostic& problem : file.report->list()) printer.problem(*file.source, problem);
  printer.closing(files);
  return printer.take();
}

}  // namespace qtn
