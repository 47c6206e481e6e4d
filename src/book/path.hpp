// Paths inside a book: from its top, `/` between folders, no `.` and no `..` left in them.
#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace qtn {

// A path as a `use:` line may write it: relative, with `/`, the same on every machine.
bool is_plain_path(std::string_view path);
// What `path` means in the file `from`: "stock.qtn" for "../stock.qtn" in "pies/pie.qtn". Nothing when it leaves the
// book or is no plain path.
std::optional<std::string> resolve_path(std::string_view from, std::string_view path);
// How the file `from` writes the path of another: the other way round.
std::string path_from(std::string_view from, std::string_view target);
// "pies" for "pies/pie.qtn", empty for a file at the book's top.
std::string_view folder_of(std::string_view path);

}  // namespace qtn
