// The one place that draws diagnostics: for people, as JSON lines, as SARIF 2.1.0.
#pragma once
#include <span>
#include <string>

#include "diag/diagnostic.hpp"

namespace qtn {

struct PrintStyle {
  bool colour = false;  // the caller asks the terminal; nothing here does
  int width = 80;       // columns; long lines are cut around the place, messages wrapped
};

// A file's source with what was said of it.
struct Judged {
  const Source* source;
  const Report* report;
};

// Every problem with its place drawn, and a closing line that counts them ("2 errors, 1 warning"); "" when none.
std::string print_text(std::span<const Judged> files, const PrintStyle& style);
// One JSON object a line: code, severity, title, file, line, column, endLine, endColumn (code points), begin, end
// (bytes), message, expected, found, why, others[], fixes[].
std::string print_json(std::span<const Judged> files);
// SARIF 2.1.0, one run, a rule per code used, fixes as SARIF fixes.
std::string print_sarif(std::span<const Judged> files, std::string_view version);

// The page of a code from docs/problems ("Q201"), or "" when there is none.
std::string_view explain(std::string_view code);

}  // namespace qtn
