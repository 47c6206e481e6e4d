// What the printers share: places of a span in a file, found once a file, and the words of a severity.
#pragma once
#include <string_view>
#include <unordered_map>

#include "diag/print.hpp"

namespace qtn {

inline std::string_view word(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}
inline std::string_view word(Certainty certainty) {
  return certainty == Certainty::safe ? "safe" : "choice";
}
inline std::string_view why(const Diagnostic& problem) {
  return problem.why.empty() ? row(problem.code).why : std::string_view(problem.why);
}

class Places {
 public:
  explicit Places(std::span<const Judged> files) : files_(files) {}

  const Lines& lines(const Source& source);
  // The file that a label names: `home` when it names none; nullptr when it is not among the files.
  const Source* find(const Label& label, const Source& home);

  struct Region {
    Span span;  // within the text
    Lines::Place from, to;
  };
  Region region(const Source& source, Span span);

 private:
  std::span<const Judged> files_;
  std::unordered_map<const Source*, Lines> lines_;  // looked up, never walked: its order does not show
  std::unordered_map<std::string_view, const Source*> names_;
};

}  // namespace qtn
