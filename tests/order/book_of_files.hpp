// The example book, checked without the room that reads books: each file after those it uses.
#pragma once
#include <map>
#include <memory>

#include "files.hpp"
#include "recipe/recipe.hpp"

namespace qtn::tests {

class BookOfFiles {
 public:
  BookOfFiles() {
    const File& house = parsed("kitchen.qtn");
    Report report;
    kitchen_ = std::make_shared<const Kitchen>(check_kitchen(*house.source, house.tree, report));
    for (const auto& path : below("examples", ".qtn"))
      if (path.filename() != "kitchen.qtn") recipe(std::filesystem::relative(path, root() / "examples").generic_string());
  }
  // Those without errors, menus among them.
  std::vector<const Recipe*> recipes() const {
    std::vector<const Recipe*> out;
    for (const auto& [path, file] : files_)
      if (file.recipe) out.push_back(file.recipe.get());
    return out;
  }

 private:
  struct File {
    std::unique_ptr<Source> source;
    Tree tree;
    std::unique_ptr<Recipe> recipe;
  };
  File& parsed(const std::string& path) {
    File& file = files_[path];
    if (!file.source) file.source = std::make_unique<Source>(path, slurp(root() / "examples" / path)), file.tree = parse(*file.source);
    return file;
  }
  const Recipe* recipe(const std::string& path) {
    File& file = parsed(path);
    if (file.recipe) return file.recipe.get();
    Surroundings around;
    around.kitchen = kitchen_;
    const auto folder = std::filesystem::path(path).parent_path();
    for (const Use& use : uses_of(*file.source, file.tree)) around.uses.push_back(recipe((folder / use.path).lexically_normal().generic_string()));
    Report report;
    auto made = std::make_unique<Recipe>(check(*file.source, file.tree, around, report));
    if (!report.has_errors()) file.recipe = std::move(made);
    return file.recipe.get();
  }
  std::map<std::string, File> files_;
  std::shared_ptr<const Kitchen> kitchen_;
};

}  // namespace qtn::tests
