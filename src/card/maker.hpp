// The pieces of a card in the making, one member file a kind of block. Private to this room.
#pragma once
#include "adapt/adapt.hpp"
#include "card/prose.hpp"
#include "card/words.hpp"
#include "card/writer.hpp"

namespace qtn {

class Maker : private OwnFragments {
 public:
  explicit Maker(const Adapted& adapted);
  Card run();

 private:
  // heads.cpp
  void head();
  void edition();
  void fact(FactKind kind, Caption caption, Range32 value);
  Range32 plain(std::string_view text);
  Range32 prose(std::string_view text);
  void makes_fact(const std::vector<Made>& all, const std::vector<Shown>& shown);
  void tin_fact(const Tin& tin);
  void keeps_fact(const std::vector<Keep>& keeps);
  void ready_fact(const std::optional<Quantity>& after);
  void batch_fact(const std::optional<Batch>& batch);
  // list.cpp
  void rows(const Part& part);
  void row(Index index);
  Range32 amount_runs(const Shown& shown, const TakeLine& line);
  Range32 second_runs(Index index);
  Range32 name_runs(const TakeLine& line);
  Range32 rest_runs(Index index);
  void base_of(const TakeLine& line);
  // method.cpp
  void steps(Slice steps);
  void step(const Step& step);
  void write_own(std::size_t fragment) override;
  void clause(const Clause& clause);
  void term(const Clause& clause, Index index);
  std::uint32_t piece_name(const Clause& clause, const Shown& shown, std::uint32_t at);
  void mention(const Clause& clause, Index index);
  // make.cpp
  void part(const Part& part);
  void after();
  void trials();
  void remarks();

  const Adapted& adapted_;
  const Recipe& recipe_;
  Card card_;
  Writer out_;
  Prose prose_;
  Words words_;
  std::vector<Fragment> fragments_;
  std::size_t step_at_ = 0;   // where the step begins in the card's text
  std::vector<Index> owned_;  // by fragment, the piece it is
};

}  // namespace qtn
