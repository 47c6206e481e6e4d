// What a recipe is held against once its own page was checked, and each of its versions with it.
#include <algorithm>

#include "book/book.hpp"
#include "day/check.hpp"
#include "safety/safety.hpp"

namespace qtn {
namespace {

void clock_and_safety(const Recipe& recipe, Report& report) {
  check_clock(recipe, report);
  if (!report.has_errors()) check_safety(recipe, report);
}

// What is wrong with a version and not with the recipe as it stands, told with the place that makes it one.
void version(const std::optional<Recipe>& other, Report& own, Span place, Report& report) {
  if (!other) return;
  if (!own.has_errors()) clock_and_safety(*other, own);
  for (const Diagnostic& problem : own.list()) {
    const auto same = [&](const Diagnostic& known) { return known.code == problem.code && known.span.begin == problem.span.begin; };
    if (problem.severity == Severity::note || std::any_of(report.list().begin(), report.list().end(), same)) continue;
    Diagnostic& told = report.add(problem.code, problem.severity, problem.span, problem.message);
    told = problem;
    told.fixes.clear();  // a mend of the version might harm the recipe
    if (place.begin != problem.span.begin) told.also(place, "in this version");
  }
}

}  // namespace

void check_beyond_page(const Recipe& recipe, Report& report) {
  clock_and_safety(recipe, report);
  if (report.has_errors() || recipe.kind != FileKind::recipe) return;
  for (const Log& log : recipe.variants) {
    Report own;
    const auto other = variant_of(recipe, log.name, own);
    version(other, own, log.span, report);
  }
  for (const TakeLine& line : recipe.lines) {
    if (!line.alternative || line.parent == kNone) continue;
    Report own;
    const auto other = with_alternative(recipe, line.name, own);
    version(other, own, line.name_span, report);
  }
}

}  // namespace qtn
