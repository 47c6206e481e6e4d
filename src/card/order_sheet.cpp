#include "card/order_sheet.hpp"

#include <algorithm>

#include "card/listed.hpp"
#include "measure/money.hpp"

namespace qtn {
namespace {

class OrderWriter : SheetWriter {
 public:
  OrderWriter(const Purchases& all, std::span<const Board> boards, const std::optional<Minute>& serve, const Words& words)
      : SheetWriter(words), all_(all), boards_(boards), serve_(serve) {
    for (const Board& board : boards)
      if (kitchen_ == nullptr) kitchen_ = board.kitchen;
  }

  Card run() {
    std::string titles;
    for (const Board& board : boards_) titles += (titles.empty() ? "" : ", ") + board.title;
    card_.title = plain(titles);
    card_.edition = caption(Caption::order_sheet);
    card_.notes_heading = caption(Caption::notes);
    card_.first_column = caption(Caption::wanted), card_.second_column = caption(Caption::packs);
    card_.second = true;
    card_.columns = {"supplier", "comes", "orderBy", "item", "amount", "unit", "exact", "packs", "pack", "cost", "currency", "left", "leftFor"};
    head();
    for (const Delivery& delivery : all_.deliveries) this->delivery(delivery);
    also();
    notes();
    clean(card_);
    return std::move(card_);
  }

 private:
  std::string_view currency() const { return kitchen_ != nullptr ? kitchen_->currency : std::string_view(); }

  void head() {
    std::vector<Minute> hours;
    for (const Board& board : boards_)
      for (const std::optional<Minute>& one : board.serve) {
        const std::optional<Minute> at = serve_ ? serve_ : one;
        if (at && std::find(hours.begin(), hours.end(), *at) == hours.end()) hours.push_back(*at);
      }
    if (hours.empty() && serve_) hours.push_back(*serve_);
    std::sort(hours.begin(), hours.end());
    std::string when;
    for (const Minute one : hours) when += (when.empty() ? "" : "; ") + write_day(one) + ", " + write_clock(one);
    if (!when.empty()) fact(FactKind::serve, Caption::serve, when);
    if (all_.cost.sign() > 0)
      fact(FactKind::cost, Caption::to_pay, write_money(all_.cost, currency()) + (all_.no_price.empty() ? "" : ", for what has a price"));
  }

  void delivery(const Delivery& delivery) {
    const Supplier* const from = delivery.supplier;
    section(from != nullptr ? plain(from->name) : caption(Caption::no_supplier));
    if (from != nullptr) days(delivery, *from);
    for (const Purchase& line : delivery.lines) purchase(delivery, line);
  }

  void days(const Delivery& delivery, const Supplier& from) {
    std::string comes(from.when);
    if (delivery.comes) comes = write_day(*delivery.comes) + (comes.empty() ? "" : " (" + comes + ")");
    else if (delivery.needed) comes += (comes.empty() ? "" : "; ") + std::string("wanted before ") + write_day(*delivery.needed);
    if (!comes.empty()) fact(FactKind::comes, Caption::comes, comes);
    if (delivery.order_by) fact(FactKind::order_by, Caption::order_by, write_day(*delivery.order_by));
    else if (from.ahead > 0) fact(FactKind::order_by, Caption::order_by, std::to_string(from.ahead) + (from.ahead == 1 ? " day" : " days") + " before it comes");
  }

  std::string packs(const Purchase& line) const {
    std::string text;
    if (!line.packs.is_lost() && !line.pack_words.empty()) text = line.packs.exact() + " × " + line.pack_words;
    if (!line.cost.is_lost()) text += (text.empty() ? "" : ", ") + write_money(line.cost, currency());
    return text;
  }

  std::string amount(const Purchase& line, const Fraction& part) const { return write_measure({part, line.measure.dimension, line.measure.noun}); }

  std::string left(const Purchase& line) const {
    if (line.left.is_lost() || line.left.is_zero()) return {};
    return amount(line, line.left) + " left over" + (line.left_for.empty() ? "" : ", enough for " + in_words(line.left_for));
  }

