// A text with a name, and places in it. Positions are byte offsets everywhere; lines and columns are worked out
// only when a person is to see them.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace qtn {

struct Span {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  constexpr bool empty() const { return begin == end; }
  constexpr std::uint32_t size() const { return end - begin; }
  constexpr bool operator==(const Span&) const = default;
};

class Source {
 public:
  // Readers may look at up to this many bytes past the end; they are zero.
  static constexpr std::size_t kSpare = 16;
  // Offsets are 32 bits: a longer text is refused by whoever reads files.
  static constexpr std::size_t kLongest = 0xF0000000u;

  Source(std::string name, std::string text);
  const std::string& name() const { return name_; }
  std::string_view text() const { return {buffer_.data(), size_}; }
  std::string_view text(Span span) const { return text().substr(span.begin, span.size()); }

 private:
  std::string name_;
  std::string buffer_;  // the text and kSpare zero bytes
  std::size_t size_;
};

// Line starts of a text, made once when positions are to be shown.
class Lines {
 public:
  explicit Lines(std::string_view text);
  struct Place {
    std::uint32_t line;    // from 1
    std::uint32_t column;  // from 1, in code points
  };
  // Counts from the place that was asked last where that is nearer than the line's start: a line of many problems stays linear.
  Place place(std::uint32_t offset) const;
  std::uint32_t count() const { return static_cast<std::uint32_t>(starts_.size()); }
  Span line(std::uint32_t number) const;  // from 1, without its line end

 private:
  std::string_view text_;
  std::vector<std::uint32_t> starts_;
  mutable std::uint32_t last_ = 0;  // the place that was asked last
  mutable Place last_place_{1, 1};
};

}  // namespace qtn
