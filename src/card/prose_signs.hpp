// Private-use characters that stand for what the CommonMark library must not see, and cannot be forged: none that is
// in the text, raw or as a numeric entity, is chosen.
#pragma once
#include <bitset>
#include <string_view>

namespace qtn {

class Signs {
 public:
  void avoid(std::string_view text);
  // False when the text uses nearly all of them.
  bool choose();
  // Before the words of every line, so that no line opens a block.
  std::string_view line() const { return {line_, 3}; }
  // At both ends of a fragment's number.
  std::string_view own() const { return {own_, 3}; }
  static constexpr char kLead = '\xEE';  // their first byte

 private:
  void spell(char* to, unsigned index) const;
  std::bitset<4096> used_;  // U+E000 to U+EFFF
  bool any_ = false;
  char line_[3], own_[3];
};

}  // namespace qtn
