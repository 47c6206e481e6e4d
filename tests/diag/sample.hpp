// Made-up problems for the printers' tests. They take whatever row stands first in the catalogue.
#pragma once
#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>

#include "diag/print.hpp"

namespace qtn {

inline Code any_code() {
  return all_codes().front();
}

inline Span span_of(const Source& source, std::string_view what) {
  const auto at = static_cast<std::uint32_t>(source.text().find(what));
  return {at, at + static_cast<std::uint32_t>(what.size())};
}

inline Diagnostic& problem(Report& report, Span span, std::string message = "This is not right.") {
  Diagnostic& added = report.add(any_code(), Severity::error, span, std::move(message));
  added.why = "It would spoil the tart.";
  return added;
}

inline std::string text_of(const Source& source, const Report& report, int width = 80, bool colour = false) {
  const Judged judged[] = {{&source, &report}};
  return print_text(judged, {colour, width});
}

inline std::string without_colour(std::string_view text) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\x1b') {
      i = text.find('m', i);
    } else {
      plain += text[i];
    }
  }
  return plain;
}

// The lines of a drawn snippet with the gutter taken off: those that hold " |".
inline std::string snippet_of(std::string_view text) {
  std::string lines;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = text.find('\n', from);
    const std::string_view line = text.substr(from, end - from);
    const std::size_t bar = line.find(" |");
    if (line.starts_with("    ") && bar != line.npos)
      lines.append(line.substr(std::min(line.size(), bar + 3))).append("\n");
    from = end + 1;
  }
  return lines;
}

}  // namespace qtn
