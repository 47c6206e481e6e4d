#include "adapt/shower.hpp"

#include "adapt/pace.hpp"
#include "adapt/ties.hpp"
#include "words/fold.hpp"

namespace qtn {

const Fraction& Shower::finest() const {
  static const Fraction one(1);
  return recipe_.kitchen ? recipe_.kitchen->finest : one;
}

void Shower::lacking(const TakeLine& line) {
  if (lacks_ == nullptr) return;
  for (const Diagnostic& said : lacks_->list())
    if (said.code == Code::no_density && said.span == line.name_span) return;
  lacks_->add(Code::no_density, line.name_span,
              "No weight by volume is known for " + std::string(line.name) + ", so it stays as it is written.");
}

// The spoon is filled in part, by eye; of a weight the house's scale shows nothing.
void Shower::too_little(const TakeLine& line, const Shown& shown) {
  if (lacks_ == nullptr || last_->exact.sign() <= 0) return;
  const bool spoon = last_->ladder == Ladder::spoons || last_->ladder == Ladder::cups;
  if (!spoon && last_->ladder != Ladder::grams && last_->ladder != Ladder::ounces) return;
  for (const Diagnostic& said : lacks_->list())
    if (said.code == Code::too_little && said.span == line.name_span) return;
  lacks_->add(Code::too_little, line.name_span,
              shown.text + " of " + std::string(line.name) +
                  (spoon ? " is less than the smallest spoon, ⅛ tsp: fill that in part, by eye."
                         : " is less than the kitchen's scale shows: it wants a finer one."));
}

Shown Shower::rounded(const Quantity& amount, const Way& way, const Ends& base) {
  const Fraction share = allowed(amount);
  const bool table = by_table(way);
  const auto round = [&](const Fraction& end) {
    const Fraction exact = way.times == Fraction(1) ? end : end * way.times;
    return table ? round_standard(way.ladder, exact, ratio_) : round_on(way.ladder, exact, share, way.dialect, finest());
  };
  last_ = round(base.low);
  return from_rounded(amount, *last_, amount.is_range() ? round(base.high) : *last_);
}

// A unit without a size of its own, such as a teacup: so many of them.
Shown Shower::in_own_unit(const Quantity& amount) {
  const Rounded low = round_on(Ladder::things, amount.low, allowed(amount), reader_.dialect);
  const Rounded high = round_on(Ladder::things, amount.high, allowed(amount), reader_.dialect);
  Shown shown = from_rounded(amount, low, high);
  shown.exact = amount;
  const std::string_view word = write_unit(amount.unit, high.shown);
  if (!word.empty()) (shown.text += ' ') += word;
  return shown;
}

// Under what a scale can show, a spoon where the density is known; else grams stay grams, which small scales have.
Shown Shower::too_small(const TakeLine* line, const Quantity& amount, const Ends& base, Shown weighed) {
  const Fraction density = line != nullptr ? known_of(recipe_, *line).density : Fraction::lost();
  if (!density.is_lost()) {
    const Ladder ladder = ladder_for(Dimension::volume, reader_.system, reader_.dialect, true);
    Shown spoons = rounded(amount, {ladder, reader_.dialect, Fraction(1) / density, false}, base);
    if (last_->rung != kTwoFigures) return spoons;
  }
  if (!is_decimal(amount.unit)) return weighed;
  return rounded(amount, {Ladder::grams, reader_.dialect, Fraction(1), false}, base);
}

// Pounds and ounces, American cups and spoons, where the house rounds by the published guide.
bool Shower::by_table(const Way& way) const {
  if (!guided()) return false;
  return way.ladder == Ladder::ounces || (way.ladder == Ladder::cups && way.dialect == Dialect::american);
}

// The guide gives a measure for what weighs under 2 oz, unless it is a quarter, a half or three quarters (S4-01).
std::optional<Way> Shower::spoon_by_table(const TakeLine* line, const Quantity& amount, const Ends& base, const Way& way) const {
  if (!by_table(way) || way.ladder != Ladder::ounces || line == nullptr || amount.is_range()) return std::nullopt;
  const Fraction ounces = base.low * way.times / size_of(common().ounce, Dialect::american);
  if (ounces >= Fraction(2) || (ounces < Fraction(1) && (ounces * Fraction(4)).is_whole())) return std::nullopt;
  const Fraction density = known_of(recipe_, *line).density;
  if (density.is_lost()) return std::nullopt;
  return Way{Ladder::cups, Dialect::american, way.times / density, false};
}

Shown Shower::measured(const TakeLine* line, const Quantity& amount, Span written, Origin origin) {
  Ends base = in_base(amount, recipe_.dialect);
  const bool nobodys =
      base.low.is_lost() || base.high.is_lost();  // nobody said whose spoons these are: they stay spoons
  if (nobodys && origin == Origin::page) return as_written(recipe_, written, amount);
  if (nobodys) base = in_base(amount, assumed_for(amount.unit));
  if (base.low.is_lost() || base.high.is_lost()) return in_own_unit(amount);
  Way way =
      nobodys ? own_way(amount.unit, assumed_for(amount.unit)) : way_of(recipe_, line, amount.unit, base.low, reader_);
  if (way.ladder == Ladder::pints && way.dialect == Dialect::american && guided()) way.ladder = Ladder::cups;
  if (way.lacking) {
    lacking(*line);
    if (origin == Origin::page) return as_written(recipe_, written, amount);
  }
  if (const auto spoon = spoon_by_table(line, amount, base, way)) return rounded(amount, *spoon, base);
  Shown shown = rounded(amount, way, base);
  const bool weighed = way.ladder == Ladder::grams || way.ladder == Ladder::ounces;
  if (weighed && last_->rung == kTwoFigures && amount.dimension() == Dimension::mass)
    shown = too_small(line, amount, base, std::move(shown));
  if (line != nullptr && last_->rung == kTwoFigures) too_little(*line, shown);
  return shown;
}

Shown Shower::amount(const TakeLine* line, const Quantity& amount, Span written, Origin origin) {
  last_.reset();
  if (amount.is_lost()) return as_written(recipe_, written, amount);
  if (origin == Origin::page && stays(amount.unit)) return as_written(recipe_, written, amount);
  if (unit(amount.unit).informal) {
    if (line != nullptr && origin == Origin::worked_out) pinch_scaled(*line, amount);
    return pinches(amount);
  }
  switch (amount.dimension()) {
    case Dimension::count:
      return things(line, amount);
    case Dimension::mass:
    case Dimension::volume:
    case Dimension::length:
      return measured(line, amount, written, origin);
    default:
      return origin == Origin::page ? as_written(recipe_, written, amount) : from_text(write_plain(amount), amount);
  }
}

// The writer's own second statement, where it is in the reader's measures: 220 g (8 oz) is 8 oz to who asks for ounces.
const Stated* Shower::restated(const TakeLine& line) const {
  for (Index s = line.stated.first; s < line.stated.end(); ++s) {
    const Stated& stated = recipe_.stated[s];
    const Dimension dimension = stated.amount.dimension();
    if (stated.each || stated.amount.is_lost() || !stays(stated.amount.unit)) continue;
    if (dimension != Dimension::mass && dimension != Dimension::volume) continue;
    const bool cups = reader_.system == System::american && dimension == Dimension::mass && by_the_cup(line);
    if (!cups) return &stated;
  }
  return nullptr;
}

Shown Shower::line(const TakeLine& line) {
  last_.reset();
  ratio_ = is_ratio(line);
  if (!line.measured() || line.amount_span.empty()) return {};
  const bool unscaled = recipe_.factor == Fraction(1) || pace_of(recipe_, line) == Pace::still;
  if (line.pack && !(unscaled && stays(line.pack->unit))) return packs(line);
  if (line.pack) return as_written(recipe_, line.amount_span, line.amount);
  if (line.house_measure && unscaled && reader_.system == System::written)
    return as_written(recipe_, line.amount_span, line.amount);
  const bool page = unscaled && line.basis == Basis::amount && !line.house_measure;
  if (!stays(line.amount.unit) && line.amount.dimension() != Dimension::count && line.basis == Basis::amount) {
    const Stated* const own = restated(line);
    const Ends base = in_base(line.amount, recipe_.dialect);
    const bool lacks_way =
        own != nullptr && !base.low.is_lost() && way_of(recipe_, &line, line.amount.unit, base.low, reader_).lacking;
    if (own != nullptr && page) {
      Shown shown = as_written(recipe_, own->span, own->amount);
      shown.changed = true;
      return shown;
    }
    if (lacks_way) return amount(&line, own->amount, own->span, Origin::worked_out);
  }
  Shown shown = amount(&line, line.amount, line.amount_span, page ? Origin::page : Origin::worked_out);
  // "Up to 1 tbsp" is a cook's word for as much as is wanted; "at most" would sound like a limit.
  constexpr std::string_view kMost = "at most ", kUpTo = "up to ";
  const bool up_to = lower(recipe_.slice(line.amount_span).substr(0, kUpTo.size())) == kUpTo;
  if (up_to && shown.text.starts_with(kMost)) shown.text.replace(0, kMost.size(), kUpTo);
  return shown;
}

Shown Shower::part_of(const TakeLine& line, const Quantity& part) {
  Report* const lacks = lacks_;
  lacks_ = nullptr;  // what a line lacks is said once, of the line
  Shown shown = amount(&line, part, {}, Origin::worked_out);
  lacks_ = lacks;
  return shown;
}

}  // namespace qtn
