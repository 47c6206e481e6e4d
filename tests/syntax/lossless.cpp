// The tree over any bytes: lines tile the file, nodes stand in order inside their owner and never overlap.
#include <doctest/doctest.h>

#include "mutated.hpp"
#include "syntax/tree.hpp"

using namespace qtn;

namespace {

std::string fault(const Tree& tree, std::string_view text) {
  const auto size = static_cast<std::uint32_t>(text.size());
  for (std::size_t i = 0; i < tree.lines.size(); ++i) {
    if (i == 0 && tree.lines[i].begin != 0) return "the first line does not begin at 0";
    if (i > 0 && tree.lines[i].begin <= tree.lines[i - 1].begin) return "lines out of order";
    if (i > 0 && text[tree.lines[i].begin - 1] != '\n') return "a line that begins within another";
  }
  if (tree.nodes.empty() || tree.nodes[0].size != tree.nodes.size()) return "the file does not hold every node";
  if (tree.nodes[0].begin != 0 || tree.nodes[0].end != size) return "the file's node is not the file";
  struct Open {
    std::uint32_t end_index, end, last;
  };
  std::vector<Open> open;
  for (std::uint32_t i = 0; i < tree.nodes.size(); ++i) {
    const Node& node = tree.nodes[i];
    while (!open.empty() && open.back().end_index == i) open.pop_back();
    if (node.begin > node.end || node.end > size || node.size == 0) return "a node outside the text at " + std::to_string(i);
    if (!open.empty()) {
      Open& owner = open.back();
      if (node.begin < owner.last) return "overlap at node " + std::to_string(i) + " " + std::string(name_of(node.kind));
      if (node.end > owner.end) return "a node beyond its owner at " + std::to_string(i) + " " + std::string(name_of(node.kind));
      if (i + node.size > owner.end_index) return "a subtree beyond its owner";
      owner.last = node.end;
    }
    open.push_back({i + node.size, node.end, node.begin});
  }
  return {};
}

void check_text(const std::string& text) {
  const Source source("text", text);
  const Tree tree = parse(source);
  const std::string found = fault(tree, source.text());
  if (!found.empty()) MESSAGE(text);
  CHECK(found == "");
}

}  // namespace

TEST_CASE("lossless: the example book") {
  for (const std::string& text : tests::seeds()) check_text(text);
}

TEST_CASE("lossless: mutated recipes") {
  const auto books = tests::seeds();
  std::mt19937 random(20260211);
  for (int round = 0; round < 4000; ++round) check_text(tests::mutated(books, random));
}

TEST_CASE("lossless: random bytes") {
  std::mt19937 random(7);
  for (int round = 0; round < 20000; ++round) {
    std::string text(random() % 60, '\0');
    for (char& c : text) c = random() % 3 == 0 ? "[]:\n \t#/1%,-"[random() % 12] : static_cast<char>(random());
    check_text(text);
  }
}
