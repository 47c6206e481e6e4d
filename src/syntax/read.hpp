// One span, one rule: the entries into the grammar. Each appends nodes to `nodes` and says whether the whole span was
// read; a failure leaves `nodes` as it was. Private to this room.
#pragma once
#include <string_view>
#include <vector>

#include "syntax/tree.hpp"

namespace qtn::syntax {


bool read_take_line(std::string_view all, Span span, std::vector<Node>& nodes);
bool read_take_head(std::string_view all, Span span, std::vector<Node>& nodes);
void read_clause(std::string_view all, Span span, std::vector<Node>& nodes);  // total: bad_clause takes what is left
bool read_action(std::string_view all, Span span, std::vector<Node>& nodes);
bool read_value(Field field, std::string_view all, Span span, std::vector<Node>& nodes);
bool read_change(std::string_view all, Span span, std::vector<Node>& nodes);
bool read_fact(Field block, std::string_view all, Span span, std::vector<Node>& nodes);

// The steps of a method between two offsets: prose, brackets, links (split_steps.cpp).
void split_step(std::string_view all, Span span, std::vector<Node>& nodes);

// Opens a node whose end and size are set when it is closed.
inline std::uint32_t open(std::vector<Node>& nodes, Kind kind, std::uint32_t begin, std::uint16_t value = 0) {
  nodes.push_back({begin, begin, 1, kind, value});
  return static_cast<std::uint32_t>(nodes.size() - 1);
}
inline void close(std::vector<Node>& nodes, std::uint32_t at, std::uint32_t end) {
  nodes[at].end = end;
  nodes[at].size = static_cast<std::uint32_t>(nodes.size()) - at;
}
inline void leaf(std::vector<Node>& nodes, Kind kind, Span span, std::uint16_t value = 0) {
  nodes.push_back({span.begin, span.end, 1, kind, value});
}

}  // namespace qtn::syntax
