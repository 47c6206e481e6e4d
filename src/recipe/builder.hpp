// The tree's nodes to a recipe's typed values, one member file a kind of thing. Private to this room.
#pragma once
#include <array>

#include "recipe/amounts.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

class Builder {
 public:
  Builder(const Source& source, const Tree& tree, const Surroundings& around, Report& report, Recipe&& spare);
  Recipe run();

 private:
  // build.cpp: the file, its parts, what may stand twice
  void settle_dialect();
  void node(View at);
  void field(View at);
  void block(View at);
  void misspelt(View at);
  void once(Field field, Span span);
  Part& part();
  void open_part(std::string_view name, Span span, bool unnamed);
  void unknown_field(View at);
  bool tells_no_kind(Span field) const;
  bool other_word(Span word, const std::string& folded);
  void no_kind(bool empty, Span first);
  void bad_line(View at);
  void finish();
  void check_part_names();

  // build_head.cpp: values of fields
  void head_value(Field field, View at);
  void text_value(Field field, Span value);
  void photo_path(std::string_view text, Span span);
  void read_makes(View at, std::vector<Made>& out);
  bool is_nothing(Field field, const Quantity& amount, Span span);
  void read_keeps(View at, std::vector<Keep>& out);
  void read_batch(View at, std::optional<Batch>& out);
  void read_use(View at);
  void read_film(View block);
  void bad_value(Field field, Span span);

  // build_list.cpp: take lines
  void take_block(View block);
  void take_head(View at);
  void take_line(View at);
  void line_names(View at, TakeLine& line);
  void line_amount(View at, TakeLine& line);
  void line_tails(View at, TakeLine& line);
  void giving(View at, Index parent);
  void finish_line(View at, TakeLine line, std::vector<View> names);
  void bare_tail(Span tail);
  void measure_in(Tail& preparation);  // prose_measures.cpp
  void bare_strength(Span at, const std::string& text);
  // build_known.cpp: what can be said once the ingredient is known
  void weigh_readings(const TakeLine& line);
  void check_sizes(const TakeLine& line);
  void check_order(const TakeLine& line);
  void split_names(const TakeLine& line);
  void house_measure(TakeLine& line);
  void noun_of_name(View at, TakeLine& line);
  void members(View set, Slice& out);

  // check_list.cpp: one line by itself
  bool no_amount(View at, TakeLine& line);
  bool no_name(View at, TakeLine& line);
  bool amount_after(const TakeLine& line);
  void two_things(const TakeLine& line);
  void tail_in_parentheses(const TakeLine& line);
  void check_line(const TakeLine& line);
  void check_base(const TakeLine& line);
  void check_name(const TakeLine& line);
  void check_count(const TakeLine& line);
  void near_unit(const TakeLine& line);
  void check_tails(const TakeLine& line);
  void check_given(const TakeLine& line, Span span);
  void no_more_than(const TakeLine& line, const Quantity& amount, Span span);
  void check_stated(const TakeLine& line);

  // build_method.cpp: steps, build_clause.cpp: what is in a bracket
  void method_block(View block);
  void step(View at);
  struct Opened {  // a step of the method at hand: how it opens, and the word that says so
    StepKindOf kind;
    Span word;
  };
  void openers(const std::vector<Opened>& opened);
  void prose_measures(const Step& step);  // prose_measures.cpp
  bool heads_among_steps(Span step);      // step_slips.cpp
  void places_outside(const Step& step);
  void measure_outside(Span found, Dimension dimension);
  void clause(View bracket);
  void clause_form(View form, Clause& clause);
  bool house_action(Clause& clause);
  void share(View at, Clause& clause);
  void pot(View at, Clause& clause);
  void drift(View at, Clause& clause);
  void action(View at, Clause& clause);
  void led(View at, Clause& clause);
  void refs(View at, Clause& clause, Taking taking);
  void mention(View ref, Taking taking, Clause& clause);
  void action_tails(View at, Clause& clause);
  Term& term(TermRole role, const Quantity& amount, Span span, Clause& clause);
  void amount_term(TermRole role, View amt, Clause& clause);
  void nearest_verb(Clause& clause);
  void stated(View equivs, Clause& clause);
  void equivalents(View of, Clause& clause);
  void check_clause(Clause& clause);

  Reading in_;
  bool egg_size_told_ = false;
  const Tree& tree_;
  const Surroundings& around_;
  Report& report_;
  Recipe recipe_;
  Index part_ = kNone;
  bool left_open_ = false;  // a bracket of the step before was not closed
  bool in_after_ = false;   // after the dish: heads belong to nothing any more
  std::array<Span, 64> seen_{};   // fields of this scope, where they stood first
  VerbId sentence_verb_ = kNoVerb;
};

// Messages for lines and clauses that fit nothing: what cooks write, and what was meant (semantics 1.5). damaged.cpp
void explain_bad_line(Reading& in, Span line, bool in_menu);
void explain_bad_clause(Reading& in, Span clause);

}  // namespace qtn
