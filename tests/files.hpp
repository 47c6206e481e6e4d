// Files of the repository, for tests.
#pragma once
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace qtn::tests {

inline std::string slurp(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

inline void spill(const std::filesystem::path& path, const std::string& text) {
  std::filesystem::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary) << text;
}

inline std::filesystem::path root() { return QTN_SOURCE_DIR; }

// Every file below a folder with this ending, sorted.
inline std::vector<std::filesystem::path> below(const std::string& folder, const std::string& ending) {
  std::vector<std::filesystem::path> out;
  if (!std::filesystem::exists(root() / folder)) return out;
  for (const auto& at : std::filesystem::recursive_directory_iterator(root() / folder))
    if (at.is_regular_file() && at.path().string().ends_with(ending)) out.push_back(at.path());
  std::sort(out.begin(), out.end());
  return out;
}

// `QTN_BLESS=1 ctest` rewrites what golden tests expect; read every change before it is committed.
inline bool blessing() { return std::getenv("QTN_BLESS") != nullptr; }

}  // namespace qtn::tests
