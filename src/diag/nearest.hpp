// Nearest known words to a misspelt one: what "did you mean" says.
#pragma once
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace qtn {

// Edit distance where a swap of neighbours counts 1, without case; stops early and gives most + 1 when above `most`.
// Words are up to 64 letters; a longer text is far from everything.
int distance(std::string_view a, std::string_view b, int most);
// Up to `limit` known words within max(1, length / 3) of `wrong`, nearest first, ties in the order of `known`; a
// word that shares no letter with it in place (all of it would be rewritten) is not near.
std::vector<std::string_view> nearest(std::string_view wrong, std::span<const std::string_view> known,
                                      std::size_t limit = 3);
// "did you mean `a`, `b` or `c`?" or "" when the list is empty.
std::string did_you_mean(std::span<const std::string_view> words);

}  // namespace qtn
