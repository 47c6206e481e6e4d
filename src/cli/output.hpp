// What the program prints, and where: answers to standard output, problems to standard error.
#pragma once
#include <string>
#include <vector>

#include "diag/print.hpp"

namespace qtn {

void put(const std::string& text);    // standard output, at once
// To a file, written whole or not at all, or to standard output where `path` is empty; false after a complaint.
bool deliver(const std::string& path, const std::string& text);
bool all_put();  // false, after a complaint, when some of it could not be written there
void complain(const std::string& text);  // standard error, one line "quartern: ..."
// An option's value that is none of those it takes; false.
bool wrong(const std::string& what, const std::string& value, const std::string& known);
// Problems of files as text to standard error, in the width and colours of the terminal. NO_COLOR, TERM=dumb and a
// standard error that is no terminal each turn colour off.
void show_problems(const std::vector<Judged>& files, bool to_output);

}  // namespace qtn
