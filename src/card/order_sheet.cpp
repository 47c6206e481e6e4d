#include "card/order_sheet.hpp"

#include <algorithm>
#include <array>

#include "card/listed.hpp"
#include "measure/money.hpp"

namespace qtn {
namespace {

constexpr std::array<Column, 5> kColumns{{{Caption::what}, {Caption::wanted, true}, {Caption::packs}, {Caption::cost, true}, {Caption::details}}};

class OrderWriter : SheetWriter {
 public:
  OrderWriter(const Purchases& all, std::span<const Board> boards, const std::optional<Minute>& serve, const Words& words)
      : SheetWriter(words), all_(all), boards_(boards), serve_(serve) {
    for (const Board& board : boards)
      if (kitchen_ == nullptr) kitchen_ = board.kitchen;
  }

  Card run() {
    std::string titles;
    for (const Board& board : boards_) titles += (titles.empty() ? "" : "; ") + title_of(board);
    // A list of many is no title.
    constexpr std::size_t kNamed = 3;
    const bool many = boards_.size() > kNamed;
    card_.title = plain(many ? std::to_string(boards_.size()) + " dishes" + (kitchen_ != nullptr ? " of " + std::string(kitchen_->name) : "") : titles);
    card_.edition = caption(Caption::order_sheet);
    card_.notes_heading = caption(Caption::notes);
    card_.columns = {"supplier", "comes", "orderBy", "item", "amount", "unit", "exact", "packs", "pack", "cost", "currency", "left", "leftFor"};
    if (many) fact(FactKind::dishes, Caption::dishes, titles);
    head();
    for (const Delivery& delivery : all_.deliveries) this->delivery(delivery);
    also();
    notes();
    clean(card_);
    return std::move(card_);
  }

 private:
  std::string_view currency() const { return kitchen_ != nullptr ? kitchen_->currency : std::string_view(); }

  // "Cold custard (Egg-free)"
  static std::string title_of(const Board& board) {
    const std::string_view version = board.order.makings.empty() || board.order.dishes != 1 ? std::string_view() : board.order.makings.front().recipe->version;
    return board.title + (version.empty() ? "" : " (" + std::string(version) + ")");
  }

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
    for (std::size_t i = 0; i < hours.size(); ++i) {
      const bool same = i > 0 && day_begin(hours[i]) == day_begin(hours[i - 1]);
      when += (i == 0 ? "" : same ? ", " : "; ") + (same ? "" : write_day(hours[i]) + ", ") + write_clock(hours[i]);
    }
    if (!when.empty()) fact(FactKind::serve, Caption::serve, when);
    constexpr Minute kWeek = 7 * 1440;
    if (!hours.empty() && hours.back() - hours.front() > kWeek)
      remark(Remark::Kind::watch, "These tables are more than a week apart, and this is one list, brought before the first of them: what does not keep is better ordered table by table.");
    if (all_.cost.sign() > 0)
      fact(FactKind::cost, Caption::to_pay, write_money(all_.cost, currency()) + (all_.no_price.empty() ? "" : ", for what has a price"));
  }

  void delivery(const Delivery& delivery) {
    const Supplier* const from = delivery.supplier;
    section(from != nullptr ? plain(from->name) : caption(Caption::no_supplier));
    days(delivery);
    Rows rows;
    Fraction together(0);
    std::size_t priced = 0;
    for (const Purchase& line : delivery.lines) {
      rows.push_back({plain(line.name), amount(to_buy(line, kitchen_)), packs(line), line.cost.is_lost() ? Range32{} : amount(write_money(line.cost, currency())), details(line)});
      record(delivery, line);
      if (!line.cost.is_lost()) together += line.cost, ++priced;
    }
    const bool summed = priced > 1;
    if (summed) rows.push_back({caption(Caption::together), {}, {}, amount(write_money(together, currency())), plain(priced == delivery.lines.size() ? "" : "for what has a price")});
    table(kColumns, rows, summed);
  }

  // When it comes; where nobody says that, when it is wanted.
  void days(const Delivery& delivery) {
    const Supplier* const from = delivery.supplier;
    const std::string when = from != nullptr ? std::string(from->when) : std::string();
    if (delivery.comes) fact(FactKind::comes, Caption::comes, write_day(*delivery.comes) + (when.empty() ? "" : " (" + when + ")"));
    else if (!when.empty()) fact(FactKind::comes, Caption::comes, when);
    if (!delivery.comes && delivery.needed) fact(FactKind::wanted, Caption::wanted, "before " + write_day(*delivery.needed));
    if (delivery.order_by) fact(FactKind::order_by, Caption::order_by, write_day(*delivery.order_by));
    else if (from != nullptr && from->ahead > 0) fact(FactKind::order_by, Caption::order_by, std::to_string(from->ahead) + (from->ahead == 1 ? " day" : " days") + " before it comes");
  }

