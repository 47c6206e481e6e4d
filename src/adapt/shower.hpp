// How one amount is shown in one system of measures. Private to this room.
#pragma once
#include <optional>

#include "adapt/adapt.hpp"

namespace qtn {

class Shower {
 public:
  Shower(const Recipe& recipe, System system, Dialect spoons, Report* lacks) : recipe_(recipe), system_(system), lacks_(lacks) {
    dialect_ = spoons != Dialect::unstated          ? spoons
               : system == System::american         ? Dialect::american
               : system == System::written          ? recipe.dialect
               : recipe.dialect == Dialect::american ? Dialect::british
                                                     : recipe.dialect;
  }

  // An amount of a line; `written` is its place in the source, shown as it stands where nothing changed it.
  // `worked_out`: it is no amount that the page names (a share, a percentage).
  Shown amount(const TakeLine* line, const Quantity& amount, Span written, bool worked_out);
  Shown line(const TakeLine& line);
  Shown heat(const Term& term, bool oven);
  Shown length(const Term& term);
  Shown as_written(Span span, const Quantity& exact) const;
  // The rounding of the amount shown last, where it was one number: ratios are rounded together.
  std::optional<Rounded> last;

 private:
  bool stays(UnitId unit) const;
  Ladder ladder(const TakeLine* line, const Quantity& amount, Ends& base);
  Ladder volume_ladder(const TakeLine* line, const Quantity& amount, Ends& base, bool spoonful);
  Shown rounded(const Quantity& amount, Ladder ladder, const Ends& base);
  Shown things(const TakeLine* line, const Quantity& amount);
  Shown packs(const TakeLine& line);
  void lacking(const TakeLine& line);

  const Recipe& recipe_;
  System system_;
  Dialect dialect_;
  Report* lacks_;
};

}  // namespace qtn
