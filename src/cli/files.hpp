// Files of a book on disk: finding, reading, writing whole or not at all. The only room that touches them.
#pragma once
#include <optional>
#include <string>
#include <vector>

namespace qtn {

struct ReadFile {
  std::optional<std::string> text;
  std::string problem;  // why not, in a cook's words
};
ReadFile read_file(const std::string& path);
// Standard input to its end.
ReadFile read_input();
// Through a file beside it and a rename, so that what stood there before stands until the new one is whole.
// Empty, or why it could not be written.
std::string write_file(const std::string& path, const std::string& text);

// Where the book of a file or folder begins: the nearest folder, its own or above, with a file that begins with
// `kitchen:`, whatever its name; else its own.
struct Place {
  std::string root;                  // a folder
  std::vector<std::string> files;    // inside it, with `/`, sorted
  std::vector<std::string> kitchens; // of the root folder; more than one is a mistake
  std::string problem;
};
Place place_of(const std::string& path);

}  // namespace qtn
