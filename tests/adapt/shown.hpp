// A recipe from its text, made to another size and shown: what the tests of this room look at.
#pragma once
#include <string>

#include "adapt/adapt.hpp"
#include "tests/recipe/checked.hpp"

namespace qtn {

inline Quantity quantity(Fraction value, UnitId unit = kNoUnit) {
  return {value, value, unit, Manner::plain, false};
}

struct Resized {
  explicit Resized(std::string text, const Fraction& k = Fraction(1), const Request& request = {},
                   Surroundings around = {})
      : checked(std::move(text), std::move(around)), recipe(scale(checked.recipe, k)), shown(show(recipe, request)) {}
  Resized(const Resized&) = delete;
  Resized& operator=(const Resized&) = delete;

  std::size_t at(std::string_view name) const {
    for (std::size_t i = 0; i < recipe.lines.size(); ++i)
      if (recipe.lines[i].name == name) return i;
    return recipe.lines.size();
  }
  // The text of a line, "?" when there is no such line.
  std::string line(std::string_view name) const {
    return at(name) < shown.lines.size() ? shown.lines[at(name)].text : "?";
  }
  std::string beside(std::string_view name) const {
    return at(name) < shown.lines_beside.size() ? shown.lines_beside[at(name)].text : "?";
  }
  // The texts of all terms of one role, in the order of the page.
  std::string terms(TermRole role) const {
    std::string text;
    for (std::size_t i = 0; i < recipe.terms.size(); ++i)
      if (recipe.terms[i].role == role) text += (text.empty() ? "" : " | ") + shown.terms[i].text;
    return text;
  }
  std::string mentions() const {
    std::string text;
    for (const Shown& one : shown.mentions)
      if (!one.text.empty()) text += (text.empty() ? "" : " | ") + one.text;
    return text;
  }
  std::string tail(TailKind kind) const {
    std::string text;
    for (std::size_t i = 0; i < recipe.tails.size(); ++i)
      if (recipe.tails[i].kind == kind) text += (text.empty() ? "" : " | ") + shown.tails[i].text;
    return text;
  }
  int said(Code code) const {
    int count = 0;
    for (const Diagnostic& one : shown.lacks.list()) count += one.code == code;
    return count;
  }

  Checked checked;
  Recipe recipe;
  Adapted shown;
};

inline Request in(System units) {
  Request request;
  request.units = units;
  return request;
}

// A list alone is enough for what is shown of one.
inline std::string listed(const std::string& head, const std::string& lines) {
  return "recipe: Trial bake\n" + head + "take:\n" + lines + "method:\n  Mix [everything].\n";
}

}  // namespace qtn
