#include "cli/commands.hpp"

#include <algorithm>
#include <deque>
#include <filesystem>

#include "app/ask.hpp"
#include "app/form.hpp"
#include "app/pipeline.hpp"
#include "app/reading.hpp"
#include "cli/arguments.hpp"
#include "cli/files.hpp"
#include "cli/library.hpp"
#include "cli/output.hpp"
#include "recipe/dates.hpp"
#include "safety/figures.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::string_view kVersion = "0.1.0";

std::vector<Judged> judged(const Library& library) {
  std::vector<Judged> out;
  for (const Named& file : library.files()) out.push_back({&file.checked->source, &file.checked->report});
  return out;
}

std::optional<System> system_named(const std::string& name) {
  for (System system : {System::written, System::metric, System::imperial, System::american})
    if (name_of(system) == name) return system;
  return std::nullopt;
}

std::optional<Dialect> dialect_named(const std::string& name) {
  if (name.empty()) return Dialect::unstated;
  for (Dialect dialect : {Dialect::british, Dialect::american, Dialect::australian})
    if (lower(name_of(dialect)) == lower(name)) return dialect;
  return std::nullopt;
}

std::optional<AskedWords> words_named(const std::string& name) {
  constexpr std::pair<std::string_view, AskedWords> kNames[] = {
      {"", AskedWords::as_written}, {"british", AskedWords::british}, {"american", AskedWords::american}, {"both", AskedWords::both}};
  for (const auto& [known, words] : kNames)
    if (known == lower(name)) return words;
  return std::nullopt;
}

// The order of a `card` call, or nothing after a complaint.
std::optional<Order> order_of(const CardOptions& options) {
  Order order;
  const auto unknown = [](const std::string& what, const std::string& value, const std::string& known) {
    wrong(what, value, known);
    return std::nullopt;
  };
  const FormatRow* const format = find_format(options.as);
  if (format == nullptr) return unknown("--as", options.as, format_names());
  order.format = format->format;
  const auto units = system_named(options.units);
  if (!units) return unknown("--units", options.units, "written, metric, imperial or american");
  order.request.units = *units;
  if (!options.beside.empty()) {
    order.request.beside = system_named(options.beside);
    if (!order.request.beside) return unknown("--beside", options.beside, "metric, imperial or american");
  }
  const auto spoons = dialect_named(options.measures);
  if (!spoons) return unknown("--measures", options.measures, "British, American or Australian");
  order.request.spoons = *spoons;
  const auto words = words_named(options.words);
  if (!words) return unknown("--words", options.words, "British, American or both");
  order.request.words = *words;
  if (!read_size(options.times, options.serves, options.makes, order.request)) return std::nullopt;
  if (!options.tin.empty()) {
    std::string problem;
    order.request.tin = read_tin_argument(options.tin, problem);  // else the name of one of the house's tins
    if (!problem.empty()) {
      complain("--tin " + options.tin + ": " + problem);
      return std::nullopt;
    }
    order.request.tin_text = options.tin;
  }
  if (!options.from.empty()) {
    const auto read = read_amount_argument(options.from, Dialect::british);
    if (!read || read->thing.empty() || read->quantity.low.sign() <= 0)
      return unknown("--from", options.from, "an amount of something in the list: 1.3 kg lamb shoulder");
    order.request.have = read->quantity;
    order.request.have_thing = read->thing;
  }
  order.variant = options.variant;
  order.with = options.with;
  order.readings = options.readings;
  if (!read_way(options.way, order.request.way)) return std::nullopt;
  if (!options.as_of.empty()) {
    Report unread;
    order.as_of = read_date(options.as_of, {}, unread);
    if (!order.as_of) {
      const Diagnostic& problem = unread.list().front();
      complain("--as-of " + options.as_of + ": " + problem.message + " Expected: " + problem.expected + ".");
      return std::nullopt;
    }
  }
  return order;
}

// Where a card goes: a file, or a folder when there are several or it is one.
std::string target_of(const CardOptions& options, const Named& file, std::size_t count, const FormatRow& format) {
  std::error_code error;
  const bool folder = count > 1 || std::filesystem::is_directory(options.out, error) || options.out.back() == '/';
  if (!folder) return options.out;
  // Cards stay inside the folder, whatever path their recipe was called by.
  std::filesystem::path name, given(file.path);
  if (count == 1) given = given.filename();
  for (const auto& step : given.lexically_normal().relative_path())
    if (step != "..") name /= step;
  name.replace_extension("." + std::string(format.ending));
  const std::filesystem::path path = std::filesystem::path(options.out) / name;
  std::filesystem::create_directories(path.parent_path(), error);
  return path.string();
}

}  // namespace

