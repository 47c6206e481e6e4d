// What must hold over the whole example book: sums, sizes, costs.
#include <doctest/doctest.h>

#include <map>
#include <set>

#include "adapt/pace.hpp"
#include "order/book_of_files.hpp"
#include "order/cost.hpp"
#include "order/order.hpp"

using namespace qtn;

namespace {

using Sums = std::map<std::string, Fraction>;  // by key, dimension and noun

std::string place_of(const std::string& key, const Measure& measure) {
  return key + "/" + std::to_string(static_cast<int>(measure.dimension)) + "/" + std::to_string(measure.noun);
}

Sums sums_of(const Purchases& all) {
  Sums out;
  for (const Delivery& delivery : all.deliveries)
    for (const Purchase& line : delivery.lines) {
      Fraction shares(0);
      for (const DishShare& share : line.shares) shares += share.amount;
      CHECK_MESSAGE(shares == line.measure.amount, line.name);
      CHECK_MESSAGE(out.emplace(place_of(line.key, line.measure), line.measure.amount).second, line.name);
    }
  return out;
}

Board board(const Recipe& recipe, const Fraction& times = Fraction(1)) {
  Report report;
  Request request;
  request.times = times;
  Board out = board_of(recipe, request, report);
  REQUIRE_FALSE(report.has_errors());
  return out;
}
Purchases bought(std::vector<Board>& boards) { return purchases_of(boards, {}, {}); }

}  // namespace

TEST_CASE("the order of a menu is the sum of the orders of its dishes") {
  tests::BookOfFiles book;
  int menus = 0;
  for (const Recipe* menu : book.recipes()) {
    if (menu->kind != FileKind::menu) continue;
    ++menus;
    std::vector<Board> whole, dishes;
    whole.push_back(board(*menu));
    for (std::size_t d = 0; d < whole[0].order.dishes; ++d) dishes.push_back(board(*whole[0].order.makings[d].recipe));
    const Purchases all = bought(whole);
    CHECK_MESSAGE(sums_of(all) == sums_of(bought(dishes)), menu->title);
    Fraction cost(0);
    for (const Board& dish : dishes) cost += costing_of(*dish.order.makings[0].recipe, dish, 0).cost;
    CHECK_MESSAGE(costing_of(*menu, whole[0], 0).cost == cost, menu->title);
  }
  CHECK(menus >= 3);
}

TEST_CASE("a table of another size wants so much more of every dish") {
  tests::BookOfFiles book;
  for (const Recipe* menu : book.recipes()) {
    if (menu->kind != FileKind::menu) continue;
    const Board written = board(*menu);
    Request twice, for_many, weight;
    twice.times = Fraction(2);
    for_many.serves = Quantity{menu->serves->low * Fraction(2), menu->serves->high * Fraction(2), menu->serves->unit};
    weight.makes = Quantity{Fraction(3), Fraction(3), common().kilogram};
    for (const Request& request : {twice, for_many}) {
      Report report;
      const Board larger = board_of(*menu, request, report);
      REQUIRE_FALSE(report.has_errors());
      REQUIRE(larger.order.dishes == written.order.dishes);
      for (std::size_t d = 0; d < written.order.dishes; ++d)
        CHECK(larger.order.makings[d].recipe->factor == written.order.makings[d].recipe->factor * Fraction(2));
      CHECK(larger.serves->low == menu->serves->low * Fraction(2));
    }
    Report refused;  // nobody says what a table weighs
    board_of(*menu, weight, refused);
    CHECK(refused.has_errors());
  }
}

TEST_CASE("one order for two recipes is the sum of both, whatever their order") {
  tests::BookOfFiles book;
  const auto all = book.recipes();
  for (std::size_t i = 1; i < all.size(); ++i) {
    if (all[i]->kind == FileKind::menu || all[i - 1]->kind == FileKind::menu) continue;
    std::vector<Board> both, turned, first, second;
    both.push_back(board(*all[i - 1])), both.push_back(board(*all[i]));
    turned.push_back(board(*all[i])), turned.push_back(board(*all[i - 1]));
    const Sums sum = sums_of(bought(both));
    CHECK(sum == sums_of(bought(turned)));
  }
}

