// A card from a recipe's text, and its blocks as lines that show the roles of their runs.
#pragma once
#include <string>

#include "card/make.hpp"
#include "tests/recipe/checked.hpp"

namespace qtn::test {

struct Carded {
  explicit Carded(std::string text, const Fraction& times = Fraction(1), const Request& request = {}, Surroundings around = {})
      : checked(std::move(text), std::move(around)),
        recipe(scale(checked.recipe, times)),
        adapted(show(recipe, request)),
        card(make_card(adapted)) {}
  Carded(const Carded&) = delete;
  Carded& operator=(const Carded&) = delete;

  std::string words(Range32 range) const {
    std::string all;
    for (std::uint32_t i = 0; i < range.count; ++i) all += card.view(card.runs[range.first + i]);
    return all;
  }
  // What is not plain text in braces behind a letter for its role: "a{220 g}". Runs of one role beside each other are one.
  std::string roles(Range32 range) const {
    static constexpr const char* kNames[] = {"", "a", "2", "n", "t", "C", "r", "m", "p", "s", "x"};
    std::string all;
    Role before = Role::text;
    for (std::uint32_t i = 0; i < range.count; ++i) {
      const Run& run = card.runs[range.first + i];
      const bool same = run.role == before && run.role != Role::text;
      before = run.role;
      if (same) all.pop_back(), all.append(card.view(run)).append("}");
      else if (run.role == Role::text) all += card.view(run);
      else all.append(kNames[static_cast<std::size_t>(run.role)]).append("{").append(card.view(run)).append("}");
    }
    return all;
  }
  // "Makes: 1 tart"; empty when there is no such fact.
  std::string fact(FactKind kind) const {
    for (const Fact& one : card.facts)
      if (one.kind == static_cast<std::uint16_t>(kind)) return words(one.label) + ": " + words(one.value);
    return {};
  }
  // "220 g | 8 oz | plain flour | sifted"
  std::string row(std::size_t at) const {
    if (at >= card.rows.size()) return "?";
    const Row& one = card.rows[at];
    return words(one.amount) + " | " + words(one.second) + " | " + words(one.name) + " | " + words(one.rest);
  }
  std::string step(std::size_t at) const { return at < card.steps.size() ? roles(card.steps[at].runs) : "?"; }

  Checked checked;
  Recipe recipe;
  Adapted adapted;
  Card card;
};

}  // namespace qtn::test
