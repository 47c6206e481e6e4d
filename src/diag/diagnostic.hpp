// What the compiler says about a file: one problem, its place, and how to mend it. Plain data; drawing is print.hpp's.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/source.hpp"

namespace qtn {

enum class Severity : std::uint8_t { error, warning, note };

// The catalogue: every problem that Quartern knows, one row each in catalogue.def.
enum class Code : std::uint16_t {
#define QTN_PROBLEM(code, name, severity, title, why) name,
#include "diag/catalogue.def"
#undef QTN_PROBLEM
};

struct CatalogueRow {
  std::string_view code;   // "Q201", never reused
  std::string_view name;   // "unknown_unit"
  Severity severity;       // unless the place says otherwise
  std::string_view title;  // "Unknown unit"
  std::string_view why;    // why it matters in the kitchen, one sentence
};
const CatalogueRow& row(Code code);
const CatalogueRow* find_row(std::string_view code);  // "Q201" or "q201"; nullptr when there is none
std::vector<Code> all_codes();

// A second place that the problem hangs on. `file` is empty for the file at hand.
struct Label {
  Span span;
  std::string text;
  std::string file;
};

enum class Certainty : std::uint8_t { safe, choice };  // safe: the one certain repair; choice: the cook decides

// A word of the page as a message shows it: between backticks.
[[gnu::cold]] std::string quoted(std::string_view text);

struct Fix {
  Span span;  // replaced
  std::string text;  // by this
  std::string title;  // "write 2 lb 3 oz"
  Certainty certainty = Certainty::safe;
};

struct Diagnostic {
  Code code;
  Severity severity;
  Span span;            // the narrow place
  std::string message;  // what was found, one sentence, plain words
  std::string expected;  // may be empty
  std::string found;     // may be empty
  std::string why;       // empty: the catalogue's sentence
  std::vector<Label> labels;
  std::vector<Fix> fixes;

  // Cold: what leads to a problem is laid out away from the way of a recipe without one.
  [[gnu::cold]] Diagnostic& expect(std::string what);
  [[gnu::cold]] Diagnostic& find(std::string what);
  [[gnu::cold]] Diagnostic& because(std::string what);
  [[gnu::cold]] Diagnostic& also(Span where, std::string what, std::string file = {});
  [[gnu::cold]] Diagnostic& fix(Span where, std::string text, std::string title);
  [[gnu::cold]] Diagnostic& offer(Span where, std::string text, std::string title);
};

// The problems of one file, in the order they were met until sort() is called.
class Report {
 public:
  [[gnu::cold]] Diagnostic& add(Code code, Span span, std::string message);
  [[gnu::cold]] Diagnostic& add(Code code, Severity severity, Span span, std::string message);
  // What was found, told better once more of the line was read.
  Diagnostic& at(std::size_t place) { return list_[place]; }
  bool has_errors() const { return errors_ != 0; }
  std::size_t errors() const { return errors_; }
  std::size_t warnings() const;
  const std::vector<Diagnostic>& list() const { return list_; }
  void sort();  // by place, then code; drops a repeat of the same problem at the same place
  void append(const Report& other);

 private:
  std::vector<Diagnostic> list_;
  std::size_t errors_ = 0;
};

}  // namespace qtn
