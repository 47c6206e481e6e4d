#include "card/words.hpp"

#include <array>

#include "card/wording.hpp"

namespace qtn {
namespace {

constexpr std::size_t kLabels = static_cast<std::size_t>(Caption::count_);

struct CaptionRow {
  Caption label;
  std::string_view british, american;
};

// Common practice of printed recipes, no source.
constexpr CaptionRow kRows[] = {
    {Caption::makes, "Makes", "Makes"},
    {Caption::serves, "Serves", "Serves"},
    {Caption::tin, "Tin", "Pan"},
    {Caption::oven, "Oven", "Oven"},
    {Caption::keeps, "Keeps", "Keeps"},
    {Caption::ready, "Ready", "Ready"},
    {Caption::needs, "Needs", "Needs"},
    {Caption::scales, "Scales", "Scales"},
    {Caption::batch, "Batch", "Batch"},
    {Caption::source, "Source", "Source"},
    {Caption::by, "By", "By"},
    {Caption::date, "Date", "Date"},
    {Caption::tasted, "Tasted", "Tasted"},
    {Caption::serve, "At table", "At table"},
    {Caption::guests, "Guests", "Guests"},
    {Caption::measures, "Measures", "Measures"},
    {Caption::conventional, "conventional", "conventional"},
    {Caption::fan, "fan", "convection"},
    {Caption::gas, "gas", "gas"},
    {Caption::chilled, "chilled", "chilled"},
    {Caption::frozen, "frozen", "frozen"},
    {Caption::cool, "in a cool place", "in a cool place"},
    {Caption::room, "at room temperature", "at room temperature"},
    {Caption::sealed, "sealed", "sealed"},
    {Caption::once_open, "once open", "once open"},
    {Caption::at_its_best_after, "at its best after ", "at its best after "},
    {Caption::found_to_hold_from, "found to hold from ", "found to hold from "},
    {Caption::times, " times", " times"},
    {Caption::at_most, "at most ", "at most "},
    {Caption::at_a_time, " at a time", " at a time"},
    {Caption::for_as_written, ", for the recipe as written", ", for the recipe as written"},
    {Caption::in_place_of, ", in place of ", ", in place of "},
    {Caption::times_the_recipe, " times the recipe", " times the recipe"},
    {Caption::of_the_recipe, " of the recipe", " of the recipe"},
    {Caption::half_the_recipe, "half the recipe", "half the recipe"},
    {Caption::about_times, "about ", "about "},
    {Caption::for_so_many, ", for ", ", for "},
    {Caption::you_need, "You need", "You need"},
    {Caption::method, "Method", "Method"},
    {Caption::tastings, "Tastings", "Tastings"},
    {Caption::notes, "Notes", "Notes"},
    {Caption::notes_as_written, "Notes on the recipe as written", "Notes on the recipe as written"},
    {Caption::after, "Once it is made", "Once it is made"},
    {Caption::to_keep, "To keep", "To keep"},
    {Caption::to_freeze, "To freeze", "To freeze"},
    {Caption::to_reheat, "To reheat", "To reheat"},
    {Caption::to_finish, "To finish", "To finish"},
    {Caption::as_written, "As written", "As written"},
    {Caption::metric, "Metric", "Metric"},
    {Caption::imperial, "Imperial", "Imperial"},
    {Caption::american, "American", "American"},
    {Caption::meanwhile, "Meanwhile", "Meanwhile"},
    {Caption::ahead, "Ahead", "Ahead"},
    {Caption::by_hand, "By hand", "By hand"},
    {Caption::by_machine, "By machine", "By machine"},
    {Caption::note, "Note", "Note"},
    {Caption::from, "from ", "from "},
    {Caption::as_bought, " as bought", " as bought"},
    {Caption::from_file, "from ", "from "},
    {Caption::own_card, "see its own card", "see its own card"},
    {Caption::card_of, "see the card of ", "see the card of "},
    {Caption::taking_up, "taking up ", "taking up "},
    {Caption::start_with, "start with ", "start with "},
    {Caption::giving, "giving ", "giving "},
    {Caption::and_, " and ", " and "},
    {Caption::of, " of ", " of "},
    {Caption::of_the, " of the ", " of the "},
    {Caption::per, " per ", " per "},
    {Caption::of_all_flour, " of all the flour", " of all the flour"},
    {Caption::each, " each", " each"},
    {Caption::optional, "optional", "optional"},
    {Caption::fixed, "the same for any size", "the same for any size"},
    {Caption::gently, "increased gently when scaled", "increased gently when scaled"},
    {Caption::about, "about ", "about "},
    {Caption::exactly, "exactly ", "exactly "},
    {Caption::at_least, "at least ", "at least "},
    {Caption::to, " to ", " to "},
    {Caption::none, "none", "none"},
    {Caption::no_change, "No change", "No change"},
    {Caption::of_the_meat, " of the meat", " of the meat"},
    {Caption::of_the_flour, " of the flour", " of the flour"},
    {Caption::of_the_whole, " of the whole", " of the whole"},
    {Caption::no_trial, "no trial yet: a draft", "no trial yet: a draft"},
    {Caption::no_trial_of_version, "no trial of this version: a draft", "no trial of this version: a draft"},
    {Caption::last_change_untasted, "tried; the last change, of ", "tried; the last change, of "},
    {Caption::not_tasted, ", is not tasted yet", ", is not tasted yet"},
    {Caption::tried_alike, "tried: ", "tried: "},
    {Caption::of_three, " of 3 like results", " of 3 like results"},
    {Caption::standardized_alike, "standardized: ", "standardized: "},
    {Caption::like_results, " like results", " like results"},
    {Caption::as_of, "as of ", "as of "},
    {Caption::not_yet, "Not in it yet on that day: ", "Not in it yet on that day: "},
    {Caption::method_of_today, ". The method is today's, and is struck out where it takes what came later.", ". The method is today's, and is struck out where it takes what came later."},
    {Caption::for_weight, " for ", " for "},
    {Caption::for_each_of, " for each of ", " for each of "},
    {Caption::batches, " batches", " batches"},
    {Caption::rounds, " rounds", " rounds"},
    {Caption::with, "with ", "with "},
    {Caption::instead_of, "instead of ", "instead of "},
    {Caption::readings, "readings", "readings"},
    {Caption::what, "What", "What"},
    {Caption::wanted, "Wanted", "Wanted"},
    {Caption::reading_when, "Day, hour", "Day, hour"},
    {Caption::reading_found, "Found", "Found"},
    {Caption::reading_whom, "By whom", "By whom"},
    {Caption::step, "step ", "step "},
    {Caption::within, " within ", " within "},
    {Caption::fridge, "Fridge", "Refrigerator"},
    {Caption::freezer, "Freezer", "Freezer"},
    {Caption::at_most_heat, "at most ", "at most "},
    {Caption::at_least_heat, "at least ", "at least "},
    {Caption::kept_hot, "Kept hot, where it stands", "Kept hot, where it stands"},
    {Caption::own_record, "A form for the cook's own record of what was read. What must be read, and what is enough, your local food code says: follow it.",
     "A form for the cook's own record of what was read. What must be read, and what is enough, your local food code says: follow it."},
    {Caption::begin, "Begin", "Begin"},
    {Caption::hands_on, "Hands-on", "Hands-on"},
    {Caption::waiting, "Waiting", "Waiting"},
    {Caption::whole_time, "In all", "In all"},
    {Caption::proof, "Plan", "Plan"},
    {Caption::takes_time, "Time", "Time"},
    {Caption::hands_on_and, " hands-on", " hands-on"},
    {Caption::waiting_and, " waiting", " waiting"},
    {Caption::begin_so_long, "begin ", "begin "},
    {Caption::before_serving, " before serving", " before serving"},
    {Caption::made_once, "Made once, for several", "Made once, for several"},
    {Caption::can_wait, "Can be made earlier", "Can be made earlier"},
    {Caption::by_itself, "Each by itself", "Each by itself"},
    {Caption::rests_on, "What this plan rests on", "What this plan rests on"},
    {Caption::changed, "Changed since the plan before", "Changed since the plan before"},
    {Caption::run_sheet, "Run sheet", "Run sheet"},
    {Caption::contains, "Contains", "Contains"},
    {Caption::contains_instead, "With the other", "With the other"},
    {Caption::see_label, "Read the label of", "Read the label of"},
    {Caption::not_known, "Not known", "Not known"},
    {Caption::can_eat, "Can eat", "Can eat"},
    {Caption::after_labels, "when the labels allow it ", "when the labels allow it "},
    {Caption::nobody_can_say, "nobody can say from the lists of allergens for ", "nobody can say from the lists of allergens for "},
    {Caption::not_for_them, "not ", "not "},
    {Caption::caution, "Caution", "Caution"},
    {Caption::checked, "Heat checked", "Heat checked"},
    {Caption::not_checked, ". Not checked: how fresh and how clean it all is", ". Not checked: how fresh and how clean it all is"},
    {Caption::nor, "; what the tables do not know: ", "; what the tables do not know: "},
    {Caption::order_sheet, "Order", "Order"},
    {Caption::comes, "Comes", "Comes"},
    {Caption::order_by, "Order by", "Order by"},
    {Caption::no_supplier, "No supplier named", "No supplier named"},
    {Caption::also_have, "Also have", "Also have"},
    {Caption::dishes, "Dishes", "Dishes"},
    {Caption::to_pay, "To pay", "To pay"},
    {Caption::packs, "To buy", "To buy"},
    {Caption::together, "Together", "Together"},
    {Caption::amount, "Amount", "Amount"},
    {Caption::details, "Details", "Details"},
    {Caption::cost_sheet, "Costs", "Costs"},
    {Caption::cost, "Cost", "Cost"},
    {Caption::portion, "A portion", "A portion"},
    {Caption::price, "Price", "Price"},
    {Caption::share, "Share", "Share"},
    {Caption::line_by_line, "Line by line", "Line by line"},
    {Caption::versions, "Versions", "Versions"},
    {Caption::version, "Version", "Version"},
    {Caption::difference, "Difference", "Difference"},
};
static_assert(std::size(kRows) == kLabels);

template <std::string_view CaptionRow::*kColumn>
constexpr std::array<std::string_view, kLabels> column() {
  std::array<std::string_view, kLabels> words{};
  for (const CaptionRow& row : kRows) words[static_cast<std::size_t>(row.label)] = row.*kColumn;
  return words;
}
constexpr auto kBritish = column<&CaptionRow::british>();
constexpr auto kAmerican = column<&CaptionRow::american>();

constexpr bool complete(const std::array<std::string_view, kLabels>& words) {
  for (std::string_view word : words)
    if (word.empty()) return false;
  return true;
}
static_assert(complete(kBritish) && complete(kAmerican));

}  // namespace

Words words_of(const Recipe& recipe, AskedWords asked) {
  const bool own = asked == AskedWords::as_written || asked == AskedWords::both;
  if (own ? words_written(recipe) == WordsOf::american : asked == AskedWords::american) return {"en-US", kAmerican.data()};
  return {"en-GB", kBritish.data()};
}

Caption caption_of(Field after) {
  switch (after) {
    case Field::to_keep: return Caption::to_keep;
    case Field::to_freeze: return Caption::to_freeze;
    case Field::to_reheat: return Caption::to_reheat;
    default: return Caption::to_finish;
  }
}

std::string size_in_words(const Fraction& factor, const Words& words) {
  if (factor == Fraction::of(1, 2)) return std::string(words[Caption::half_the_recipe]);
  return write_times(factor).append(words[factor < Fraction(1) ? Caption::of_the_recipe : Caption::times_the_recipe]);
}

}  // namespace qtn
