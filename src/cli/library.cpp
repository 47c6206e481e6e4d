#include "cli/library.hpp"

#include <algorithm>
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
    if (!place.kitchens.empty()) book->set_kitchen(place.kitchens.front());
    told_kitchens(*book, place, path);
  }
  if (input) {
    if (ReadFile text = read_input(); text.text) {
      files_.push_back({"-", &book->text("standard input", std::move(*text.text)), true});
    } else {
      complain("standard input: " + text.problem);
      served_ = false;
    }
    return;
  }
  if (place.files.empty()) {
    complain(path + ": there is no .qtn file in this folder");
    served_ = false;
  }
  const bool single = place.files.size() == 1 && path.size() > 4 && path.substr(path.size() - 4) == ".qtn";
  std::string kitchen = place.kitchens.empty() ? "" : place.kitchens.front();
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
    files_.push_back({single ? path : inside, checked, true, !single});
  }
  if (!single) book->compare_ounces(place.files);
}

std::vector<const Recipe*> Library::book_of(const Named& file) {
  std::vector<const Recipe*> out;
  for (auto& [root, book] : books_) {
    if (book->kitchen() != file.checked->kitchen.get()) continue;
    for (const std::string& inside : place_of(root).files)
      if (const Checked* const one = book->file(inside); one != nullptr && one->recipe && !one->report.has_errors()) out.push_back(one->recipe.get());
  }
  return out;
}

// Two kitchens in the folder, or one that cannot be read whole, bear on every recipe of it: they are told even where the
// call names neither.
void Library::told_kitchens(Book& book, const Place& place, const std::string& path) {
  for (std::size_t i = 1; i < place.kitchens.size(); ++i) {
    if (book.file(place.kitchens[i]) != nullptr) book.two_kitchens(place.kitchens.front(), place.kitchens[i]);
  }
  const Checked* const first = place.kitchens.empty() ? nullptr : book.file(place.kitchens.front());
  if (place.kitchens.size() < 2 && (first == nullptr || !first->report.has_errors())) return;
  for (const std::string& kitchen : place.kitchens) {
    const bool named = path != "-" && std::find(place.files.begin(), place.files.end(), kitchen) != place.files.end();
    if (!named) files_.push_back({kitchen, book.file(kitchen), false});
  }
}

}  // namespace qtn
