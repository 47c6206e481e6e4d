#include "cli/arguments.hpp"

#include "app/pipeline.hpp"

namespace qtn {
namespace {

// The text as a line of a list, with a name behind it where it has none of its own.
std::optional<Amount> as_line(const std::string& text, const std::string& name, Dialect dialect) {
  const std::string head = dialect == Dialect::unstated ? "" : "measures: " + std::string(name_of(dialect)) + "\n";
  const Source source("argument", "recipe: argument\n" + head + "take:\n" + text + name + "\n");
  Workbench bench;
  Report report;
  const Recipe recipe = compile(source, {}, bench, report);
  if (recipe.lines.size() != 1 || recipe.lines[0].basis != Basis::amount || recipe.lines[0].written.is_lost()) return std::nullopt;
  return Amount{recipe.lines[0].amount, name.empty() ? std::string(recipe.lines[0].name) : std::string()};
}

}  // namespace

std::optional<Amount> read_amount_argument(const std::string& text, Dialect dialect) {
  if (text.find('\n') != std::string::npos) return std::nullopt;
  if (auto amount = as_line(text, "", dialect)) return amount;
  return as_line(text, " thing", dialect);
}

std::optional<Tin> read_tin_argument(const std::string& text) {
  if (text.find('\n') != std::string::npos) return std::nullopt;
  const Source source("argument", "recipe: argument\ntin: " + text + "\n");
  Workbench bench;
  Report report;
  return compile(source, {}, bench, report).tin;
}

}  // namespace qtn
