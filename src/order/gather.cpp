// The same things added up over all dishes, in packs, by supplier.
#include <algorithm>
#include <map>

#include "formula/price.hpp"
#include "order/days.hpp"
#include "order/goods.hpp"
#include "order/order.hpp"

namespace qtn {

std::vector<std::vector<Fraction>> dish_shares(const Board& board) {
  const std::size_t count = board.order.makings.size(), dishes = board.order.dishes;
  std::vector<std::vector<Fraction>> of(count, std::vector<Fraction>(dishes, Fraction(0)));
  for (std::size_t d = 0; d < dishes && d < count; ++d) of[d][d] = Fraction(1);
  // Whoever takes is settled before what is taken; a making is settled when all its takers are.
  std::vector<bool> settled(count, false);
  for (std::size_t d = 0; d < dishes && d < count; ++d) settled[d] = true;
  for (bool moved = true; moved;) {
    moved = false;
    for (std::size_t m = dishes; m < count; ++m) {
      const std::vector<Taken>& taken = board.taken[m];
      if (settled[m] || !std::all_of(taken.begin(), taken.end(), [&](const Taken& one) { return one.by < count && settled[one.by]; })) continue;
      Fraction all(0);
      for (const Taken& one : taken) all += one.share;
      for (const Taken& one : taken)
        for (std::size_t d = 0; d < dishes; ++d) of[m][d] += one.share / all * of[one.by][d];
      settled[m] = moved = true;
    }
  }
  return of;
}

namespace {

struct Met {  // a need and the board it stands on
  Need need;
  std::size_t board;
};

class Gatherer {
 public:
  Gatherer(std::span<const Board> boards, const std::optional<Minute>& serve, std::span<const Recipe* const> book)
      : boards_(boards), serve_(serve), book_(book) {
    for (const Board& board : boards)
      if (kitchen_ == nullptr) kitchen_ = board.kitchen;
  }

  Purchases run() {
    for (std::size_t b = 0; b < boards_.size(); ++b) read(b);
    for (auto& [key, met] : met_) settle(met);
    mention();
    std::sort(lines_.begin(), lines_.end(), [](const Purchase& a, const Purchase& b) { return a.key != b.key ? a.key < b.key : a.measure.dimension < b.measure.dimension; });
    for (Purchase& line : lines_) leftovers(line);
    share_out();
    return std::move(out_);
  }

 private:
  void read(std::size_t b) {
    const Board& board = boards_[b];
    shares_.push_back(dish_shares(board));
    begins_.push_back(first_days(board, serve_));
    for (Index m = 0; m < board.order.makings.size(); ++m) {
      const Making& making = board.order.makings[m];
      Needs needs = needs_of(*making.recipe, making.part, m, kitchen_);
      for (Need& need : needs.list) {
        out_.untrimmed = out_.untrimmed || !need.trimmed;
        met_[need.key].push_back({std::move(need), b});
      }
      for (Unmeasured& one : needs.also) also_.push_back({std::move(one), b});
    }
  }

  // All needs of one thing: in the measure of its price, else in their own where that is one, else in grams.
  void settle(std::vector<Met>& met) {
    const HousePrice* const price = price_of(kitchen_, met.front().need.name);
    std::vector<Measure> wanted;
    if (price != nullptr) wanted.push_back(pack_of(*price, kitchen_->dialect));
    const Measure& first = met.front().need.measure;
    const bool one = std::all_of(met.begin(), met.end(), [&](const Met& other) { return other.need.measure.meets(first); });
    if (price == nullptr && !one) wanted.push_back({Fraction(0), Dimension::mass, kNoUnit});
    for (const Met& each : met) wanted.push_back(each.need.measure);
    std::vector<bool> done(met.size(), false);
    for (const Measure& measure : wanted) add(met, done, measure, price);
  }

