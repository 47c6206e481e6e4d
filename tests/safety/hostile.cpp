// Recipes that could hurt somebody and sound ones beside them, from hostile.txt.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <memory>
#include <set>
#include <sstream>

#include "safety/safety.hpp"
#include "syntax/tree.hpp"

using namespace qtn;

namespace {

struct Case {
  std::string name, law = "UK", text, used;
  std::set<std::string> must;
  std::vector<std::string> says, silent;
};

std::string after(const std::string& line) { return line.substr(line.find(':') + 2); }

std::vector<Case> cases() {
  std::vector<Case> out;
  std::ifstream in(std::string(QTN_SOURCE_DIR) + "/tests/safety/hostile.txt");
  bool used = false;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("#")) continue;
    if (line.starts_with("== ")) out.push_back({line.substr(3), "UK", {}, {}, {}, {}, {}}), used = false;
    else if (out.empty()) continue;
    else if (line == "-- used") used = true;
    else if (line.starts_with("law: ")) out.back().law = after(line);
    else if (line.starts_with("must: ")) {
      std::istringstream codes(after(line));
      for (std::string code; codes >> code;) out.back().must.insert(code);
    } else if (line.starts_with("says: ")) out.back().says.push_back(after(line));
    else if (line.starts_with("silent: ")) out.back().silent.push_back(after(line));
    else (used ? out.back().used : out.back().text) += line + "\n";
  }
  return out;
}

struct Checked {
  Source source;
  Tree tree;
  Report report;
  Recipe recipe;
  Checked(const std::string& name, const std::string& text, const Surroundings& around)
      : source(name, text), tree(parse(source)), recipe(check(source, tree, around, report)) {
    if (!report.has_errors()) check_safety(recipe, report);
  }
};

}  // namespace

TEST_CASE("what could hurt somebody is said, and what could not is not") {
  const std::vector<Case> all = cases();
  CHECK(all.size() >= 40);
  for (const Case& one : all) {
    CAPTURE(one.name);
    Kitchen kitchen;
    kitchen.law = one.law;
    Surroundings around;
    around.kitchen = std::make_shared<Kitchen>(kitchen);
    std::unique_ptr<Checked> used;
    if (!one.used.empty()) {
      used = std::make_unique<Checked>("used.qtn", one.used, around);
      around.uses.push_back(&used->recipe);
    }
    const Checked checked("case.qtn", one.text, around);
    std::set<std::string> said;
    for (const Diagnostic& problem : checked.report.list()) {
      const std::string code(row(problem.code).code);
      if (code >= "Q951" && code <= "Q975") said.insert(code);
      else CHECK_MESSAGE(problem.severity != Severity::error, problem.message);
    }
    CHECK_MESSAGE(said == one.must, [&] {
      std::string text;
      for (const Diagnostic& problem : checked.report.list()) text += std::string(row(problem.code).code) + " " + problem.message + "\n";
      return text;
    }());
    std::string cautions;
    for (const Caution& caution : cautions_of(checked.recipe).list) cautions += caution.text + "\n";
    for (const std::string& words : one.says) CHECK_MESSAGE(cautions.find(words) != std::string::npos, cautions);
    for (const std::string& words : one.silent) CHECK_MESSAGE(cautions.find(words) == std::string::npos, cautions);
  }
}

TEST_CASE("a fix that is offered silences its warning") {
  int accepted = 0;
  for (const Case& one : cases()) {
    if (one.must.empty() || !one.used.empty()) continue;
    CAPTURE(one.name);
    Kitchen kitchen;
    kitchen.law = one.law;
    Surroundings around;
    around.kitchen = std::make_shared<Kitchen>(kitchen);
    const Checked before("case.qtn", one.text, around);
    const auto count = [](const Report& report, Code code) {
      return std::count_if(report.list().begin(), report.list().end(), [&](const Diagnostic& problem) { return problem.code == code; });
    };
    for (const Diagnostic& problem : before.report.list())
      for (const Fix& fix : problem.fixes) {
        std::string text = one.text;
        text.replace(fix.span.begin, fix.span.size(), fix.text);
        CAPTURE(text);
        const Checked mended("case.qtn", text, around);
        CHECK(count(mended.report, problem.code) < count(before.report, problem.code));
        CHECK_FALSE(mended.report.has_errors());
        ++accepted;
      }
  }
  CHECK(accepted >= 18);
}
