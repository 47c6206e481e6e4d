// Running the program as a shell would, and folders to do it in.
#pragma once
#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>

#include "files.hpp"

namespace qtn::tests {

struct Run {
  std::string out;  // standard output; both streams where the command joins them
  int code = -1;    // 128: it did not end by itself
};

inline Run run(const std::string& command) {
  Run result;
  FILE* const pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  char buffer[4096];
  while (const std::size_t got = std::fread(buffer, 1, sizeof buffer, pipe)) result.out.append(buffer, got);
  const int status = pclose(pipe);
  result.code = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  return result;
}

// A folder that is gone when the test is over.
struct Folder {
  std::filesystem::path path;
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "quartern-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path = name;
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code error;
    std::filesystem::remove_all(path, error);
  }
  void file(const std::string& name, const std::string& text) const { spill(path / name, text); }
  // A command run inside it.
  Run run(const std::string& command) const { return tests::run("cd '" + path.string() + "' && " + command); }
};

}  // namespace qtn::tests