int run_check(const CheckOptions& options) {
  const Library library(options.paths);
  auto files = judged(library);
  std::deque<Report> forms;
  bool lacking = false;
  for (std::size_t i = 0; options.complete && i < files.size(); ++i) {
    const Named& file = library.files()[i];
    if (!file.asked || !file.checked->recipe) continue;
    Report form;
    check_form(*file.checked->recipe, std::filesystem::path(file.checked->source.name()).parent_path().string(), form);
    lacking = lacking || !form.list().empty();
    forms.push_back(file.checked->report);
    forms.back().append(form);
    forms.back().sort();
    files[i].report = &forms.back();
  }
  if (options.as == "json") put(print_json(files));
  else if (options.as == "sarif") put(print_sarif(files, kVersion));
  else if (options.as == "text") show_problems(files, true);
  else {
    complain("--as " + options.as + " is not known; it is text, json or sarif");
    return kNotServed;
  }
  if (!library.served()) return kNotServed;
  if (options.strict && lacking) return kRecipeErrors;
  for (const Named& file : library.files())
    if (file.checked->report.has_errors() || (options.strict && file.checked->report.warnings() != 0)) return kRecipeErrors;
  return kFine;
}

namespace {

// Recipes of the call that have the thing in their list or log; a folder's others are passed over.
int run_history(const Library& library, const std::string& name) {
  bool any = false, errors = false;
  const bool several = library.files().size() > 1;
  std::string why;
  for (const Named& file : library.files()) {
    if (file.checked->report.has_errors()) {
      show_problems({{&file.checked->source, &file.checked->report}}, false);
      errors = true;
      continue;
    }
    if (!file.asked || !file.checked->recipe || file.checked->recipe->kind != FileKind::recipe) continue;
    Report report;
    const std::string out = read_history(*file.checked->recipe, name, report);
    if (!out.empty()) put((several ? "# " + file.path + "\n" : "") + out), any = true;
    else if (why.empty()) why = file.path + ": " + report.list().front().message;
  }
  if (!library.served()) return kNotServed;
  if (any || errors) return errors ? kRecipeErrors : kFine;
  complain(why.empty() ? "only a recipe has a history; name one" : several ? "no recipe here has `" + name + "` in its list or its log" : why);
  return kNotServed;
}

}  // namespace

int run_read(const std::string& path, const std::string& history) {
  const Library library({path});
  if (!history.empty()) return run_history(library, history);
  bool errors = false;
  const auto asked = std::count_if(library.files().begin(), library.files().end(), [](const Named& file) { return file.asked; });
  for (const Named& file : library.files()) {
    errors = errors || file.checked->report.has_errors();
    if (!file.asked) continue;
    if (asked > 1) put("# " + file.path + "\n");
    if (file.checked->recipe) put(read_table(*file.checked->recipe));
    else if (file.checked->kitchen) put(read_table(file.checked->source, *file.checked->kitchen));
  }
  if (errors) show_problems(judged(library), false);
  return !library.served() ? kNotServed : errors ? kRecipeErrors : kFine;
}

int run_card(const CardOptions& options) {
  const auto order = order_of(options);
  if (!order) return kNotServed;
  const Library library(options.paths);
  std::size_t cards = 0;
  for (const Named& file : library.files()) cards += file.checked->recipe ? std::size_t{1} : std::size_t{0};
  if (cards > 1 && options.out.empty() && order->format == Format::html) {
    complain("several cards in HTML need a folder: --out FOLDER");
    return kNotServed;
  }
  bool errors = false, served = library.served();
  if (cards == 0 && served) {
    complain("a kitchen's file has no card; name a recipe");
    served = false;
  }
  for (const Named& file : library.files()) {
    if (file.checked->report.has_errors()) {
      show_problems({{&file.checked->source, &file.checked->report}}, false);
      errors = true;
      continue;
    }
    if (!file.checked->recipe) continue;
    Report report;
    std::string card;
    if (!print_card(*file.checked->recipe, *order, card, report)) {
      if (cards > 1 && report.list().front().code == Code::nothing_to_read) continue;
      const auto placed = [](const Diagnostic& problem) { return !problem.span.empty(); };
      if (order->as_of && std::any_of(report.list().begin(), report.list().end(), placed)) {
        show_problems({{&file.checked->source, &report}}, false);
        complain(file.path + ": there is no card as of " + options.as_of);
      } else {
        for (const Diagnostic& problem : report.list()) complain(file.path + ": " + problem.message);
      }
      served = false;
      continue;
    }
    if (options.out.empty()) {
      put(card);
      continue;
    }
    const std::string path = target_of(options, file, cards, *find_format(options.as));
    if (const std::string why = write_file(path, card); !why.empty()) {
      complain(path + " could not be written: " + why);
      served = false;
    }
  }
  return !served ? kNotServed : errors ? kRecipeErrors : kFine;
}

