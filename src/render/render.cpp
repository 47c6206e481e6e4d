// The formats table: one row an output.
#include "render/render.hpp"

#include <array>

namespace qtn {
namespace {

struct Output {
  FormatRow row;
  void (*write)(const Card& card, std::string& out);
};

constexpr std::array<Output, 4> kOutputs{{
    {{Format::markdown, "markdown", "md", "CommonMark, to read as it stands or to set"}, render_markdown},
    {{Format::html, "html", "html", "one page for screen and paper, complete in itself"}, render_html},
    {{Format::text, "text", "txt", "plain text in aligned columns"}, render_text},
    {{Format::json, "json", "json", "the words of the card beside the exact amounts"}, render_json},
}};

}  // namespace

void render(Format format, const Card& card, std::string& out) {
  for (const Output& output : kOutputs) {
    if (output.row.format == format) return output.write(card, out);
  }
}

const FormatRow* find_format(std::string_view name) {
  for (const Output& output : kOutputs) {
    if (output.row.name == name) return &output.row;
  }
  return nullptr;
}

std::string format_names() {
  std::string names;
  for (const Output& output : kOutputs) {
    if (!names.empty()) names += ", ";
    names += output.row.name;
  }
  return names;
}

}  // namespace qtn
