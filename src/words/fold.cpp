#include "words/fold.hpp"

#include <algorithm>
#include <cstring>

#include "words/irregular.hpp"
#include "words/letters.hpp"

namespace qtn {
namespace {

constexpr std::uint64_t kOnes = 0x0101010101010101u, kHigh = 0x8080808080808080u;
constexpr std::size_t kShort = 48;  // words up to here are folded on the stack

// Capitals to small letters in eight ASCII bytes at once: bit 7 of each sum says whether the byte has reached the
// bound, and 0x80 / 4 is the bit that tells small from capital.
std::uint64_t lower_eight(std::uint64_t bytes) {
  const std::uint64_t from_a = bytes + (0x80 - 'A') * kOnes, past_z = bytes + (0x7F - 'Z') * kOnes;
  return bytes | (((from_a ^ past_z) & kHigh) >> 2);
}

// One to seven bytes, by loads that overlap; zeros behind them.
std::uint64_t load_under_eight(const char* at, std::size_t size) {
  if (size >= 4) {
    std::uint32_t first, last;
    std::memcpy(&first, at, sizeof first);
    std::memcpy(&last, at + size - sizeof last, sizeof last);
    return first | static_cast<std::uint64_t>(last) << (8 * (size - sizeof last));
  }
  const auto byte = [&](std::size_t i) { return static_cast<std::uint64_t>(static_cast<unsigned char>(at[i])) << (8 * i); };
  return byte(0) | byte(size / 2) | byte(size - 1);
}

// The regular plural cut off in place: -ies to -y, -es after s x z ch sh o, else one -s that stands after no s. Words
// of three letters are left alone ("gas"), and in "pies" the i is the stem's.
std::size_t cut_plural(char* at, std::size_t size) {
  if (size < 4 || at[size - 1] != 's') return size;
  const char before = at[size - 2];
  if (before == 's' || before == '\'') return size;
  if (before != 'e') return size - 1;
  if (at[size - 3] == 'i' && size > 4) {
    at[size - 3] = 'y';
    return size - 2;
  }
  return takes_es({at, size - 2}) ? size - 2 : size - 1;
}

struct Folded {
  std::size_t size;
  WordKey key;
};

// `room` holds word.size() + kSlack bytes.
Folded fold_into(std::string_view word, char* room, const Irregulars& irregulars) {
  std::size_t size = fold_case(word, room);
  close_word(room, size);
  const WordKey key = key_of(room, size);
  if (const Irregular* row = irregulars.find(key); row != nullptr) {
    size = row->one.size();
    std::memcpy(room, row->one.data(), size);
  } else {
    const std::size_t cut = cut_plural(room, size);
    if (cut == size) return {size, key};
    size = cut;
  }
  close_word(room, size);
  return {size, key_of(room, size)};
}

// Calls use(text, key) with the folded word, kept on the stack unless it is very long.
template <typename Use>
void with_folded(std::string_view word, const Irregulars& irregulars, Use use) {
  if (word.size() <= kShort) {
    char room[kShort + kSlack];
    const Folded folded = fold_into(word, room, irregulars);
    use(std::string_view(room, folded.size), folded.key);
  } else {
    std::string room(word.size() + kSlack, '\0');
    const Folded folded = fold_into(word, room.data(), irregulars);
    use(std::string_view(room.data(), folded.size), folded.key);
  }
}

bool is_article(std::string_view word) {
  if (word.size() != 3) return false;
  const char a = static_cast<char>(word[0] | 0x20), b = static_cast<char>(word[1] | 0x20),
             c = static_cast<char>(word[2] | 0x20);
  return (a == 't' && b == 'h' && c == 'e') || (a == 'a' && b == 'l' && c == 'l');
}

// Calls use(word) for each word of the name until it says no; "the" and "all" count as names only where nothing follows them.
template <typename Use>
void each_word(std::string_view name, Use use) {
  bool begun = false;
  std::string_view held;
  for (std::size_t at = 0; at < name.size();) {
    if (const int blank = blank_at(name, at); blank != 0) {
      at += static_cast<std::size_t>(blank);
      continue;
    }
    const std::size_t end = blank_from(name, at);
    std::string_view word = name.substr(at, end - at);
    at = end;
    while (!word.empty() && word.front() == '-') word.remove_prefix(1);
    while (!word.empty() && word.back() == '-') word.remove_suffix(1);
    if (word.empty()) continue;
    if (!begun && is_article(word)) {
      held = word;
      continue;
    }
    begun = true;
    if (!use(word)) return;
  }
  if (!begun && !held.empty()) use(held);
}

}  // namespace

std::size_t fold_case(std::string_view word, char* out) {
  std::size_t at = 0;
  for (; at + 8 <= word.size(); at += 8) {
    const std::uint64_t bytes = load_eight(word.data() + at);
    if ((bytes & kHigh) != 0) return fold_letters(word, out);
    const std::uint64_t small = lower_eight(bytes);
    std::memcpy(out + at, &small, sizeof small);
  }
  if (at == word.size()) return at;
  const std::uint64_t rest = load_under_eight(word.data() + at, word.size() - at);
  if ((rest & kHigh) != 0) return fold_letters(word, out);
  const std::uint64_t small = lower_eight(rest);
  std::memcpy(out + at, &small, sizeof small);  // and zeros behind the word, for which there is room
  return word.size();
}

bool takes_es(std::string_view stem) {
  const char last = stem.back();
  return last == 's' || last == 'x' || last == 'z' || last == 'o' || stem.ends_with("ch") || stem.ends_with("sh");
}

std::size_t blank_from(std::string_view text, std::size_t at) {
  for (; at < text.size(); ++at) {
    const auto c = static_cast<unsigned char>(text[at]);
    if (c == ' ' || c == '\t') break;
    if ((c == 0xC2 || c == 0xE2) && blank_at(text, at) != 0) break;
  }
  return at;
}

int blank_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return 0;
  const char c = text[at];
  if (c == ' ' || c == '\t') return 1;
  if (c == '\xC2') return at + 1 < text.size() && text[at + 1] == '\xA0' ? 2 : 0;
  if (c == '\xE2') return text.substr(at, 3) == "\xE2\x80\xAF" ? 3 : 0;
  return 0;
}

