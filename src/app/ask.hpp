// Sums from the command line: one amount in another unit, and the kitchen formulas in plain words.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "measure/unit.hpp"

namespace qtn {

struct Sum {
  std::string answer;              // "280 g", rounded as a cook would
  std::string exact;               // "1125/4 g"
  std::string because;             // which density or weight, from where; empty without one
  std::string rule;                // of a formula: what was reckoned, and its source
  std::vector<std::string> notes;  // what to heed, a sentence each
};
// Nothing, with the reason in `problem`, when the question is not read or has no answer.
std::optional<Sum> ask(const std::string& question, Dialect dialect, std::string& problem);
// As it is printed, a line each.
std::string write_sum(const Sum& sum);

}  // namespace qtn
