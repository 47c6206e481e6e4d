#include "book/book.hpp"

#include <algorithm>

#include "book/path.hpp"

namespace qtn {

// Reads and parses the file at a path that was not read yet; null when there is none.
Checked* Book::enter(const std::string& path) {
  auto text = reader_(path);
  if (!text) return nullptr;
  const bool too_long = text->size() > Source::kLongest;
  auto& slot = files_[path];
  slot = std::make_unique<Checked>(Source(path, too_long ? std::string() : std::move(*text)));
  if (too_long)
    slot->report.add(Code::file_too_long, {}, "This file is longer than any book.").expect("a text file of a recipe");
  parse(slot->source.text(), slot->tree);
  slot->kind = slot->tree.kind;
  return slot.get();
}

void Book::check_kitchen_file(Checked& entry) {
  entry.kitchen = std::make_shared<const Kitchen>(check_kitchen(entry.source, entry.tree, entry.report, today_));
  entry.report.sort();
  entry.settled = true;
}

const Checked* Book::set_kitchen(const std::string& path) {
  const Checked* const entry = file(path);
  if (entry != nullptr && entry->kind == FileKind::kitchen) kitchen_ = entry->kitchen;
  return entry;
}

const Checked* Book::file(const std::string& path) {
  if (const auto known = files_.find(path); known != files_.end()) return known->second.get();
  Checked* const entry = enter(path);
  if (entry != nullptr) run(path, *entry);
  return entry;
}

const Checked& Book::text(const std::string& name, std::string text) {
  texts_.push_back(std::make_unique<Checked>(Source(name, std::move(text))));
  Checked& entry = *texts_.back();
  parse(entry.source.text(), entry.tree);
  entry.kind = entry.tree.kind;
  run(name, entry);
  return entry;
}

void Book::run(const std::string& path, Checked& entry) {
  open(path, entry);
  while (!open_.empty()) {
    if (open_.back().around.uses.size() < open_.back().uses.size()) next_use();
    else finish();
  }
}

void Book::open(const std::string& path, Checked& entry) {
  if (entry.kind == FileKind::kitchen) return check_kitchen_file(entry);
  entry.kitchen = kitchen_;
  enter_ring_search(entry);
  open_.push_back({path, &entry, uses_of(entry.source, entry.tree), {kitchen_, {}, today_}});
}

// One more use of the innermost file: settled, or its file opened first and the use met again after that.
void Book::next_use() {
  Open& top = open_.back();
  const Use& use = top.uses[top.around.uses.size()];
  const Recipe* taken = nullptr;
  if (const auto target = resolve_path(top.path, use.path); !target) {
    bad_path(*top.entry, use);
  } else if (const auto known = files_.find(*target); known == files_.end()) {
    if (Checked* const other = enter(*target)) return open(*target, *other);
    missing(top.path, *top.entry, use, *target);
  } else if (!known->second->settled) {
    ring(top, use, *target, *known->second);
  } else {
    taken = take(*top.entry, use, *target, *known->second);
  }
  top.around.uses.push_back(taken);
}

void Book::finish() {
  const Open& top = open_.back();
  Checked& entry = *top.entry;
  entry.recipe = std::make_unique<Recipe>(check(entry.source, entry.tree, top.around, entry.report));
  check_beyond_page(*entry.recipe, entry.report);
  entry.report.sort();
  leave_ring_search(entry);
  open_.pop_back();
}

void Book::two_kitchens(const std::string& first, const std::string& second) {
  const bool together = folder_of(first) == folder_of(second);
  const Code code = together ? Code::two_kitchens_in_folder : Code::two_kitchens;
  for (const auto& [path, other] : {std::pair{first, second}, std::pair{second, first}}) {
    const auto found = files_.find(path);
    if (found == files_.end()) continue;
    Checked& entry = *found->second;
    const auto said = entry.report.list();
    if (std::any_of(said.begin(), said.end(), [&](const Diagnostic& one) { return one.code == code; })) continue;
    const Span head = entry.tree.nodes.size() > 2 ? entry.tree.nodes[2].span() : Span{};
    entry.report.add(code, head, together ? "This folder has two kitchens." : "This book has two kitchens.")
        .also({}, "the other is in this file", other)
        .expect(together ? "one file in the folder that begins with `kitchen:`" : "one file that begins with `kitchen:`");
    entry.report.sort();
  }
}

}  // namespace qtn
