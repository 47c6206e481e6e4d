// The safety table: which heat, held how long, makes a raw food safe; how long cooked food stands, cools, keeps. Rows and
// their sources: data/safety.txt. Local codes rule over all of it.
#pragma once
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "larder/hazards.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

enum class Law : std::uint8_t { UK, EU, US };
// The kitchen's `law:`; without one American measures mean the United States, all others the United Kingdom.
Law law_of(const Recipe& recipe);
std::string_view name_of(Law law);

struct CorePoint {
  double celsius, seconds;
};
struct CoreRule {
  std::vector<CorePoint> points;  // from the coldest
  double z = 0;                   // °C that make it ten times as fast; 0: the points alone count
  std::string_view write;         // "75 °C": what a recipe is offered
  std::string_view words;         // "75 °C, or 70 °C for 2 min"
  std::string_view source;
};
// Null where nobody holds a figure for such a food: rice, beans, flour.
const CoreRule* core_rule(Law law, Hazard hazard);
// For how many seconds the middle must stay at so many °C; infinite where that is too cold for any time.
// A curve is used from 10 °C below its point: there ends the list that it was drawn through (60 to 80 °C).
double seconds_wanted(const CoreRule& rule, double celsius);
// How long a reading without a time is taken to have stood.
double settle_seconds();

// Minutes of wet and of dry heat after which no reading is asked; nothing: it always is.
struct DoneAfter {
  std::optional<int> wet, dry;
};
DoneAfter done_after(Hazard hazard);

struct Limit {
  double value = 0;  // minutes, hours or °C, by the row
  double celsius = 0;
  std::string_view words, source;
  Quantity heat{};   // of hot, cold and frozen ones, in the scale of the source
};
const Limit& stand_limit(Law law);             // minutes
const Limit& out_limit(Law law);               // minutes that raw food may be out of the cold
const Limit& cool_limit(Law law);              // minutes to so many °C
const Limit* half_cool(Law law);               // ... to the first of two steps; null where the law has one
const Limit& keep_limit(Law law, Hazard food); // hours, chilled
const Limit& hot_limit(Law law);               // °C
const Limit& cold_limit(Law law);              // °C
const Limit& frozen_limit(Law law);            // °C
// What a card says, with {} for the food; and words of the writer's own cautions that say it already.
struct CautionWords {
  std::string_view key, text, unless;
};
const CautionWords& caution_words(std::string_view key);
// Fresh things that bring what grows where there is no air: garlic, herbs, chillies.
bool grows_in_oil(const Food* food);
// Words that say that something stands in the room: "on the worktop".
std::span<const std::string_view> room_words();
// Does this word say that a food is cooked, tinned or dried already?
bool says_not_raw(WordKey word);

}  // namespace qtn
