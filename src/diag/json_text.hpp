// JSON as text that is safe to show: one place for both machine formats.
#pragma once
#include <nlohmann/json_fwd.hpp>
#include <string>

namespace qtn {

// Bytes that are not UTF-8 become U+FFFD; characters that a terminal would obey are written as \u escapes.
// `indent` -1 gives one line.
std::string json_text(const nlohmann::ordered_json& value, int indent);

}  // namespace qtn
