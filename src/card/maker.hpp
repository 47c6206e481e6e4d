// One card being made: what the files of this room share. Private to this room.
#pragma once
#include <string>
#include <vector>

#include "adapt/adapt.hpp"
#include "card/prose.hpp"
#include "card/words.hpp"
#include "card/writer.hpp"

namespace qtn {

class Maker : OwnFragments {
 public:
  Maker(const Adapted& adapted, Card& card);
  void make();

 private:
  // make.cpp: the order of the blocks
  void reserve();
  void parts();
  void after_blocks();
  void columns();
  Range32 words(Label label, Role role = Role::text);
  Range32 prose(std::string_view text);

  // heads.cpp: facts
  void title();
  void edition();
  void head_facts();
  Range32 part_facts(const Part& part);
  void fact(FactKind kind, Label label);  // closes the value that was begun
  void text_fact(Field field, FactKind kind, Label label);
  void makes(const std::vector<Made>& makes, const std::vector<Shown>* shown);
  void made(const Made& one, const Shown* shown);
  void tin(const Tin& tin);
  void keeps(const std::vector<Keep>& keeps);
  void ready(const Quantity& length);
  void batch(const Batch& batch);
  void oven();
  void scales();
  bool has_oven_heat() const;

  // list.cpp: rows
  Range32 rows(Index part);
  void row(Index stands, Index shown, bool alternative);
  void row_amount(const TakeLine& line, const Shown& shown, Row& row);
  void row_second(Index index, const TakeLine& line, const Shown& shown, Row& row);
  void row_name(const TakeLine& line, const Shown& shown, Row& row);
  void row_rest(Index index, const TakeLine& line, const Shown& shown, Row& row);
  void tail(const Tail& tail);
  void given(Index parent);
  void ratio(const TakeLine& line);
  void base_of(Slice members);
  void item();  // a comma before all but the first thing of the rest
  void unlisted_uses(Index part);

  // method.cpp: steps
  Range32 steps(Slice slice, const std::vector<TextFact>* notes);
  void step(const Step& step);
  void write_own(std::size_t fragment) override;
  void clause(const Clause& clause);
  void gather(const Clause& clause);
  void stretch(std::uint32_t from, std::uint32_t to, Role role);
  void source(std::uint32_t from, std::uint32_t to, Role role);
  std::uint32_t term(Index index, std::uint32_t end, Role around);
  std::uint32_t pieces(const Term& term, const Shown& shown, std::uint32_t end, Role role);
  void mention(Index index);
  void spent(Index index);
  bool drop_equivalents(std::uint32_t& at, std::uint32_t end, Role around);

  // log.cpp: remarks and tastings
  void remarks();
  void trials();
  void change(const Change& change);

  // amounts.cpp
  // An amount for which nothing was worked out beforehand: as written where it may stand so, else rounded.
  std::string amount(const Quantity& amount, Span written) const;
  bool as_written() const { return !scaled_ && adapted_.units == System::written; }

  const Shown& shown(const std::vector<Shown>& all, Index index) const {
    static const Shown nothing;
    return index < all.size() ? all[index] : nothing;
  }
  std::string_view slice(Span span) const { return recipe_.slice(span); }

  struct Item {  // a term or a mention of the clause at hand
    std::uint32_t begin, end;
    Index index;
    bool is_mention;
  };

  const Adapted& adapted_;
  const Recipe& recipe_;
  Card& card_;
  const Words words_;
  const bool scaled_;
  Writer out_;
  Prose prose_;
  std::vector<Fragment> fragments_;
  std::vector<Index> fragment_clauses_;
  std::vector<Item> items_;
  std::size_t item_ = 0;
  const Clause* clause_ = nullptr;
};

// "1", "½": a number after which a thing stands alone.
bool is_one(std::string_view number);
// The value of a field whose span may begin with its word: "tin: 23 cm round" -> "23 cm round".
std::string_view without_word(std::string_view text, std::string_view word);
// Fractions as they are printed: "1 1/2 tsp" -> "1½ tsp".
std::string pretty(std::string_view text);

}  // namespace qtn