  void purchase(const Delivery& delivery, const Purchase& line) {
    Row one;
    one.amount = exact(to_buy(line, kitchen_), Role::amount, quantity_of(line.measure));
    one.second = plain(packs(line), Role::second);
    one.name = plain(line.name, Role::name);
    one.optional = !line.optional.is_zero();
    std::string rest = "for ";
    for (std::size_t i = 0; i < line.shares.size(); ++i) {
      const DishShare& share = line.shares[i];
      rest += (i == 0 ? "" : ", ") + share.dish + " " + amount(line, share.amount);
      if (!share.via.empty() || share.optional)
        rest += " (" + share.via + (share.via.empty() || !share.optional ? "" : ", ") + (share.optional ? std::string(words_[Caption::optional]) : "") + ")";
    }
    const auto add = [&](const std::string& text) {
      if (!text.empty()) rest += "; " + text;
    };
    if (!line.more.empty()) add("and " + in_words(line.more));
    add(left(line));
    for (const std::string& text : line.through) add(text);
    one.rest = plain(rest);
    row(one);
    record(delivery, line);
  }

  void record(const Delivery& delivery, const Purchase& line) {
    const auto day = [](const std::optional<Minute>& one) { return one ? write_wall(*one).substr(0, 10) : std::string(); };
    const auto number = [](const Fraction& value) { return value.is_lost() ? std::string() : value.decimal(3); };
    const Quantity wanted = quantity_of(line.measure);
    std::string for_what;
    for (const std::string& text : line.left_for) for_what += (for_what.empty() ? "" : ", ") + text;
    Entry one;
    one.cells = {delivery.supplier != nullptr ? std::string(delivery.supplier->name) : std::string(), day(delivery.comes), day(delivery.order_by), line.name,
                 number(line.measure.amount), std::string(unit(wanted.unit).symbol), line.measure.amount.exact(), number(line.packs),
                 line.packs.is_lost() ? std::string() : line.pack_words, line.cost.is_lost() ? std::string() : money_number(line.cost, currency()),
                 line.cost.is_lost() ? std::string() : std::string(currency()), number(line.left), for_what};
    for (const DishShare& share : line.shares)
      one.of.emplace_back(share.dish + (share.via.empty() ? "" : " (" + share.via + ")"), amount(line, share.amount));
    card_.records.push_back(std::move(one));
  }

  void also() {
    if (all_.also.empty()) return;
    section(caption(Caption::also_have));
    for (const Unmeasured& one : all_.also) {
      Row line;
      line.name = plain(one.name, Role::name), line.rest = plain(one.words);
      row(line);
    }
  }

  void notes() {
    std::string amounts = "Amounts are as bought, at the larger end of a range, and rounded up.";
    if (all_.untrimmed) amounts += " Where a recipe does not say what it is cut from (`from 700 g`), nothing is added for trimming.";
    remark(Remark::Kind::note, amounts + " Tap water is not ordered.");
    if (all_.timed)
      remark(Remark::Kind::note, "A delivery is the supplier's last before the day its things are first wanted, by the written times with hands enough; where the kitchen does not say how many days ahead to order, the order goes the day before it comes.");
    for (const Board& board : boards_) {
      for (const MadeOnce& one : board.shared) {
        std::string text = std::string(words_[Caption::made_once]) + ": " + one.name + ", ";
        for (std::size_t i = 0; i < one.portions.size(); ++i) text += (i == 0 ? "" : ", ") + one.portions[i];
        remark(Remark::Kind::note, text + ".");
      }
      for (const std::string& one : board.unsized)
        remark(Remark::Kind::lacking, "How much of " + one + " is needed cannot be worked out; it is ordered for the size that it is written in.");
    }
    if (!all_.no_price.empty() && all_.cost.sign() > 0) remark(Remark::Kind::lacking, "What these cost: " + in_words(all_.no_price) + ".");
  }

  const Purchases& all_;
  std::span<const Board> boards_;
  const std::optional<Minute>& serve_;
  const Kitchen* kitchen_ = nullptr;
};

}  // namespace

Card make_order(const Purchases& all, std::span<const Board> boards, const std::optional<Minute>& serve, const Words& words) {
  return OrderWriter(all, boards, serve, words).run();
}

}  // namespace qtn
