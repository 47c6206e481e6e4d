#include "adapt/watch.hpp"

#include <algorithm>

#include "adapt/factor.hpp"
#include "adapt/friendly.hpp"
#include "adapt/measures.hpp"
#include "adapt/pace.hpp"

namespace qtn {
namespace {

class Watch {
 public:
  Watch(const Recipe& recipe, const Request& request, Report& lacks)
      : recipe_(recipe), request_(request), lacks_(lacks), factor_(recipe.factor) {}

  void run(const Roundings& roundings) {
    if (!request_.tin_text.empty()) other_tin();
    if (factor_ == Fraction(1)) return;
    if (far() && has_lengths()) say(Code::times_not_tested, "The times are those of the recipe as written; at this size they are not tested.");
    if (far() && boils_away())
      say(Code::boils_away, "A pan boils away by its width, not by what is in it: at this size reduce to the amount or the look that is written, and salt at the end.");
    if (recipe_.scales && (factor_ < recipe_.scales->low || factor_ > recipe_.scales->high))
      say(Code::outside_scales, "The recipe has been found to hold from " + write_times(recipe_.scales->low) + " to " +
                                    write_times(recipe_.scales->high) + " times, and this card is outside that.");
    if (request_.tin_text.empty()) tin_for_size();
    seasoning();
    if (const auto rounder = friendly_factor(recipe_, roundings))
      say(Code::rounder_size, "At " + write_times(*rounder) + " times the recipe in place of " + write_times(factor_) + ", every amount comes out round.");
  }

 private:
  void say(Code code, std::string text) { lacks_.add(code, {}, std::move(text)); }

  bool far() const { return factor_ < Fraction::of(1, 2) || factor_ > Fraction(2); }

  bool has_lengths() const {
    return std::any_of(recipe_.terms.begin(), recipe_.terms.end(), [](const Term& term) { return term.role == TermRole::length; });
  }

  // Boiled down by the page's own word: twice as much in the same pan has far less than twice its surface (S3-36, KS).
  bool boils_away() const {
    return std::any_of(recipe_.clauses.begin(), recipe_.clauses.end(),
                       [](const Clause& clause) { return clause.verb != kNoVerb && verb(clause.verb).deed == Deed::reducing; });
  }

  void other_tin() {
    const Tin *const own = tin_of(recipe_), *const asked = tin_asked(recipe_, request_);
    if (own == nullptr || asked == nullptr || own->size == asked->size) return;
    say(Code::other_tin, "This is for another tin, " + request_.tin_text + ": watch the baking, since a deeper or wider tin takes another time.");
    if (tin_factor(own->size, asked->size).by_top)
      say(Code::tin_by_its_top, "A depth is not given, so the tins were compared by their width alone, filled to the same height.");
  }

  // The house's tins of the same shape and much the same depth that this size fills as the written one is filled, within
  // a tenth: they bake alike.
  std::string tins_that_fit(const TinSize& own, const Fraction& held) const {
    std::string names;
    if (!recipe_.kitchen) return names;
    for (const auto& [name, tin] : recipe_.kitchen->tins) {
      const Fraction one = held_by(tin.size) / tin.size.count;
      if (one.is_lost() || one.sign() <= 0 || tin.size.shape != own.shape || !much_alike(tin.size.deep, own.deep, Fraction::of(1, 4))) continue;
      if (!much_alike(across(tin.size), across(own), Fraction::of(1, 3))) continue;  // a loaf tin is no pie dish
      const Fraction count = Fraction::of((held / one).nearest(), 1);
      if (count.sign() <= 0 || count > Fraction(12) || ((count * one - held) / held).abs() > Fraction::of(1, 10)) continue;
      names += (names.empty() ? "the " : ", or the ") + std::string(name);
      if (count != Fraction(1)) names += ", " + count.exact() + " times";
    }
    return names;
  }

  static bool much_alike(const Fraction& a, const Fraction& b, const Fraction& within) {
    return a.is_lost() == b.is_lost() && (a.is_lost() || ((a - b) / b).abs() <= within);
  }

  // The shorter side.
  static Fraction across(const TinSize& tin) { return !tin.along.is_lost() && tin.along < tin.across ? tin.along : tin.across; }

  void tin_for_size() {
    const Tin* const own = tin_of(recipe_);
    const Fraction held = own != nullptr ? held_by(own->size) : Fraction::lost();
    const bool much_the_same = (factor_ - Fraction(1)).abs() <= Fraction::of(1, 10);
    if (held.is_lost() || much_the_same) return;
    const Fraction now = held * factor_, count = own->size.count * factor_;
    const std::string as_written = "The tin is that of the recipe as written; so much ";
    if (count.is_whole())
      return say(Code::tin_for_size, as_written + "fills " + count.exact() + " of " + "that size.");
    const Reader reader = reader_of(recipe_, request_.units, request_.spoons);
    const Ladder ladder = ladder_for(Dimension::volume, reader.system, reader.dialect, false);
    const std::string room = write(round_on(ladder, now, Fraction::of(1, 10), reader.dialect));
    const std::string fit = tins_that_fit(own->size, now);
    say(Code::tin_for_size, as_written + "wants room for " + room + " to the brim, " + write_times(count) + (count < Fraction(1) ? " of one" : " of that size") +
                                (fit.empty() ? "." : ", or " + fit + "."));
  }

  void seasoning() {
    const Fraction slower = gentle(factor_);
    if (slower == factor_) return;
    const bool any = std::any_of(recipe_.lines.begin(), recipe_.lines.end(), [&](const TakeLine& line) {
      return line.measured() && pace_of(recipe_, line) == Pace::gentle;
    });
    if (any)
      say(Code::seasoning_slower, "Strong seasoning grows more slowly than the rest: it is taken " + write_times(slower) +
                                      " times here, not " + write_times(factor_) + ". Taste before serving.");
  }

  const Recipe& recipe_;
  const Request& request_;
  Report& lacks_;
  const Fraction factor_;
};

}  // namespace

void watch_size(const Recipe& recipe, const Request& request, const Roundings& roundings, Report& lacks) {
  Watch(recipe, request, lacks).run(roundings);
}

}  // namespace qtn
