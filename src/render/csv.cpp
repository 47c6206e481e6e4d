// The records of an order in columns, as RFC 4180 says: a line ends in CR LF, a cell with a comma, a quote or a line end is
// quoted, a quote in it is doubled. Numbers have a point and no thousands marks.
#include "render/render.hpp"

namespace qtn {
namespace {

void append_cell(std::string& out, std::string_view text) {
  const bool quoted = text.find_first_of(",\"\r\n") != std::string_view::npos || text.starts_with(' ') || text.ends_with(' ');
  if (!quoted) {
    out += text;
    return;
  }
  out += '"';
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  out += '"';
}

}  // namespace

void render_csv(const Card& card, std::string& out) {
  for (const std::string& column : card.columns) append_cell(out, column), out += ',';
  out += "for\r\n";
  for (const Entry& record : card.records) {
    for (const std::string& cell : record.cells) append_cell(out, cell), out += ',';
    std::string dishes;
    for (const auto& [dish, amount] : record.of) dishes += (dishes.empty() ? "" : "; ") + dish + ": " + amount;
    append_cell(out, dishes);
    out += "\r\n";
  }
}

}  // namespace qtn
