#include "book/book.hpp"

#include <algorithm>

#include "diag/nearest.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

}  // namespace

std::optional<std::string> Book::resolve(const std::string& from, std::string_view path) {
  std::vector<std::string> parts;
  const auto add = [&](std::string_view text, bool last_is_file) {
    while (!text.empty()) {
      const std::size_t cut = text.find('/');
      const std::string_view part = text.substr(0, cut);
      if (cut == std::string_view::npos && last_is_file) break;
      text = cut == std::string_view::npos ? std::string_view() : text.substr(cut + 1);
      if (part.empty() || part == ".") continue;
      if (part != "..") parts.emplace_back(part);
      else if (parts.empty()) return false;
      else parts.pop_back();
    }
    return true;
  };
  if (path.empty() || path.front() == '/' || path.find('\\') != std::string_view::npos) return std::nullopt;
  if (!add(from, true) || !add(path, false) || parts.empty()) return std::nullopt;
  std::string out;
  for (const std::string& part : parts) out += (out.empty() ? "" : "/") + part;
  return out;
}

Checked& Book::enter(const std::string& path, std::string text) {
  auto& slot = files_[path];
  slot = std::make_unique<Checked>(Source(path, std::move(text)));
  return *slot;
}

const Checked* Book::set_kitchen(const std::string& path) {
  auto text = reader_(path);
  if (!text) return nullptr;
  Checked& entry = enter(path, std::move(*text));
  parse(entry.source.text(), entry.tree);
  entry.kind = entry.tree.kind;
  if (entry.kind == FileKind::kitchen) {
    kitchen_ = std::make_shared<const Kitchen>(check_kitchen(entry.source, entry.tree, entry.report));
    entry.kitchen = kitchen_;
    kitchen_path_ = path;
  } else {
    check_entry(path, entry);
  }
  entry.report.sort();
  return &entry;
}

const Checked* Book::file(const std::string& path) {
  if (const auto known = files_.find(path); known != files_.end()) return known->second.get();
  auto text = reader_(path);
  if (!text) return nullptr;
  if (text->size() > Source::kLongest) {
    Checked& entry = enter(path, {});
    entry.report.add(Code::file_too_long, {}, "This file is longer than any book.").expect("a text file of a recipe");
    return &entry;
  }
  Checked& entry = enter(path, std::move(*text));
  parse(entry.source.text(), entry.tree);
  check_entry(path, entry);
  return &entry;
}

const Checked& Book::text(const std::string& name, std::string text) {
  Checked& entry = enter(name, std::move(text));
  parse(entry.source.text(), entry.tree);
  check_entry(name, entry);
  return entry;
}

void Book::check_entry(const std::string& path, Checked& entry) {
  entry.kind = entry.tree.kind;
  if (entry.kind == FileKind::kitchen) {
    entry.kitchen = std::make_shared<const Kitchen>(check_kitchen(entry.source, entry.tree, entry.report));
    entry.report.sort();
    return;
  }
  entry.kitchen = kitchen_;
  open_.push_back(path);
  Surroundings around{kitchen_, {}, today_};
  for (const Use& use : uses_of(entry.source, entry.tree)) around.uses.push_back(used(path, entry, use));
  open_.pop_back();
  entry.recipe = std::make_unique<Recipe>(check(entry.source, entry.tree, around, entry.report));
  entry.report.sort();
}

const Recipe* Book::used(const std::string& path, Checked& entry, const Use& use) {
  Report& report = entry.report;
  const auto target = resolve(path, use.path);
  if (!target) {
    const bool form = use.path.empty() || use.path.front() == '/' || use.path.find('\\') != std::string_view::npos;
    report.add(form ? Code::use_path_form : Code::use_outside_book, use.path_span,
               form ? "This is no path inside the book." : "This path leads out of the book.")
        .find(quoted(use.path)).expect("a path from this file with `/` between folders: `pastry/shortcrust.qtn`");
    return nullptr;
  }
  if (std::find(open_.begin(), open_.end(), *target) != open_.end()) {
    ring(*target, entry, use);
    return nullptr;
  }
  const Checked* other = file(*target);
  if (other == nullptr) {
    report.add(Code::use_file_missing, use.path_span, "There is no file " + quoted(*target) + " in this book.").find(quoted(use.path))
        .expect("the path of a file, from the folder of this one");
    return nullptr;
  }
  if (other->kind == FileKind::kitchen) {
    report.add(Code::use_of_kitchen, use.path_span, quoted(*target) + " is the kitchen's file and no recipe.").expect("a recipe's file");
    return nullptr;
  }
  if (other->report.has_errors() || other->recipe == nullptr) {
    report.add(Code::use_file_has_errors, use.path_span, quoted(*target) + " has errors of its own.").expect("a file that `quartern check " + *target + "` finds nothing wrong with");
    return nullptr;
  }
  const Recipe& recipe = *other->recipe;
  const std::string name = lower(use.name);
  std::vector<std::string_view> known{recipe.title};
  for (const Part& part : recipe.parts)
    if (!part.unnamed) known.push_back(part.name);
  const bool there = std::any_of(known.begin(), known.end(), [&](std::string_view one) { return lower(one) == name; });
  if (there) return &recipe;
  const auto near = nearest(use.name, known);
  auto& problem = report.add(Code::use_name_missing, use.name_span, quoted(*target) + " has no recipe or part called " + quoted(use.name) + ". " + did_you_mean(near));
  problem.find(quoted(use.name)).expect("the recipe's name, " + quoted(recipe.title) + ", or one of its parts");
  for (std::string_view one : near) problem.offer(use.name_span, std::string(one), "write " + quoted(one));
  return nullptr;
}

// Told once, at the file that closes the ring.
void Book::ring(const std::string& path, Checked& entry, const Use& use) {
  std::string chain;
  for (auto at = std::find(open_.begin(), open_.end(), path); at != open_.end(); ++at) chain += *at + " → ";
  entry.report.add(Code::use_ring, use.span, "These recipes each need the other first: " + chain + path + ".").expect("one of them made without the other");
}

void Book::two_kitchens(const std::string& first, const std::string& second) {
  for (const auto& [path, other] : {std::pair{first, second}, std::pair{second, first}}) {
    const auto entry = files_.find(path);
    if (entry == files_.end()) continue;
    const Span head = entry->second->tree.nodes.size() > 2 ? entry->second->tree.nodes[2].span() : Span{};
    entry->second->report.add(Code::two_kitchens, head, "This book has two kitchens.").also({}, "the other is in this file", other)
        .expect("one file that begins with `kitchen:`");
  }
}

}  // namespace qtn
