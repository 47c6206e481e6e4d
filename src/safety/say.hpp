// Words that the checks and the cautions share. Private to this room.
#pragma once
#include <string>
#include <vector>

#include "safety/pots.hpp"

namespace qtn {

bool plural(std::string_view name);  // "thighs"
// "the chicken thighs", "the beef and the sausages"; names said once each.
std::string the_names(const std::vector<const RawItem*>& items);
std::string say_seconds(double seconds);  // "43 min 6 s", rounded up to the second
// The source of a figure; for the Union, whose figure is shown in its place.
std::string source_of(Law law, std::string_view source);

}  // namespace qtn
