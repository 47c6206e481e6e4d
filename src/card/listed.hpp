// What sheets of orders and costs have in common. Private to this room.
#pragma once
#include <span>

#include "card/words.hpp"
#include "card/writer.hpp"
#include "order/order.hpp"

namespace qtn {

struct Column {
  Caption head;
  bool sum = false;  // figures, set right
};

using Rows = std::vector<std::vector<Range32>>;

class SheetWriter {
 public:
  explicit SheetWriter(const Words& words) : words_(words), out_(card_) { card_.language = words.language; }

 protected:
  Range32 plain(std::string_view text) { return out_.line(text); }
  Range32 amount(std::string_view text) { return out_.line(text, Role::amount); }
  Range32 caption(Caption one) { return plain(words_[one]); }
  // A line of a head; it belongs to the section in hand, or to the card where there is none.
  void fact(FactKind kind, Caption label, const std::string& value) {
    Fact one;
    one.kind = static_cast<std::uint16_t>(kind);
    one.label = caption(label);
    one.value = plain(value);
    card_.facts.push_back(one);
    ++(card_.parts.empty() ? card_.head : card_.parts.back().facts).count;
  }
  void section(Range32 title) {
    Section one;
    one.title = title;
    one.facts.first = static_cast<std::uint32_t>(card_.facts.size());
    card_.parts.push_back(one);
  }
  // The table of the section in hand, its last column under each row. A column that says nothing in any row is left out.
  void table(std::span<const Column> columns, const Rows& rows, bool last_is_total);
  void remark(Remark::Kind kind, const std::string& text) { card_.remarks.push_back({kind, out_.spoken(text)}); }

  const Words& words_;
  Card card_;
  Writer out_;
};

// "a, b and c".
std::string in_words(const std::vector<std::string>& names);
// As bought, rounded up on the steps of a shop's scale: "2.8 kg", "3"; by pounds and ounces in an American house.
std::string to_buy(const Purchase& line, const Kitchen* kitchen);
// Of a bill or a list: to the nearest, in the measures of the house; spoons where the page has them.
std::string in_house(const Measure& measure, bool spoonful, const Kitchen* kitchen);
// "£1.95 per 250 g", "£0.35 each".
std::string say_price(const HousePrice& price, const Kitchen& kitchen);
std::string say_day(int day);  // "2026-01-05"
Quantity quantity_of(const Measure& measure);

}  // namespace qtn
