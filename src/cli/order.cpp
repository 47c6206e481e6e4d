// The commands `order` and `cost`.
#include <ctime>
#include <set>

#include "app/pipeline.hpp"
#include "cli/arguments.hpp"
#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/library.hpp"
#include "cli/output.hpp"

namespace qtn {
namespace {

// "2026-03-01" is noon of that day.
std::optional<Minute> read_day(const std::string& text) {
  if (const auto hour = read_wall(text)) return hour;
  return read_wall(text + " 12:00");
}

// "28 %"; a bare 28 could as well be a share, and is refused.
bool read_share(const std::string& what, const std::string& text, std::optional<Fraction>& out) {
  if (text.empty()) return true;
  const std::string known = "a share above 0 and up to 100 %: \"28 %\"";
  const std::size_t sign = text.find('%');
  if (sign == std::string::npos || text.find_first_not_of(' ', sign + 1) != std::string::npos) return wrong(what, text, known);
  const auto read = read_amount_argument(text.substr(0, sign), Dialect::british);
  const bool share = read && read->thing.empty() && read->quantity.unit == kNoUnit && !read->quantity.is_range();
  if (!share || read->quantity.low.sign() <= 0 || read->quantity.low > Fraction(100)) return wrong(what, text, known);
  out = read->quantity.low / Fraction(100);
  return true;
}

template <class Options>
bool read_order(const Options& options, Order& order) {
  order.variant = options.variant, order.with = options.with;
  return read_size(options.times, options.serves, options.makes, order.request);
}

void tell(const std::string& path, const Report& report) {
  for (const Diagnostic& problem : report.list())
    complain(path + ": " + problem.message + (problem.expected.empty() ? "" : " Expected: " + problem.expected + "."));
}

// Recipes and menus without errors; else the exit code, after a complaint.
int usable(const Library& library, const std::string& what, std::vector<const Named*>& out) {
  if (!library.served()) return kNotServed;
  bool errors = false, served = true;
  for (const Named& file : library.files()) {
    const Checked& checked = *file.checked;
    if (!file.asked && !checked.report.has_errors()) continue;
    // A price that cannot be read is no price: an order or a cost without it would look whole.
    if (checked.report.has_errors()) {
      show_problems({{&checked.source, &checked.report}}, false);
      errors = true;
    } else if (!checked.recipe && file.in_folder) {
      continue;
    } else if (!checked.recipe) {
      complain(file.path + ": a kitchen " + what + "; name a recipe or a menu");
      served = false;
    } else {
      out.push_back(&file);
    }
  }
  return !served ? kNotServed : errors ? kRecipeErrors : kFine;
}

// Of a folder what another file in the call takes comes with that one, and is not bought twice: pastry with its pie, a
// pie with the menu that it stands on.
void leave_taken(std::vector<const Named*>& files) {
  std::set<const Recipe*> taken;
  for (const Named* file : files)
    for (const Use& use : file->checked->recipe->uses) taken.insert(use.recipe);
  std::erase_if(files, [&](const Named* file) { return file->in_folder && taken.count(file->checked->recipe.get()) != 0; });
}

bool is_folder(const Library& library, std::size_t paths) {
  std::size_t asked = 0;
  for (const Named& file : library.files()) asked += file.asked ? 1 : 0;
  return asked > paths;
}

}  // namespace

int run_order(const OrderOptions& options) {
  const FormatRow* const format = find_format(options.as, Paper::order);
  if (format == nullptr) return wrong("--as", options.as, format_names(Paper::order)), kNotServed;
  Order order;
  if (!read_order(options, order)) return kNotServed;
  OrderAsk ask;
  if (!options.serve.empty() && !(ask.serve = read_day(options.serve))) return wrong("--for", options.serve, "a day, 2026-03-01, or a day and an hour"), kNotServed;
  Library library(options.paths);
  std::vector<const Named*> files;
  if (const int bad = usable(library, "is nothing to order for", files); bad != kFine) return bad;
  leave_taken(files);
  if (files.empty()) {
    complain("there is no recipe and no menu in this folder to order for");
    return kNotServed;
  }
  for (const Named* file : files) {
    if (file->checked->kitchen != files.front()->checked->kitchen) {
      complain(file->path + ": an order is one house's, and this file stands in another book");
      return kNotServed;
    }
    ask.dishes.push_back({file->checked->recipe.get(), order});
  }
  ask.book = library.book_of(*files.front());
  Report report;
  std::string sheet;
  const bool printed = print_order(ask, format->format, sheet, report);
  tell(files.front()->path, report);
  return printed && deliver(options.out, sheet) ? kFine : kNotServed;
}

int run_cost(const CostOptions& options) {
  const FormatRow* const format = find_format(options.as);
  if (format == nullptr) return wrong("--as", options.as, format_names()), kNotServed;
  CostAsk ask;
  ask.order.format = format->format;
  if (!read_order(options, ask.order)) return kNotServed;
  if (!read_share("--food-cost", options.food_cost, ask.wish.food_cost) || !read_share("--allowance", options.allowance, ask.wish.allowance)) return kNotServed;
  ask.today = static_cast<int>(std::time(nullptr) / 86400);
  if (!options.today.empty()) {
    const auto day = read_wall(options.today + " 00:00");
    if (!day) return wrong("--today", options.today, "a day: 2026-03-01"), kNotServed;
    ask.today = static_cast<int>(*day / 1440);
  }
  Library library({options.path});
  if (is_folder(library, 1)) {
    complain("a cost is of one recipe or one menu: name the file, not the folder that it is in");
    return kNotServed;
  }
  std::vector<const Named*> files;
  if (const int bad = usable(library, "has no cost of its own", files); bad != kFine) return bad;
  Report report;
  std::string sheet;
  const bool printed = print_costs(*files.front()->checked->recipe, ask, sheet, report);
  tell(files.front()->path, report);
  return printed && deliver(options.out, sheet) ? kFine : kNotServed;
}

}  // namespace qtn
