// The pieces of a card in the making, one member file a kind of block. Private to this room.
#pragma once
#include "adapt/adapt.hpp"
#include "card/prose.hpp"
#include "card/wording.hpp"
#include "card/words.hpp"
#include "card/writer.hpp"
#include "day/day.hpp"
#include "safety/allergens.hpp"
#include "safety/figures.hpp"
#include "safety/safety.hpp"

namespace qtn {

class Maker : private OwnFragments {
 public:
  explicit Maker(const Adapted& adapted);
  Card run();

 private:
  // heads.cpp
  void head();
  bool notes_tell_amounts() const;
  void edition();
  void measures_fact();
  void fact(FactKind kind, Caption caption, Range32 value);
  Range32 plain(std::string_view text);
  Range32 prose(std::string_view text);
  void makes_fact(const std::vector<Made>& all, const std::vector<Shown>& shown, const std::vector<Shown>& each);
  void tin_fact(const Tin& tin);
  void keeps_fact(const std::vector<Keep>& keeps);
  void time_fact();
  void part_time_fact(Index part);
  void tasted_fact();
  void ready_fact(const std::optional<Quantity>& after);
  void batch_fact(const std::optional<Batch>& batch, const Shown& limit, const Rounds& rounds);
  void rounds(const Rounds& rounds, Caption word, bool size);
  // health.cpp
  void allergens();
  std::string contained(const AllergenSheet& sheet, AllergenList list) const;
  void dish_cautions();
  void came_later();
  void step_cautions(Index step);
  void checked();
  // list.cpp
  void rows(const Part& part);
  void row(Index index);
  bool not_yet(const TakeLine& line) const;
  Range32 amount_runs(const Shown& shown, const TakeLine& line);
  Range32 second_runs(Index index);
  Range32 name_runs(const TakeLine& line);
  Range32 rest_runs(Index index);
  void as_it_reads(const Tail& tail);
  void base_of(const TakeLine& line);
  // method.cpp
  void steps(Slice steps);
  void step(const Step& step);
  void write_own(std::size_t fragment) override;
  void clause(const Clause& clause);
  struct Place {  // a term or a mention in a clause
    Span span;
    bool term;
    Index index;
  };
  void find_places(const Clause& clause);
  std::uint32_t without_equivalent(const Clause& clause, const Place& next, std::uint32_t from) const;
  void total(const ByWeight& total);
  std::uint32_t load(const Clause& clause, Index term, std::uint32_t at);
  void full_stop(const Step& step);
  void term(const Clause& clause, Index index);
  std::uint32_t pieces(const Clause& clause, Index index, std::uint32_t at);
  std::string mentioned(const Mention& mention) const;
  void mention(const Clause& clause, Index index);
  std::string_view listed(std::string_view name);
  bool restated_before(std::size_t place) const;
  // make.cpp
  void part(const Part& part);
  void after();
  void trials();
  void change(const Change& change, const std::pair<Shown, Shown>& amounts);
  void remarks();

  const Adapted& adapted_;
  const Recipe& recipe_;
  Card card_;
  Writer out_;
  Prose prose_;
  Words words_;
  Spans spans_;  // how long it takes
  Cautions cautions_;
  std::vector<Fragment> fragments_;
  std::size_t step_at_ = 0;   // where the step begins in the card's text
  std::vector<Place> places_;  // of the clause in hand, in the order of its words
  std::vector<Index> owned_;  // by fragment, the piece it is
  bool wording_;                       // words are to be changed when the card is written
  std::vector<CheckedWords> checked_;  // then: where checked ones stand
  std::string listed_;                 // then: what listed() says
};

}  // namespace qtn
