// In which order the trials of a log were tasted, and where page and dates speak against one another.
#include <algorithm>

#include "recipe/logs.hpp"

namespace qtn {

std::vector<Index> newest_first(const Recipe& recipe) {
  std::vector<Index> order;
  for (Index i = static_cast<Index>(recipe.trials.size()); i-- > 0;) order.push_back(i);
  std::stable_sort(order.begin(), order.end(), [&](Index a, Index b) { return recipe.trials[a].day > recipe.trials[b].day; });
  return order;
}

PageOrder page_order(const Recipe& recipe, int today) {
  PageOrder order;
  for (Index i = 0; i + 1 < recipe.trials.size(); ++i) {
    const int here = recipe.trials[i].day, next = recipe.trials[i + 1].day;
    if (here == kNoDay || next == kNoDay) return {};
    if (here > next && order.down == kNone && (today == 0 || here <= today)) order.down = i;
    order.up = order.up || here < next;
  }
  return order;
}

void report_order(const Recipe& recipe, Index at, bool contradiction, Report& report) {
  const std::string here(recipe.trials[at].name), next(recipe.trials[at + 1].name);
  auto& problem = report.add(Code::trial_out_of_order, contradiction ? Severity::error : Severity::warning, span_of(recipe, recipe.trials[at].name),
                             contradiction ? "This trial is dated after the next one, and only in the order of the page do their changes follow one another."
                                           : "This trial is dated after the next one, while the others stand in the order of their days.");
  problem.find("`" + here + "`").expect("a day up to `" + next + "`, or the two trials the other way round");
  problem.also(span_of(recipe, recipe.trials[at + 1].name), "the next trial is of this day");
}

}  // namespace qtn
