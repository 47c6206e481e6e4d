// Versions against the recipe they start from.
#include <algorithm>

#include "recipe/logs.hpp"
#include "words/fold.hpp"

namespace qtn {

void check_variants(Recipe& recipe, Report& report) {
  const bool disturbed = std::any_of(recipe.parts.begin(), recipe.parts.end(), [](const Part& part) { return part.disturbed; });
  for (std::size_t i = 0; i < recipe.variants.size(); ++i) {
    Log& log = recipe.variants[i];
    for (std::size_t j = 0; j < i; ++j)
      if (lower(recipe.variants[j].name) == lower(log.name))
        report.add(Code::repeated_variant, log.span, "Two variants are called `" + std::string(log.name) + "`.").also(recipe.variants[j].span, "the first is here").expect("a name of its own");
    if (log.changes.empty()) report.add(Code::empty_variant, log.span, "This variant changes nothing.").expect("at least one line `NAME  OLD -> NEW`");
    for (Change& change : log.changes) {
      const Index part = change.part.empty() ? kNone : part_named(recipe, change.part);
      const LineMatch match = lines_named(recipe, part, change.name);
      if (!change.before) continue;  // a line that comes in
      if (match.lines.size() > 1) {
        report_several(recipe, change, match.lines, report);
      } else if (match.lines.size() == 1) {
        change.target = {TargetKind::line, match.lines[0], recipe.lines[match.lines[0]].part};
        const TakeLine& line = recipe.lines[match.lines[0]];
        if (!kinds_fit(recipe, change, false, report) || recipe.parts[line.part].disturbed || list_has(recipe, line, change.before)) continue;
        report.add(Code::version_old_differs, change.before_span, "This version starts from `" + std::string(recipe.slice(change.before_span)) + "`, and the list has `" + std::string(recipe.slice(line.amount_span)) + "`.")
            .also(line.amount_span, "the list").expect("`" + std::string(recipe.slice(line.amount_span)) + "`");
      } else if (is_verb_word(recipe, change.name)) {
        if (!change.after) report.add(Code::version_drops_step, change.span, "A version cannot leave out a step.").expect("another time or temperature");
        else if (!disturbed && clauses_of(recipe, part, change.name).empty()) report_unknown(recipe, change, report);
      } else if (!disturbed) {
        report_unknown(recipe, change, report);
      }
    }
  }
}

}  // namespace qtn
