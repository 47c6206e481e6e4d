#include "measure/rungs.hpp"

#include <array>

#include "data/tables.hpp"
#include "measure/columns.hpp"

namespace qtn {
namespace {

constexpr std::string_view kLadders[] = {"grams", "ounces", "millilitres", "cups", "pints", "spoons", "minutes", "celsius",
                                         "fahrenheit", "gas", "things", "centimetres", "inches"};

struct Own {
  UnitId unit;
  std::vector<Fraction> steps;
};

struct Steps {
  std::array<std::vector<Rung>, std::size(kLadders)> ladders;
  std::vector<Own> own;

  Steps() {
    Columns rows(data::ladders());
    while (rows.next()) {
      if (rows[0] == "own") add_own(rows[1], rows[2]);
      else
        for (std::size_t i = 0; i < std::size(kLadders); ++i)
          if (rows[1] == kLadders[i]) add_ladder(ladders[i], rows[2]);
    }
  }

  // "cup 1 1/2 1/3 1/4, tablespoon 1 1/2"; "gram 100 50; fine 1/2 1/10"
  static void add_ladder(std::vector<Rung>& out, std::string_view text) {
    bool fine = false;
    while (!text.empty()) {
      std::string_view half = cut(text, ';');
      if (half.substr(0, 5) == "fine ") fine = true, half.remove_prefix(5);
      UnitId unit = out.empty() ? kNoUnit : out.back().unit;
      while (!half.empty()) {
        std::string_view group = cut(half, ',');
        std::string_view name = group;
        std::size_t digit = group.find_first_of("0123456789");
        name = group.substr(0, digit);
        while (!name.empty() && name.back() == ' ') name.remove_suffix(1);
        if (!name.empty()) unit = unit_named(name);
        group.remove_prefix(digit);
        while (!group.empty()) out.push_back({unit, read_fraction(cut(group, ' ')), fine});
      }
    }
  }

  void add_own(std::string_view name, std::string_view text) {
    Own row{unit_named(name), {}};
    while (!text.empty()) {
      std::string_view part = cut(text, ';');
      if (part.substr(0, 6) == "under ") part = part.substr(part.find(':') + 1);
      while (!part.empty())
        if (const Fraction step = read_fraction(cut(part, ' ')); !step.is_lost()) row.steps.push_back(step);
    }
    own.push_back(std::move(row));
  }
};

const Steps& steps() {
  static const Steps kSteps;
  return kSteps;
}

Fraction nearest_multiple(const Fraction& value, const Fraction& step) { return Fraction::of((value / step).nearest(), 1) * step; }

}  // namespace

const std::vector<Rung>& rungs_of(Ladder ladder) { return steps().ladders[static_cast<std::size_t>(ladder)]; }

OwnStep own_step(UnitId id, const Fraction& exact, const Fraction& allowed, bool exactly) {
  OwnStep out;
  for (const Own& row : steps().own) {
    if (row.unit != id) continue;
    for (const Fraction& step : row.steps) {
      const Fraction value = nearest_multiple(exact, step);
      if (!value.is_zero() && ((value - exact) / exact).abs() <= allowed) return {true, value};
    }
    const Fraction value = nearest_multiple(exact, row.steps.back());
    if (!exactly && !value.is_zero() && ((value - exact) / exact).abs() <= Fraction::of(1, 10)) return {true, value};
    return out;
  }
  return out;
}

Agreement agrees_as_heat(const Ends& first, const Quantity& stated) {
  Agreement out;
  const bool gas = stated.unit == common().gas;
  const Fraction exact = from_celsius(first.low, stated.unit);
  const Fraction step = gas ? Fraction::of(1, 2) : Fraction(stated.unit == common().fahrenheit ? 25 : 10);
  const Fraction off = stated.low - exact;
  // Anything within half a step of the scale's own marks is the same setting.
  out.holds = off.abs() <= step / Fraction(2) || stated.low == nearest_multiple(exact, step);
  out.error = exact.is_zero() ? Fraction(0) : off / exact;
  if (!out.holds) {
    Quantity correct = stated;
    correct.low = correct.high = gas ? exact : nearest_multiple(exact, step);
    out.correct = write_plain(correct);
  }
  return out;
}

}  // namespace qtn
