// The shape of the repository: who includes whom, how long files are, what stands at the top.
#include <doctest/doctest.h>

#include <map>
#include <set>

#include "diag/diagnostic.hpp"
#include "files.hpp"

using namespace qtn;

namespace {

// The table of DEVELOPERS.md: a room and the rooms before it that it may include, directly or through another.
const std::map<std::string, std::set<std::string>> kMay = {
    {"base", {}},
    {"diag", {"base"}},
    {"measure", {"base"}},
    {"words", {"base", "measure"}},
    {"syntax", {"base", "diag", "measure", "words", "grammar"}},
    {"larder", {"base", "measure", "words"}},
    {"formula", {"base", "measure"}},
    {"recipe", {"base", "diag", "measure", "words", "syntax", "larder", "formula"}},
    {"adapt", {"base", "diag", "measure", "words", "larder", "recipe"}},
    {"safety", {"base", "diag", "measure", "words", "larder", "recipe"}},
    {"plan", {"base"}},
    {"day", {"base", "diag", "measure", "words", "larder", "recipe", "safety", "adapt", "plan"}},
    {"order", {"base", "diag", "measure", "words", "larder", "formula", "recipe", "day"}},
    {"card", {"base", "diag", "measure", "words", "larder", "formula", "recipe", "safety", "adapt", "day", "order"}},
    {"render", {"base", "measure", "card"}},
    {"book", {"base", "diag", "words", "syntax", "recipe", "safety", "day"}},
    {"app", {"base", "diag", "measure", "words", "syntax", "larder", "formula", "recipe", "safety", "adapt", "plan", "day", "order", "card", "render", "book"}},
    {"cli", {"base", "diag", "measure", "words", "syntax", "larder", "recipe", "safety", "adapt", "plan", "day", "order", "card", "render", "book", "app"}},
};

std::vector<std::filesystem::path> sources(const std::string& folder) {
  auto out = tests::below(folder, ".cpp");
  for (const auto& header : tests::below(folder, ".hpp")) out.push_back(header);
  return out;
}

}  // namespace

TEST_CASE("every folder of src is a room of the table, and has sources") {
  std::set<std::string> rooms, folders;
  for (const auto& [room, may] : kMay) rooms.insert(room);
  for (const auto& at : std::filesystem::directory_iterator(tests::root() / "src")) folders.insert(at.path().filename().string());
  CHECK(folders.erase("data") == 1);  // tables, no code
  CHECK(rooms == folders);
  for (const std::string& room : rooms) CHECK_MESSAGE(!sources("src/" + room).empty(), room);
}

TEST_CASE("a room includes only rooms before it") {
  for (const auto& [room, may] : kMay) {
    for (const auto& file : sources("src/" + room)) {
      const std::string text = tests::slurp(file);
      for (std::size_t at = text.find("#include \""); at != std::string::npos; at = text.find("#include \"", at + 1)) {
        const std::string path = text.substr(at + 10, text.find('"', at + 10) - at - 10);
        const std::string other = path.substr(0, path.find('/'));
        const bool fine = other == room || other == "data" || may.count(other) != 0;
        CHECK_MESSAGE(fine, file.string() << " includes " << path);
      }
    }
  }
}

TEST_CASE("PEGTL and cmark are each included by one file") {
  std::set<std::string> pegtl, cmark;
  for (const auto& file : sources("src")) {
    const std::string text = tests::slurp(file);
    const std::size_t rules = text.find("#include \"grammar/");  // kinds.def and fields.def are words, not rules
    const bool grammar = rules != std::string::npos && text.substr(rules, text.find('\n', rules) - rules).find(".hpp") != std::string::npos;
    if (text.find("#include <tao/") != std::string::npos || grammar) pegtl.insert(file.filename().string());
    if (text.find("#include <cmark") != std::string::npos) cmark.insert(file.filename().string());
  }
  CHECK(pegtl == std::set<std::string>{"read.cpp"});
  CHECK(cmark == std::set<std::string>{"prose.cpp"});
}

TEST_CASE("no file is over 600 lines") {
  for (const char* folder : {"src", "grammar", "tests"}) {
    CHECK(sources(folder).size() >= 5);
    for (const auto& file : sources(folder)) {
      const std::string text = tests::slurp(file);
      CHECK_MESSAGE(std::count(text.begin(), text.end(), '\n') <= 600, file.string());
    }
  }
}

TEST_CASE("every problem of the catalogue is reported somewhere, and no code stands twice") {
  std::string all;
  for (const auto& file : sources("src")) all += tests::slurp(file);
  std::set<std::string_view> codes;
  for (const Code code : all_codes()) {
    const CatalogueRow& one = row(code);
    CHECK_MESSAGE(codes.insert(one.code).second, one.code);
    CHECK_MESSAGE(all.find("Code::" + std::string(one.name)) != std::string::npos, one.code << " " << one.name);
    CHECK_MESSAGE(!one.why.empty(), one.code);
  }
}
