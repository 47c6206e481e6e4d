// When things are wanted, brought and ordered. Private to this room.
#pragma once
#include "order/order.hpp"

namespace qtn {

// Of each making the day, at 00:00, that it is begun at the latest by the written times, with hands enough; empty where
// nobody says when it is served.
std::vector<Minute> first_days(const Board& board, const std::optional<Minute>& serve);
// The last of the supplier's days before the first day of need, and the day to order for it: so many days ahead as the
// kitchen says, else the day before.
void set_days(Delivery& delivery);

}  // namespace qtn
