// The house's own facts, one file a book (semantics part 8, Kitchen). Every line is typed by its block, and nothing is
// passed over. Private to this room.
#pragma once
#include "recipe/amounts.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

class KitchenReader {
 public:
  KitchenReader(const Source& source, const Tree& tree, int today, Report& report);
  Kitchen run();

 private:
  using Dimensions = std::initializer_list<Dimension>;

  struct Cell {  // one fact of a line, without blanks around it
    Span span;
    std::string_view text;
    std::string word;  // in lower case
  };
  struct Counted {  // 4 rings: an amount and the words behind it
    ReadAmount read;
    std::string rest;
  };

  // kitchen.cpp: single fields
  void settle_dialect();
  void unknown(View at);
  void misspelt(View at);
  void field(View at);
  void text_field(Field which, Span span);
  void value_field(Field which, View at, Span span);
  void night(Span span);
  void choose(Field which, Span span, std::initializer_list<std::string_view> known);
  void once(Field which, Span word);
  void no_value(Field which, Span span);

  // kitchen_facts.cpp: blocks
  void block(View at);
  void bad_line(Field which, Span span);
  void repeated(Field which, Span name, Span first);
  std::vector<Cell> cells_of(View line);
  bool comma_number(const Cell& before, const Cell& after);
  void fact(Field which, Span name, const std::vector<Cell>& cells);
  // "2 of these"; `count` is set where it is a number.
  bool of_these(const Cell& cell, int* count = nullptr);
  void verb(Span name, const std::vector<Cell>& cells);
  void measure(Span name, const std::vector<Cell>& cells);
  void house_word(Span name, const std::vector<Cell>& cells);

  // kitchen_words.cpp: the words of the house together
  void house_words();

  // kitchen_places.cpp: what takes room and heat
  void oven(const Cell& cell, HouseOven& mine);
  void hob(const Cell& cell, HouseHob& mine);
  void fridge(const Cell& cell, HouseFridge& mine);
  void tin(Span name, const std::vector<Cell>& cells);
  void choose_oven();

  // kitchen_foods.cpp: ingredients
  void food(Span name, const std::vector<Cell>& cells);
  void density(Span name, const Cell& cell, std::size_t per, Food& mine);
  void each(Span name, const Cell& cell, Food& mine);
  void allergen(const Cell& cell, HouseFood& house);

  // kitchen_prices.cpp: who brings what, and what it costs
  void supplier(Span name, const std::vector<Cell>& cells);
  void brings(const Cell& cell, Supplier& mine);
  void price(Span name, const std::vector<Cell>& cells);
  void money(const Cell& cell, HousePrice& mine);
  std::optional<Fraction> sum_of_money(Span span);
  bool other_currency(std::string_view found, Span span);
  void settle_currency();

  // Amounts in a span of this file. nullopt: it is none (nothing was said), or it is damaged (that was said).
  std::optional<Counted> counted(Span span);
  // One figure above 0 of these dimensions, and nothing behind it; else a diagnostic of `code`.
  std::optional<Quantity> figure(Code code, Field where, Span span, Dimensions wanted, bool may_be_below = false);
  std::optional<Quantity> so_many(Span span);
  // What follows "per": "kg", "250 g", "12 sprigs".
  std::optional<Quantity> per(Code code, Field where, Span span, Dimensions wanted);
  void wrong(Code code, Field where, Span span);
  // Two cells of one line that say the same kind of thing.
  void said(std::string_view what, Span span);

  Reading in_;
  const Tree& tree_;
  Report& report_;
  Kitchen kitchen_;
  Tree scratch_;
  int today_ = 0;  // days since 1970-01-01; 0: dates are not compared with it
  Span currency_;  // where a currency was first said, and ...
  std::string currency_word_;  // ... which
  std::vector<std::pair<Field, Span>> seen_;
  std::vector<std::pair<std::string, Span>> said_;
};

// A whole number above 0 as an int; more than 1000 is 1000.
int small_number(const Fraction& value);
// What a line of a block, or a value of a field, looks like.
std::string_view kitchen_form(Field field);

}  // namespace qtn
