#include "base/source.hpp"

#include <algorithm>
#include <cstring>

namespace qtn {

Source::Source(std::string name, std::string text)
    : name_(std::move(name)), buffer_(std::move(text)), size_(buffer_.size()) {
  buffer_.append(kSpare, '\0');
}

Lines::Lines(std::string_view text) : text_(text), starts_{0} {
  const char* const first = text.data();
  const char* const last = first + text.size();
  for (const char* at = first; at != last;) {
    const auto* end = static_cast<const char*>(std::memchr(at, '\n', static_cast<std::size_t>(last - at)));
    if (end == nullptr) break;
    at = end + 1;
    starts_.push_back(static_cast<std::uint32_t>(at - first));
  }
}

Lines::Place Lines::place(std::uint32_t offset) const {
  offset = std::min(offset, static_cast<std::uint32_t>(text_.size()));
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
  const auto line = static_cast<std::uint32_t>(after - starts_.begin());
  std::uint32_t at = starts_[line - 1], column = 1;
  const bool near = last_place_.line == line && (last_ <= offset || last_ - offset < offset - at);
  if (near) at = last_, column = last_place_.column;
  const auto begins = [&](std::uint32_t i) { return (static_cast<unsigned char>(text_[i]) & 0xC0) != 0x80 ? 1u : 0u; };
  for (; at < offset; ++at) column += begins(at);
  for (; at > offset; --at) column -= begins(at - 1);
  last_ = offset;
  return last_place_ = {line, column};
}

Span Lines::line(std::uint32_t number) const {
  const std::uint32_t begin = starts_[number - 1];
  std::uint32_t end = number < starts_.size() ? starts_[number] - 1 : static_cast<std::uint32_t>(text_.size());
  if (end > begin && text_[end - 1] == '\r') --end;
  return {begin, end};
}

}  // namespace qtn
