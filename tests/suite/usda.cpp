// Every row of the USDA's household measures whose food the table knows, read as a line of a list and weighed: computed
// grams against stated grams. The rows are not part of this repository. QTN_USDA_MEASURES says where they are, else they
// are sought in shared/data beside the checkout; without them the test is skipped.
//
// Columns, parted by tabs: food number, description, amount, measure, grams.
#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <sstream>

#include "app/pipeline.hpp"
#include "files.hpp"
#include "words/fold.hpp"

using namespace qtn;

namespace {

enum class How { volume, count, weight, none };

struct Printed {
  std::string food, amount, measure;
  double grams = 0;
};

struct Share {  // how many rows are within 2, 5 and 10 per cent
  const char* what;
  int rows = 0, two = 0, five = 0, ten = 0;
  void add(double error) {
    ++rows;
    two += error <= 0.02, five += error <= 0.05, ten += error <= 0.10;
  }
  double of(int count) const { return rows == 0 ? 0 : 100.0 * count / rows; }
  std::string line() const {
    char text[160];
    std::snprintf(text, sizeof text, "%-58s %5d rows: %5.1f %% within 2, %5.1f %% within 5, %5.1f %% within 10", what, rows, of(two), of(five), of(ten));
    return text;
  }
};

std::filesystem::path rows_path() {
  if (const char* given = std::getenv("QTN_USDA_MEASURES"); given != nullptr && *given != '\0') return given;
  return tests::root().parent_path() / "shared" / "data" / "usda-measures.tsv";
}

std::vector<Printed> read_rows(const std::filesystem::path& path) {
  std::vector<Printed> out;
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) {
    std::istringstream cells(line);
    Printed row;
    std::string name, grams;
    std::getline(cells, row.food, '\t'), std::getline(cells, name, '\t'), std::getline(cells, row.amount, '\t');
    std::getline(cells, row.measure, '\t'), std::getline(cells, grams, '\t');
    row.grams = std::strtod(grams.c_str(), nullptr);
    if (row.grams > 0) out.push_back(row);
  }
  return out;
}

// "cup, chopped (1/2" pieces)" is "cup chopped": words only, what stands in parentheses left out.
std::string words_of(std::string_view measure) {
  std::string out;
  int depth = 0;
  for (const char c : measure) {
    if (c == '(') ++depth;
    const bool letter = (c | 32) >= 'a' && (c | 32) <= 'z';
    if (depth == 0 && (letter || c == '-' || c == '\'')) out += c;
    else if (!out.empty() && out.back() != ' ') out += ' ';
    if (c == ')') --depth;
  }
  return std::string(trim(out));
}

struct Spoken {
  std::string_view theirs, ours;
};
constexpr Spoken kVolumes[] = {{"cup", "US cup"}, {"tbsp", "US tbsp"}, {"tablespoon", "US tbsp"}, {"tsp", "US tsp"},
                             {"teaspoon", "US tsp"}, {"fl oz", "US fl oz"}, {"quart", "US quart"}, {"pint", "US pint"}};

// The words behind a unit of volume; false where the measure is not one.
bool take_volume(std::string& words, std::string_view& unit) {
  for (const Spoken& each : kVolumes) {
    if (!lower(words).starts_with(each.theirs)) continue;
    if (words.size() > each.theirs.size() && words[each.theirs.size()] != ' ') continue;
    unit = each.ours;
    words = std::string(trim(std::string_view(words).substr(each.theirs.size())));
    return true;
  }
  return false;
}

// The form in a figure's source: "USDA SR28 19334: 1 cup packed = 220 g" has "packed".
std::string form_of_source(std::string_view source) {
  const std::size_t colon = source.find(": "), equals = source.find(" = ");
  if (colon == std::string_view::npos || equals == std::string_view::npos) return "?";
  std::string_view measure = source.substr(colon + 2, equals - colon - 2);
  measure.remove_prefix(std::min(measure.find(' '), measure.size()));
  std::string words = words_of(measure);
  std::string_view unit;
  take_volume(words, unit);
  return lower(words);
}

// The food of a number: the one whose own figure has this very measure, else the first of that number.
const Food* food_of(const Printed& row) {
  const Food* first = nullptr;
  const std::string number = "SR28 " + row.food + ":", measure = row.measure + " = ";
  for (const Food& food : Larder::standard().all())
    for (const Figure* figure : {&food.density, &food.density_small, &food.each}) {
      if (figure->source.find(number) == std::string_view::npos) continue;
      if (first == nullptr) first = &food;
      if (figure->source.find(measure) != std::string_view::npos) return &food;
    }
  return first;
}

