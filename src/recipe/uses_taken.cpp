// A `use:` that no line and no step takes: most often its line stands in the list without its brackets.
#include <algorithm>

#include "recipe/phases.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

bool is_taken(const Recipe& recipe, Index use) {
  const auto takes = [&](const Target& target) { return target.kind == TargetKind::use && target.index == use; };
  return std::any_of(recipe.lines.begin(), recipe.lines.end(), [&](const TakeLine& line) { return takes(line.target); }) ||
         std::any_of(recipe.mentions.begin(), recipe.mentions.end(), [&](const Mention& mention) { return takes(mention.target); });
}

// Does something else bear its name, too? Then that was told.
bool is_other(const Recipe& recipe, Index use) {
  const std::string_view name = recipe.uses[use].as;
  const auto same = [&](const auto& one) { return same_letters(one.name, name); };
  const auto used = [&](const Use& one) { return &one != &recipe.uses[use] && same_letters(one.as, name); };
  return std::any_of(recipe.parts.begin(), recipe.parts.end(), same) || std::any_of(recipe.uses.begin(), recipe.uses.end(), used);
}

}  // namespace

void check_uses_taken(const Recipe& recipe, Report& report) {
  if (!recipe.parts.empty() && recipe.parts[recipe.dish].disturbed) return;
  for (Index u = 0; u < recipe.uses.size(); ++u) {
    const Use& use = recipe.uses[u];
    if (use.recipe == nullptr || is_taken(recipe, u) || is_other(recipe, u)) continue;
    const std::string name(use.as);
    Diagnostic& problem = report.add(Code::unused_use, use.span, "Nothing on this page takes " + quoted(name) + ".")
                              .expect(quoted("[" + name + "]") + " in square brackets, in the list or in a step");
    for (const TakeLine& line : recipe.lines)
      if (same_letters(line.name, use.as)) problem.also(line.span, "here it is an ingredient to be bought").offer(line.name_span, "[" + std::string(line.name) + "]", "put it in brackets");
  }
}

}  // namespace qtn
