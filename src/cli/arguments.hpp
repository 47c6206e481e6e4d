// Amounts on the command line, read by the language's own rules: "1 1/2", "12 pasties", "2.5 kg".
#pragma once
#include <optional>
#include <string>

#include "adapt/adapt.hpp"

namespace qtn {

struct Amount {
  Quantity quantity;
  std::string thing;  // "pasties"; empty for a bare number, weight or volume
};
// Nothing when the text is no amount.
std::optional<Amount> read_amount_argument(const std::string& text, Dialect dialect);
// "26 cm round, 3 cm deep"; nothing when the text is no size of a tin. `problem` says why a size holds nothing.
std::optional<Tin> read_tin_argument(const std::string& text, std::string& problem);

// hand or machine; false after a complaint. Nothing where nothing was asked.
bool read_way(const std::string& text, std::optional<StepWay>& out);

// What `--times`, `--serves` or `--makes` asks for; false after a complaint.
bool read_size(const std::string& times, const std::string& serves, const std::string& makes, Request& request);

}  // namespace qtn
