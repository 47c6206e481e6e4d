// Text that stays text in HTML, in a body and in a quoted attribute: & < > " become references.
#pragma once
#include <string_view>

#include "render/ink.hpp"

namespace qtn {

// Place of the first of the four characters, or text.size().
std::size_t first_special(std::string_view text);
void put_escaped(Ink& ink, std::string_view text);

// One long text that is written in pieces, mostly in order: looks ahead in strides, so that a clean piece is one
// comparison and a copy.
class CleanText {
 public:
  explicit CleanText(std::string_view whole) : whole_(whole) {}
  void put(Ink& ink, std::size_t begin, std::size_t size) {
    if (begin < from_ || begin + size > to_) look(begin);
    if (begin + size <= to_) return ink.put(whole_.data() + begin, size, whole_.size() - begin);
    put_escaped(ink, whole_.substr(begin, size));
  }

 private:
  static constexpr std::size_t kStride = 512;
  void look(std::size_t begin) {
    from_ = begin;
    to_ = begin + first_special(whole_.substr(begin, kStride));
  }
  std::string_view whole_;
  std::size_t from_ = 0, to_ = 0;  // nothing special in between
};

}  // namespace qtn
