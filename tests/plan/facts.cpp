// What is learned from clashes, against trying everything.
#include <doctest/doctest.h>

#include "plan/facts.hpp"
#include "plan/kitchens.hpp"

namespace qtn::tests {
namespace {

using namespace plan;

struct Puzzle {
  Number points = 0;
  std::vector<Lag> lags;
  std::vector<std::pair<Lag, Lag>> choices;
  std::vector<std::vector<std::pair<std::size_t, bool>>> clauses;  // of choices: which one of them, and which way
};

constexpr Ticks kLast = 40;

Puzzle puzzle(std::uint64_t seed) {
  Dice dice(seed);
  Puzzle out;
  out.points = static_cast<Number>(dice.from(3, 7));
  const auto lag = [&](int low, int high) {
    const auto before = static_cast<Point>(dice.from(0, static_cast<int>(out.points) - 1));
    const auto after = (before + static_cast<Point>(dice.from(1, static_cast<int>(out.points) - 1))) % out.points;
    return Lag{before, after, dice.from(low, high)};
  };
  for (int i = dice.from(1, 6); i > 0; --i) out.lags.push_back(lag(-20, 6));
  for (int i = dice.from(3, 9); i > 0; --i) {
    const Lag one = lag(2, 14);
    out.choices.push_back({one, {one.after, one.before, dice.from(2, 14)}});
  }
  for (int i = dice.from(0, 8); i > 0; --i) {
    out.clauses.emplace_back();
    for (std::size_t choice = 0; choice < out.choices.size(); ++choice)
      if (dice.chance(35)) out.clauses.back().push_back({choice, dice.chance(50)});
    if (out.clauses.back().empty()) out.clauses.pop_back();
  }
  return out;
}

// Bellman and Ford for every way to choose.
bool possible(const Puzzle& puzzle, bool bounded) {
  for (std::size_t ways = 0; ways < std::size_t{1} << puzzle.choices.size(); ++ways) {
    bool held = true;
    for (const auto& clause : puzzle.clauses)
      held = held && std::any_of(clause.begin(), clause.end(), [&](const auto& each) { return (ways >> each.first & 1) == each.second; });
    if (!held) continue;
    std::vector<Lag> lags = puzzle.lags;
    for (std::size_t i = 0; i < puzzle.choices.size(); ++i) lags.push_back(ways >> i & 1 ? puzzle.choices[i].first : puzzle.choices[i].second);
    std::vector<Ticks> early(puzzle.points, 0);
    bool moved = true;
    for (Number round = 0; round <= puzzle.points && moved; ++round) {
      moved = false;
      for (const Lag& lag : lags)
        if (early[lag.before] + lag.least > early[lag.after]) early[lag.after] = early[lag.before] + lag.least, moved = true;
    }
    if (!moved && (!bounded || *std::max_element(early.begin(), early.end()) <= kLast - 2)) return true;
  }
  return false;
}

// The same by learning. `bounded` false: only the latest times are known, and circles of lags must be found as such.
bool learned(const Puzzle& puzzle, bool bounded) {
  Facts facts;
  for (Point point = 0; point < puzzle.points; ++point) facts.add(bounded ? 0 : -kNever, kLast);
  for (const Lag& lag : puzzle.lags) facts.lag(lag);
  std::vector<Fact> choices;
  for (const auto& [one, other] : puzzle.choices) {
    choices.push_back({2 * facts.choice(one, other), 1});
    if (!facts.weigh(choices.back().side / 2)) return false;
  }
  for (const auto& clause : puzzle.clauses) {
    std::vector<Fact> either;
    for (const auto& [choice, way] : clause) either.push_back(way ? choices[choice] : no(choices[choice]));
    if (!facts.either(either)) return false;
  }
  // The start is told as news, so that lags among the first bounds are followed.
  for (Point point = 0; point < puzzle.points; ++point) {
    if (!facts.tell(not_after({point, 0}, kLast - 1), {})) return false;
    if (bounded && !facts.tell(not_before({point, 0}, 1), {})) return false;
  }
  for (;;) {
    if (!facts.follow()) {
      if (!facts.learn()) return false;
      continue;
    }
    const auto open = std::find_if(choices.begin(), choices.end(), [&](const Fact& fact) { return !facts.holds(fact) && !facts.fails(fact); });
    if (open == choices.end()) break;
    facts.suppose(no(*open));
  }
  const auto kept = [&](const Lag& lag) { return facts.late({lag.after, 0}) - facts.late({lag.before, 0}) >= lag.least; };
  for (const Lag& lag : puzzle.lags) CHECK(kept(lag));
  for (std::size_t i = 0; i < choices.size(); ++i) CHECK(kept(facts.holds(choices[i]) ? puzzle.choices[i].first : puzzle.choices[i].second));
  for (const auto& clause : puzzle.clauses)
    CHECK(std::any_of(clause.begin(), clause.end(), [&](const auto& each) { return facts.holds(choices[each.first]) == each.second; }));
  return true;
}

TEST_CASE("what is learned is neither too much nor too little") {
  int held = 0, failed = 0;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    const Puzzle one = puzzle(seed);
    for (const bool bounded : {false, true}) {
      const bool is = possible(one, bounded);
      ++(is ? held : failed);
      CHECK(learned(one, bounded) == is);
    }
  }
  CHECK(held > 200);
  CHECK(failed > 200);
}

}  // namespace
}  // namespace qtn::tests
