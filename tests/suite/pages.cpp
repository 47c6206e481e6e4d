// Every sample of every document is run: a bad one gets its code on the marked line of the marked file and nothing else,
// a good one gets no word. The page of every code shows the code (tests/samples.hpp says how samples are written).
#include <doctest/doctest.h>

#include <map>
#include <set>

#include "app/pipeline.hpp"
#include "book/book.hpp"
#include "cli/arguments.hpp"
#include "recipe/dates.hpp"
#include "samples.hpp"

using namespace qtn;
using tests::Sample;

namespace {

struct Said {
  std::string file;
  std::uint32_t line;  // 0: of no place
  std::string code;
  auto operator<=>(const Said&) const = default;
};

std::string written(const std::set<Said>& all) {
  std::string out;
  for (const Said& one : all) out += " " + one.file + ":" + std::to_string(one.line) + ":" + one.code;
  return out.empty() ? " nothing" : out;
}

void note(std::set<Said>& out, const std::string& file, const Source& source, const Report& report) {
  const Lines lines(source.text());
  for (const Diagnostic& problem : report.list())
    out.insert({file, problem.span.end == 0 ? 0 : lines.place(problem.span.begin).line, std::string(row(problem.code).code)});
}

Order order_of(const std::string& options) {
  Order order;
  std::string problem;
  Report unread;
  for (std::size_t at = options.find("--"); at != std::string::npos;) {
    const std::size_t next = options.find(" --", at), blank = options.find(' ', at);
    const std::string name = options.substr(at, blank - at), value = options.substr(blank + 1, next - blank - 1);
    const auto amount = read_amount_argument(value, Dialect::british);
    if (name == "--times") order.request.times = amount.value().quantity.low;
    else if (name == "--serves") order.request.serves = amount.value().quantity;
    else if (name == "--tin") order.request.tin_text = value, order.request.tin = read_tin_argument(value, problem);
    else if (name == "--variant") order.variant = value;
    else if (name == "--readings") order.readings = true;
    else if (name == "--as-of") order.as_of = read_date(value, {}, unread);
    else if (name == "--units" && value == "metric") order.request.units = System::metric;
    else FAIL("a sample's option is not known: " << name << " " << value);
    at = next == std::string::npos ? next : next + 1;
  }
  return order;
}

// What is said of the card, beside what is said of the file.
void note_card(std::set<Said>& out, const std::string& file, const Checked& checked, const std::string& options) {
  REQUIRE(checked.recipe);
  const Order order = order_of(options);
  Report report;
  std::string card;
  const bool printed = print_card(*checked.recipe, order, card, report);
  note(out, file, checked.source, report);
  if (!printed || !order.variant.empty()) return;
  const Recipe sized = scale(*checked.recipe, factor_of(*checked.recipe, order.request, report));
  note(out, file, checked.source, show(sized, order.request).lacks);
}

std::set<Said> check_samples(const std::vector<Sample>& group) {
  std::map<std::string, std::string> files;
  std::string kitchen;
  for (const Sample& one : group) {
    CHECK_MESSAGE(files.emplace(one.file(), one.text).second, one.info);
    if (one.text.rfind("kitchen:", 0) == 0 && kitchen.empty()) kitchen = one.file();
  }
  Book book([files](const std::string& path) -> std::optional<std::string> {
    const auto found = files.find(path);
    return found == files.end() ? std::nullopt : std::optional<std::string>(found->second);
  }, 20782);
  if (!kitchen.empty()) book.set_kitchen(kitchen);
  for (const Sample& one : group)
    if (book.file(one.file())->kind == FileKind::kitchen && one.file() != kitchen) book.two_kitchens(kitchen, one.file());
  std::set<Said> out;
  for (const Sample& one : group) {
    const Checked* checked = book.file(one.file());
    note(out, one.file(), checked->source, checked->report);
    if (!one.card().empty()) note_card(out, one.file(), *checked, one.card());
  }
  return out;
}

// What the marks of a book promise: `# ^ CODE`, under the line it is said of.
std::set<Said> marks_of(const std::vector<Sample>& group) {
  std::set<Said> out;
  for (const Sample& one : group) {
    const Lines lines(one.text);
    for (std::size_t at = one.text.find("# ^ "); at != std::string::npos; at = one.text.find("# ^ ", at + 1))
      out.insert({one.file(), lines.place(static_cast<std::uint32_t>(at)).line - 1, one.text.substr(at + 4, 4)});
  }
  return out;
}

void check_bad(const std::string& page, const std::vector<Sample>& group) {
  const std::string code = group.front().code();
  CHECK_MESSAGE(find_row(code) != nullptr, page << ": a bad sample without its code");
  const auto found = check_samples(group), marks = marks_of(group);
  const bool of_a_card = !group.front().card().empty();
  CHECK_MESSAGE((of_a_card || !marks.empty()), page << ": the bad sample marks no line");
  for (const Said& mark : marks) CHECK_MESSAGE(found.count(mark) == 1, page << ": marked" << written({mark}) << ", got" << written(found));
  bool told = false;
  for (const Said& one : found) {
    const bool promised = marks.count(one) == 1 || (of_a_card && one.line == 0 && group.front().says(one.code));
    CHECK_MESSAGE(promised, page << ": not marked" << written({one}));
    told = told || one.code == code;
  }
  CHECK_MESSAGE(told, page << ": wants " << code << ", got" << written(found));
}

std::set<std::string> exempt() {
  std::set<std::string> out;
  std::istringstream in(tests::slurp(tests::root() / "tests/suite/pages_exempt.txt"));
  for (std::string line; std::getline(in, line);)
    if (line.rfind("Q", 0) == 0) out.insert(line.substr(0, 4));
  return out;
}

}  // namespace

TEST_CASE("every code has a page, every page a code and, unless it is exempt, a bad and a good sample") {
  std::set<std::string> codes, pages;
  for (const Code code : all_codes()) codes.insert(std::string(row(code).code));
  for (const auto& path : tests::below("docs/problems", ".md")) {
    const std::string code = path.stem().string();
    pages.insert(code);
    bool bad = false, good = false;
    for (const Sample& one : tests::samples_of(tests::slurp(path))) {
      bad = bad || one.code() == code;
      good = good || one.says("good");
    }
    CHECK_MESSAGE((bad && good) != (exempt().count(code) == 1), code << ": bad " << bad << ", good " << good);
  }
  CHECK(codes == pages);
}

TEST_CASE("samples of the documents: bad ones get their code where they say, good ones get no word") {
  int bad = 0, good = 0;
  for (const auto& path : tests::documents()) {
    const std::string page = std::filesystem::relative(path, tests::root()).string();
    for (const auto& group : tests::books_of(tests::slurp(path))) {
      if (group.front().says("bad")) {
        ++bad;
        check_bad(page, group);
        continue;
      }
      ++good;
      const auto said = check_samples(group);
      CHECK_MESSAGE(said.empty(), page << ": a good sample gets" << written(said));
      CHECK_MESSAGE(marks_of(group).empty(), page << ": a good sample with a mark");
    }
  }
  CHECK(bad >= 133);
  CHECK(good >= 137);
}
