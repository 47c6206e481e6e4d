// Clocks: what can hold and what cannot, and the shortest set that clashes.
#include "plan/network.hpp"

#include <doctest/doctest.h>

using namespace qtn::plan;

namespace {

// A rest of at least 480 after making of 5, used within 360 of the making.
Network batter(Ticks within) {
  Network net;
  net.activities.push_back({{5, 5, false}, 0, kNothing});
  net.activities.push_back({{480, 720, false}, 1, 0});
  net.activities.push_back({{40, 40, false}, 2, kNothing});
  net.rules.push_back({end_of(1), begin_of(2), 0, kNothing});
  net.rules.push_back({begin_of(2), end_of(0), -within, 3});
  net.labels = 4;
  return net;
}

}  // namespace

TEST_CASE("network: a night does not fit into six hours, and fits into fourteen") {
  CHECK(holds(place(batter(840))));
  const Network net = batter(360);
  CHECK_FALSE(holds(place(net)));
  const Clash clash = clash_of(net);
  CHECK(clash.labels == std::vector<Number>{1, 3});
  CHECK(clash.excess == 120);
}

TEST_CASE("network: of a chance the plan has to hold for the longest, and a longest time is tested at the shortest") {
  Network net;
  net.activities.push_back({{60, 120, true}, 0, kNothing});   // prove 1 to 2 h
  net.activities.push_back({{40, 45, true}, 1, kNothing});    // bake
  net.rules.push_back({end_of(0), begin_of(1), 0, kNothing});
  net.rules.push_back({begin_of(1), begin_of(0), -120, 0});
  net.labels = 2;
  CHECK(holds(place(net)));                                    // exactly 120 after it began
  net.rules.back().least = -119;
  CHECK_FALSE(holds(place(net)));
  CHECK(clash_of(net).excess == 1);
}

TEST_CASE("network: a length that both ends of a rule hang on cancels") {
  Network net;
  net.activities.push_back({{10, 60, true}, 0, kNothing});
  net.activities.push_back({{5, 5, false}, 1, 0});
  net.activities.push_back({{5, 5, false}, 2, 1});
  net.rules.push_back({begin_of(2), end_of(0), -5, 3});  // within 5 of what went before, at once
  net.labels = 4;
  CHECK(holds(place(net)));
}
