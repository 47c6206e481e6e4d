#include "order/days.hpp"

#include <algorithm>

namespace qtn {
namespace {

constexpr Minute kDay = 1440;

// 0 Monday ... 6 Sunday; 1970-01-01 was a Thursday.
unsigned weekday(Minute day) { return static_cast<unsigned>(((day / kDay + 3) % 7 + 7) % 7); }

}  // namespace

std::vector<Minute> first_days(const Board& board, const std::optional<Minute>& serve) {
  const std::size_t dishes = board.order.dishes;
  std::vector<Minute> begins(board.order.makings.size(), 0);
  const auto shares = dish_shares(board);
  for (std::size_t d = 0; d < dishes; ++d) {
    const std::optional<Minute> at = serve ? serve : d < board.serve.size() ? board.serve[d] : std::nullopt;
    if (!at) return {};
    Report unsaid;
    const Board alone = board_of(*board.order.makings[d].recipe, {}, unsaid);
    const Spans spans = unsaid.has_errors() ? Spans{} : spans_of(wind(alone.order), order_of(board.kitchen).work);
    const Minute day = day_begin(*at - (spans.known ? spans.whole : 0));
    for (std::size_t m = 0; m < begins.size(); ++m)
      if (!shares[m][d].is_zero() && (begins[m] == 0 || day < begins[m])) begins[m] = day;
  }
  return begins;
}

void set_days(Delivery& delivery) {
  if (!delivery.needed || delivery.supplier == nullptr || delivery.supplier->days == 0) return;
  Minute comes = *delivery.needed - kDay;
  while ((delivery.supplier->days >> weekday(comes) & 1U) == 0) comes -= kDay;
  delivery.comes = comes;
  delivery.order_by = comes - kDay * std::max(1, delivery.supplier->ahead);
}

}  // namespace qtn
