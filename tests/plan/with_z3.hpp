// z3 as an outside opinion: a text of SMT-LIB in, its answers out.
#pragma once
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

namespace qtn::tests {

inline bool z3_there() { return std::system("command -v z3 >/dev/null 2>&1") == 0; }

inline std::string z3_of(const std::string& text) {
  const auto file = std::filesystem::temp_directory_path() / ("quartern_network_" + std::to_string(::getpid()) + ".smt2");
  std::ofstream(file) << text;
  std::string out;
  if (FILE* pipe = ::popen(("z3 -T:120 " + file.string() + " 2>&1").c_str(), "r")) {
    char part[4096];
    for (std::size_t got; (got = std::fread(part, 1, sizeof part, pipe)) > 0;) out.append(part, got);
    ::pclose(pipe);
  }
  std::filesystem::remove(file);
  return out;
}

}  // namespace qtn::tests
