// How one amount is shown in one system of measures. Private to this room.
#pragma once
#include <optional>

#include "adapt/measures.hpp"
#include "adapt/text.hpp"

namespace qtn {

// Does the page itself name the amount, unscaled? Then it may be shown as it stands there.
enum class Origin : std::uint8_t { page, worked_out };

class Shower {
 public:
  // `lacks` is null for a second column: its lacks were said with the first.
  Shower(const Recipe& recipe, const Reader& reader, Report* lacks) : recipe_(recipe), reader_(reader), lacks_(lacks) {}

  Shown line(const TakeLine& line);
  // What a mention takes of a line, shown as the line is.
  Shown part_of(const TakeLine& line, const Quantity& amount);
  Shown amount(const TakeLine* line, const Quantity& amount, Span written, Origin origin);
  // A temperature of a clause; `oven`: what an oven is set to, so that it has another setting with
  // a fan; `restated`: the page gives that itself.
  Shown heat(const Term& term, bool oven, bool restated) const;
  // By 10 °C: a difference converts without the 32 (S1-111).
  Shown difference(const Term& term) const;
  bool stays(UnitId unit) const { return qtn::stays(unit, recipe_.dialect, reader_); }
  bool heat_stays(UnitId scale) const;
  // The rounding of the line shown last, where it was one number: lines of one ratio are rounded together.
  const std::optional<Rounded>& last() const { return last_; }

 private:
  Shown measured(const TakeLine* line, const Quantity& amount, Span written, Origin origin);
  Shown rounded(const Quantity& amount, const Way& way, const Ends& base);
  bool guided() const { return recipe_.kitchen && recipe_.kitchen->standardized; }
  bool by_table(const Way& way) const;
  std::optional<Way> spoon_by_table(const TakeLine* line, const Quantity& amount, const Ends& base, const Way& way) const;
  Shown in_own_unit(const Quantity& amount);
  Shown too_small(const TakeLine* line, const Quantity& amount, const Ends& base, Shown weighed);
  Shown things(const TakeLine* line, const Quantity& amount);
  Shown pinches(const Quantity& amount);
  Shown packs(const TakeLine& line);
  const Stated* restated(const TakeLine& line) const;
  void lacking(const TakeLine& line);
  void too_little(const TakeLine& line, const Shown& shown);
  void splitting(const TakeLine& line, const Fraction& count);
  void pinch_scaled(const TakeLine& line, const Quantity& amount);
  Fraction allowed(const Quantity& amount) const { return tolerance(amount.manner, recipe_.tolerance()); }
  const Fraction& finest() const;

  const Recipe& recipe_;
  Reader reader_;
  Report* lacks_;
  std::optional<Rounded> last_;
  bool ratio_ = false;  // the line in hand is tied by a ratio
};

}  // namespace qtn
