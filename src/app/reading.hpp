// How every line of a recipe was understood, as a table: what `read` prints.
#pragma once
#include <string>

#include "recipe/recipe.hpp"

namespace qtn {

// One row a field, line, clause, change: its line number, its text, what it was taken for. Nothing that the grammar
// accepts is left out.
std::string read_table(const Recipe& recipe);
std::string read_table(const Source& source, const Kitchen& kitchen);
// The history of one thing of the log, a trial a line. Empty, with the reason in `report`, where there is none.
std::string read_history(const Recipe& recipe, std::string_view name, Report& report);

}  // namespace qtn
