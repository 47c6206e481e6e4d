// An outside opinion: Debian's `units` program converts a thousand random amounts for every pair of units that it
// shares with our table, in one run, and must agree to eight significant digits. It is needed to run these tests.
#include <doctest/doctest.h>
#include <unistd.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <vector>

#include "measure/convert.hpp"

using namespace qtn;

namespace {

constexpr int kAmounts = 1000;

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
                                     {"US legal cup", "(240 ml)"}};
const std::vector<Shared> kLength = {{"mm", "mm"}, {"cm", "cm"}, {"metre", "m"}, {"inch", "inch"}, {"foot", "foot"}};
const std::vector<Shared> kTime = {{"s", "s"}, {"min", "min"}, {"h", "hour"}, {"day", "day"}, {"week", "week"}};
const std::vector<Shared> kDifference = {{"Celsius degree", "degC"}, {"Fahrenheit degree", "degF"}};
const std::vector<Shared> kPoint = {{"°C", "tempC"}, {"°F", "tempF"}};
const char* const kMarks[] = {"1|4", "1|2", "1", "2", "3", "4", "5", "6", "7", "8", "9"};

struct Asked {
  std::string have, want;
  Fraction ours;
};

Fraction ours(const Fraction& amount, std::string_view from, std::string_view to) {
  const UnitId a = unit_named(from), b = unit_named(to);
  REQUIRE_MESSAGE(a != kNoUnit, from);
  REQUIRE_MESSAGE(b != kNoUnit, to);
  return convert(amount, a, Dialect::british, b, Dialect::british, Fraction::lost(), Fraction::lost()).value;
}

class Questions {
 public:
  // Every pair, a thousand amounts each, in either direction by the toss of a coin.
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

// Writes the questions, runs the program once, reads one answer a line.
std::vector<std::string> answers(const std::vector<Asked>& asked) {
  namespace fs = std::filesystem;
  const fs::path base = fs::temp_directory_path() / ("quartern_units_" + std::to_string(::getpid()));
  const std::string in = base.string() + ".in", out = base.string() + ".out";
  {
    std::ofstream file(in);
    for (const Asked& each : asked) file << each.have << '\n' << each.want << '\n';
  }
  const int status = std::system(("units -t -o %.12g <" + in + " >" + out + " 2>&1").c_str());
  CHECK_MESSAGE(status == 0, "`units` did not run to its end");
  std::vector<std::string> lines;
  std::ifstream file(out);
  for (std::string line; std::getline(file, line);) lines.push_back(line);
  fs::remove(in);
  fs::remove(out);
  return lines;
}

bool same_to_eight_digits(double a, double b) {
  return std::abs(a - b) <= 0.5e-8 * std::max(std::abs(a), std::abs(b));
}

}  // namespace

TEST_CASE("the units program agrees on every unit that it knows") {
  REQUIRE_MESSAGE(std::system("command -v units >/dev/null 2>&1") == 0,
                  "the program `units` is missing: apt-get install units (it is the outside check of the unit table)");
  Questions questions;
  for (const auto* const group : {&kMass, &kVolume, &kLength, &kTime, &kDifference}) questions.pairs(*group, false);
  questions.pairs(kPoint, true);
  questions.marks();
  const std::vector<std::string> found = answers(questions.asked);
  REQUIRE_MESSAGE(found.size() == questions.asked.size(),
                  "the first line it wrote: ", found.empty() ? "" : found.front());
  std::size_t wrong = 0;
  for (std::size_t i = 0; i < found.size(); ++i) {
    const Asked& each = questions.asked[i];
    if (same_to_eight_digits(std::strtod(found[i].c_str(), nullptr), each.ours.approx())) continue;
    if (++wrong <= 10)
      MESSAGE(each.have << " in " << each.want << ": " << found[i] << ", ours " << each.ours.decimal(9));
  }
  CHECK(wrong == 0);
  CHECK(questions.asked.size() > 300'000);
}
