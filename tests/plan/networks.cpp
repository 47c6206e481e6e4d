// 500 random clocks, that hold or not, against z3; and every clash: inconsistent by itself, minimal, and of the fewest
// labels. z3 is asked in its own terms: are there moments so that for all that chance may do every rule holds?
#include <doctest/doctest.h>

#include <random>
#include <sstream>

#include "plan/network.hpp"
#include "plan/oracles.hpp"

namespace qtn::tests {
namespace {

using namespace plan;

Network random_network(unsigned seed) {
  std::mt19937 random(seed);
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  Network net;
  const int count = 3 + below(7);
  for (int i = 0; i < count; ++i) {
    Activity one;
    const Ticks least = below(30);
    switch (below(4)) {
      case 0: one.length = {least, least, false}; break;
      case 1: one.length = {least, least + 1 + below(10), true}; break;   // chance
      case 2: one.length = {least, least + 1 + below(30), false}; break;  // chosen
      default: one.length = {least, kNever, false};
    }
    one.label = net.labels++;
    if (i > 0 && below(3) == 0) one.follows = static_cast<Number>(i - 1);
    net.activities.push_back(one);
  }
  const int rules = count + below(count);
  for (int r = 0; r < rules; ++r) {
    const auto end = [&] { return End{static_cast<Number>(below(count)), below(2) == 1}; };
    Rule rule;
    rule.before = end(), rule.after = end();
    if (rule.before.activity == rule.after.activity) continue;
    if (rule.before.activity > rule.after.activity) std::swap(rule.before, rule.after);
    rule.least = below(10);
    if (below(5) < 2) std::swap(rule.before, rule.after), rule.least = -(10 + below(70));  // a longest distance
    if (below(4) != 0) rule.label = net.labels++;
    net.rules.push_back(rule);
  }
  return net;
}

// Without a label: a length of 0 or more that the plan chooses, a rule that is not there.
class Question {
 public:
  Question(const Network& net, const std::vector<char>& kept) : net_(net), kept_(kept) {}

  std::string text() {
    std::ostringstream chances, ranges, rules;
    std::vector<std::string> begins, ends;
    int points = 0, chance = 0;
    std::ostringstream out;
    out << "(push)\n";
    const auto point = [&] {
      const std::string name = "p" + std::to_string(points++);
      out << "(declare-const " << name << " Real)\n";
      return name;
    };
    for (std::size_t i = 0; i < net_.activities.size(); ++i) {
      const Activity& one = net_.activities[i];
      begins.push_back(one.follows == kNothing ? point() : ends[one.follows]);
      Length length = one.length;
      if (one.label != kNothing && kept_[one.label] == 0) length = {};
      if (length.chance) {
        const std::string name = "c" + std::to_string(chance++);
        chances << "(" << name << " Real) ";
        ranges << "(<= " << length.least << " " << name << ") (<= " << name << " " << length.most << ") ";
        ends.push_back("(+ " + begins.back() + " " + name + ")");
      } else if (length.least == length.most) {
        ends.push_back("(+ " + begins.back() + " " + std::to_string(length.least) + ")");
      } else {
        const std::string end = point();
        rules << at_least(begins.back(), end, length.least);
        if (length.most < kNever) rules << at_least(end, begins.back(), -length.most);
        ends.push_back(end);
      }
    }
    const auto at = [&](const End& end) { return end.end ? ends[end.activity] : begins[end.activity]; };
    for (const Rule& rule : net_.rules)
      if (rule.label == kNothing || kept_[rule.label] != 0) rules << at_least(at(rule.before), at(rule.after), rule.least);
    const std::string all = "(and true " + rules.str() + ")";
    if (chance == 0) out << "(assert " << all << ")\n";
    else out << "(assert (forall (" << chances.str() << ") (=> (and true " << ranges.str() << ") " << all << ")))\n";
    out << "(check-sat)\n(pop)\n";
    return out.str();
  }

 private:
  static std::string at_least(const std::string& before, const std::string& after, Ticks least) {
    const std::string number = least < 0 ? "(- " + std::to_string(-least) + ")" : std::to_string(least);
    return "(>= (- " + after + " " + before + ") " + number + ") ";
  }
  const Network& net_;
  const std::vector<char>& kept_;
};

}  // namespace

TEST_CASE("random clocks hold where z3 says so, and every clash is a smallest one") {
  const bool there = program_there("z3");
  if (!there) MESSAGE("z3 is not installed: the clocks were not compared. See tests/tools/setup.sh.");
  std::string asked;
  std::vector<bool> expected;
  int clashes = 0;
  for (unsigned seed = 1; seed <= 500; ++seed) {
    CAPTURE(seed);
    const Network net = random_network(seed);
    std::vector<char> kept(net.labels, 1);
    const bool fine = holds(place(net));
    asked += Question(net, kept).text();
    expected.push_back(fine);
    if (fine) continue;
    // Rules without a label may clash by themselves: then there is nothing to tell.
    std::vector<char> none(net.labels, 0);
    if (!holds(place(net, none))) continue;
    ++clashes;
    const Clash clash = clash_of(net);
    CHECK(clash.excess > 0);
    std::vector<char> only(net.labels, 0);
    for (const Number label : clash.labels) only[label] = 1;
    CHECK_FALSE(holds(place(net, only)));
    asked += Question(net, only).text();
    expected.push_back(false);
    for (const Number label : clash.labels) {
      only[label] = 0;
      CHECK(holds(place(net, only)));
      asked += Question(net, only).text();
      expected.push_back(true);
      only[label] = 1;
    }
    // No smaller set, by brute force over pairs and single ones.
    for (Number a = 0; clash.labels.size() > 1 && a < net.labels; ++a) {
      std::vector<char> few(net.labels, 0);
      few[a] = 1;
      CHECK(holds(place(net, few)));
      for (Number b = a + 1; clash.labels.size() > 2 && b < net.labels; ++b) {
        few[b] = 1;
        CHECK(holds(place(net, few)));
        few[b] = 0;
      }
    }
  }
  CHECK(clashes > 100);
  if (!there) return;
  std::istringstream answers(answer_of("z3 -T:120", asked, ".smt2"));
  std::size_t count = 0, unlike = 0;
  for (std::string line; std::getline(answers, line); ++count) {
    if (count >= expected.size() || line != (expected[count] ? "sat" : "unsat")) ++unlike;
  }
  CHECK(count == expected.size());
  CHECK(unlike == 0);
  MESSAGE(expected.size() << " answers of z3 alike, " << clashes << " clashes");
}

}  // namespace qtn::tests
