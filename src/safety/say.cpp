#include "safety/say.hpp"

#include <algorithm>
#include <cmath>

namespace qtn {

bool plural(std::string_view name) { return plural_of(name) == name && singular_of(name) != name; }

std::string the_names(const std::vector<const RawItem*>& items) {
  std::vector<std::string_view> names;
  for (const RawItem* item : items)
    if (std::find(names.begin(), names.end(), item->said) == names.end()) names.push_back(item->said);
  std::string out;
  for (std::size_t i = 0; i < names.size(); ++i) {
    out += i == 0 ? "the " : i + 1 == names.size() ? " and the " : ", the ";
    out += names[i];
  }
  return out;
}

std::string say_seconds(double seconds) {
  const auto whole = static_cast<long>(std::ceil(seconds - 1e-9));
  const long minutes = whole / 60, rest = whole % 60;
  std::string out = minutes > 0 ? std::to_string(minutes) + " min" : std::string();
  if (rest > 0 || minutes == 0) out += (out.empty() ? "" : " ") + std::to_string(rest) + " s";
  return out;
}

std::string source_of(Law law, std::string_view source) {
  return law == Law::EU ? "no figure of the Union is held here; the UK's: " + std::string(source) : std::string(name_of(law)) + ": " + std::string(source);
}

}  // namespace qtn