  void add(const std::vector<Met>& met, std::vector<bool>& done, const Measure& measure, const HousePrice* price) {
    Purchase line;
    line.measure = measure, line.measure.amount = Fraction(0);
    line.spoonful = true;
    for (std::size_t i = 0; i < met.size(); ++i) {
      if (done[i]) continue;
      std::string through;
      const Fraction amount = in_measure(met[i].need, measure, &through);
      if (amount.is_lost()) continue;
      done[i] = true;
      take(line, met[i], amount, through);
    }
    if (line.name.empty()) return;
    if (price != nullptr && pack_of(*price, kitchen_->dialect).meets(measure)) pay(line, *price);
    else packs_of_the_page(line);
    lines_.push_back(std::move(line));
  }

  void take(Purchase& line, const Met& met, const Fraction& amount, const std::string& through) {
    const Need& need = met.need;
    const bool first = line.name.empty();
    if (first || amount > line.most) line.name = need.name, line.most = amount;  // "large eggs", though one dish wants one egg
    if (first) line.key = need.key, line.pack = need.pack, line.pack_words = need.pack_words;
    if (!(line.pack == need.pack)) line.pack = Fraction::lost(), line.pack_words.clear();
    const Board& board = boards_[met.board];
    line.spoonful = line.spoonful && need.spoonful;
    line.measure.amount += amount;
    if (need.optional) line.optional += amount;
    if (!through.empty()) {
      std::string text = write_measure(need.measure) + " counted as " + write_measure({amount, line.measure.dimension, line.measure.noun}) + ", " + through;
      if (std::find(line.through.begin(), line.through.end(), text) == line.through.end()) line.through.push_back(std::move(text));
    }
    for (std::size_t d = 0; d < board.order.dishes; ++d) {
      const Fraction part = amount * shares_[met.board][need.making][d];
      if (!part.is_zero()) share(line, board, d, need, part);
    }
    const auto& begins = begins_[met.board];
    if (!begins.empty() && (line.needed == 0 || begins[need.making] < line.needed)) line.needed = begins[need.making];
  }

  static void share(Purchase& line, const Board& board, std::size_t dish, const Need& need, const Fraction& amount) {
    DishShare mine;
    mine.dish = board.order.makings[dish].recipe->title;
    if (need.making >= board.order.dishes) {
      const Making& making = board.order.makings[need.making];
      mine.via = making.part != kNone ? making.recipe->parts[making.part].name : making.recipe->title;
    }
    mine.amount = amount, mine.optional = need.optional;
    for (DishShare& other : line.shares)
      if (other.dish == mine.dish && other.via == mine.via && other.optional == mine.optional) {
        other.amount += amount;
        return;
      }
    line.shares.push_back(std::move(mine));
  }

  void pay(Purchase& line, const HousePrice& price) const {
    line.price = &price;
    const Fraction pack = pack_of(price, kitchen_->dialect).amount;
    line.pack = pack;
    line.pack_words = pack == Fraction(1) && line.measure.dimension == Dimension::count ? "" : in_print(write_plain(price.pack));
    if (price.loose && line.measure.dimension != Dimension::count) {
      line.cost = cost_of(line.measure.amount, pack, price.money);
      return;
    }
    line.packs = Fraction::of((line.measure.amount / pack).ceil(), 1);
    line.left = line.packs * pack - line.measure.amount;
    line.cost = line.packs * price.money;
  }

  // 2 x 400 g tins: whole ones, price or no price.
  static void packs_of_the_page(Purchase& line) {
    if (line.pack.is_lost()) return;
    line.packs = Fraction::of((line.measure.amount / line.pack).ceil(), 1);
    line.left = line.packs * line.pack - line.measure.amount;
  }

