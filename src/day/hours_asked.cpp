#include "day/hours_asked.hpp"

namespace qtn {
namespace {

bool fits(Minute wall, const DayOrder& order, std::optional<Minute> now, Report& report) {
  Hours::Fit fit;
  const Minute gone = order.hours.gone(wall, &fit);
  if (fit == Hours::Fit::never) {
    report.add(Code::serve_in_gap, {}, "There is no " + write_wall(wall) + " in " + order.hours.zone() + ": the clocks go forward over it.")
        .expect("an hour before or after it");
    return false;
  }
  if (fit == Hours::Fit::twice)
    report.add(Code::serve_twice, {}, write_wall(wall) + " comes twice in " + order.hours.zone() + ", since the clocks go back; the first of the two is planned.")
        .expect("an hour that comes once");
  if (now && gone < order.hours.gone(*now)) {
    report.add(Code::serve_past, {}, write_wall(wall) + " is over.").expect("an hour that is still to come");
    return false;
  }
  return true;
}

}  // namespace

bool set_hours(const Board& board, const std::string& zone, std::optional<Minute> serve, std::optional<Minute> now, DayOrder& order,
               Report& report) {
  const auto hours = Hours::of(zone);
  if (!hours) {
    report.add(Code::unknown_zone, {}, "`" + zone + "` is no zone of the world's clocks that this machine knows.")
        .expect("a name such as `Europe/London`, or none");
    return false;
  }
  order.hours = *hours;
  if (order.start && !serve) {  // as early as can be
    if (!fits(*order.start, order, now, report)) return false;
    order.serve.clear();
    return true;
  }
  for (std::size_t d = 0; d < board.order.dishes; ++d) {
    const std::optional<Minute> own = d < board.serve.size() ? board.serve[d] : std::nullopt;
    // An hour asked for moves the whole table: what the menu serves later stays as much later.
    std::optional<Minute> hour = own;
    if (serve) {
      std::optional<Minute> first;
      for (const auto& one : board.serve)
        if (one && (!first || *one < *first)) first = one;
      hour = own && first ? *serve + (*own - *first) : *serve;
    }
    if (!hour) {
      report.add(Code::serve_not_an_hour, {}, "Nobody has said when it is served.")
          .expect("`--serve \"2026-12-05 18:30\"`, or in a menu a line `serve: 2026-12-05 18:30`");
      return false;
    }
    if (!fits(*hour, order, now, report)) return false;
    order.serve.push_back(*hour);
  }
  return true;
}

}  // namespace qtn
