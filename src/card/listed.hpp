// What sheets of orders and costs have in common. Private to this room.
#pragma once
#include "card/writer.hpp"
#include "card/words.hpp"
#include "order/order.hpp"

namespace qtn {

class SheetWriter {
 public:
  explicit SheetWriter(const Words& words) : words_(words), out_(card_) { card_.language = words.language; }

 protected:
  Range32 plain(std::string_view text, Role role = Role::text) { return out_.line(text, role); }
  Range32 exact(std::string_view text, Role role, const Quantity& amount) {
    out_.begin();
    out_.add(text, role, amount);
    return out_.end();
  }
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
    one.rows.first = static_cast<std::uint32_t>(card_.rows.size());
    card_.parts.push_back(one);
  }
  void row(Row one) {
    card_.rows.push_back(one);
    ++card_.parts.back().rows.count;
  }
  void remark(Remark::Kind kind, const std::string& text) { card_.remarks.push_back({kind, plain(text)}); }

  const Words& words_;
  Card card_;
  Writer out_;
};

// "a, b and c".
std::string in_words(const std::vector<std::string>& names);
// As bought, rounded up on the steps of a shop's scale: "2.8 kg", "3"; by pounds and ounces in an American house.
std::string to_buy(const Purchase& line, const Kitchen* kitchen);
// "£1.95 per 250 g", "£0.35 each".
std::string say_price(const HousePrice& price, const Kitchen& kitchen);
std::string say_day(int day);  // "2026-01-05"
Quantity quantity_of(const Measure& measure);

}  // namespace qtn