// A need of the scaled recipe is the need of the written one times the pace of its line.
TEST_CASE("to scale and order is to order and scale") {
  tests::BookOfFiles book;
  int lines = 0, standing = 0, gentle_ones = 0;
  for (const Recipe* recipe : book.recipes())
    for (const Fraction k : {Fraction(3), Fraction::of(1, 2), Fraction::of(7, 3)}) {
      if (recipe->kind == FileKind::menu) continue;
      const Recipe larger = scale(*recipe, k);
      const Needs written = needs_of(*recipe, kNone, 0, recipe->kitchen.get()), scaled = needs_of(larger, kNone, 0, recipe->kitchen.get());
      REQUIRE(written.list.size() == scaled.list.size());
      for (std::size_t i = 0; i < written.list.size(); ++i, ++lines) {
        const Pace pace = pace_of(*recipe, recipe->lines[written.list[i].line]);
        standing += pace == Pace::still, gentle_ones += pace == Pace::gentle;
        const Fraction by = pace == Pace::still ? Fraction(1) : pace == Pace::gentle ? gentle(k) : k;
        CHECK_MESSAGE(scaled.list[i].measure.amount == written.list[i].measure.amount * by, recipe->title << ": " << written.list[i].name);
      }
      // The same through the whole order, at the size that is asked of it.
      std::vector<Board> asked, made;
      asked.push_back(board(*recipe, k)), made.push_back(board(larger));
      CHECK_MESSAGE(sums_of(bought(asked)) == sums_of(bought(made)), recipe->title);
    }
  CHECK(lines > 300);
  CHECK(standing > 0);
  CHECK(gentle_ones > 0);
}

TEST_CASE("costs add up exactly, and shown they miss by no more than they say") {
  tests::BookOfFiles book;
  int parts = 0;
  for (const Recipe* recipe : book.recipes()) {
    const Board one = board(*recipe);
    const Costing all = costing_of(*recipe, one, 0);
    Fraction sum(0), shown(0);
    std::int64_t lines = 0;
    for (const CostPart& part : all.parts) {
      Fraction own(0);
      for (const CostLine& line : part.lines) {
        if (line.cost.is_lost()) continue;
        own += line.cost, ++lines;
        shown += Fraction::of((line.cost * Fraction(100)).nearest(), 100);
      }
      CHECK_MESSAGE(own == part.cost, recipe->title << ": " << part.name);
      sum += part.cost, ++parts;
    }
    CHECK_MESSAGE(sum == all.cost, recipe->title);
    const Fraction total = Fraction::of((all.cost * Fraction(100)).nearest(), 100);
    CHECK_MESSAGE((shown - total).abs() <= Fraction::of(lines + 1, 200), recipe->title);
  }
  CHECK(parts > 30);
}

// The invented price list leaves out what is priced on the day, and nothing else.
TEST_CASE("every ingredient of the example book has a price but one") {
  tests::BookOfFiles book;
  std::set<std::string> without;
  for (const Recipe* recipe : book.recipes())
    for (const std::string& name : costing_of(*recipe, board(*recipe), 0).no_price) without.insert(name.substr(0, name.find(" (")));
  CHECK(without == std::set<std::string>{"samphire"});
}

TEST_CASE("whole packs hold what is wanted, and one fewer does not") {
  tests::BookOfFiles book;
  int packs = 0;
  for (const Recipe* recipe : book.recipes()) {
    std::vector<Board> one;
    one.push_back(board(*recipe));
    for (const Delivery& delivery : bought(one).deliveries)
      for (const Purchase& line : delivery.lines) {
        if (line.packs.is_lost()) continue;
        ++packs;
        CHECK(line.packs.is_whole());
        CHECK(line.packs * line.pack >= line.measure.amount);
        CHECK((line.packs - Fraction(1)) * line.pack < line.measure.amount);
        CHECK(line.left == line.packs * line.pack - line.measure.amount);
        if (line.price != nullptr) CHECK(line.cost == line.packs * line.price->money);
      }
  }
  CHECK(packs > 50);
}
