// Check values that others have published, asked of the whole program: every row of tests/published/program/*.tsv.
// Columns, parted by tabs: id, input, expected, tolerance, source, and perhaps a remark. Inputs read as
//   ask American: 1 cup plain flour in g      a sum, its exact answer; the tolerance is absolute
//   show American cups: 9 US fl oz            an amount as a card writes it; the tolerance is the rounding's, as a share
//   fan British: 200 °C                       what a fan oven is set to
//   says American: 1/2 lb (4 oz) flour        codes of a list with these lines, parted by `;`; lines in brackets are steps
//   pot British: 10 lb potatoes; [loses 20 %] in lb     what the pot comes to
//   bought British: 81 lb broccoli, from 100 lb -> 5 lb     the weight to buy, scaled until the line has the second weight
//   serves 64 times 2/3                       portions of so many times the recipe
// A remark begins with DISAGREE or SLIP and the figure that was not taken, then says why; that figure must differ from
// ours, so that a row which no longer disagrees is noticed. What is a slip in print must be an error here.
#include <doctest/doctest.h>

#include <set>
#include <sstream>

#include "app/ask.hpp"
#include "app/pipeline.hpp"
#include "files.hpp"
#include "measure/table_text.hpp"
#include "words/fold.hpp"

using namespace qtn;

