// Trials and versions: from the tree to values, and names of changes to what they change. Private to this room.
#pragma once
#include <climits>

#include "recipe/recipe.hpp"

namespace qtn {

// Log::day of a trial whose date could not be read.
inline constexpr int kNoDay = INT_MIN;

// One `trial:` or `variant:` block into recipe.trials or recipe.variants. Lists and methods stand before it (L2), so
// their units are known.
void build_log(const Source& source, View block, Recipe& recipe, Report& report);

// Lines that a change may mean, best first class only: exact names, else those with the same last word, else all that
// hold every word. `exact` says which class it was.
struct LineMatch {
  std::vector<Index> lines;
  bool exact = false;
};
LineMatch lines_named(const Recipe& recipe, Index part, std::string_view name);  // kNone: every part
Index part_named(const Recipe& recipe, std::string_view name);                   // kNone: no part of that name

// Clauses that a verb names: "bake". Empty where the word is no verb, or no clause has it.
std::vector<Index> clauses_of(const Recipe& recipe, Index part, std::string_view name);
bool is_verb_word(const Recipe& recipe, std::string_view name);
// Those of them that have this amount.
std::vector<Index> clauses_with(const Recipe& recipe, const std::vector<Index>& clauses,
                                const std::optional<Quantity>& amount);
// The amount of a clause that a change of this dimension means; kNone when it has none.
Index term_of(const Recipe& recipe, const Clause& clause, Dimension dimension);

// Two written amounts of one size; 3 cloves are not 3 heads. Manner is no part of it: "about 5 min" that became "6 min" was 5 min.
bool same_amount(const Quantity& a, const Quantity& b, Dialect dialect);
// Does the list ask for this much of the line? nullopt: none.
bool list_has(const Recipe& recipe, const TakeLine& line, const std::optional<Quantity>& amount, Counted as);

// Does one trial of the page stand before an earlier one (`down`), or a later one (`up`)?
struct PageOrder {
  Index down = kNone;
  bool up = false;
};
PageOrder page_order(const Recipe& recipe, int today);  // trials after today, which are told of by themselves, are left out
// `contradiction`: the changes follow one another only in the order of the page.
void report_order(const Recipe& recipe, Index at, bool contradiction, Report& report);

// What each change of a trial is as a share of the meat, the flour or the whole (trial_shares.cpp).
void share_changes(Recipe& recipe);
// The same of a line as the list has it now; of nothing where it cannot be weighed.
struct LineShare {
  ShareOf of = ShareOf::nothing;
  Fraction share;
};
LineShare share_of_line(Recipe recipe, Index line);
// An arrow line put to a recipe: `line` is what it names, kNone for what comes in or a step's clause.
void apply_change(Recipe& recipe, const Change& change, Index line);
// Where a line that comes in is put: the part it names, else the only part with a list, else the dish.
Index home_of(const Recipe& recipe, const Change& change);

// Where a view of the recipe's text stands.
Span span_of(const Recipe& recipe, std::string_view view);

// Versions against the recipe they start from (trials.cpp calls it).
void check_variants(Recipe& recipe, Report& report);

// Shared wording of trials and versions.
void report_unknown(const Recipe& recipe, const Change& change, Report& report);
void report_no_part(const Recipe& recipe, const Change& change, Report& report);
void report_several(const Recipe& recipe, const Change& change, const std::vector<Index>& lines, Report& report);
// False after a diagnostic: a time for an ingredient, a weight for a step.
bool kinds_fit(const Recipe& recipe, const Change& change, bool of_clause, Report& report);

}  // namespace qtn
