// A recipe from a few lines of text, scaled and shown, and what its lines then say.
#pragma once
#include <doctest/doctest.h>

#include <memory>
#include <string>

#include "adapt/adapt.hpp"
#include "syntax/tree.hpp"

namespace qtn::adapt_tests {

struct Page {
  // `head` and `method` may be empty; each line of `take` is one line of the list.
  Page(const std::string& head, const std::string& take, const std::string& method = {},
       std::shared_ptr<const Kitchen> kitchen = {})
      : source("test.qtn", "recipe: Test\n" + head + (take.empty() ? "" : "take:\n" + take) +
                               (method.empty() ? "" : "method:\n" + method + "\n")) {
    Surroundings around;
    around.kitchen = std::move(kitchen);
    recipe = check(source, parse(source), around, report);
  }
  Index line_at(std::string_view name) const {
    for (Index i = 0; i < recipe.lines.size(); ++i)
      if (recipe.lines[i].name == name) return i;
    REQUIRE_MESSAGE(false, "no line " << name << " in\n" << source.text());
    return 0;
  }

  Source source;
  Report report;
  Recipe recipe;
};

// One showing of a page: so many times, in these measures.
struct Card {
  Card(const Page& from, const Fraction& k, System units = System::written, Dialect spoons = Dialect::unstated)
      : page(from), recipe(scale(from.recipe, k)) {
    Request request;
    request.units = units;
    request.spoons = spoons;
    adapted = show(recipe, request);
  }
  const Shown& shown(std::string_view name) const { return adapted.lines[page.line_at(name)]; }
  std::string line(std::string_view name) const { return shown(name).text; }
  std::string term(std::size_t at) const { return adapted.terms.at(at).text; }
  std::string mention(std::size_t at) const { return adapted.mentions.at(at).text; }
  int count(Code code) const {
    int found = 0;
    for (const Diagnostic& one : adapted.lacks.list()) found += one.code == code;
    return found;
  }

  const Page& page;
  Recipe recipe;
  Adapted adapted;
};

// The text of one line, `AMOUNT NAME`, in British measures unless the head says otherwise.
inline std::string one(const std::string& line, const Fraction& k, System units = System::written,
                       const std::string& head = "measures: British\n", Dialect spoons = Dialect::unstated) {
  const Page page(head, "  " + line + "\n");
  REQUIRE(page.recipe.lines.size() >= 1);
  return Card(page, k, units, spoons).adapted.lines[0].text;
}

}  // namespace qtn::adapt_tests
