// Where the first of a few bytes stands, sixteen bytes at a time where the machine can.
#pragma once
#include <array>
#include <cstddef>
#include <string_view>
#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace qtn {

// From `at` on; the size of the text where there is none.
template <char... Wanted>
inline std::size_t find_any(std::string_view text, std::size_t at = 0) {
#if defined(__SSE2__)
  const auto hits_at = [&](std::size_t from) {  // a bit for each of the sixteen
    // The cast is how the instruction is spelled: it loads from any address.
    const __m128i bytes = _mm_loadu_si128(reinterpret_cast<const __m128i*>(text.data() + from));
    __m128i hits = _mm_setzero_si128();
    ((hits = _mm_or_si128(hits, _mm_cmpeq_epi8(bytes, _mm_set1_epi8(Wanted)))), ...);
    return static_cast<unsigned>(_mm_movemask_epi8(hits));
  };
  if (at + 16 <= text.size()) {
    for (; at + 16 <= text.size(); at += 16)
      if (const unsigned hits = hits_at(at); hits != 0) return at + static_cast<unsigned>(__builtin_ctz(hits));
    if (at == text.size()) return at;
    // The last bytes together with some that are known to hold none.
    const std::size_t from = text.size() - 16;
    const unsigned hits = hits_at(from) >> (at - from);
    return hits != 0 ? at + static_cast<unsigned>(__builtin_ctz(hits)) : text.size();
  }
#endif
  static constexpr auto kWanted = [] {
    std::array<bool, 256> wanted{};
    ((wanted[static_cast<unsigned char>(Wanted)] = true), ...);
    return wanted;
  }();
  while (at < text.size() && !kWanted[static_cast<unsigned char>(text[at])]) ++at;
  return at;
}

}  // namespace qtn
