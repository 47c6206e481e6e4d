// The formats table: one row an output.
#include "render/render.hpp"

#include <array>

namespace qtn {
namespace {

struct Output {
  FormatRow row;
  void (*write)(const Card& card, std::string& out);
};

constexpr std::array<Output, 5> kOutputs{{
    {{Format::markdown, "markdown", "md", "CommonMark, to read as it stands or to set"}, render_markdown},
    {{Format::html, "html", "html", "one page for screen and paper, complete in itself"}, render_html},
    {{Format::text, "text", "txt", "plain text in aligned columns"}, render_text},
    {{Format::json, "json", "json", "the words of the card beside the exact amounts"}, render_json},
    {{Format::ical, "ical", "ics", "a calendar, an event with an alarm for each line of a run sheet"}, render_ical},
}};

}  // namespace

void render(Format format, const Card& card, std::string& out) {
  for (const Output& output : kOutputs) {
    if (output.row.format == format) return output.write(card, out);
  }
}

void render(Format format, std::span<const Card> cards, std::string& out) {
  if (format == Format::html) return render_html(cards, out);
  for (const Card& card : cards) {
    if (&card != &cards.front() && format != Format::json) out += '\n';
    render(format, card, out);
  }
}

const FormatRow* find_format(std::string_view name, bool sheet) {
  for (const Output& output : kOutputs) {
    if (output.row.name == name && (sheet || output.row.format != Format::ical)) return &output.row;
  }
  return nullptr;
}

std::string format_names(bool sheet) {
  std::string names;
  for (const Output& output : kOutputs) {
    if (output.row.format == Format::ical && !sheet) continue;
    if (!names.empty()) names += ", ";
    names += output.row.name;
  }
  return names;
}

}  // namespace qtn
