// What is wrong with a `use:` line (semantics part 8, Uses): one report each, at the line.
#include <algorithm>

#include "book/book.hpp"
#include "book/path.hpp"
#include "diag/nearest.hpp"
#include "words/fold.hpp"

namespace qtn {
void Book::bad_path(Checked& entry, const Use& use) {
  const bool form = !is_plain_path(use.path);
  auto& problem = entry.report.add(form ? Code::use_path_form : Code::use_outside_book, use.path_span,
                                   form ? "This is no path inside the book." : "This path leads out of the book.");
  problem.find(quoted(use.path)).expect("a path from this file, with `/` between folders: `pastry/shortcrust.qtn`");
  if (use.path.find('\\') == std::string_view::npos) return;
  std::string mended(use.path);
  std::replace(mended.begin(), mended.end(), '\\', '/');
  if (is_plain_path(mended)) problem.fix(use.path_span, mended, "write " + quoted(mended));
}

void Book::missing(const std::string& path, Checked& entry, const Use& use, const std::string& target) {
  auto& problem = entry.report.add(Code::use_file_missing, use.path_span, "There is no file " + quoted(target) + " in this book.");
  problem.find(quoted(use.path)).expect("the path of a file, from the folder of this one");
  // Two slips are common: the ending left out, and the path written from the book's top.
  const auto from_top = resolve_path("", use.path);
  for (const std::string& other : {target + ".qtn", from_top.value_or(""), from_top.value_or("") + ".qtn"}) {
    if (other == target || other.empty() || other == ".qtn" || other == path) continue;
    if (files_.find(other) == files_.end() && !reader_(other)) continue;
    const std::string mended = path_from(path, other);
    problem.offer(use.path_span, mended, "write " + quoted(mended));
    return;
  }
}

const Recipe* Book::take(Checked& entry, const Use& use, const std::string& target, const Checked& other) {
  Report& report = entry.report;
  if (other.kind == FileKind::kitchen) {
    report.add(Code::use_of_kitchen, use.path_span, quoted(target) + " is the kitchen's file and no recipe.")
        .find(quoted(use.path)).expect("a recipe's file");
    return nullptr;
  }
  if (other.report.has_errors()) {
    report.add(Code::use_file_has_errors, use.path_span, quoted(target) + " has errors of its own.")
        .find(quoted(use.path)).expect("a file that `quartern check " + target + "` finds nothing wrong with");
    return nullptr;
  }
  const Recipe& recipe = *other.recipe;
  std::vector<std::string_view> known{recipe.title};
  for (const Part& part : recipe.parts)
    if (!part.unnamed) known.push_back(part.name);
  const std::string name = lower(use.name);
  if (std::any_of(known.begin(), known.end(), [&](std::string_view one) { return lower(one) == name; })) return &recipe;
  const auto near = nearest(use.name, known);
  auto& problem = report.add(Code::use_name_missing, use.name_span,
                             quoted(target) + " has no recipe or part called " + quoted(use.name) + "." +
                                 (near.empty() ? "" : " " + did_you_mean(near)));
  problem.find(quoted(use.name)).expect("the recipe's name, " + quoted(recipe.title) + ", or one of its parts");
  for (std::string_view one : near) problem.offer(use.name_span, std::string(one), "write " + quoted(one));
  return nullptr;
}

}  // namespace qtn
