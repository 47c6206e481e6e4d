// Writes runs into a card. One range of runs is written at a time: begin(), then what it says, then end().
#pragma once
#include <string_view>

#include "card/card.hpp"

namespace qtn {

class Writer {
 public:
  explicit Writer(Card& card) : card_(card) {}

  void begin() { first_ = size(card_.runs); }
  // The runs since begin(); a blank at their end is dropped.
  Range32 end();
  bool empty() const { return card_.runs.size() == first_; }

  void put(std::string_view text) { add(text, Role::text); }
  // Text that stands beside text becomes one run with it.
  void add(std::string_view text, Role role) { add(text, role, 0); }
  void add(std::string_view text, Role role, const Quantity& exact);
  // The same with every line end and run of blanks as one blank.
  void collapsed(std::string_view text, Role role);
  // All of a range in one call.
  Range32 line(std::string_view text, Role role = Role::text) {
    begin();
    collapsed(text, role);
    return end();
  }
  // A sentence of ours, in which `this` is code.
  Range32 spoken(std::string_view text);
  // A blank, unless one stands there already or nothing does.
  void blank();

  // What every run has from here on.
  std::uint8_t style = 0;
  std::uint16_t link = 0;
  std::uint16_t add_link(std::string_view target);

  // All that is written after a mark can be taken back.
  struct Mark {
    std::size_t text, runs, links, exacts;
    Run last;
  };
  Mark mark() const;
  void take_back(const Mark& mark);

  Card& card() { return card_; }

 private:
  template <class List>
  static std::uint32_t size(const List& list) {
    return static_cast<std::uint32_t>(list.size());
  }
  void add(std::string_view text, Role role, std::uint32_t exact);
  bool ends_in_blank() const;

  Card& card_;
  std::uint32_t first_ = 0;
};

// Makes a finished card safe to show: what is no UTF-8 and every NUL become U+FFFD, other control characters a blank.
void clean(Card& card);

}  // namespace qtn
