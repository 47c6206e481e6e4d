// The table of ratios in two outputs. Layout and escaping only.
#pragma once
#include <string>

#include "card/ledger.hpp"

namespace qtn {

// Appends to `out`.
void render_ledger_text(const Ledger& ledger, std::string& out);  // aligned columns
void render_ledger_json(const Ledger& ledger, std::string& out);  // the figures as printed beside exact fractions

}  // namespace qtn
