#include "syntax/tree.hpp"

namespace qtn {

std::string_view name_of(Kind kind) {
  static constexpr std::string_view kNames[] = {
#define QTN_KIND(name, meaning) #name,
#include "grammar/kinds.def"
#undef QTN_KIND
  };
  return kNames[static_cast<std::size_t>(kind)];
}

namespace {

void write_text(std::string_view text, std::string& out) {
  out += " \"";
  for (char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    if (c == '\n') out += "\\n";
    else if (c != '\r') out += c;
  }
  out += '"';
}

}  // namespace

std::string dump(const Tree& tree, std::string_view text, std::uint32_t node) {
  // A stack of ends instead of recursion: the tree may be as deep as it likes.
  std::string out;
  std::vector<std::uint32_t> ends;
  const std::uint32_t last = node + tree.nodes[node].size;
  for (std::uint32_t i = node; i < last; ++i) {
    while (!ends.empty() && ends.back() == i) out += ')', ends.pop_back();
    const Node& at = tree.nodes[i];
    if (i != node) {
      out += at.kind <= Kind::bad_value || at.kind == Kind::take_line ? "\n" + std::string(ends.size() * 2, ' ') : " ";
    }
    out += '(';
    out += name_of(at.kind);
    if (at.size == 1) write_text(text.substr(at.begin, at.end - at.begin), out);
    ends.push_back(i + at.size);
  }
  out.append(ends.size(), ')');
  return out;
}

}  // namespace qtn
