// The last look at a card's text: it must be UTF-8 without control characters, whatever the file held.
#include <cstring>

#include "card/writer.hpp"

namespace qtn {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

constexpr std::uint64_t each_byte(std::uint64_t byte) { return byte * 0x0101010101010101u; }

// Bytes of the character at `at`, 0 when there is no UTF-8 character or one that must not be printed.
std::size_t good_character(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) -> unsigned {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
  };
  const auto more = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
  const unsigned first = byte(at);
  if (first < 0x80) return first >= 0x20 && first != 0x7F ? 1 : 0;
  if (first < 0xC2 || first > 0xF4 || !more(at + 1)) return 0;
  if (first < 0xE0) return first == 0xC2 && byte(at + 1) < 0xA0 ? 0 : 2;  // C1 controls
  const unsigned second = byte(at + 1);
  if ((first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F)) return 0;
  if (!more(at + 2)) return 0;
  if (first < 0xF0) return 3;
  if ((first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F)) return 0;
  return more(at + 3) ? 4 : 0;
}

// Where the first thing to mend stands; the size when there is none.
std::size_t first_fault(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    while (at + 8 <= text.size()) {
      std::uint64_t word = 0;
      std::memcpy(&word, text.data() + at, sizeof word);
      // A byte with its high bit, below 0x20, or 0x7F.
      const std::uint64_t low = (word - each_byte(0x20)) | (word + each_byte(0x01)) | word;
      if ((low & each_byte(0x80)) != 0) break;
      at += 8;
    }
    for (const std::size_t stop = at + 8; at < stop && at < text.size();) {
      const std::size_t size = good_character(text, at);
      if (size == 0) return at;
      at += size;
    }
  }
  return at;
}

void append_clean(std::string& out, std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t size = good_character(text, at);
    if (size != 0) {
      out.append(text, at, size);
      at += size;
      continue;
    }
    const auto byte = static_cast<unsigned char>(text[at]);
    const bool control = (byte != 0 && byte < 0x20) || byte == 0x7F;
    const bool late_control = byte == 0xC2 && at + 1 < text.size();
    if (control || (late_control && (static_cast<unsigned char>(text[at + 1]) & 0xE0) == 0x80)) {
      out += ' ';
      at += control ? 1 : 2;
      continue;
    }
    out += kReplacement;
    ++at;
  }
}

}  // namespace

void clean(Card& card) {
  if (first_fault(card.text) < card.text.size()) {
    std::string text;
    text.reserve(card.text.size() + 64);
    for (Run& run : card.runs) {
      const std::size_t begin = text.size();
      append_clean(text, card.view(run));
      run.begin = static_cast<std::uint32_t>(begin);
      run.size = static_cast<std::uint32_t>(text.size() - begin);
    }
    card.text = std::move(text);
  }
  const auto mend = [](std::string& one) {
    if (first_fault(one) == one.size()) return;
    std::string mended;
    append_clean(mended, one);
    one = std::move(mended);
  };
  for (std::string& link : card.links) mend(link);
  for (Entry& record : card.records) {
    for (std::string& cell : record.cells) mend(cell);
    for (auto& [dish, amount] : record.of) mend(dish), mend(amount);
  }
}

}  // namespace qtn