// A yield is no measure of what stands in the cup; a serving and a shop's pack are nobody's measures.
bool no_measure(const std::string& measure) {
  for (const char* word : {"yield", "hulls", "serving", "NLEA", "package", "container", "packet", "can", "cubic", "box", "bottle", "drink", "pat "})
    if (measure.find(word) != std::string::npos) return true;
  return false;
}

struct OneRow {
  How kind = How::none;
  double grams = 0;
  bool same_form = false, same_row = false;
};

OneRow weigh(const Printed& row, const Food& food, Workbench& bench) {
  OneRow out;
  std::string words = words_of(row.measure), form = words;
  std::string_view unit;
  if (take_volume(form, unit)) {
    out.kind = How::volume;
    words = std::string(unit) + " " + form;
  } else if (words == "oz" || words == "lb") {
    out.kind = How::weight;
  } else {
    out.kind = How::count;
  }
  const Source source("row", "recipe: Row\nmeasures: American\ntake:\n  " + row.amount + " " + words + " " + std::string(food.name) + "\nmethod:\n  Mix [everything].\n");
  Report report;
  const Recipe recipe = compile(source, {}, bench, report);
  if (recipe.lines.size() != 1 || recipe.lines[0].food != &food || recipe.lines[0].amount.is_lost()) return {};
  const TakeLine& line = recipe.lines[0];
  const Ends grams = grams_of(recipe, line, line.amount);
  if (grams.low.is_lost()) return {};
  out.grams = grams.low.approx();
  const Known known = known_of(recipe, line, line.amount, line.amount.unit);
  const std::string_view figure = out.kind == How::volume ? known.density_source : known.each_source;
  out.same_row = figure.find(" " + row.amount + " " + row.measure + " = ") != std::string_view::npos;
  out.same_form = out.kind == How::weight || form_of_source(figure) == lower(form);
  return out;
}

struct Tally {
  Share all{"all rows that can be weighed"}, volumes{"cups and spoons, any form"}, form{"cups and spoons in the form stored"},
      other_row{"of these, rows that are not the one stored"}, pieces{"pieces of the size stored"}, weights{"ounces and pounds"};
  int rows = 0, no_measure = 0, not_weighed = 0;
};

}  // namespace

TEST_CASE("weights of household measures, as the USDA states them") {
  const auto path = rows_path();
  if (!std::filesystem::is_regular_file(path)) {
    MESSAGE("skipped: the USDA rows are not there (" << path.string() << "); QTN_USDA_MEASURES says where they are");
    return;
  }
  Tally tally;
  Workbench bench;
  for (const Printed& row : read_rows(path)) {
    const Food* const food = food_of(row);
    if (food == nullptr) continue;
    ++tally.rows;
    if (no_measure(row.measure)) {
      ++tally.no_measure;
      continue;
    }
    const OneRow weighed = weigh(row, *food, bench);
    if (weighed.kind == How::none || (weighed.kind == How::count && !weighed.same_form)) {
      ++tally.not_weighed;
      continue;
    }
    const double error = std::abs(weighed.grams - row.grams) / row.grams;
    tally.all.add(error);
    if (weighed.kind == How::weight) tally.weights.add(error);
    if (weighed.kind == How::count) tally.pieces.add(error);
    if (weighed.kind != How::volume) continue;
    tally.volumes.add(error);
    if (!weighed.same_form) continue;
    tally.form.add(error);
    if (!weighed.same_row) tally.other_row.add(error);
    if (error > 0.05) MESSAGE(row.food << " " << food->name << ", " << row.amount << " " << row.measure << " = " << row.grams << " g: " << weighed.grams);
  }
  std::string table = "rows of foods in the table: " + std::to_string(tally.rows) + "; servings, packs and yields: " + std::to_string(tally.no_measure) +
                      "; of a form or size that has no row here: " + std::to_string(tally.not_weighed);
  for (const Share* share : {&tally.all, &tally.volumes, &tally.form, &tally.other_row, &tally.pieces, &tally.weights}) table += "\n" + share->line();
  MESSAGE(table);
  CHECK(tally.rows >= 700);
  CHECK(tally.form.rows >= 400);
  CHECK(tally.form.of(tally.form.five) >= 95.0);
}
