// What a card works out beyond its amounts: times by weight, batches and rounds. Private to this room.
#pragma once
#include "adapt/shower.hpp"

namespace qtn {

std::vector<ByWeight> by_weight(const Recipe& recipe, Shower& shower, Shower* beside, Report& lacks);

// The limit of an `at most:`, in the reader's measures.
Shown limit_of(const std::optional<Batch>& batch, Shower& shower);
// How the whole of it is shared out: equal batches, as few as the limit lets be. `part` is kNone for the head's.
Rounds rounds_of(const Recipe& recipe, const std::optional<Batch>& batch, Index part, Shower& shower);
// Steps that say how much goes in at a time, where that takes more than one round.
std::vector<Rounds> loads_of(const Recipe& recipe, Shower& shower);

}  // namespace qtn
