// The writer's prose as runs: CommonMark's inline marks, nothing of its blocks, no raw HTML, no images. Only prose that
// holds a mark is taken through the CommonMark library, and of that only the stretch from its first mark to its last.
#pragma once
#include <span>
#include <string>
#include <vector>

#include "card/writer.hpp"

namespace qtn {

// A stretch of a step: prose or a link, as written, or something that is written by itself (a clause).
struct Fragment {
  std::string_view text;
  bool own = false;         // written by itself; `text` is not read
  bool line_start = false;  // begins a line: a blank stands before it
  bool marked = false;      // may hold a mark of CommonMark
};

// Writes the fragments that are `own`.
class OwnFragments {
 public:
  virtual ~OwnFragments() = default;
  virtual void write_own(std::size_t fragment) = 0;
};

class Prose {
 public:
  explicit Prose(Writer& out) : out_(out) {}
  // A step.
  void write(std::span<const Fragment> fragments, OwnFragments& own);
  // A title, a note: brackets in it are plain text.
  void write(std::string_view text);

 private:
  struct Window {  // fragments first..last, the first from `from` on, the last up to `to`
    std::size_t first, last, from, to;
  };
  bool window_of(std::span<const Fragment> fragments, Window& window) const;
  bool marked(std::span<const Fragment> fragments, const Window& window, OwnFragments* own);
  void plain(std::span<const Fragment> fragments, std::size_t first, std::size_t last, OwnFragments& own);

  Writer& out_;
  std::string buffer_;  // what the library reads
  std::vector<bool> seen_;
};

// Is there a byte in the text that CommonMark may give a meaning?
std::size_t first_mark(std::string_view text);

}  // namespace qtn
