#include "cli/arguments.hpp"

#include "cli/output.hpp"

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

std::optional<Tin> read_tin_argument(const std::string& text, std::string& problem) {
  if (text.find('\n') != std::string::npos) return std::nullopt;
  const Source source("argument", "recipe: argument\ntin: " + text + "\n");
  Workbench bench;
  Report report;
  std::optional<Tin> tin = compile(source, {}, bench, report).tin;
  for (const Diagnostic& one : report.list())
    if (one.code == Code::tin_without_room) problem = one.message;
  return tin;
}

bool read_way(const std::string& text, std::optional<StepWay>& out) {
  if (text.empty()) return true;
  if (text == "hand" || text == "machine") {
    out = text == "hand" ? StepWay::by_hand : StepWay::by_machine;
    return true;
  }
  complain("--way " + text + " is not known; it is hand or machine");
  return false;
}

bool read_size(const std::string& times, const std::string& serves, const std::string& makes, Request& request) {
  const auto amount = [&](const std::string& text) { return read_amount_argument(text, Dialect::british); };
  if (!times.empty()) {
    const auto read = amount(times);
    if (!read || read->quantity.unit != kNoUnit || !read->thing.empty() || read->quantity.low.sign() <= 0)
      return wrong("--times", times, "a number above 0: 3, 1/2, 2.5");
    request.times = read->quantity.low;
  }
  if (!serves.empty()) {
    const auto read = amount(serves);
    if (!read || read->quantity.unit != kNoUnit || read->quantity.low.sign() <= 0)
      return wrong("--serves", serves, "a number of people: 20");
    request.serves = read->quantity;
  }
  if (!makes.empty()) {
    const auto read = amount(makes);
    if (!read || read->quantity.low.sign() <= 0) return wrong("--makes", makes, "an amount: 12 pasties, 2 kg");
    request.makes = read->quantity;
    request.makes_thing = read->thing;
  }
  return true;
}

}  // namespace qtn
