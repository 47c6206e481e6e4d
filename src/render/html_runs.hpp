// The runs of a card in HTML: escaped, linked, dressed by role and style.
#pragma once
#include "card/card.hpp"
#include "render/html_escape.hpp"

namespace qtn {

class HtmlRuns {
 protected:
  HtmlRuns(const Card& card, std::string& out) : card_(card), ink_(out), text_(card.text) {}

  // The words alone, as an attribute or a title wants them.
  void raw(Range32 range);
  // `own` is the role that the place itself shows: no mark for it.
  void runs(Range32 range, Role own = Role::text);
  void date(Range32 range);

  const Card& card_;
  Ink ink_;

 private:
  std::uint16_t open_link(const Run& run);
  void styled(const Run& run, Role own);
  void dressed(const Run& run, Role own);
  void words(const Run& run) { text_.put(ink_, run.begin, run.size); }
  void time(const Run& run);
  void open(std::string_view element, std::string_view kind, const Run& run);
  bool open_time(const Quantity& length);

  CleanText text_;
};

}  // namespace qtn
