#include "plan/network.hpp"

namespace qtn::plan {
namespace {

// The least that `after` can be later than `before`, whatever chance does, when both hang on one point.
Ticks least_between(const Spot& before, const Spot& after) {
  if (after.place >= before.place) return after.low - before.low;
  return after.high - before.high;
}

bool dropped(Number label, std::span<const char> kept) {
  return label != kNothing && !kept.empty() && kept[label] == 0;
}

class Placer {
 public:
  Placer(const Network& network, std::span<const char> kept) : network_(network), kept_(kept) {}

  Placed run() {
    const std::size_t count = network_.activities.size();
    out_.begins.resize(count);
    out_.ends.resize(count);
    for (std::size_t i = 0; i < count; ++i) activity(i);
    for (const Rule& rule : network_.rules) this->rule(rule);
    return std::move(out_);
  }

 private:
  void activity(std::size_t index) {
    const Activity& one = network_.activities[index];
    Spot begin;
    if (one.follows != kNothing) begin = out_.ends[one.follows];
    else begin.point = out_.points++;
    out_.begins[index] = begin;
    const Length length = dropped(one.label, kept_) ? Length{} : one.length;
    Spot end = begin;
    ++end.place;
    if (length.chosen()) {  // the end is a moment of its own
      end = Spot{out_.points++, 0, 0, 0};
      lag(begin, end, length.least, one.label);
      if (length.most < kNever) lag(end, begin, -length.most, one.label);
    } else {
      end.low += length.least;
      end.high += length.most;
    }
    out_.ends[index] = end;
  }

  void rule(const Rule& rule) {
    if (dropped(rule.label, kept_)) return;
    const auto spot = [&](const End& end) { return end.end ? out_.ends[end.activity] : out_.begins[end.activity]; };
    lag(spot(rule.before), spot(rule.after), rule.least, rule.label);
  }

  void lag(const Spot& before, const Spot& after, Ticks least, Number label) {
    const bool same = before.point == after.point;
    const Ticks between = same ? least - least_between(before, after) : least + before.high - after.low;
    if (same && between <= 0) return;
    out_.lags.push_back({before.point, after.point, between});
    out_.lag_labels.push_back(label);
  }

  const Network& network_;
  std::span<const char> kept_;
  Placed out_;
};

}  // namespace

Placed place(const Network& network, std::span<const char> kept) { return Placer(network, kept).run(); }

bool holds(const Placed& placed) {
  std::vector<Ticks> earliest(placed.points, 0);
  for (Number round = 0; round <= placed.points; ++round) {
    bool moved = false;
    for (const Lag& lag : placed.lags) {
      const Ticks least = earliest[lag.before] + lag.least;
      if (least > earliest[lag.after]) earliest[lag.after] = least, moved = true;
      if (lag.before == lag.after && lag.least > 0) return false;
    }
    if (!moved) return true;
  }
  return false;
}

}  // namespace qtn::plan
