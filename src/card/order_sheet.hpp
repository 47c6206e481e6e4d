// The order as a card: a section for each supplier, a row for each thing, and the same in records for other programs.
#pragma once
#include "card/card.hpp"
#include "card/words.hpp"
#include "order/order.hpp"

namespace qtn {

// `serve`: when it is served, where it was asked for; else each board says it itself.
Card make_order(const Purchases& all, std::span<const Board> boards, const std::optional<Minute>& serve, const Words& words);

}  // namespace qtn
