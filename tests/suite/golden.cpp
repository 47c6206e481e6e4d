// Whole runs of the program. A folder of tests/golden holds ARGS (the command line, {} for the file), inputs `*.qtn`, and
// beside each `NAME.out`: what it prints, both streams, and the exit code. Inputs whose name begins with bad_ must exit
// with 1 and carry, under each offending line, a comment `# ^ CODE`, so that blessing cannot hide a lost error.
#include <doctest/doctest.h>

#include <cstdio>

#include "base/source.hpp"
#include "files.hpp"

using namespace qtn;

namespace {

struct Run {
  std::string out;
  int code = -1;
};

Run run(const std::string& command) {
  Run result;
  FILE* const pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  char buffer[4096];
  while (const std::size_t got = std::fread(buffer, 1, sizeof buffer, pipe)) result.out.append(buffer, got);
  const int status = pclose(pipe);
  result.code = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  return result;
}

std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

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

}  // namespace

TEST_CASE("golden runs of the program") {
  int count = 0;
  for (const auto& args : tests::below("tests/golden", "ARGS")) {
    const std::string line = first_line(tests::slurp(args));
    const auto folder = args.parent_path();
    for (const auto& input : tests::below(std::filesystem::relative(folder, tests::root()).string(), ".qtn")) {
      ++count;
      std::string command = "cd '" + folder.string() + "' && COLUMNS=80 NO_COLOR=1 " QTN_PROGRAM " " + line + " 2>&1";
      command.replace(command.find("{}"), 2, input.filename().string());
      const Run got = run(command);
      const std::string all = got.out + "exit " + std::to_string(got.code) + "\n";
      auto expected = input;
      expected.replace_extension(".out");
      const bool bad = input.filename().string().rfind("bad_", 0) == 0;
      INFO(input.string());
      CHECK((got.code == 1) == bad);
      if (bad && line.rfind("check", 0) == 0 && line.find("--as") == std::string::npos) annotated_codes(input, got.out);
      if (tests::blessing()) tests::spill(expected, all);
      else CHECK(all == tests::slurp(expected));
    }
  }
  CHECK(count >= 10);
}
