// A book on disk with the files that a call named.
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "book/book.hpp"
#include "cli/files.hpp"

namespace qtn {

struct Named {
  std::string path;         // as the call gave it, or found in a folder
  const Checked* checked;
  bool asked = true;        // by the call; a kitchen that bears on what was asked may be told of without it
  bool in_folder = false;   // of a folder that the call named
};

// Opens the files and folders of a call, each with its book. Files that cannot be had are told to standard error and
// make `served` false.
class Library {
 public:
  explicit Library(const std::vector<std::string>& paths);
  const std::vector<Named>& files() const { return files_; }
  bool served() const { return served_; }
  // Every recipe of the book that a file stands in, itself among them, as far as they have no errors.
  std::vector<const Recipe*> book_of(const Named& file);

 private:
  void open(const std::string& path);
  void told_kitchens(Book& book, const Place& place, const std::string& path);
  std::vector<std::pair<std::string, std::unique_ptr<Book>>> books_;  // by root
  std::vector<std::unique_ptr<std::string>> roots_;
  std::vector<Named> files_;
  bool served_ = true;
};

}  // namespace qtn
