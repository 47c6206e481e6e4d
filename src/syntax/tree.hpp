// The lossless tree: the boundary of this room. The text is kept; the tree is spans over it.
//   1. lines tile the file: line i ends where line i + 1 begins;
//   2. nodes stand in text order, children inside their owner, never overlapping;
//   3. what no leaf covers is a gap: blanks, keywords, punctuation, read again by whoever needs it.
// Nodes are one flat array in pre-order; a node's subtree is the `size` entries that begin at it.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/source.hpp"
#include "syntax/field.hpp"
#include "syntax/kind.hpp"

namespace qtn {

enum class LineKind : std::uint8_t {
  blank, comment, field, more /* of the value above */, take_line, prose, opener, change, fact, note, bad,
};

struct Line {
  std::uint32_t begin;
  LineKind kind;
};

struct Node {
  std::uint32_t begin, end;
  std::uint32_t size;   // entries of its subtree, itself included
  Kind kind;
  std::uint16_t value;  // what kinds.def says of the kind
  Span span() const { return {begin, end}; }
};

enum class Opener : std::uint16_t { none, meanwhile, ahead, by_hand, by_machine };
enum class FileKind : std::uint8_t { unknown, recipe, menu, kitchen };

struct Tree {
  std::vector<Line> lines;
  std::vector<Node> nodes;  // nodes[0] is the file
  FileKind kind = FileKind::unknown;
  void clear() {
    lines.clear();
    nodes.clear();
    kind = FileKind::unknown;
  }
};

// A node with the tree around it: `for (View child : view)` walks its children.
class View {
 public:
  View(const Tree& tree, std::uint32_t at) : tree_(&tree), at_(at) {}
  const Node& node() const { return tree_->nodes[at_]; }
  const Node* operator->() const { return &node(); }
  Kind kind() const { return node().kind; }
  std::uint16_t value() const { return node().value; }
  Span span() const { return node().span(); }
  std::uint32_t index() const { return at_; }
  bool empty() const { return node().size == 1; }

  class Iterator {
   public:
    Iterator(const Tree& tree, std::uint32_t at) : tree_(&tree), at_(at) {}
    View operator*() const { return {*tree_, at_}; }
    Iterator& operator++() {
      at_ += tree_->nodes[at_].size;
      return *this;
    }
    bool operator!=(const Iterator& other) const { return at_ != other.at_; }
   private:
    const Tree* tree_;
    std::uint32_t at_;
  };
  Iterator begin() const { return {*tree_, at_ + 1}; }
  Iterator end() const { return {*tree_, at_ + node().size}; }
  // The first child of a kind; ask has() first.
  bool has(Kind kind) const {
    for (View child : *this)
      if (child.kind() == kind) return true;
    return false;
  }
  View first(Kind kind) const {
    for (View child : *this)
      if (child.kind() == kind) return child;
    return *this;
  }

 private:
  const Tree* tree_;
  std::uint32_t at_;
};

// Total: any bytes give a tree. Linear in the size of the text. The text must have Source::kSpare readable bytes behind it.
void parse(std::string_view text, Tree& tree);
inline Tree parse(const Source& source) {
  Tree tree;
  parse(source.text(), tree);
  return tree;
}
// One amount alone, as `ask` reads it: "2 1/4 cups plain flour in g" without its "in g". A take line's node, or a bad line's.
void parse_line(std::string_view text, Tree& tree);

// What stands behind the verb of an action, for verbs that only a kitchen file lists; nodes[0] holds its parts.
bool parse_action(std::string_view text, Span rest, Tree& tree);

// A part of a text as the value of a field, for facts that are written as values are; nodes[0] holds its parts.
bool parse_value(Field field, std::string_view text, Span span, Tree& tree);

// The tree as nested names, for tests and for people: (take_line (amt (number "220") (unit "g")) (name "plain flour"))
std::string dump(const Tree& tree, std::string_view text, std::uint32_t node = 0);

}  // namespace qtn