std::string_view trim(std::string_view text) {
  while (const int blank = blank_at(text, 0)) text.remove_prefix(static_cast<std::size_t>(blank));
  while (!text.empty()) {
    const std::size_t size = text.size();
    if (blank_at(text, size - 1) == 1 || text.back() == '\r')
      text.remove_suffix(1);
    else if (size >= 2 && blank_at(text, size - 2) == 2)
      text.remove_suffix(2);
    else if (size >= 3 && blank_at(text, size - 3) == 3)
      text.remove_suffix(3);
    else
      break;
  }
  return text;
}

std::string lower(std::string_view text) {
  std::string out(text.size(), '\0');
  out.resize(lower_letters(text, out.data()));
  return out;
}

bool same_letters(std::string_view a, std::string_view b) {
  const auto small = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c; };
  const std::size_t size = std::min(a.size(), b.size());
  for (std::size_t i = 0; i < size; ++i) {
    if (((a[i] | b[i]) & 0x80) != 0) return lower(a) == lower(b);
    if (small(a[i]) != small(b[i])) return false;
  }
  return a.size() == b.size();
}

std::string fold_word(std::string_view word) {
  std::string out;
  with_folded(word, Irregulars::table(), [&](std::string_view folded, WordKey) { out = folded; });
  return out;
}

WordKey fold_key(std::string_view word) {
  WordKey out = 0;
  with_folded(word, Irregulars::table(), [&](std::string_view, WordKey key) { out = key; });
  return out;
}

void fold_keys(std::string_view name, std::vector<WordKey>& out) {
  const Irregulars& irregulars = Irregulars::table();
  each_word(name, [&](std::string_view word) {
    with_folded(word, irregulars, [&](std::string_view, WordKey key) { out.push_back(key); });
    return true;
  });
}

WordKey first_key(std::string_view name) {
  WordKey out = 0;
  each_word(name, [&](std::string_view word) {
    out = fold_key(word);
    return false;
  });
  return out;
}

std::vector<std::string> fold_name(std::string_view name) {
  std::vector<std::string> out;
  each_word(name, [&](std::string_view word) {
    out.push_back(fold_word(word));
    return true;
  });
  return out;
}

}  // namespace qtn
