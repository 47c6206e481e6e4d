// What a part says it makes, and what of a line enters its sums.
#pragma once
#include "recipe/recipe.hpp"

namespace qtn {

// One statement of `makes:` as an amount in its base unit: 10 jars of 330 g are 3300 g, and 10 things.
struct Yield {
  Dimension dimension = Dimension::mass;
  Ends ends;
  Manner manner = Manner::plain;
  bool by_product = false;
  bool of_each = false;  // worked out from a count and the size of one
  Span span;             // the amount
};
// The statements of a part; the dish's own, else those of the head.
const std::vector<Made>& makes_of(const Recipe& recipe, Index part);
std::vector<Yield> yields_of(const Recipe& recipe, Index part);

// Does the line enter the sums of its part? `or` lines, things split in two and struck lines do not.
bool in_sums(const TakeLine& line);
// The line that stands there: the alternative that a command picked, else the line itself.
const TakeLine& standing(const Recipe& recipe, const TakeLine& line);
// What of it the dish keeps: `taking up` where the line says so, else its amount.
Quantity kept_amount(const Recipe& recipe, const TakeLine& line);
// Notes are no deed, and of two ways by hand and by machine the first is taken.
bool counts_in_pot(const Recipe& recipe, const Part& part, Index step);
const Tail* tail_of(const Recipe& recipe, const TakeLine& line, TailKind kind);

// One number for a range, where one is wanted: the middle of it.
Fraction middle(const Ends& ends);

// "1.25 kg", "374 g", "0.4 g", "400 ml", "2.5 l": a worked-out amount as a message shows it.
std::string say_amount(const Fraction& base, Dimension dimension);
std::string say_amount(const Ends& base, Dimension dimension);
// "25 %": how far `is` stands from `should`, without a sign.
std::string say_error(const Fraction& is, const Fraction& should);

}  // namespace qtn