namespace {

struct PublishedRow {
  std::string id, input, expected, tolerance, source, remark;
};

struct Answer {
  Fraction number = Fraction::lost();
  std::string text;
  bool errors = false;
};

std::string cut(std::string& text, std::string_view mark) {
  const std::size_t at = text.find(mark);
  const std::string front(trim(std::string_view(text).substr(0, at)));
  text = at == std::string::npos ? std::string() : std::string(trim(std::string_view(text).substr(at + mark.size())));
  return front;
}

// "1 1/2", "2958/25", "-40"
Fraction number_at(std::string_view text, std::string_view* rest = nullptr) {
  Fraction sum(0);
  bool any = false;
  while (!text.empty()) {
    std::string_view after = text;
    std::string_view word = table::take_word(after);
    const bool minus = word.starts_with('-');
    const Fraction value = table::number(minus ? word.substr(1) : word);
    if (value.is_lost()) break;
    sum += minus ? -value : value, any = true, text = after;
  }
  if (rest != nullptr) *rest = text;
  return any ? sum : Fraction::lost();
}

Dialect dialect_of(std::string_view word) {
  for (Dialect dialect : {Dialect::british, Dialect::american, Dialect::australian})
    if (name_of(dialect) == word) return dialect;
  return Dialect::unstated;
}

Ladder ladder_called(const std::string& name) {
  const std::pair<std::string_view, Ladder> kNames[] = {{"grams", Ladder::grams},   {"ounces", Ladder::ounces}, {"millilitres", Ladder::millilitres},
                                                        {"cups", Ladder::cups},     {"pints", Ladder::pints},   {"spoons", Ladder::spoons},
                                                        {"celsius", Ladder::celsius}, {"fahrenheit", Ladder::fahrenheit}, {"gas", Ladder::gas}};
  for (const auto& [word, ladder] : kNames)
    if (word == name) return ladder;
  FAIL("no ladder " << name);
  return Ladder::grams;
}

// "2 1/4 US cup"; temperatures in °C.
Fraction in_base_unit(std::string_view text, Dialect dialect) {
  std::string_view unit_text;
  const Fraction value = number_at(text, &unit_text);
  const UnitId id = unit_named(trim(unit_text));
  REQUIRE_MESSAGE(id != kNoUnit, text);
  return unit(id).dimension == Dimension::temperature ? to_celsius(value, id) : value * size_of(id, dialect);
}

// A file of these lines; what stands in brackets goes into the method.
struct Made {
  Made(Dialect dialect, std::string lines, const std::string& head = {}) {
    std::string list, method;
    bool all = false;
    while (!lines.empty()) {
      const std::string one = cut(lines, ";");
      if (one.starts_with("[")) all = true, method += "  " + one + "\n";
      else list += "  " + one + "\n";
    }
    const bool mixed = !list.empty();
    source = std::make_unique<Source>("row", "recipe: Row\n" + head + (dialect == Dialect::unstated ? "" : "measures: " + std::string(name_of(dialect)) + "\n") +
                                                 (mixed ? "take:\n" + list : "") + "method:\n" + (mixed ? "  Mix [everything].\n" : "") + (all ? method : ""));
    recipe = compile(*source, {}, bench, report);
  }
  std::unique_ptr<Source> source;
  Workbench bench;
  Report report;
  Recipe recipe;
};

Answer says(Dialect dialect, const std::string& lines) {
  const Made file(dialect, lines);
  std::set<std::string> codes;
  Answer out;
  for (const Diagnostic& problem : file.report.list()) {
    if (problem.severity == Severity::note || problem.code == Code::no_core_reading) continue;  // these lists are about amounts
    codes.insert(std::string(row(problem.code).code));
    out.errors = out.errors || problem.severity == Severity::error;
  }
  for (const std::string& code : codes) out.text += (out.text.empty() ? "" : " ") + code;
  if (out.text.empty()) out.text = "nothing";
  return out;
}

Answer asked(const std::string& question, Dialect dialect) {
  std::string problem;
  const auto sum = ask(question, dialect, problem);
  if (!sum) return {Fraction::lost(), problem, false};
  const std::string exact = sum->exact.starts_with("gas ") ? sum->exact.substr(4) : sum->exact;
  return {number_at(exact), sum->answer, false};
}

Answer work_out(const PublishedRow& row) {
  std::string text = row.input;
  if (text.starts_with("serves ")) {
    std::string times = text.substr(7);
    const std::string serves = cut(times, "times");
    const Made file(Dialect::british, "100 g flour", "serves: " + serves + "\n");
    const Recipe made = scale(file.recipe, number_at(times));
    return {number_at(show(made, {}).serves.text), "", false};
  }
  std::string head = cut(text, ":");
  const std::string form = cut(head, " ");
  std::string dialect_word = cut(head, " ");
  const Dialect dialect = dialect_of(dialect_word);
  if (form == "ask") return asked(text, dialect);
  if (form == "says") return says(dialect, text);
  if (form == "show") return {Fraction::lost(), write(round_on(ladder_called(head), in_base_unit(text, dialect), number_at(row.tolerance), dialect)), false};
  if (form == "fan") {
    std::string_view scale_text;
    number_at(text, &scale_text);
    return {from_celsius(in_base_unit(text, dialect) - fan_difference(dialect), unit_named(trim(scale_text))), "", false};
  }
  if (form == "pot") {
    const std::size_t at = text.rfind(" in ");
    const Made file(dialect, text.substr(0, at), "makes: 1 kg\n");  // a pot is weighed where its yield is said
    const Part& dish = file.recipe.parts[file.recipe.dish];
    return {dish.weight_low / size_of(unit_named(text.substr(at + 4)), dialect), "", false};
  }
  if (form == "bought") {
    const std::string line = cut(text, "->");
    const Made file(dialect, line);
    const Recipe made = scale(file.recipe, in_base_unit(text, dialect) / in_base(file.recipe.lines[0].amount, dialect).low);
    for (const Tail& tail : made.tails)
      if (tail.kind == TailKind::from && tail.amount) return {tail.amount->low, "", false};
  }
  return {};
}

void check_row(const PublishedRow& row) {
  CAPTURE(row.id);
  CAPTURE(row.input);
  CHECK(!row.source.empty());
  const Answer found = work_out(row);
  const bool number = !found.number.is_lost();
  const Fraction allowed = number_at(row.tolerance);
  if (number) CHECK_MESSAGE((found.number - number_at(row.expected)).abs() <= allowed, found.number.decimal(6), " is not ", row.expected);
  else CHECK(found.text == row.expected);
  if (row.remark.empty()) return;
  std::string remark = row.remark;
  const std::string kind = cut(remark, " "), other = cut(remark, ":");
  CHECK((kind == "DISAGREE" || kind == "SLIP"));
  CHECK_MESSAGE(remark.size() > 10, "a remark says why");
  if (number) CHECK_MESSAGE((found.number - number_at(other)).abs() > allowed, "this no longer disagrees");
  else CHECK(found.text != other);
  if (kind == "SLIP") CHECK_MESSAGE(found.errors, "a slip in print is an error here");
}

}  // namespace

TEST_CASE("published check values, asked of the whole program") {
  int rows = 0, disagree = 0, slips = 0;
  for (const auto& path : tests::below("tests/published/program", ".tsv")) {
    std::istringstream in(tests::slurp(path));
    for (std::string line; std::getline(in, line);) {
      if (line.empty() || line[0] == '#') continue;
      std::istringstream cells(line);
      PublishedRow row;
      for (std::string* cell : {&row.id, &row.input, &row.expected, &row.tolerance, &row.source, &row.remark}) std::getline(cells, *cell, '\t');
      check_row(row);
      ++rows, disagree += row.remark.starts_with("DISAGREE"), slips += row.remark.starts_with("SLIP");
    }
  }
  CHECK(rows >= 200);
  CHECK(disagree >= 40);
  CHECK(slips >= 2);
}
