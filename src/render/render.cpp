// The formats table: one row an output.
#include "render/render.hpp"

#include <array>

namespace qtn {
namespace {

struct Output {
  FormatRow row;
  void (*write)(const Card& card, std::string& out);
};

constexpr std::array<Output, 6> kOutputs{{
    {{Format::markdown, "markdown", "md", "CommonMark, to read as it stands or to set"}, render_markdown},
    {{Format::html, "html", "html", "one page for screen and paper, complete in itself"}, render_html},
    {{Format::text, "text", "txt", "plain text in aligned columns"}, render_text},
    {{Format::json, "json", "json", "the words of the card beside the exact amounts"}, render_json},
    {{Format::ical, "ical", "ics", "a calendar, an event with an alarm for each line of a run sheet"}, render_ical},
    {{Format::csv, "csv", "csv", "the lines of an order in columns, for a spreadsheet"}, render_csv},
}};

bool is_for(Format format, Paper paper) {
  return (format != Format::ical || paper == Paper::day) && (format != Format::csv || paper == Paper::order);
}

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

const FormatRow* find_format(std::string_view name, Paper paper) {
  for (const Output& output : kOutputs) {
    if (output.row.name == name && is_for(output.row.format, paper)) return &output.row;
  }
  return nullptr;
}

std::string format_names(Paper paper) {
  std::string names;
  for (const Output& output : kOutputs) {
    if (!is_for(output.row.format, paper)) continue;
    if (!names.empty()) names += ", ";
    names += output.row.name;
  }
  return names;
}

}  // namespace qtn
