// GNU units as an outside opinion: a list of questions, one run of the program, its answers beside ours.
#pragma once
#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>
#include <vector>

#include "base/fraction.hpp"

namespace qtn::tests {

struct UnitsQuestion {
  std::string have, want;
  Fraction ours;
};

// One answer a line.
inline std::vector<std::string> units_answers(const std::vector<UnitsQuestion>& asked, std::string_view name) {
  namespace fs = std::filesystem;
  const fs::path base = fs::temp_directory_path() / ("quartern_units_" + std::string(name) + std::to_string(::getpid()));
  const std::string in = base.string() + ".in", out = base.string() + ".out";
  {
    std::ofstream file(in);
    for (const UnitsQuestion& each : asked) file << each.have << '\n' << each.want << '\n';
  }
  const int status = std::system(("units -t -o %.12g <" + in + " >" + out + " 2>&1").c_str());
  CHECK_MESSAGE(status == 0, "`units` did not run to its end");
  std::vector<std::string> lines;
  std::ifstream file(out);
  for (std::string line; std::getline(file, line);) lines.push_back(line);
  fs::remove(in);
  fs::remove(out);
  return lines;
}

// How many answers differ from ours in the first eight digits; the first ten of them are told.
inline std::size_t units_disagrees(const std::vector<UnitsQuestion>& asked) {
  REQUIRE_MESSAGE(std::system("command -v units >/dev/null 2>&1") == 0,
                  "the program `units` is missing: apt-get install units (it is the outside check of the tables)");
  const std::vector<std::string> found = units_answers(asked, "");
  REQUIRE_MESSAGE(found.size() == asked.size(), "the first line it wrote: ", found.empty() ? "" : found.front());
  std::size_t wrong = 0;
  for (std::size_t i = 0; i < found.size(); ++i) {
    const double theirs = std::strtod(found[i].c_str(), nullptr), ours = asked[i].ours.approx();
    if (std::abs(theirs - ours) <= 0.5e-8 * std::max(std::abs(theirs), std::abs(ours))) continue;
    if (++wrong <= 10) MESSAGE(asked[i].have << " in " << asked[i].want << ": " << found[i] << ", ours " << asked[i].ours.decimal(9));
  }
  return wrong;
}

}  // namespace qtn::tests
