// The program: a command table, nothing more.
#include <CLI/CLI.hpp>

#include "cli/commands.hpp"
#include "cli/output.hpp"

using namespace qtn;  // NOLINT: the table reads as commands

namespace {

// Ways to say how much; a call takes one of them.
template <class Options>
std::vector<CLI::Option*> add_sizes(CLI::App* command, Options& options) {
  return {command->add_option("--times", options.times, "so many times the recipe: 3, 1/2, 2.5"),
          command->add_option("--serves", options.serves, "for so many people"),
          command->add_option("--makes", options.makes, "so much of it: 12 pasties, 2 kg")};
}
void exclude_one_another(const std::vector<CLI::Option*>& sizes) {
  for (std::size_t one = 0; one < sizes.size(); ++one)
    for (std::size_t other = one + 1; other < sizes.size(); ++other) sizes[one]->excludes(sizes[other]);
}
template <class Options>
void add_versions(CLI::App* command, Options& options) {
  command->add_option("--variant", options.variant, "one of the file's variants, by name");
  command->add_option("--with", options.with, "one of its `or` lines, by name");
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Quartern reads recipes written in plain text (.qtn), says what is wrong with them, and prints cards."};
  app.require_subcommand(1);
  app.set_version_flag("--version", std::string("quartern 0.1.0"));
  int exit = kFine;

  CheckOptions check;
  auto* check_command = app.add_subcommand("check", "say everything that is wrong with files or folders");
  check_command->add_option("PATH", check.paths, "files or folders; - reads standard input")->required();
  check_command->add_option("--as", check.as, "text, json (one object a line) or sarif (2.1.0)")->capture_default_str();
  check_command->add_flag("--strict", check.strict, "warnings count as errors");
  check_command->add_flag("--complete", check.complete, "say what each recipe lacks of the standardized-recipe form");
  check_command->callback([&] { exit = run_check(check); });

  std::string read_path;
  auto* read_command = app.add_subcommand("read", "how every line was understood, as a table");
  read_command->add_option("PATH", read_path, "a file or folder; - reads standard input")->required();
  std::string history;
  read_command->add_option("--history", history, "what the log tells of one ingredient: \"fine salt\"");
  read_command->callback([&] { exit = run_read(read_path, history); });

  CardOptions card;
  auto* card_command = app.add_subcommand("card", "print the card of a recipe");
  card_command->add_option("PATH", card.paths, "files or folders; - reads standard input")->required();
  card_command->add_option("--as", card.as, "markdown, html, text or json")->capture_default_str();
  card_command->add_option("--units", card.units, "written, metric, imperial or american")->capture_default_str();
  card_command->add_option("--beside", card.beside, "a second column: metric, imperial or american");
  card_command->add_option("--measures", card.measures, "whose spoons, cups and pints the reader has: British, American or Australian");
  card_command->add_option("--words", card.words, "whose words: British, American, or both at first mention; else the page's own");
  std::vector<CLI::Option*> sizes = add_sizes(card_command, card);
  sizes.push_back(card_command->add_option("--tin", card.tin, "for another tin: 26 cm round, 3 cm deep, or one of the kitchen's by name"));
  sizes.push_back(card_command->add_option("--from", card.from, "to use up what there is: 1.3 kg lamb shoulder"));
  exclude_one_another(sizes);
  add_versions(card_command, card);
  auto* as_of = card_command->add_option("--as-of", card.as_of, "the amounts of a day of the log: 2026-02-11");
  as_of->excludes(card_command->get_option("--variant"));
  card_command->add_flag("--readings", card.readings, "a sheet for the wall in its place: every reading that is asked for, with blanks to fill in");
  card_command->add_option("--way", card.way, "hand or machine, where a step has two ways; else the kitchen's, else both");
  card_command->add_option("--out", card.out, "a file, or a folder for several; written whole or not at all");
  card_command->callback([&] { exit = run_card(card); });

  DayOptions day;
  auto* day_command = app.add_subcommand("day", "the run sheet: when everything begins, planned backwards from the hour it is served");
  day_command->add_option("PATH", day.path, "a recipe or a menu; - reads standard input")->required();
  day_command->add_option("--serve", day.serve, "the day and hour of serving: \"2026-12-05 18:30\"; else the menu's own");
  day_command->add_option("--start", day.start, "nothing begins before this day and hour; served as early as can be where no hour of serving is given");
  day_command->add_option("--as", day.as, "text, markdown, html, json or ical")->capture_default_str();
  day_command->add_option("--cooks", day.cooks, "so many cooks; else the menu's or the kitchen's");
  day_command->add_option("--ovens", day.ovens, "so many ovens; else the kitchen's");
  day_command->add_option("--zone", day.zone, "whose clocks: Europe/London; else the kitchen's, or none");
  day_command->add_option("--pin", day.pins, "a step at an hour: \"Tart: bake = 17:00\"; may be given again");
  day_command->add_option("--keep", day.keep, "an earlier sheet (--as json): what it says is kept wherever it can be");
  day_command->add_option("--way", day.way, "hand or machine, where a step has two ways");
  day_command->add_flag("--nights", day.nights, "work in the night is allowed");
  day_command->add_flag("--past", day.past, "an hour that is over may be planned too");
  exclude_one_another(add_sizes(day_command, day));
  add_versions(day_command, day);
  day_command->add_option("--out", day.out, "a file; written whole or not at all");
  day_command->callback([&] { exit = run_day(day); });

  AllergensOptions allergens;
  auto* allergens_command = app.add_subcommand("allergens", "dishes against allergens: a menu's, or a whole book's");
  allergens_command->add_option("PATH", allergens.paths, "files or folders; - reads standard input")->required();
  allergens_command->add_option("--as", allergens.as, "text, markdown, html or json")->capture_default_str();
  allergens_command->add_option("--list", allergens.list, "european (EU and UK) or american; else by the kitchen's law");
  allergens_command->add_option("--out", allergens.out, "a file; written whole or not at all");
  allergens_command->callback([&] { exit = run_allergens(allergens); });

  RatiosOptions ratios;
  auto* ratios_command = app.add_subcommand("ratios", "per cent of the flour and of the whole, part by part and overall");
  ratios_command->add_option("PATH", ratios.paths, "files or folders; - reads standard input")->required();
  ratios_command->add_option("--as", ratios.as, "text or json")->capture_default_str();
  exclude_one_another(add_sizes(ratios_command, ratios));
  add_versions(ratios_command, ratios);
  ratios_command->callback([&] { exit = run_ratios(ratios); });

  OrderOptions order;
  auto* order_command = app.add_subcommand("order", "what to buy for dishes and menus: one list, as bought, by supplier");
  order_command->add_option("PATH", order.paths, "recipes and menus of one book; - reads standard input")->required();
  order_command->add_option("--for", order.serve, "the day of serving, 2026-03-01 or \"2026-03-01 13:00\"; else the menu's own");
  order_command->add_option("--as", order.as, "text, markdown, html, json or csv")->capture_default_str();
  exclude_one_another(add_sizes(order_command, order));
  add_versions(order_command, order);
  order_command->add_option("--out", order.out, "a file; written whole or not at all");
  order_command->callback([&] { exit = run_order(order); });

  CostOptions cost;
  auto* cost_command = app.add_subcommand("cost", "what a recipe or a menu costs, line by line, by part and by portion");
  cost_command->add_option("PATH", cost.path, "a recipe or a menu; - reads standard input")->required();
  cost_command->add_option("--as", cost.as, "text, markdown, html or json")->capture_default_str();
  cost_command->add_option("--food-cost", cost.food_cost, "the price at which the food is this share of it: \"28 %\"");
  cost_command->add_option("--allowance", cost.allowance, "so much on top for seasonings and what nobody weighs: \"5 %\"");
  cost_command->add_option("--today", cost.today, "the day that old prices are told by: 2026-03-01; else today");
  exclude_one_another(add_sizes(cost_command, cost));
  add_versions(cost_command, cost);
  cost_command->add_option("--out", cost.out, "a file; written whole or not at all");
  cost_command->callback([&] { exit = run_cost(cost); });

  std::vector<std::string> words;
  std::string measures;
  auto* ask_command = app.add_subcommand("ask", "a kitchen sum: ask \"2 1/4 US cups plain flour in g\", ask \"thaw 6.5 kg in the fridge\"");
  ask_command->add_option("SUM", words, "an amount, perhaps an ingredient, and `in` the unit that is wanted; or one of the kitchen formulas, which are listed when it is not read")->required();
  ask_command->add_option("--measures", measures, "whose spoons, cups and pints: British, American or Australian");
  ask_command->callback([&] { exit = run_ask(words, measures); });

  std::string code;
  auto* explain_command = app.add_subcommand("explain", "what a code such as Q301 means, with an example");
  explain_command->add_option("CODE", code, "the code that stands beside a message")->required();
  explain_command->callback([&] { exit = run_explain(code); });

  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? kFine : kNotServed;
  }
  return all_put() ? exit : kNotServed;
}
