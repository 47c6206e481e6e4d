// The page of every code is run: its bad sample gets that code on the line it says, its good sample gets nothing.
#include <doctest/doctest.h>

#include <map>
#include <set>

#include "book/book.hpp"
#include "files.hpp"

using namespace qtn;

namespace {

struct Sample {
  std::string info, text;
  std::string file() const {
    const std::size_t at = info.find("file=");
    return at == std::string::npos ? "sample.qtn" : info.substr(at + 5, info.find(' ', at) - at - 5);
  }
};

std::vector<Sample> samples_of(const std::string& page) {
  std::vector<Sample> out;
  for (std::size_t at = page.find("```qtn"); at != std::string::npos; at = page.find("```qtn", at)) {
    const std::size_t line = page.find('\n', at), end = page.find("\n```", line);
    out.push_back({page.substr(at + 6, line - at - 6), page.substr(line + 1, end - line)});
    at = end + 4;
  }
  return out;
}

// All files of one sample make a book; the first is the one that is looked at.
struct Checkup {
  std::set<std::string> codes;                     // errors and warnings
  std::set<std::pair<std::uint32_t, std::string>> places;
};

Checkup check_samples(const std::vector<Sample>& group) {
  std::map<std::string, std::string> files;
  std::string kitchen;
  for (const Sample& one : group) {
    files[one.file()] = one.text;
    if (one.text.rfind("kitchen:", 0) == 0 && kitchen.empty()) kitchen = one.file();
  }
  Book book([files](const std::string& path) -> std::optional<std::string> {
    const auto found = files.find(path);
    return found == files.end() ? std::nullopt : std::optional<std::string>(found->second);
  }, 20782);
  if (!kitchen.empty()) book.set_kitchen(kitchen);
  for (const Sample& one : group)
    if (book.file(one.file())->kind == FileKind::kitchen && one.file() != kitchen) book.two_kitchens(kitchen, one.file());
  Checkup out;
  for (const Sample& one : group) {
    const Checked* checked = book.file(one.file());
    const Lines lines(checked->source.text());
    for (const Diagnostic& problem : checked->report.list()) {
      const std::string code(row(problem.code).code);
      if (problem.severity != Severity::note) out.codes.insert(code);
      out.places.insert({lines.place(problem.span.begin).line, code});
    }
  }
  return out;
}

std::set<std::string> exempt() {
  std::set<std::string> out;
  const std::string text = tests::slurp(tests::root() / "tests/suite/pages_exempt.txt");
  for (std::size_t at = 0; at < text.size(); at = text.find('\n', at) == std::string::npos ? text.size() : text.find('\n', at) + 1)
    if (text.compare(at, 1, "Q") == 0) out.insert(text.substr(at, 4));
  return out;
}

}  // namespace

TEST_CASE("every code has a page, and every page a code") {
  std::set<std::string> codes, pages;
  for (const Code code : all_codes()) codes.insert(std::string(row(code).code));
  for (const auto& path : tests::below("docs/problems", ".md")) pages.insert(path.stem().string());
  for (const std::string& code : codes) CHECK_MESSAGE(pages.count(code) == 1, code << " has no page");
  for (const std::string& page : pages) CHECK_MESSAGE(codes.count(page) == 1, page << " has no code");
}

TEST_CASE("bad samples get their code, good samples get nothing") {
  const auto free = exempt();
  int bad_count = 0;
  for (const auto& path : tests::below("docs/problems", ".md")) {
    const std::string code = path.stem().string();
    std::vector<Sample> bad, good;
    bool in_good = false;
    for (const Sample& one : samples_of(tests::slurp(path))) {
      if (one.info.find("good") != std::string::npos) in_good = true;
      else if (one.info.find("bad") != std::string::npos) in_good = false;
      (in_good ? good : bad).push_back(one);
    }
    if (free.count(code) != 0) continue;
    REQUIRE_MESSAGE(!bad.empty(), code);
    ++bad_count;
    const Checkup found = check_samples(bad);
    std::string got;
    for (const auto& [line, one] : found.places) got += " " + std::to_string(line) + ":" + one;
    bool placed = false;
    for (const Sample& one : bad) {
      const std::size_t mark = one.text.find("# ^ " + code);
      if (mark == std::string::npos) continue;
      const auto line = Lines(one.text).place(static_cast<std::uint32_t>(mark)).line - 1;
      placed = placed || found.places.count({line, code}) != 0;
    }
    CHECK_MESSAGE(placed, code << " is not on its line; got" << got);
    if (good.empty()) continue;
    const Checkup fine = check_samples(good);
    std::string said;
    for (const std::string& one : fine.codes) said += " " + one;
    CHECK_MESSAGE(fine.codes.empty(), code << ": the good sample gets" << said);
  }
  CHECK(bad_count >= 110);
}

TEST_CASE("samples of the documents") {
  for (const char* name : {"README.md", "docs/commands.md", "docs/language.md"})
    for (const Sample& one : samples_of(tests::slurp(tests::root() / name))) {
      const Checkup found = check_samples({one});
      if (one.info.find("bad") == std::string::npos) CHECK_MESSAGE(found.codes.empty(), name << ": " << one.text);
    }
}
