#include "measure/ladder_table.hpp"

#include <array>

#include "data/tables.hpp"
#include "measure/table_text.hpp"
#include "measure/unit_table.hpp"

namespace qtn {
namespace {

constexpr std::string_view kLadderWords[] = {"grams",  "ounces",      "millilitres", "cups",       "pints",
                                             "spoons", "minutes",     "celsius",     "fahrenheit", "gas",
                                             "things", "centimetres", "inches"};
constexpr std::size_t kLadders = std::size(kLadderWords);

struct OwnSteps {
  UnitId unit = kNoUnit;
  std::vector<Fraction> steps;
  Fraction limit;                     // 0: none
  std::vector<Fraction> under_limit;  // in addition, for amounts under it
};

struct LadderTable {
  std::array<std::vector<Rung>, kLadders> ladders;
  std::vector<OwnSteps> own;
};

// Takes the unit's name off the front: all words before the first number.
UnitId take_unit(std::string_view& text) {
  const std::size_t end = text.find_first_of("0123456789");
  const UnitId unit = unit_table().by_name(table::trim(text.substr(0, end)));
  text = end == std::string_view::npos ? std::string_view() : text.substr(end);
  return unit;
}

// "cup 1 1/2 1/3 1/4, tablespoon 1 1/2" or "gram 100 … 1; fine 1/2 1/10"
void read_rungs(std::string_view text, std::vector<Rung>& rungs) {
  for (int group = 0; !text.empty(); ++group) {
    std::string_view coarse = table::take_before(text, ',');
    const UnitId unit = take_unit(coarse);
    std::string_view fine = coarse;
    coarse = table::take_before(fine, ';');
    while (!coarse.empty()) rungs.push_back({unit, table::number(table::take_word(coarse)), group, false});
    table::take_word(fine);
    while (!fine.empty()) rungs.push_back({unit, table::number(table::take_word(fine)), group, true});
  }
}

// "1 1/2 1/4" or "1; under 2: 1/2"
OwnSteps read_own(std::string_view name, std::string_view text) {
  OwnSteps own;
  own.unit = unit_table().by_name(name);
  std::string_view steps = table::take_before(text, ';');
  while (!steps.empty()) own.steps.push_back(table::number(table::take_word(steps)));
  table::take_word(text);
  if (text.empty()) return own;
  own.limit = table::number(table::take_before(text, ':'));
  text = table::trim(text);
  while (!text.empty()) own.under_limit.push_back(table::number(table::take_word(text)));
  return own;
}

const LadderTable& ladder_table() {
  static const LadderTable table = [] {
    LadderTable made;
    table::each_row(data::ladders(), [&](const table::Row& row) {
      if (row[0] == "own") made.own.push_back(read_own(row[1], row[2]));
      for (std::size_t i = 0; row[0] == "ladder" && i < kLadders; ++i) {
        if (row[1] == kLadderWords[i]) read_rungs(row[2], made.ladders[i]);
      }
    });
    return made;
  }();
  return table;
}

}  // namespace

const std::vector<Rung>& rungs_of(Ladder ladder) {
  return ladder_table().ladders[static_cast<std::size_t>(ladder)];
}

std::vector<Fraction> own_steps(UnitId unit, const Fraction& amount) {
  for (const OwnSteps& own : ladder_table().own) {
    if (own.unit != unit) continue;
    std::vector<Fraction> steps = own.steps;
    if (amount.abs() < own.limit) steps.insert(steps.end(), own.under_limit.begin(), own.under_limit.end());
    return steps;
  }
  // A unit without a row: its habit.
  if (is_decimal(unit)) return {Fraction(10), Fraction(5), Fraction(1)};
  return {Fraction(1), Fraction::of(1, 2), Fraction::of(1, 4)};
}

Dialect measures_of(Ladder ladder, Dialect dialect) {
  switch (ladder) {
    case Ladder::cups:
      return dialect == Dialect::australian ? dialect : Dialect::american;
    case Ladder::pints:
      return dialect == Dialect::american ? dialect : Dialect::british;
    default:
      return dialect == Dialect::unstated ? Dialect::british : dialect;
  }
}

}  // namespace qtn
