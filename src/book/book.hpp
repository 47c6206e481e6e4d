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

// One file of the book. Recipes hold views into their source, so an entry never moves.
struct Checked {
  explicit Checked(Source text) : source(std::move(text)) {}
  Source source;
  Tree tree;
  Report report;
  std::unique_ptr<Recipe> recipe;          // null for a kitchen
  std::shared_ptr<const Kitchen> kitchen;  // the house it was checked with, or the kitchen that it is
  FileKind kind = FileKind::unknown;
};

class Book {
 public:
  // Gives the text at a path inside the book ("pastry/shortcrust.qtn"), or nothing when there is none.
  using Reader = std::function<std::optional<std::string>(const std::string& path)>;
  explicit Book(Reader reader, int today = 0) : reader_(std::move(reader)), today_(today) {}

  // The book's one kitchen file; the entry says what is wrong with it. Call it before file().
  const Checked* set_kitchen(const std::string& path);
  // A file, checked with all that it uses; null when there is none at that path.
  const Checked* file(const std::string& path);
  // A text that is no file of the book (standard input), by a name for messages; its uses are sought in the book.
  const Checked& text(const std::string& name, std::string text);
  // A second kitchen in the same book: said at both.
  void two_kitchens(const std::string& first, const std::string& second);

  // "pastry/../stock.qtn" from "pies/pie.qtn" becomes "stock.qtn"... from the book's top; nothing when it leaves it.
  static std::optional<std::string> resolve(const std::string& from, std::string_view path);

 private:
  Checked& enter(const std::string& path, std::string text);
  void check_entry(const std::string& path, Checked& entry);
  const Recipe* used(const std::string& path, Checked& entry, const Use& use);
  void ring(const std::string& path, Checked& entry, const Use& use);

  Reader reader_;
  int today_;
  std::map<std::string, std::unique_ptr<Checked>> files_;
  std::vector<std::string> open_;  // being checked, outermost first
  std::shared_ptr<const Kitchen> kitchen_;
  std::string kitchen_path_;
};

}  // namespace qtn
