// A recipe checked from its text, kept together with the text that it looks into.
#pragma once
#include <memory>
#include <string>

#include "recipe/phases.hpp"
#include "syntax/tree.hpp"

namespace qtn {

struct Checked {
  explicit Checked(std::string text, Surroundings around = {})
      : source(std::make_unique<Source>("test.qtn", std::move(text))) {
    const Tree tree = parse(*source);
    recipe = check(*source, tree, around, report);
    report.sort();
  }
  const TakeLine& line(std::string_view name) const {
    for (const TakeLine& one : recipe.lines)
      if (one.name == name) return one;
    static const TakeLine none;
    return none;
  }
  // "294.12 g": the solved amount of a line; "?" while it has none.
  std::string amount(std::string_view name) const {
    const Quantity& solved = line(name).amount;
    if (solved.is_lost()) return "?";
    std::string text = solved.low.decimal(2);
    if (solved.is_range()) text += " to " + solved.high.decimal(2);
    const std::string_view symbol = unit(solved.unit).symbol;
    return symbol.empty() ? text : text + " " + std::string(symbol);
  }
  const Diagnostic* problem(Code code) const {
    for (const Diagnostic& one : report.list())
      if (one.code == code) return &one;
    return nullptr;
  }
  std::string_view at(const Diagnostic* problem) const { return problem == nullptr ? "" : source->text(problem->span); }
  // Every code that was said, for messages of failed tests.
  std::string codes() const {
    std::string text;
    for (const Diagnostic& one : report.list())
      text += std::string(text.empty() ? "" : " ") + std::string(row(one.code).name);
    return text;
  }

  std::unique_ptr<Source> source;
  Report report;
  Recipe recipe;
};

}  // namespace qtn
