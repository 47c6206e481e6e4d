#include "card/sheet_drawing.hpp"

#include <algorithm>
#include <map>

namespace qtn {
namespace {

constexpr Minute kAxis[] = {15, 30, 60, 120, 180, 360};  // distances between the marks of an axis
constexpr Minute kMarks = 12;                            // at most about so many

// Lanes in the order of the kitchen: cooks, ovens, hob, cold, the rest. What goes on at once in one place gets a lane
// more.
struct Lanes {
  struct Lane {
    int place;
    Minute busy_until;
  };
  std::vector<Lane> lanes;
  std::vector<std::string> names;

  std::size_t take(int place, const std::string& name, Minute begin, Minute end) {
    for (std::size_t i = 0; i < lanes.size(); ++i)
      if (lanes[i].place == place && lanes[i].busy_until <= begin) return lanes[i].busy_until = end, i;
    lanes.push_back({place, end});
    names.push_back(name);
    return lanes.size() - 1;
  }
};

struct Placed {
  std::size_t lane;
  Bar bar;
  Minute begin, end;
};

}  // namespace

Drawing drawing_of(const Day& day, const std::string& title, std::string_view at_table) {
  Drawing out;
  out.title = title;
  if (day.rows.empty()) return out;
  Lanes lanes;
  std::vector<Placed> placed;
  const auto put = [&](int place, const std::string& name, const DayRow& row, Hour::Kind kind) {
    const Minute end = std::max(row.end, row.begin + 1);
    Bar bar;
    bar.kind = kind;
    bar.label = (row.part.empty() ? row.dish : row.part) + ": " + row.words;
    placed.push_back({lanes.take(place, name, row.begin, end), bar, row.begin, end});
  };
  for (const DayRow& row : day.rows) {
    if (row.cook >= 0) put(row.cook, day.cooks > 1 ? "Cook " + std::to_string(row.cook + 1) : "Cook", row, Hour::Kind::hands);
    const Hour::Kind kind = row.hands ? Hour::Kind::hands : row.watched ? Hour::Kind::watched : Hour::Kind::waits;
    switch (row.place) {
      case Takes::oven:
        put(100 + std::max(0, row.oven), day.ovens > 1 ? "Oven " + std::to_string(row.oven + 1) : "Oven", row, kind == Hour::Kind::hands ? Hour::Kind::watched : kind);
        break;
      case Takes::hob: put(200, "Hob", row, kind == Hour::Kind::hands ? Hour::Kind::watched : kind); break;
      case Takes::fridge: put(300, "Fridge", row, kind); break;
      case Takes::freezer: put(301, "Freezer", row, kind); break;
      default:
        if (row.cook < 0) put(400, "Standing", row, kind);
    }
  }
  // The lanes of the drawing, by their places.
  std::vector<std::size_t> order(lanes.lanes.size()), rank(lanes.lanes.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return lanes.lanes[a].place < lanes.lanes[b].place; });
  for (std::size_t i = 0; i < order.size(); ++i) rank[order[i]] = i, out.lanes.push_back(lanes.names[order[i]]);

  // Each hour of serving once; which dishes it is of is said where there are several hours.
  std::map<Minute, std::string> servings;
  for (const Served& one : day.served) {
    std::string& dishes = servings[one.wall];
    dishes += (dishes.empty() ? ": " : ", ") + one.dish;
  }

  for (Minute date = day_begin(day.begin); date <= day.end; date += 1440) {
    // From the first thing that begins or ends on this day to the last.
    Minute first = date + 1440, last = date;
    for (const Placed& one : placed)
      for (const Minute edge : {one.begin, one.end})
        if (edge >= date && edge < date + 1440) first = std::min(first, edge), last = std::max(last, edge);
    for (const Served& one : day.served)
      if (one.wall >= date && one.wall < date + 1440) first = std::min(first, one.wall), last = std::max(last, one.wall);
    if (first > last) continue;
    first = first / 60 * 60, last = (last + 59) / 60 * 60;
    if (last == first) last += 60;
    // What goes on beyond, into the night or out of it, is seen to go on.
    const auto goes_on = [&](Minute at) { return std::any_of(placed.begin(), placed.end(), [&](const Placed& one) { return one.begin <= at && one.end > at; }); };
    if (goes_on(last)) last = std::min(last + 60, date + 1440);
    if (goes_on(first - 1)) first = std::max(first - 60, date);
    Strip strip;
    strip.title = write_day(date);
    strip.length = static_cast<int>(last - first);
    Minute step = kAxis[0];
    for (const Minute one : kAxis)
      if (step == kAxis[0] || (last - first) / step > kMarks) step = one;
    for (Minute at = first; at <= last; at += step) strip.hours.push_back({static_cast<int>(at - first), write_clock(at)});
    for (const Minute before : {Minute{-1440}, Minute{0}}) {
      const Minute dusk = date + before + day.night_from, dawn = date + before + day.night_to + (day.night_to <= day.night_from ? 1440 : 0);
      if (dusk < last && dawn > first)
        strip.nights.push_back({static_cast<int>(std::max(dusk, first) - first), static_cast<int>(std::min(dawn, last) - first)});
    }
    for (const auto& [wall, dishes] : servings)
      if (wall >= date && wall < date + 1440)
        strip.servings.push_back({static_cast<int>(wall - first), std::string(at_table) + " " + write_clock(wall) + (servings.size() > 1 ? dishes : "")});
    for (const Placed& one : placed) {
      if (one.begin >= last || one.end <= first) continue;
      Bar bar = one.bar;
      bar.lane = static_cast<std::uint16_t>(rank[one.lane]);
      bar.from = static_cast<int>(std::max(one.begin, first) - first), bar.until = static_cast<int>(std::min(one.end, last) - first);
      strip.bars.push_back(std::move(bar));
    }
    out.strips.push_back(std::move(strip));
  }
  return out;
}

}  // namespace qtn
