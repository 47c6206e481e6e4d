// Input that no cook wrote: a diagnostic, never a crash, a hang or memory out of proportion.
#include <doctest/doctest.h>

#include <chrono>
#include <nlohmann/json.hpp>
#include <random>

#include "app/pipeline.hpp"
#include "suite/book.hpp"

using namespace qtn;

namespace {

// Through the whole way, errors or not; the report comes back. Whatever the text was, places lie inside it, JSON is
// JSON, a page of HTML is a whole page without orders of the text's own, and no card holds a byte that a terminal obeys.
Report through(const std::string& text) {
  const Source source("hostile.qtn", text);
  Workbench bench;
  Report report;
  const Recipe recipe = compile(source, {}, bench, report);
  for (Format format : {Format::markdown, Format::html, Format::text, Format::json}) {
    Order order;
    order.format = format;
    order.request.times = Fraction::of(7, 3);
    order.request.beside = System::american;
    Report orders;
    std::string out;
    print_card(recipe, order, out, orders);
    CHECK((out.empty() || out.back() == '\n'));
    if (format == Format::json) CHECK((out.empty() || nlohmann::json::accept(out)));
    if (format == Format::html) CHECK((out.find("<script") == std::string::npos && (out.empty() || out.ends_with("</html>\n"))));
    CHECK(out.find_first_of(std::string_view("\0\x07\x1b\x7f", 4)) == std::string::npos);
  }
  for (const Diagnostic& one : report.list()) CHECK((one.span.begin <= one.span.end && one.span.end <= source.text().size()));
  return report;
}

bool has(const Report& report, Code code) {
  for (const Diagnostic& one : report.list())
    if (one.code == code) return true;
  return false;
}

}  // namespace

TEST_CASE("files with nothing in them") {
  CHECK(has(through(""), Code::no_kind));
  CHECK(has(through("# only a remark\n"), Code::no_kind));
  CHECK(has(through("take:\n  100 g flour\nmethod:\n  Sift [the flour].\n"), Code::no_kind));
}

TEST_CASE("the same field twice, a use of itself") {
  CHECK(has(through("recipe: A\nserves: 2\nserves: 3\n"), Code::repeated_field));
  Book book([](const std::string&) { return std::optional<std::string>("recipe: A\nuse: A from a.qtn\n"); });
  const Checked* self = book.file("a.qtn");
  REQUIRE(self != nullptr);
  CHECK(has(self->report, Code::use_ring));
}

TEST_CASE("numbers") {
  const auto line = [](const std::string& amount) { return through("recipe: A\ntake:\n  " + amount + " flour\nmethod:\n  Sift [the flour].\n"); };
  CHECK(has(line("1/0 kg"), Code::over_zero));
  CHECK(has(line("1/2/3 kg"), Code::tangled_number));
  CHECK(has(line("5 to 3 kg"), Code::falling_range));
  CHECK(has(line("1,5 kg"), Code::comma_in_number));
  CHECK(has(line("99999999999999999999 kg"), Code::number_too_long));
  CHECK(has(line("2 c"), Code::look_alike_unit));
}

TEST_CASE("brackets without end") {
  const auto begin = std::chrono::steady_clock::now();
  CHECK(has(through("recipe: A\nmethod:\n" + std::string(200000, '[')), Code::open_bracket));
  CHECK(has(through("recipe: A\nmethod:\nRub [the butter in.\n"), Code::open_bracket));
  through("recipe: A\nmethod:\n" + std::string(100000, '`') + std::string(100000, '*'));
  std::string remarks = "recipe: A\nmethod:\nStir.\n";
  for (int i = 0; i < 1'000'000; ++i) remarks += "#\n";
  through(remarks + "Serve.\n");  // lines of remarks inside a step, without end
  CHECK(std::chrono::steady_clock::now() - begin < std::chrono::seconds(20));
}

TEST_CASE("long lines are linear") {
  const auto begin = std::chrono::steady_clock::now();
  const std::size_t size = 10u << 20;
  through("recipe: A\nmethod:\n" + std::string(size, 'a'));
  through("recipe: A\ntake:\n" + std::string(size, ' ') + "x\n");
  CHECK(through("recipe: A\ntake:\n1 kg " + std::string(size, ',') + "\n").has_errors());
  CHECK(has(through("recipe: A\nmakes: " + std::string(size, '1') + "\n"), Code::number_too_long));
  CHECK(std::chrono::steady_clock::now() - begin < std::chrono::seconds(60));
}

TEST_CASE("bytes that are no text") {
  through(std::string("recipe: \0\xFF\xFE\ntake:\n\xC3 \x80 kg\n", 26));
  std::mt19937 random(11);
  const auto files = tests::example_files();
  for (int round = 0; round < 600; ++round) {
    std::string text = tests::slurp(tests::root() / "examples" / files[random() % files.size()]);
    for (int edits = 0; edits < 8; ++edits) {
      const std::size_t at = random() % text.size();
      if (random() % 2 == 0) text[at] = static_cast<char>(random());
      else text.erase(at, random() % 30);
      if (text.empty()) text = "x";
    }
    through(text);
  }
}

TEST_CASE("a card once over is the card, and scaling back is exact") {
  Book book = tests::example_book();
  for (const std::string& path : tests::example_files()) {
    const Checked* checked = book.file(path);
    if (!checked->recipe) continue;
    const Recipe& recipe = *checked->recipe;
    Order plain, once;
    once.request.times = Fraction(1);
    std::string a, b;
    Report report;
    CHECK(print_card(recipe, plain, a, report));
    CHECK(print_card(recipe, once, b, report));
    CHECK_MESSAGE(a == b, path);
    for (const Fraction& k : {Fraction(3), Fraction::of(2, 7), Fraction(40)}) {
      const Recipe back = scale(scale(recipe, k), Fraction(1) / k);
      REQUIRE(back.lines.size() == recipe.lines.size());
      for (std::size_t i = 0; i < back.lines.size(); ++i) CHECK_MESSAGE(back.lines[i].amount == recipe.lines[i].amount, path << " " << recipe.lines[i].name);
      for (std::size_t i = 0; i < back.terms.size(); ++i) CHECK(back.terms[i].amount == recipe.terms[i].amount);
    }
  }
}

TEST_CASE("bytes that are no letters are told once, wherever they stand") {
  const std::string head = "recipe: A\nmakes: 1 pie\n", rest = "take:\n  2 eggs\nmethod:\n  Beat [the eggs] well, at the caf";
  const auto count = [](const Report& report) {
    return std::count_if(report.list().begin(), report.list().end(), [](const Diagnostic& one) { return one.code == Code::not_text; });
  };
  CHECK(count(through(head + rest + "\xE9.\n")) == 1);
  CHECK(count(through(head + rest + "\xE9, the caf\xE9.\n")) == 1);
  CHECK(count(through(head + rest + std::string(1, '\0') + "e.\n")) == 1);
  CHECK(count(through("recipe: p\xE2t\xE9\n" + head)) == 1);
  CHECK(count(through(head + rest + "é ½ °C — “\xF0\x9F\x8D\xB0” \xEF\xBF\xBD.\n")) == 0);
  const Source house("kitchen.qtn", "kitchen: The caf\xE9\ncooks: 2\n");
  Report report;
  check_kitchen(house, parse(house), report);
  CHECK(count(report) == 1);
}
