// The parts that folding and the making of plurals share: the hash of a word, and the table of irregular plurals.
// Private to this room.
#pragma once
#include <array>
#include <cstdint>
#include <cstring>
#include <string_view>

#include "words/fold.hpp"

namespace qtn {

inline constexpr std::size_t kSlack = 16;  // "mice" -> "mouse", and eight zeros behind the word for the hash

inline std::uint64_t load_eight(const char* at) {
  std::uint64_t value;
  std::memcpy(&value, at, sizeof value);
  return value;
}

__extension__ typedef unsigned __int128 Product;
inline std::uint64_t mix(std::uint64_t a, std::uint64_t b) {
  const Product product = static_cast<Product>(a) * b;
  return static_cast<std::uint64_t>(product) ^ static_cast<std::uint64_t>(product >> 64);
}

// Eight bytes at a step; the eight bytes from at[size] on are zero.
inline WordKey key_of(const char* at, std::size_t size) {
  std::uint64_t key = 0x9E3779B97F4A7C15u ^ size;
  for (std::size_t i = 0; i < size; i += 8) key = mix(key ^ load_eight(at + i), 0xD6E8FEB86659FD93u);
  return key | 1;  // never 0, which marks an empty place in tables
}
inline void close_word(char* at, std::size_t size) { std::memset(at + size, 0, 8); }

// A row of data/plurals.txt, found by the key of either form.
struct Irregular {
  std::string_view one, many;
};

class Irregulars {
 public:
  static const Irregulars& table();
  const Irregular* find(WordKey key) const {
    for (std::size_t at = key >> kShift;; at = (at + 1) % kSlots) {
      if (keys_[at] == key) return &rows_[at];
      if (keys_[at] == 0) return nullptr;
    }
  }

 private:
  static constexpr std::size_t kSlots = 2048, kShift = 64 - 11;
  Irregulars();
  void add(std::string_view form, Irregular row);
  std::array<WordKey, kSlots> keys_{};
  std::array<Irregular, kSlots> rows_{};
};

// Case, accents and apostrophes alone; `out` holds word.size() + kSlack bytes.
std::size_t fold_case(std::string_view word, char* out);
// Does the plural of a word that ends like this take -es?
bool takes_es(std::string_view stem);
// Where the next blank stands, or the end.
std::size_t blank_from(std::string_view text, std::size_t at);

}  // namespace qtn
