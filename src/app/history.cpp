// The history of one ingredient as lines in columns.
#include "app/reading.hpp"
#include "diag/glyphs.hpp"
#include "recipe/history.hpp"

namespace qtn {
namespace {

std::size_t wide(std::string_view text) { return static_cast<std::size_t>(columns_of(text)); }

std::string on_one_line(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    if (!blank) out += static_cast<unsigned char>(c) < 0x20 ? '?' : c;
    else if (!out.empty() && out.back() != ' ') out += ' ';
  }
  return out;
}

}  // namespace

std::string read_history(const Recipe& recipe, std::string_view name, Report& report) {
  const std::optional<History> history = history_of(recipe, name, report);
  if (!history) return {};
  std::string out = history->name;
  if (!history->now.empty()) out += ": " + history->now + " now";
  if (!history->share.empty()) out += ", " + history->share;
  out += "\n";
  if (history->rows.empty()) return out + "  no trial yet\n";
  std::vector<std::string> amounts;
  std::size_t first = 0, second = 0;
  for (const HistoryRow& row : history->rows) {
    amounts.push_back(row.change == nullptr ? row.after : row.before + " → " + row.after);
    first = std::max(first, wide(amounts.back())), second = std::max(second, wide(row.share));
  }
  for (std::size_t i = 0; i < amounts.size(); ++i) {
    const HistoryRow& row = history->rows[i];
    const Log& log = recipe.trials[row.trial];
    std::string line = "  " + std::string(log.name) + "  " + amounts[i] + std::string(first - wide(amounts[i]), ' ');
    if (second != 0) line += "  " + row.share + std::string(second - wide(row.share), ' ');
    for (const Span note : log.notes) line += "  " + on_one_line(recipe.slice(note));
    while (line.back() == ' ') line.pop_back();
    out += line + "\n";
  }
  return out;
}

}  // namespace qtn
