#include "app/pipeline.hpp"

#include "syntax/tree.hpp"

namespace qtn {

Recipe compile(const Source& source, const Surroundings& around, Workbench& bench, Report& report) {
  parse(source.text(), bench.tree);
  return check(source, bench.tree, around, report);
}

namespace {

// The version that was ordered, or nothing when there is none of that name.
std::optional<Recipe> version(const Recipe& recipe, const Order& order, Report& report) {
  std::optional<Recipe> out;
  if (!order.variant.empty()) {
    out = variant_of(recipe, order.variant, report);
    if (!out) report.add(Code::no_such_version, {}, "This recipe has no variant called `" + order.variant + "`.");
  }
  if (!order.with.empty()) {
    const Recipe* const base = out ? &*out : &recipe;
    auto chosen = with_alternative(*base, order.with, report);
    if (!chosen) report.add(Code::no_such_version, {}, "This recipe has no `or` line called `" + order.with + "`.");
    out = std::move(chosen);
  }
  return out;
}

}  // namespace

bool print_card(const Recipe& written, const Order& order, std::string& out, Report& report) {
  std::optional<Recipe> other;
  if (!order.variant.empty() || !order.with.empty()) {
    other = version(written, order, report);
    if (report.has_errors()) return false;
  }
  const Recipe& recipe = other ? *other : written;
  const Fraction factor = factor_of(recipe, order.request, report);
  if (report.has_errors()) return false;
  std::optional<Recipe> scaled;
  if (!(factor == Fraction(1))) scaled = scale(recipe, factor);
  const Adapted adapted = show(scaled ? *scaled : recipe, order.request);
  render(order.format, make_card(adapted), out);
  return true;
}

}  // namespace qtn