  Range32 packs(const Purchase& line) {
    if (line.packs.is_lost() || line.pack_words.empty()) return {};
    constexpr std::size_t kShort = 10;  // "1 × 250 g" is kept in one piece, of "3 × 400 g tins" the size
    const std::string number = line.packs.exact() + " × ";
    if (number.size() + line.pack_words.size() <= kShort + 1) return amount(number + line.pack_words);
    out_.begin();
    out_.put(number);
    out_.add(line.pack_words, Role::amount);
    return out_.end();
  }

  static std::string written(const Purchase& line, const Fraction& part) { return write_measure({part, line.measure.dimension, line.measure.noun}); }
  void put_amount(const Purchase& line, const Fraction& part) {
    out_.add(in_house({part, line.measure.dimension, line.measure.noun}, line.spoonful, kitchen_), Role::amount);
  }

  // An order for one dish need not say of each line that it is for that dish.
  bool goes_without_saying(const Purchase& line) const {
    const bool one_dish = boards_.size() == 1 && boards_.front().order.dishes == 1;
    return one_dish && line.shares.size() == 1 && line.shares.front().via.empty() && !line.shares.front().optional;
  }

  // Whose it is, what is left over, and how it was counted.
  Range32 details(const Purchase& line) {
    out_.begin();
    const auto next = [&](const std::string& text) { out_.put(out_.empty() ? text : "; " + text); };
    if (!goes_without_saying(line)) shares(line);
    if (!line.more.empty()) next("and " + in_words(line.more));
    if (!line.left.is_lost() && !line.left.is_zero()) next(""), left(line);
    for (const std::string& text : line.through) next(text);
    return out_.end();
  }

  void shares(const Purchase& line) {
    out_.put("for ");
    for (std::size_t i = 0; i < line.shares.size(); ++i) {
      const DishShare& share = line.shares[i];
      out_.put((i == 0 ? "" : ", ") + share.dish + " ");
      put_amount(line, share.amount);
      if (!share.via.empty() || share.optional)
        out_.put(" (" + share.via + (share.via.empty() || !share.optional ? "" : ", ") + (share.optional ? std::string(words_[Caption::optional]) : "") + ")");
    }
  }

  void left(const Purchase& line) {
    put_amount(line, line.left);
    out_.put(" left over");
    for (std::size_t i = 0; i < line.left_for.size(); ++i) {
      out_.put((i == 0 ? ", enough for " : i + 1 == line.left_for.size() ? " and " : ", ") + line.left_for[i].dish + " (");
      put_amount(line, line.left_for[i].amount);
      out_.put(")");
    }
  }

  void record(const Delivery& delivery, const Purchase& line) {
    const auto day = [](const std::optional<Minute>& one) { return one ? write_wall(*one).substr(0, 10) : std::string(); };
    const auto number = [](const Fraction& value) { return value.is_lost() ? std::string() : value.decimal(3); };
    const Quantity wanted = quantity_of(line.measure);
    std::string for_what;
    for (const LeftUse& use : line.left_for) for_what += (for_what.empty() ? "" : ", ") + use.dish + " (" + written(line, use.amount) + ")";
    Entry one;
    one.cells = {delivery.supplier != nullptr ? std::string(delivery.supplier->name) : std::string(), day(delivery.comes), day(delivery.order_by), line.name,
                 number(line.measure.amount), std::string(unit(wanted.unit).symbol), line.measure.amount.exact(), number(line.packs),
                 line.packs.is_lost() ? std::string() : line.pack_words, line.cost.is_lost() ? std::string() : money_number(line.cost, currency()),
                 line.cost.is_lost() ? std::string() : std::string(currency()), number(line.left), for_what};
    for (const DishShare& share : line.shares)
      one.of.emplace_back(share.dish + (share.via.empty() ? "" : " (" + share.via + ")"), written(line, share.amount));
    card_.records.push_back(std::move(one));
  }

  void also() {
    if (all_.also.empty()) return;
    section(caption(Caption::also_have));
    Rows rows;
    for (const Unmeasured& one : all_.also) rows.push_back({plain(one.name), plain(one.words)});
    table(std::array{kColumns.front(), kColumns.back()}, rows, false);
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
    if (all_.cost.sign() > 0) remark(Remark::Kind::note, "Costs are worked out exactly and rounded where they are shown; a sum is rounded once.");
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
