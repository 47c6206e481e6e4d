#include "day/hours_asked.hpp"

namespace qtn {
namespace {

// `place`: where a menu says the hour; empty where the command does.
bool fits(Minute wall, const DayOrder& order, std::optional<Minute> now, Span place, Report& report) {
  Hours::Fit fit;
  const Minute gone = order.hours.gone(wall, &fit);
  if (fit == Hours::Fit::never) {
    report.add(Code::serve_in_gap, place, "There is no " + write_wall(wall) + " in " + order.hours.zone() + ": the clocks go forward over it.")
        .expect("an hour before or after it");
    return false;
  }
  if (fit == Hours::Fit::twice)
    report.add(Code::serve_twice, place, write_wall(wall) + " comes twice in " + order.hours.zone() + ", since the clocks go back; the first of the two is meant.")
        .expect("an hour that comes once");
  if (now && gone < order.hours.gone(*now)) {
    report.add(Code::serve_past, place, write_wall(wall) + " is over.").expect("an hour that is still to come");
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
  for (const Pin& one : order.pins)
    if (!fits(one.wall, order, now, {}, report)) return false;
  // With an hour of serving beside it, one may have begun already.
  if (order.start && !fits(*order.start, order, serve ? std::nullopt : now, {}, report)) return false;
  if (order.start && !serve) {  // as early as can be
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
    if (!fits(*hour, order, now, own && !serve ? board.serve_places[d] : Span{}, report)) return false;
    order.serve.push_back(*hour);
  }
  return true;
}

}  // namespace qtn
