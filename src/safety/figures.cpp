#include "safety/figures.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <unordered_set>

#include "data/tables.hpp"
#include "measure/table_text.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

constexpr std::size_t kHazards = static_cast<std::size_t>(Hazard::curing_salt) + 1;
constexpr double kCurveReach = 10;  // °C below its point

double number(std::string_view text) {
  double value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

// "145 °F 180 s"
CorePoint point(std::string_view text) {
  const double heat = number(text);
  const std::size_t letter = text.find("°") + 2;  // the sign takes two bytes
  const std::size_t time = text.find(' ', letter);
  return {text[letter] == 'F' ? (heat - 32) * 5 / 9 : heat, number(text.substr(time + 1))};
}

Hazard hazard_named(std::string_view name) {
  for (std::size_t i = 0; i < kHazards; ++i)
    if (name_of(static_cast<Hazard>(i)) == name) return static_cast<Hazard>(i);
  return Hazard::none;
}

// One of each law's rows; the British stand for the Union.
struct Both {
  Limit uk, us;
  const Limit& of(Law law) const { return law == Law::US ? us : uk; }
};

struct SafetyTable {
  std::array<std::optional<CoreRule>, kHazards> uk, us;
  std::array<DoneAfter, kHazards> done;
  std::array<Both, kHazards> keep;
  Both stand, out, cool, half, hot, cold, frozen;
  double settle = 0;
  std::unordered_set<WordKey> not_raw;
  std::unordered_set<const Food*> in_oil;
  std::vector<std::string_view> rooms;
  std::vector<CautionWords> cautions;

  SafetyTable() {
    for (Rows row(data::safety()); row.next();) {
      const std::string_view kind = row[0];
      if (kind == "core") add_core(row);
      else if (kind == "done") add_done(row);
      else if (kind == "settle") settle = number(row[1]);
      else if (kind == "stand" || kind == "out") side(kind == "out" ? out : stand, row[1]) = {number(row[2]), 0, row[3], row[4], {}};
      else if (kind == "cool" || kind == "half") side(kind == "cool" ? cool : half, row[1]) = {number(row[2]), number(row[3]), row[4], row[5], {}};
      else if (kind == "hot" || kind == "cold" || kind == "frozen") side(kind == "hot" ? hot : kind == "cold" ? cold : frozen, row[1]) = heat(row);
      else if (kind == "keep") add_keep(row);
      else if (kind == "caution") cautions.push_back({row[1], row[2], row[3]});
      else if (kind == "in oil")
        for (std::string_view foods = row[1]; !foods.empty();) in_oil.insert(Larder::standard().find(next_item(foods, ',')));
      else if (kind == "room")
        for (std::string_view words = row[1]; !words.empty();) rooms.push_back(next_item(words, ','));
      else if (kind == "not raw")
        for (std::string_view words = row[1]; !words.empty();) not_raw.insert(fold_key(next_item(words, ',')));
    }
  }

  static Limit heat(const Rows& row) {
    std::string_view text = row[2];
    const Fraction degrees = table::number(table::take_before(text, ' '));
    const Quantity amount{degrees, degrees, text.ends_with('F') ? common().fahrenheit : common().celsius, Manner::plain, false};
    return {to_celsius(degrees, amount.unit).approx(), 0, row[3], row[4], amount};
  }

  static Limit& side(Both& both, std::string_view law) { return law == "US" ? both.us : both.uk; }

  void add_core(const Rows& row) {
    CoreRule rule;
    for (std::string_view points = row[3]; !points.empty();) rule.points.push_back(point(next_item(points, ',')));
    rule.z = number(row[4]), rule.write = row[5], rule.words = row[6], rule.source = row[7];
    for (std::string_view foods = row[2]; !foods.empty();)
      (row[1] == "US" ? us : uk)[static_cast<std::size_t>(hazard_named(next_item(foods, ',')))] = rule;
  }
  void add_done(const Rows& row) {
    DoneAfter& one = done[static_cast<std::size_t>(hazard_named(row[1]))];
    if (row[2] != "-") one.wet = static_cast<int>(number(row[2]));
    if (row[3] != "-") one.dry = static_cast<int>(number(row[3]));
  }
  void add_keep(const Rows& row) {
    const Limit limit{number(row[3]), 0, row[4], row[5], {}};
    for (std::string_view foods = row[2]; !foods.empty();) {
      const std::string_view food = next_item(foods, ',');
      for (std::size_t i = 0; i < kHazards; ++i) {
        Limit& one = side(keep[i], row[1]);
        if (food == "all" ? one.words.empty() : food == name_of(static_cast<Hazard>(i))) one = limit;
      }
    }
  }
};

const SafetyTable& safety_table() {
  static const SafetyTable table;
  return table;
}

}  // namespace

Law law_of(const Recipe& recipe) {
  const std::string_view law = recipe.kitchen ? recipe.kitchen->law : std::string_view();
  if (law == "US") return Law::US;
  if (law == "EU") return Law::EU;
  return law.empty() && recipe.dialect == Dialect::american ? Law::US : Law::UK;
}

std::string_view name_of(Law law) { return law == Law::UK ? "UK" : law == Law::EU ? "EU" : "US"; }

const CoreRule* core_rule(Law law, Hazard hazard) {
  const auto& rule = (law == Law::US ? safety_table().us : safety_table().uk)[static_cast<std::size_t>(hazard)];
  return rule ? &*rule : nullptr;
}

double seconds_wanted(const CoreRule& rule, double celsius) {
  constexpr double kNever = std::numeric_limits<double>::infinity(), kHair = 0.02;  // 165 °F printed as 73.9 °C
  if (rule.z > 0) {
    const CorePoint& at = rule.points.front();
    return celsius < at.celsius - kCurveReach - kHair ? kNever : at.seconds * std::pow(10.0, (at.celsius - celsius) / rule.z);
  }
  double wanted = kNever;
  for (const CorePoint& one : rule.points)
    if (celsius >= one.celsius - kHair) wanted = one.seconds;
  return wanted;
}

double settle_seconds() { return safety_table().settle; }
DoneAfter done_after(Hazard hazard) { return safety_table().done[static_cast<std::size_t>(hazard)]; }
const Limit& stand_limit(Law law) { return safety_table().stand.of(law); }
const Limit& out_limit(Law law) { return safety_table().out.of(law); }
const Limit& cool_limit(Law law) { return safety_table().cool.of(law); }
const Limit* half_cool(Law law) {
  const Limit& half = safety_table().half.of(law);
  return half.words.empty() ? nullptr : &half;
}
const Limit& keep_limit(Law law, Hazard food) { return safety_table().keep[static_cast<std::size_t>(food)].of(law); }
const Limit& hot_limit(Law law) { return safety_table().hot.of(law); }
const Limit& cold_limit(Law law) { return safety_table().cold.of(law); }
const Limit& frozen_limit(Law law) { return safety_table().frozen.of(law); }
const CautionWords& caution_words(std::string_view key) {
  for (const CautionWords& one : safety_table().cautions)
    if (one.key == key) return one;
  return safety_table().cautions.front();
}
bool grows_in_oil(const Food* food) { return food != nullptr && safety_table().in_oil.contains(food); }
std::span<const std::string_view> room_words() { return safety_table().rooms; }
bool says_not_raw(WordKey word) { return safety_table().not_raw.contains(word); }

}  // namespace qtn
