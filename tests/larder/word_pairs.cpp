// The pair table is the home of words; the larder's other names only find figures. They must not contradict each other.
#include <doctest/doctest.h>

#include "larder/food.hpp"
#include "words/pairs.hpp"

using namespace qtn;

namespace {

bool is_food(const WordPair& pair) { return pair.kind == PairKind::ingredient || pair.kind == PairKind::cut || pair.kind == PairKind::dairy; }
std::string name_of(const Food* food) { return food == nullptr ? "nothing" : std::string(food->name); }

}  // namespace

TEST_CASE("a food that changes its name stays the same food") {
  int known = 0;
  for (const WordPair& pair : WordPairs::standard().all()) {
    if (!is_food(pair) || !pair.changes() || !pair.note.empty()) continue;
    const Food* const there = Larder::standard().find(pair.said(Side::british));
    const Food* const here = Larder::standard().find(pair.said(Side::american));
    INFO(pair.british << " | " << pair.american);
    CHECK(name_of(there) == name_of(here));
    known += there != nullptr;
  }
  CHECK(known >= 80);
}

TEST_CASE("an American name of the larder is no other food in the pair table") {
  for (const Food& food : Larder::standard().all()) {
    const std::string_view name = Larder::standard().american_name(food);
    if (name.empty()) continue;
    for (const PlaceOfPair& place : WordPairs::standard().find(name, {Side::british, WordPlace::name})) {
      if (place.begin != 0 || place.end != name.size() || !place.pair->note.empty()) continue;
      INFO(name << " -> " << place.instead);
      CHECK(name_of(Larder::standard().find(place.instead)) == food.name);
    }
  }
}
