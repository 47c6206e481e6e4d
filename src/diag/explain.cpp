#include <algorithm>

#include "data/tables.hpp"
#include "diag/print.hpp"

namespace qtn {

std::string_view explain(std::string_view code) {
  const auto upper = [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; };
  for (const data::Page& page : data::pages())
    if (std::equal(page.code.begin(), page.code.end(), code.begin(), code.end(),
                   [&](char a, char b) { return upper(a) == upper(b); }))
      return page.text;
  return {};
}

}  // namespace qtn
