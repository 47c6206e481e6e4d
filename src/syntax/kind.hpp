// The kinds of nodes, from grammar/kinds.def.
#pragma once
#include <cstdint>
#include <string_view>

namespace qtn {

enum class Kind : std::uint16_t {
#define QTN_KIND(name, meaning) name,
#include "grammar/kinds.def"
#undef QTN_KIND
};
std::string_view name_of(Kind kind);

}  // namespace qtn
