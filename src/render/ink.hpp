// Many small pieces on their way to one string: gathered in a block on the stack, so that a piece costs a copy and one
// comparison. Call flush() at the end.
#pragma once
#include <cstring>
#include <string>
#include <string_view>

namespace qtn {

class Ink {
 public:
  explicit Ink(std::string& out) : out_(out) {}
  Ink(const Ink&) = delete;
  Ink& operator=(const Ink&) = delete;

  // A literal: its length is known, so the copy is a few moves.
  template <std::size_t N>
  void mark(const char (&literal)[N]) {
    static_assert(N > 1 && N < kBlock / 4);
    if (kBlock - used_ < N) flush();
    std::memcpy(block_ + used_, literal, N - 1);
    used_ += N - 1;
  }
  void put(std::string_view text) {
    if (kBlock - used_ < text.size()) return put_long(text);
    std::memcpy(block_ + used_, text.data(), text.size());
    used_ += text.size();
  }
  // The first bytes of a text that goes on: with `readable` at least kShort a short piece is copied without a call.
  void put(const char* text, std::size_t size, std::size_t readable) {
    if (size > kShort || readable < kShort || kBlock - used_ < kShort) return put({text, size});
    std::memcpy(block_ + used_, text, kShort);
    used_ += size;
  }
  void flush() {
    out_.append(block_, used_);
    used_ = 0;
  }

 private:
  void put_long(std::string_view text) {
    flush();
    out_.append(text);
  }

  static constexpr std::size_t kBlock = 4096, kShort = 32;
  std::string& out_;
  std::size_t used_ = 0;
  char block_[kBlock];
};

}  // namespace qtn
