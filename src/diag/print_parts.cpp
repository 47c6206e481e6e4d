#include "diag/print_parts.hpp"

#include <algorithm>

namespace qtn {

const Lines& Places::lines(const Source& source) {
  const auto found = lines_.find(&source);
  return found != lines_.end() ? found->second : lines_.emplace(&source, Lines(source.text())).first->second;
}

const Source* Places::find(const Label& label, const Source& home) {
  if (label.file.empty() || label.file == home.name()) return &home;
  if (names_.empty())
    for (const Judged& file : files_) names_.emplace(file.source->name(), file.source);
  const auto found = names_.find(label.file);
  return found == names_.end() ? nullptr : found->second;
}

Places::Region Places::region(const Source& source, Span span) {
  const auto size = static_cast<std::uint32_t>(source.text().size());
  span.begin = std::min(span.begin, size);
  span.end = std::clamp(span.end, span.begin, size);
  const Lines& all = lines(source);
  return {span, all.place(span.begin), all.place(span.end)};
}

}  // namespace qtn