int run_allergens(const AllergensOptions& options) {
  const FormatRow* const format = find_format(options.as);
  if (format == nullptr) {
    wrong("--as", options.as, format_names());
    return kNotServed;
  }
  if (!options.list.empty() && options.list != "european" && options.list != "american") {
    wrong("--list", options.list, "european or american");
    return kNotServed;
  }
  const Library library(options.paths);
  std::vector<const Recipe*> recipes;
  bool errors = false;
  for (const Named& file : library.files()) {
    if (file.checked->report.has_errors()) show_problems({{&file.checked->source, &file.checked->report}}, false), errors = true;
    // Of a folder its recipes; a menu is only asked for by itself.
    else if (file.checked->recipe && (file.checked->recipe->kind == FileKind::recipe || library.files().size() == 1)) recipes.push_back(&*file.checked->recipe);
  }
  if (recipes.empty()) {
    if (!errors) complain("no recipe is there");
    return errors ? kRecipeErrors : kNotServed;
  }
  const bool american = options.list.empty() ? law_of(*recipes.front()) == Law::US : options.list == "american";
  std::string out;
  print_allergens(recipes, american ? AllergenList::american : AllergenList::european, format->format, out);
  const bool written = deliver(options.out, out);
  return !library.served() || !written ? kNotServed : errors ? kRecipeErrors : kFine;
}

int run_ratios(const RatiosOptions& options) {
  if (options.as != "text" && options.as != "json") {
    complain("--as " + options.as + " is not known; it is text or json");
    return kNotServed;
  }
  Order order;
  if (!read_size(options.times, options.serves, options.makes, order.request)) return kNotServed;
  order.variant = options.variant;
  order.with = options.with;
  const Library library(options.paths);
  const bool single = library.files().size() == 1;
  bool errors = false, served = library.served(), any = false;
  for (const Named& file : library.files()) {
    if (file.checked->report.has_errors()) {
      show_problems({{&file.checked->source, &file.checked->report}}, false);
      errors = true;
      continue;
    }
    const bool recipe = file.checked->recipe && file.checked->recipe->kind == FileKind::recipe;
    if (!recipe && !single) continue;  // a kitchen and a menu have no ratios
    Report report;
    std::string out;
    if (recipe && print_ratios(*file.checked->recipe, order, options.as == "text", out, report)) {
      put((any && options.as == "text" ? "\n" : "") + out);
      any = true;
      continue;
    }
    if (!recipe) complain(file.path + ": only a recipe has ratios");
    for (const Diagnostic& problem : report.list()) complain(file.path + ": " + problem.message);
    served = false;
  }
  return !served ? kNotServed : errors ? kRecipeErrors : kFine;
}

int run_ask(const std::vector<std::string>& words, const std::string& measures) {
  const auto dialect = dialect_named(measures);
  if (!dialect) {
    complain("--measures " + measures + " is not known; it is British, American or Australian");
    return kNotServed;
  }
  std::string question;
  for (const std::string& word : words) question += (question.empty() ? "" : " ") + word;
  std::string problem;
  const auto sum = ask(question, *dialect, problem);
  if (!sum) {
    complain(problem);
    return kNotServed;
  }
  put(write_sum(*sum));
  return kFine;
}

int run_explain(const std::string& code) {
  const CatalogueRow* const row = find_row(code);
  const std::string_view page = row == nullptr ? std::string_view() : explain(row->code);
  if (page.empty()) {
    complain(code + " is no code of Quartern's; codes look like Q201 and stand beside each message");
    return kNotServed;
  }
  put(std::string(page));
  return kFine;
}

}  // namespace qtn
