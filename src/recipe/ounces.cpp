#include "recipe/ounces.hpp"

#include <algorithm>

namespace qtn {
namespace {

constexpr std::size_t kMostShown = 8;  // places in one message

std::vector<OunceSet> sets_of(const std::vector<OuncePair>& pairs) {
  std::vector<OunceSet> sets;
  for (const OuncePair& pair : pairs) sets.push_back(pair.set);
  return sets;
}

}  // namespace

std::vector<OuncePair> ounce_pairs(const Recipe& recipe) {
  std::vector<OuncePair> pairs;
  const auto add = [&](const Quantity& one, const Quantity& other, Span span) {
    const OunceSet set = ounces_between(one, other);
    if (set != kAnyOunce && set != 0) pairs.push_back({span, set});  // what fits none is a slip of its own
  };
  for (const TakeLine& line : recipe.lines) {
    if (line.basis != Basis::amount) continue;
    for (Index i = line.stated.first; i < line.stated.end(); ++i)
      if (!recipe.stated[i].each) add(line.amount, recipe.stated[i].amount, recipe.stated[i].span);
  }
  for (std::size_t i = 1; i < recipe.terms.size(); ++i)
    if (recipe.terms[i].role == TermRole::equivalent) add(recipe.terms[i - 1].amount, recipe.terms[i].amount, recipe.terms[i].span);
  std::sort(pairs.begin(), pairs.end(), [](const OuncePair& a, const OuncePair& b) { return a.span.begin < b.span.begin; });
  return pairs;
}

void check_ounces(const Recipe& recipe, Report& report) {
  const std::vector<OuncePair> pairs = ounce_pairs(recipe);
  const OunceOf main = most_of(sets_of(pairs));
  const auto off = std::find_if(pairs.begin(), pairs.end(), [&](const OuncePair& pair) { return !has(pair.set, main); });
  if (off == pairs.end()) return;
  const OunceOf other = first_of(off->set);
  auto& problem = report.add(Code::mixed_ounces, off->span,
                             "This counts " + name_of(other) + " to the ounce; other lines of this file count " + name_of(main) + ".");
  problem.find("`" + std::string(recipe.slice(off->span)) + "`").expect("one way throughout; an ounce is " + name_of(OunceOf::exact));
  for (const OuncePair& pair : pairs) {
    if (&pair == &*off || problem.labels.size() == kMostShown) continue;
    const bool mine = has(pair.set, main);
    // What fits both proves nothing.
    if (mine && has(pair.set, other)) continue;
    problem.also(pair.span, name_of(mine ? main : first_of(pair.set)) + " to the ounce here");
  }
}

}  // namespace qtn