  // To taste, beside an amount that is ordered anyway or under a heading of its own.
  void mention() {
    for (const auto& unmeasured : also_) {
      const Unmeasured& one = unmeasured.first;
      const Board& board = boards_[unmeasured.second];
      const std::string dish(board.order.makings[one.making].recipe->title);
      const std::string words = (one.words.empty() ? "" : one.words + " ") + "(" + dish + ")";
      const auto line = std::find_if(lines_.begin(), lines_.end(), [&](const Purchase& other) { return other.key == one.key; });
      if (line != lines_.end()) {
        if (std::find(line->more.begin(), line->more.end(), words) == line->more.end()) line->more.push_back(words);
        continue;
      }
      const auto known = std::find_if(out_.also.begin(), out_.also.end(), [&](const Unmeasured& other) { return other.key == one.key; });
      if (known == out_.also.end()) out_.also.push_back({one.name, one.key, words, 0});
      else if (known->words.find(words) == std::string::npos) known->words += ", " + words;
    }
    std::sort(out_.also.begin(), out_.also.end(), [](const Unmeasured& a, const Unmeasured& b) { return a.key < b.key; });
  }

  bool on_a_board(const Recipe& recipe) const {
    for (const Board& board : boards_)
      for (const Making& making : board.order.makings)
        if (making.recipe->title == recipe.title) return true;
    return false;
  }

  // Recipes of the book that want no more of it than is left, those that want most first.
  void leftovers(Purchase& line) const {
    if (line.left.is_lost() || line.left.sign() <= 0) return;
    std::vector<std::pair<Fraction, std::string_view>> found;
    for (const Recipe* recipe : book_) {
      if (recipe->kind != FileKind::recipe || on_a_board(*recipe)) continue;
      Fraction all(0);
      for (const Need& need : needs_of(*recipe, kNone, 0, kitchen_).list)
        if (need.key == line.key) all += in_measure(need, line.measure);
      if (!all.is_lost() && all.sign() > 0 && all <= line.left) found.push_back({all, recipe->title});
    }
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first != b.first ? a.first > b.first : a.second < b.second; });
    constexpr std::size_t kMost = 2;
    for (std::size_t i = 0; i < found.size() && i < kMost; ++i)
      line.left_for.push_back({std::string(found[i].second), found[i].first});
  }

  void share_out() {
    const std::size_t named = kitchen_ == nullptr ? 0 : kitchen_->suppliers.size();
    std::vector<Delivery> all(named + 1);
    for (std::size_t s = 0; s < named; ++s) all[s].supplier = &kitchen_->suppliers[s];
    for (Purchase& line : lines_) {
      const Supplier* const supplier = supplier_of(kitchen_, line.name);
      const std::size_t at = supplier == nullptr ? named : static_cast<std::size_t>(supplier - kitchen_->suppliers.data());
      if (line.cost.is_lost()) out_.no_price.push_back(line.name);
      else out_.cost += line.cost;
      all[at].lines.push_back(std::move(line));
    }
    for (Delivery& delivery : all) {
      if (delivery.lines.empty()) continue;
      for (const Purchase& line : delivery.lines)
        if (line.needed != 0 && (!delivery.needed || line.needed < *delivery.needed)) delivery.needed = line.needed;
      set_days(delivery);
      out_.timed = out_.timed || delivery.needed.has_value();
      out_.deliveries.push_back(std::move(delivery));
    }
  }

  std::span<const Board> boards_;
  const std::optional<Minute>& serve_;
  std::span<const Recipe* const> book_;
  const Kitchen* kitchen_ = nullptr;
  std::vector<std::vector<std::vector<Fraction>>> shares_;  // by board
  std::vector<std::vector<Minute>> begins_;                 // by board and making; empty where no hour is known
  std::map<std::string, std::vector<Met>> met_;
  std::vector<std::pair<Unmeasured, std::size_t>> also_;
  std::vector<Purchase> lines_;
  Purchases out_;
};

}  // namespace

Purchases purchases_of(std::span<const Board> boards, const std::optional<Minute>& serve, std::span<const Recipe* const> book) {
  return Gatherer(boards, serve, book).run();
}

}  // namespace qtn
