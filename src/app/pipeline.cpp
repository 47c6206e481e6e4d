#include "app/pipeline.hpp"

#include "book/book.hpp"
#include "card/matrix.hpp"
#include "card/order_sheet.hpp"
#include "card/sheet.hpp"
#include "day/hours_asked.hpp"
#include "render/ledger.hpp"
#include "syntax/tree.hpp"

namespace qtn {

Recipe compile(const Source& source, const Surroundings& around, Workbench& bench, Report& report) {
  parse(source.text(), bench.tree);
  Recipe recipe = check(source, bench.tree, around, report, std::move(bench.spare));
  check_beyond_page(recipe, report);
  return recipe;
}

namespace {

// The version that was ordered, or nothing when there is none of that name.
std::optional<Recipe> version(const Recipe& recipe, const Order& order, Report& report) {
  std::optional<Recipe> out;
  if (order.as_of) {
    out = as_of(recipe, *order.as_of, report);
    if (!out) return out;
  }
  if (!order.variant.empty()) {
    out = variant_of(recipe, order.variant, report);
    if (!out) report.add(Code::no_such_version, {}, "This recipe has no variant called `" + order.variant + "`.");
  }
  if (!order.with.empty()) {
    const Recipe* const base = out ? &*out : &recipe;
    auto chosen = with_alternative(*base, order.with, report);
    if (!chosen) report.add(Code::no_such_version, {}, "This recipe has no `or` line called `" + order.with + "`.");
    out = std::move(chosen);
  }
  return out;
}

// Readings are told in both scales, whichever the card has. A table's are those of its dishes.
bool print_readings(const Recipe& recipe, const Order& order, std::string& out, Report& report) {
  Board board;
  std::vector<const Recipe*> dishes{&recipe};
  if (recipe.kind == FileKind::menu) {
    board = board_of(recipe, {}, report);
    if (report.has_errors()) return false;
    dishes.clear();
    for (std::size_t d = 0; d < board.order.dishes; ++d) dishes.push_back(board.order.makings[d].recipe);
  }
  std::vector<Card> sheets;
  for (const Recipe* const dish : dishes) {
    Request request = order.request;
    const bool fahrenheit = request.units == System::american || (request.units == System::written && dish->dialect == Dialect::american);
    request.beside = fahrenheit ? System::metric : System::american;
    Card sheet = make_readings(show(*dish, request));
    if (!sheet.grids.empty()) sheets.push_back(std::move(sheet));
  }
  if (!sheets.empty()) render(order.format, sheets, out);
  else
    report.add(Code::nothing_to_read, {}, "This recipe asks for no reading: no `reads`, no `to` a temperature, no fridge or freezer.")
        .expect("a clause such as `[reads 75 °C]`");
  return !sheets.empty();
}

// The table's own card, and after it each dish's, at the size that the table wants of it.
bool print_table(const Recipe& menu, const Adapted& adapted, const Order& order, std::string& out, Report& report) {
  const Board board = board_of(menu, {}, report);
  if (report.has_errors()) return false;
  std::vector<Card> cards;
  cards.push_back(make_card(adapted));
  Request request;
  request.units = order.request.units, request.beside = order.request.beside, request.way = order.request.way;
  request.words = order.request.words;
  for (std::size_t d = 0; d < board.order.dishes; ++d) {
    cards.push_back(make_card(show(*board.order.makings[d].recipe, request)));
    // What other dishes take of this one is made beside the amounts of its card.
    for (std::size_t m = board.order.dishes; m < board.asked.size(); ++m)
      if (board.asked[m].page == board.asked[d].page && board.asked[m].part == board.asked[d].part)
        for (const std::string& portion : board.asked[m].portions) add_taken(cards.back(), portion);
  }
  render(order.format, cards, out);
  return true;
}

// The version and the size that were ordered; nothing where that is the recipe as written, or after an error.
std::optional<Recipe> ordered_of(const Recipe& written, const Order& order, Report& report) {
  std::optional<Recipe> other;
  if (order.as_of || !order.variant.empty() || !order.with.empty()) {
    other = version(written, order, report);
    if (report.has_errors()) return std::nullopt;
  }
  const Recipe& recipe = other ? *other : written;
  const Fraction factor = factor_of(recipe, order.request, report);
  if (report.has_errors()) return std::nullopt;
  return factor == Fraction(1) ? std::move(other) : scale(recipe, factor);
}

// What could be served when, if one began at that hour: each dish of a table by itself.
void alone(const Board& board, DayOrder order, Day& day) {
  order.serve.clear(), order.pins.clear(), order.settled.clear();
  for (std::size_t d = 0; d < board.order.dishes; ++d) {
    Report unsaid;
    const Board single = board_of(*board.order.makings[d].recipe, {}, unsaid);
    if (unsaid.has_errors()) continue;
    const Day own = plan_day(wind(single.order), order, unsaid);
    if (own.planned) {
      const bool other_day = day_begin(own.end) != day_begin(*order.start);
      day.alone.push_back(single.title + " at " + write_clock(own.end) + (other_day ? " on " + write_day(own.end) : ""));
    }
  }
}

}  // namespace

bool print_card(const Recipe& written, const Order& order, std::string& out, Report& report) {
  const std::optional<Recipe> ordered = ordered_of(written, order, report);
  if (report.has_errors()) return false;
  if (order.readings) return print_readings(ordered ? *ordered : written, order, out, report);
  const Adapted adapted = show(ordered ? *ordered : written, order.request);
  if (written.kind == FileKind::menu) return print_table(ordered ? *ordered : written, adapted, order, out, report);
  render(order.format, make_card(adapted), out);
  return true;
}

bool print_day(const Recipe& written, const DayAsk& ask, Format format, std::string& out, Report& report) {
  std::optional<Recipe> other;
  if (!ask.variant.empty() || !ask.with.empty()) other = version(written, {{}, ask.variant, ask.with, std::nullopt}, report);
  if (report.has_errors()) return false;
  const Recipe& recipe = other ? *other : written;
  Board board = board_of(recipe, ask.request, report);
  if (report.has_errors()) return false;
  DayOrder order = order_of(board.kitchen);
  if (board.cooks) order.cooks = *board.cooks;
  if (ask.cooks) order.cooks = *ask.cooks;
  if (ask.ovens) order.ovens = *ask.ovens;
  order.nights = ask.nights;
  order.source = recipe.source;
  order.start = ask.start;
  order.pins = ask.pins, order.settled = ask.settled, order.revision = ask.revision;
  const std::string zone = !ask.zone.empty() || board.kitchen == nullptr ? ask.zone : std::string(board.kitchen->zone);
  if (!set_hours(board, zone, ask.serve, ask.now, order, report)) return false;
  board.order.way = ask.way ? ask.way : board.kitchen != nullptr ? board.kitchen->way : std::nullopt;
  Clock clock = wind(board.order);
  std::vector<char> hot;
  for (const Dish& dish : clock.dishes) hot.push_back(dish.hot);
  if (make_once(board, hot)) clock = wind(board.order);
  Day day = plan_day(clock, order, report);
  if (!day.planned) return false;
  if (ask.start && !ask.serve && board.order.dishes > 1) alone(board, order, day);
  render(format, make_sheet(board, day, words_of(recipe)), out);
  return true;
}

void print_allergens(std::span<const Recipe* const> recipes, AllergenList list, Format format, std::string& out) {
  std::vector<const Recipe*> dishes;
  std::string_view title;
  for (const Recipe* recipe : recipes) {
    if (recipe->kind == FileKind::recipe) dishes.push_back(recipe);
    if (recipe->kind != FileKind::menu) continue;
    title = recipe->title;
    for (const Use& use : recipe->uses)
      if (use.recipe != nullptr) dishes.push_back(use.recipe);
  }
  if (recipes.size() == 1 && title.empty()) title = recipes.front()->title;
  else if (recipes.size() > 1) title = dishes.empty() || dishes.front()->kitchen == nullptr ? std::string_view("Every dish") : dishes.front()->kitchen->name;
  render(format, make_matrix(title, dishes, list), out);
}

bool print_ratios(const Recipe& written, const Order& order, bool as_text, std::string& out, Report& report) {
  const std::optional<Recipe> ordered = ordered_of(written, order, report);
  if (report.has_errors()) return false;
  const Ledger ledger = make_ledger(ordered ? *ordered : written);
  if (ledger.tables.empty()) {
    report.add(Code::nothing_to_weigh, {}, "Nothing in this recipe can be weighed, so it has no ratios.")
        .expect("lines with weights, or ingredients whose weight is known");
    return false;
  }
  (as_text ? render_ledger_text : render_ledger_json)(ledger, out);
  return true;
}

namespace {

// The board of a version; what it looks into stays with the caller.
struct Laid {
  std::optional<Recipe> other;
  Board board;
};
bool lay(const Recipe& written, const Order& order, Laid& laid, Report& report) {
  if (!order.variant.empty() || !order.with.empty()) laid.other = version(written, order, report);
  if (!report.has_errors()) laid.board = board_of(laid.other ? *laid.other : written, order.request, report);
  return !report.has_errors();
}

}  // namespace

bool print_order(const OrderAsk& ask, Format format, std::string& out, Report& report) {
  std::deque<std::optional<Recipe>> others;
  std::vector<Board> boards;
  for (const Ordered& dish : ask.dishes) {
    Laid laid;
    if (!lay(*dish.recipe, dish.order, laid, report)) return false;
    others.push_back(std::move(laid.other)), boards.push_back(std::move(laid.board));
  }
  const Purchases all = purchases_of(boards, ask.serve, ask.book);
  render(format, make_order(all, boards, ask.serve, words_of(*ask.dishes.front().recipe)), out);
  return true;
}

namespace {

// Every `variant:` and every `or` line of a recipe by itself, at the size that was ordered; one that has errors says so elsewhere.
std::vector<CostVersion> costs_of_versions(const Recipe& written, const CostAsk& ask) {
  std::vector<CostVersion> all;
  const auto add = [&](std::string_view name, bool other_line) {
    Order order = ask.order;
    (other_line ? order.with : order.variant) = name;
    Laid laid;
    Report unsaid;
    if (lay(written, order, laid, unsaid)) all.push_back({std::string(name), other_line, costing_of(*laid.other, laid.board, ask.today)});
  };
  for (const Log& one : written.variants) add(one.name, false);
  for (const TakeLine& line : written.lines)
    if (line.alternative) add(line.name, true);
  return all;
}

}  // namespace

bool print_costs(const Recipe& written, const CostAsk& ask, std::string& out, Report& report) {
  Laid laid;
  if (!lay(written, ask.order, laid, report)) return false;
  const Recipe& recipe = laid.other ? *laid.other : written;
  std::vector<CostVersion> versions;
  if (!laid.other) versions = costs_of_versions(written, ask);
  render(ask.order.format, make_costs(costing_of(recipe, laid.board, ask.today), versions, recipe, laid.board, ask.wish, words_of(recipe)), out);
  return true;
}

}  // namespace qtn
