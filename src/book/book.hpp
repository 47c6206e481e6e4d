// Many files: a kitchen, recipes, and recipes that use recipes. Each file is read, parsed and checked once; nothing here
// touches a disk, the reader it is given does.
#pragma once
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "recipe/recipe.hpp"

namespace qtn {

// One file of the book. Recipes hold views into their source, so an entry never moves, and what is taken from it lives as
// long as the book.
struct Checked {
  explicit Checked(Source text) : source(std::move(text)) {}
  Source source;
  Tree tree;
  Report report;
  std::unique_ptr<Recipe> recipe;          // null for a kitchen
  std::shared_ptr<const Kitchen> kitchen;  // the house it was checked with, or the kitchen that it is
  FileKind kind = FileKind::unknown;

  // Rings of files (rings.cpp). `order`: when it was opened, from 1. `settled`: it is in no ring with a file that is
  // still open. `onward`: files on the way from here round to `meets`, the first few of them.
  int order = 0;
  bool settled = false;
  std::vector<std::string> onward;
  const Checked* meets = nullptr;
  std::size_t place = 0;  // in the stack of open files
};

// What a recipe is held against once its own page was checked: whether its times can be kept, then what could hurt somebody;
// and each of its versions as a recipe of its own, by a variant's name or another `or` line (beyond.cpp).
void check_beyond_page(const Recipe& recipe, Report& report);

class Book {
 public:
  // Gives the text at a path inside the book ("pastry/shortcrust.qtn"), or nothing when there is none.
  using Reader = std::function<std::optional<std::string>(const std::string& path)>;
  explicit Book(Reader reader, int today = 0) : reader_(std::move(reader)), today_(today) {}

  // The book's one kitchen file; the entry says what is wrong with it. Call it before file().
  const Checked* set_kitchen(const std::string& path);
  const Kitchen* kitchen() const { return kitchen_.get(); }
  // A file, checked with all that it uses; null when there is none at that path.
  const Checked* file(const std::string& path);
  // A text that is no file of the book (standard input), by a name for messages; its uses are sought in the book.
  const Checked& text(const std::string& name, std::string text);
  // A second kitchen in the same book: said at both.
  void two_kitchens(const std::string& first, const std::string& second);
  // Files that count different grams to the ounce, each the same throughout: said once, at the first that departs from
  // most of them.
  void compare_ounces(const std::vector<std::string>& paths);

 private:
  // A file that waits for those it uses. A stack of them instead of recursion: a chain may be as long as it likes.
  struct Open {
    std::string path;
    Checked* entry;
    std::vector<Use> uses;
    Surroundings around;  // filled one use at a time
  };

  Checked* enter(const std::string& path);
  void check_kitchen_file(Checked& entry);
  void run(const std::string& path, Checked& entry);
  void open(const std::string& path, Checked& entry);
  void next_use();
  void finish();
  bool is_open(const Checked& entry) const { return !entry.recipe && entry.kind != FileKind::kitchen; }

  // uses.cpp: what is wrong with a `use:` line
  void bad_path(Checked& entry, const Use& use);
  void missing(const std::string& path, Checked& entry, const Use& use, const std::string& target);

  // rings.cpp: files that each need the other first, told in every one of them
  void enter_ring_search(Checked& entry);
  void leave_ring_search(Checked& entry);
  void ring(const Open& from, const Use& use, const std::string& target, const Checked& other);
  std::string chain(const Open& from, const std::string& target, const Checked& other) const;

  const Recipe* take(Checked& entry, const Use& use, const std::string& target, const Checked& other);

  Reader reader_;
  int today_;
  std::map<std::string, std::unique_ptr<Checked>> files_;
  std::vector<std::unique_ptr<Checked>> texts_;
  std::vector<Open> open_;  // outermost first
  std::vector<Checked*> unsettled_;  // in the order of their opening
  std::vector<int> ring_starts_;     // `order` of the open files that no ring joins to an earlier one
  int opened_ = 0;
  std::shared_ptr<const Kitchen> kitchen_;
};

}  // namespace qtn
