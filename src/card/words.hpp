// The words that a card says of its own accord, in one table by language: adding a language is adding a column.
#pragma once
#include <string_view>

#include "adapt/adapt.hpp"

namespace qtn {

enum class Caption : std::uint8_t {
  // facts
  makes, serves, tin, oven, keeps, ready, needs, scales, batch, source, by, date, tasted, serve, guests, measures,
  conventional, fan, gas,
  chilled, frozen, cool, room, sealed, once_open,
  at_its_best_after, found_to_hold_from, times, at_most, at_a_time, for_as_written, in_place_of,
  // edition
  times_the_recipe, of_the_recipe, half_the_recipe, about_times, for_so_many,
  // headings
  you_need, method, tastings, notes, notes_as_written, after, to_keep, to_freeze, to_reheat, to_finish,
  as_written, metric, imperial, american,
  // openers
  meanwhile, ahead, by_hand, by_machine, note,
  // the list
  from, as_bought, from_file, own_card, card_of, taking_up, start_with, giving, and_, of, of_the, per, of_all_flour, each, optional, fixed,
  gently, about, exactly, at_least, to,
  // the log
  none, no_change, of_the_meat, of_the_flour, of_the_whole,
  no_trial, no_trial_of_version, last_change_untasted, not_tasted, tried_alike, of_three, standardized_alike, like_results, as_of, not_yet, method_of_today,
  // worked out
  for_weight, for_each_of, batches, rounds, with, instead_of,
  // the sheet of readings
  readings, what, wanted, reading_when, reading_found, reading_whom, step, within, fridge, freezer, at_most_heat, at_least_heat, kept_hot,
  own_record,
  // the clock
  begin, hands_on, waiting, whole_time, proof, takes_time, hands_on_and, waiting_and, begin_so_long, before_serving, made_once, can_wait, by_itself, rests_on, changed, run_sheet,
  // allergens and safety
  contains, contains_instead, see_label, not_known, can_eat, after_labels, nobody_can_say, not_for_them, caution, checked, not_checked, nor,
  // orders and costs
  order_sheet, comes, order_by, no_supplier, also_have, dishes, to_pay, packs, together, amount, details, cost_sheet, cost, portion, price, share, line_by_line, versions, version, difference,
  count_,
};

struct Words {
  std::string_view language;  // BCP 47
  const std::string_view* table;
  std::string_view operator[](Caption label) const { return table[static_cast<std::size_t>(label)]; }
};

// In the words that were asked for, else in those the page is written in.
Words words_of(const Recipe& recipe, AskedWords asked = AskedWords::as_written);

// Of a block after the dish: "To keep".
Caption caption_of(Field after);

// "3 times the recipe", "half the recipe".
std::string size_in_words(const Fraction& factor, const Words& words);

}  // namespace qtn
