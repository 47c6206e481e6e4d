#include "card/words.hpp"

#include <array>

namespace qtn {
namespace {

constexpr std::size_t kLabels = static_cast<std::size_t>(Label::count_);

struct LabelRow {
  Label label;
  std::string_view british, american;
};

// Common practice of printed recipes, no source.
constexpr LabelRow kRows[] = {
    {Label::makes, "Makes", "Makes"},
    {Label::serves, "Serves", "Serves"},
    {Label::tin, "Tin", "Pan"},
    {Label::oven, "Oven", "Oven"},
    {Label::keeps, "Keeps", "Keeps"},
    {Label::ready, "Ready", "Ready"},
    {Label::needs, "Needs", "Needs"},
    {Label::scales, "Scales", "Scales"},
    {Label::batch, "Batch", "Batch"},
    {Label::source, "Source", "Source"},
    {Label::by, "By", "By"},
    {Label::date, "Date", "Date"},
    {Label::standardized, "Standardized", "Standardized"},
    {Label::conventional, "conventional", "conventional"},
    {Label::fan, "fan", "convection"},
    {Label::gas, "gas", "gas"},
    {Label::chilled, "chilled", "chilled"},
    {Label::frozen, "frozen", "frozen"},
    {Label::cool, "in a cool place", "in a cool place"},
    {Label::room, "at room temperature", "at room temperature"},
    {Label::sealed, "sealed", "sealed"},
    {Label::once_open, "once open", "once open"},
    {Label::at_its_best_after, "at its best after ", "at its best after "},
    {Label::found_to_hold_from, "found to hold from ", "found to hold from "},
    {Label::times, " times", " times"},
    {Label::at_most, "at most ", "at most "},
    {Label::at_a_time, " at a time", " at a time"},
    {Label::tasted_standard, "tasted three times without a change", "tasted three times without a change"},
    {Label::for_as_written, ", for the recipe as written", ", for the recipe as written"},
    {Label::times_the_recipe, " times the recipe", " times the recipe"},
    {Label::of_the_recipe, " of the recipe", " of the recipe"},
    {Label::half_the_recipe, "half the recipe", "half the recipe"},
    {Label::about_times, "about ", "about "},
    {Label::for_so_many, ", for ", ", for "},
    {Label::you_need, "You need", "You need"},
    {Label::method, "Method", "Method"},
    {Label::tastings, "Tastings", "Tastings"},
    {Label::notes, "Notes", "Notes"},
    {Label::to_keep, "To keep", "To keep"},
    {Label::to_freeze, "To freeze", "To freeze"},
    {Label::to_reheat, "To reheat", "To reheat"},
    {Label::to_finish, "To finish", "To finish"},
    {Label::as_written, "As written", "As written"},
    {Label::metric, "Metric", "Metric"},
    {Label::imperial, "Imperial", "Imperial"},
    {Label::american, "American", "American"},
    {Label::meanwhile, "Meanwhile", "Meanwhile"},
    {Label::ahead, "Ahead", "Ahead"},
    {Label::by_hand, "By hand", "By hand"},
    {Label::by_machine, "By machine", "By machine"},
    {Label::note, "Note", "Note"},
    {Label::from, "from ", "from "},
    {Label::as_bought, " as bought", " as bought"},
    {Label::from_file, "from ", "from "},
    {Label::taking_up, "taking up ", "taking up "},
    {Label::start_with, "start with ", "start with "},
    {Label::giving, "giving ", "giving "},
    {Label::and_, " and ", " and "},
    {Label::of, " of ", " of "},
    {Label::of_the, " of the ", " of the "},
    {Label::per, " per ", " per "},
    {Label::of_all_flour, " of all the flour", " of all the flour"},
    {Label::each, " each", " each"},
    {Label::optional, "optional", "optional"},
    {Label::fixed, "the same for any size", "the same for any size"},
    {Label::gently, "increased gently when scaled", "increased gently when scaled"},
    {Label::about, "about ", "about "},
    {Label::exactly, "exactly ", "exactly "},
    {Label::at_least, "at least ", "at least "},
    {Label::to, " to ", " to "},
    {Label::none, "none", "none"},
    {Label::no_change, "no change", "no change"},
};
static_assert(std::size(kRows) == kLabels);

template <std::string_view LabelRow::*kColumn>
constexpr std::array<std::string_view, kLabels> column() {
  std::array<std::string_view, kLabels> words{};
  for (const LabelRow& row : kRows) words[static_cast<std::size_t>(row.label)] = row.*kColumn;
  return words;
}
constexpr auto kBritish = column<&LabelRow::british>();
constexpr auto kAmerican = column<&LabelRow::american>();

constexpr bool complete(const std::array<std::string_view, kLabels>& words) {
  for (std::string_view word : words)
    if (word.empty()) return false;
  return true;
}
static_assert(complete(kBritish) && complete(kAmerican));

}  // namespace

Words words_of(const Recipe& recipe) {
  const bool american = recipe.words == WordsOf::american ||
                        (recipe.words == WordsOf::unstated && recipe.dialect == Dialect::american);
  if (american) return {"en-US", kAmerican.data()};
  return {"en-GB", kBritish.data()};
}

}  // namespace qtn
