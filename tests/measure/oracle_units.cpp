// An outside opinion: Debian's `units` program converts seven hundred random amounts for every pair of units that it
// shares with our table, in one run, and must agree to eight significant digits. It is needed to run these tests.
#include <doctest/doctest.h>

#include <random>
#include <string>
#include <vector>

#include "measure/convert.hpp"
#include "units_program.hpp"

using namespace qtn;

namespace {

constexpr int kAmounts = 700;

// Our name, and what the other program calls it.
struct Shared {
  std::string_view ours, theirs;
};
const std::vector<Shared> kMass = {{"g", "g"},   {"kg", "kg"}, {"mg", "mg"},
                                   {"oz", "oz"}, {"lb", "lb"}, {"US stick", "stickbutter"}};
const std::vector<Shared> kVolume = {{"ml", "ml"},
                                     {"cl", "cl"},
                                     {"dl", "dl"},
                                     {"l", "l"},
                                     {"imperial gallon", "brgallon"},
                                     {"imperial quart", "brquart"},
                                     {"imperial pint", "brpint"},
                                     {"imperial gill", "brgill"},
                                     {"imperial fl oz", "brfluidounce"},
                                     {"imperial cup", "brcup"},
                                     {"third-pint teacup", "brteacup"},
                                     {"US gallon", "usgallon"},
                                     {"US quart", "usquart"},
                                     {"US pint", "uspint"},
                                     {"US cup", "uscup"},
                                     {"US gill", "usgill"},
                                     {"US fl oz", "usfluidounce"},
                                     {"US tablespoon", "ustablespoon"},
                                     {"US teaspoon", "usteaspoon"},
                                     {"metric cup", "metriccup"},
                                     {"metric tablespoon", "brtablespoon"},
                                     {"metric teaspoon", "brteaspoon"},
                                     {"metric dessertspoon", "brdessertspoon"},
                                     {"Australian tablespoon", "australiatablespoon"},
                                     {"US legal cup", "legalcup"},
                                     {"label tablespoon", "legaltbsp"},
                                     {"Japanese cup", "japancup"},
                                     {"old British tablespoon", "(5|8 brfloz)"},
                                     {"No. 16 scoop", "scoop(16)"}};
const std::vector<Shared> kLength = {{"mm", "mm"}, {"cm", "cm"}, {"metre", "m"}, {"inch", "inch"}, {"foot", "foot"}};
const std::vector<Shared> kTime = {{"s", "s"}, {"min", "min"}, {"h", "hour"}, {"day", "day"}, {"week", "week"}};
const std::vector<Shared> kDifference = {{"Celsius degree", "degC"}, {"Fahrenheit degree", "degF"}};
const std::vector<Shared> kPoint = {{"°C", "tempC"}, {"°F", "tempF"}};
const char* const kMarks[] = {"1|4", "1|2", "1", "2", "3", "4", "5", "6", "7", "8", "9"};

using Asked = tests::UnitsQuestion;

Fraction ours(const Fraction& amount, std::string_view from, std::string_view to) {
  const UnitId a = unit_named(from), b = unit_named(to);
  REQUIRE_MESSAGE(a != kNoUnit, from);
  REQUIRE_MESSAGE(b != kNoUnit, to);
  return convert(amount, a, Dialect::british, b, Dialect::british, Fraction::lost(), Fraction::lost()).value;
}

class Questions {
 public:
  // Every pair, seven hundred amounts each, in either direction by the toss of a coin.
  void pairs(const std::vector<Shared>& units, bool points) {
    for (std::size_t i = 0; i < units.size(); ++i) {
      for (std::size_t j = i + 1; j < units.size(); ++j) {
        for (int n = 0; n < kAmounts; ++n) {
          const bool turned = (dice_() & 1u) != 0;
          one(units[turned ? j : i], units[turned ? i : j], points);
        }
      }
    }
  }
  void marks() {
    for (const char* const mark : kMarks) {
      const std::string_view text = mark;
      const Fraction value = text.size() == 1 ? Fraction(text[0] - '0') : Fraction::of(1, text[2] - '0');
      asked.push_back({"gasmark(" + std::string(mark) + ")", "tempC", ours(value, "gas", "°C")});
      asked.push_back({"gasmark(" + std::string(mark) + ")", "tempF", ours(value, "gas", "°F")});
    }
  }
  std::vector<Asked> asked;

 private:
  void one(const Shared& from, const Shared& to, bool points) {
    std::uniform_int_distribution<int> digits(1, 9'999'999), places(0, 4);
    Wide under = 1;
    for (int p = places(dice_); p > 0; --p) under *= 10;
    const Fraction amount = Fraction::of(digits(dice_), under);
    const std::string number = amount.decimal(4), name(from.theirs);
    asked.push_back({points ? name + "(" + number + ")" : number + " " + name, std::string(to.theirs),
                     ours(amount, from.ours, to.ours)});
  }
  std::mt19937 dice_{20260215};
};

}  // namespace

TEST_CASE("the units program agrees on every unit that it knows") {
  Questions questions;
  for (const auto* const group : {&kMass, &kVolume, &kLength, &kTime, &kDifference}) questions.pairs(*group, false);
  questions.pairs(kPoint, true);
  questions.marks();
  CHECK(tests::units_disagrees(questions.asked) == 0);
  CHECK(questions.asked.size() > 300'000);
}
