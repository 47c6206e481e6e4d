// Parts and recipes as nodes that take one another, each with its own lines and with all that is taken merged in. Private
// to this room.
#pragma once
#include <map>
#include <utility>
#include <vector>

#include "recipe/formula.hpp"
#include "words/fold.hpp"

namespace qtn {

class FormulaMerge {
 public:
  struct Share {
    Fraction times;  // of all that the other makes; lost where its page does not say
    Fraction grams = Fraction::lost();
  };
  struct Take {
    std::size_t node;
    std::size_t line;  // in `lines`
    Share share;
  };
  struct Node {
    const Recipe* recipe;
    Index part;
    std::vector<FormulaLine> lines;   // its own, a part or recipe that is taken as one line
    std::vector<Index> of;            // by line: the take line; kNone for what only the method takes
    std::vector<Take> takes;
    std::vector<FormulaLine> merged;  // the takes opened up, lines of one name as one
    std::vector<WordKey> names;       // of `merged`, folded; where something was opened up
    std::vector<std::string_view> not_weighed, not_measured;
    std::vector<std::string_view> free;  // not measured, those of the takes too
    Fraction last_batch;     // what it takes of its own last batch
    bool is_dough = false;   // flour is what the rest is measured by
    bool in_dough = false;   // taken by a dough
    bool open = false, done = false;
  };

  explicit FormulaMerge(const Recipe& recipe);
  // The nodes of the recipe's own parts come first, in order.
  const std::vector<Node>& nodes() const { return nodes_; }

 private:
  std::size_t node_of(const Recipe* recipe, Index part);
  void work_through(std::size_t first);
  void collect(std::size_t node);
  void add_line(std::size_t node, Index line);
  void add_mentions(std::size_t node);
  void add_take(std::size_t node, const Target& target, const Share& share);
  Share share_of(const Recipe& recipe, const Mention& mention) const;
  void merge(std::size_t node);
  static void add(Node& node, const FormulaLine& line, const Fraction& times);
  Fraction times_of(const Take& take) const;
  static void open_up(Node& node, FormulaLine& line, const Node& other, const Fraction& times);
  static void grow_by_last_batch(Node& node);
  bool find_dough(const Node& node) const;

  std::vector<Node> nodes_;
  std::map<std::pair<const Recipe*, Index>, std::size_t> at_;
};

}  // namespace qtn
