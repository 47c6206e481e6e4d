#include "cli/library.hpp"

#include <ctime>

#include "cli/files.hpp"
#include "cli/output.hpp"

namespace qtn {
namespace {

int today() { return static_cast<int>(std::time(nullptr) / 86400); }

}  // namespace

Library::Library(const std::vector<std::string>& paths) {
  for (const std::string& path : paths) open(path);
}

void Library::open(const std::string& path) {
  const bool input = path == "-";
  const Place place = place_of(input ? "." : path);
  Book* book = nullptr;
  for (auto& [root, one] : books_)
    if (root == place.root) book = one.get();
  if (book == nullptr) {
    roots_.push_back(std::make_unique<std::string>(place.root));
    const std::string* const root = roots_.back().get();
    books_.emplace_back(place.root, std::make_unique<Book>([root](const std::string& inside) { return read_file(*root + "/" + inside).text; }, today()));
    book = books_.back().second.get();
    if (place.kitchen) book->set_kitchen(*place.kitchen);
  }
  if (input) {
    files_.push_back({"-", &book->text("standard input", read_input())});
    return;
  }
  if (place.files.empty()) {
    complain(path + ": there is no .qtn file in this folder");
    served_ = false;
  }
  const bool single = place.files.size() == 1 && path.size() > 4 && path.substr(path.size() - 4) == ".qtn";
  std::string kitchen = place.kitchen.value_or("");
  for (const std::string& inside : place.files) {
    const Checked* const checked = book->file(inside);
    if (checked == nullptr) {
      complain(path + ": " + read_file(place.root + "/" + inside).problem);
      served_ = false;
      continue;
    }
    if (checked->kind == FileKind::kitchen && inside != kitchen) {
      if (kitchen.empty()) kitchen = inside;
      else book->two_kitchens(kitchen, inside);
    }
    files_.push_back({single ? path : inside, checked});
  }
}

}  // namespace qtn
