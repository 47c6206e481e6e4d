// Amounts of the tree as typed quantities. Private to this room.
#pragma once
#include <optional>

#include "recipe/recipe.hpp"

namespace qtn {

// One number with its unit, as met in the tree.
struct AmountToken {
  Fraction value;
  UnitId unit = kNoUnit;
  bool has_unit = false;
  bool fan = false;
  Span span, unit_span;
};

struct UnsureUnit {  // a unit of more than one size that was pointed at; what stands after it may tell more
  UnitId unit;
  Span span;
  std::size_t report;  // place in the report
};
// What reading one file hangs on. Not copied: it remembers which warnings were given.
struct Reading {
  const Source& source;
  Report& report;
  Dialect dialect = Dialect::unstated;
  std::vector<UnitId> warned;  // ambiguous units that were already pointed at
  std::vector<UnsureUnit> unsure{};
  std::vector<AmountToken> tokens{};  // of the amount in hand; kept from one to the next
  std::string_view slice(Span span) const { return source.text(span); }
};

// Where an amount stands decides what may stand in it.
enum class Place : std::uint8_t { list, clause, head, tin, tail };

struct ReadAmount {
  Quantity amount;
  Span span;
  std::optional<Quantity> sign;  // 20 min to 40 °C: the sign at which the time is over
  Span sign_span;
  bool damaged = false;          // reported; not to be checked further
};
// Reads an `amt` node (or any node whose children are the tokens of one). Reports what is wrong with it.
ReadAmount read_amount(Reading& in, View amt, Place place);
// The value of a number, number word, half or article node.
Fraction read_number(Reading& in, View number);
// One item that stands alone: children number and unit of `node`, from its first number on.
ReadAmount read_item(Reading& in, View node, Place place);

// "236.6 ml American, 250 ml Australian"; where no dialect has one size, the measures that a longer name gives one to.
std::string readings_of(UnitId unit);

// Says that `found` was met where `wanted` must stand, naming both; true when they agree.
bool expect_dimension(Reading& in, const Quantity& found, Span span, std::initializer_list<Dimension> wanted,
                      std::string_view where);

}  // namespace qtn
