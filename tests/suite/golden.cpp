// Whole runs of the program. A folder of tests/golden holds ARGS (the command line, {} for the file), inputs `*.qtn`, and
// beside each `NAME.out`: what it prints, both streams, and the exit code. Commands that read no file have one call a line
// in ARGS and one `all.out`. Inputs whose name begins with bad_ must exit
// with 1 and carry, under each offending line, a comment `# ^ CODE`, so that blessing cannot hide a lost error.
#include <doctest/doctest.h>

#include <set>
#include <sstream>

#include "base/source.hpp"
#include "files.hpp"
#include "suite/run.hpp"

using namespace qtn;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);)
    if (!line.empty()) out.push_back(line);
  return out;
}

void annotated_codes(const std::filesystem::path& input, const std::string& out) {
  const std::string text = tests::slurp(input);
  int found = 0;
  for (std::size_t at = text.find("# ^ Q"); at != std::string::npos; at = text.find("# ^ Q", at + 1)) {
    ++found;
    const std::string code = text.substr(at + 4, 4);
    const auto line = Lines(text).place(static_cast<std::uint32_t>(at)).line - 1;
    const std::string place = "line " + std::to_string(line) + ",";
    bool told = false;
    for (std::size_t hit = out.find(place); hit != std::string::npos && !told; hit = out.find(place, hit + 1))
      told = out.substr(hit, out.find('\n', hit) - hit).find(code) != std::string::npos;
    CHECK_MESSAGE(told, input.filename().string() << ": " << code << " on line " << line);
  }
  CHECK_MESSAGE(found > 0, input.filename().string() << " says no code");
}

// Both streams and the exit code of one call in a folder.
std::string told(const std::filesystem::path& folder, const std::string& line) {
  const tests::Run got = tests::run("cd '" + folder.string() + "' && COLUMNS=80 NO_COLOR=1 " QTN_PROGRAM " " + line + " 2>&1");
  return got.out + "exit " + std::to_string(got.code) + "\n";
}

void compare(const std::filesystem::path& expected, const std::string& all) {
  INFO(expected.string());
  if (tests::blessing()) tests::spill(expected, all);
  else CHECK(all == tests::slurp(expected));
}

void one_input(const std::filesystem::path& folder, std::string line, const std::filesystem::path& input) {
  const bool bad = input.filename().string().rfind("bad_", 0) == 0;
  const bool annotated = bad && line.rfind("check", 0) == 0 && line.find("--as") == std::string::npos;
  line.replace(line.find("{}"), 2, input.filename().string());
  const std::string all = told(folder, line);
  INFO(input.string());
  CHECK(all.ends_with(bad ? "exit 1\n" : "exit 0\n"));
  if (annotated) annotated_codes(input, all);
  auto expected = input;
  compare(expected.replace_extension(".out"), all);
}

}  // namespace

TEST_CASE("golden runs of the program") {
  std::set<std::string> run_commands;
  int count = 0;
  for (const auto& args : tests::below("tests/golden", "ARGS")) {
    const auto folder = args.parent_path();
    const auto calls = lines_of(tests::slurp(args));
    REQUIRE_MESSAGE(!calls.empty(), args.string());
    run_commands.insert(calls[0].substr(0, calls[0].find(' ')));
    if (calls[0].find("{}") == std::string::npos) {
      ++count;
      std::string all;
      for (const std::string& line : calls) all += "$ quartern " + line + "\n" + told(folder, line);
      compare(folder / "all.out", all);
      continue;
    }
    CHECK_MESSAGE(calls.size() == 1, args.string());
    auto inputs = tests::below(std::filesystem::relative(folder, tests::root()).string(), ".qtn");
    std::erase_if(inputs, [&](const auto& input) { return input.parent_path() != folder; });  // deeper ones are used by these
    CHECK_MESSAGE(!inputs.empty(), args.string());
    for (const auto& input : inputs) ++count, one_input(folder, calls[0], input);
  }
  CHECK(count >= 18);
  CHECK(run_commands == std::set<std::string>{"ask", "card", "check", "cost", "day", "explain", "order", "ratios", "read"});
}
