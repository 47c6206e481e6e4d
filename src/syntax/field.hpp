// Field words and where each may stand, from grammar/fields.def.
#pragma once
#include <cstdint>
#include <string_view>
#include <vector>

namespace qtn {

enum Where : std::uint8_t {
  kRecipe = 1, kPart = 2, kMenu = 4, kKitchen = 8, kEnds = 16 /* ends any block */, kSteps = 32, kLog = 64,
  kAnyHead = kRecipe | kMenu | kKitchen,
};

enum class Shape : std::uint8_t { value, text, list, steps, log, facts, opener };

enum class Field : std::uint8_t {
#define QTN_FIELD(name, word, where, shape) name,
#include "grammar/fields.def"
#undef QTN_FIELD
  none,
};

// Added to a node's value where the word is misspelt and was read as the nearest one.
inline constexpr std::uint16_t kMisspelt = 0x100;
inline Field field_of(std::uint16_t value) { return static_cast<Field>(value & 0xFF); }

struct FieldRow {
  Field field;
  std::string_view word;
  std::uint8_t where;
  Shape shape;
};
const FieldRow& row(Field field);
// The row whose word is `text`, in either case and with any blanks between its words; nullptr when there is none.
const FieldRow* find_field(std::string_view text);
std::vector<std::string_view> field_words(unsigned where);
// A list, a method, a part ...: no first line of a file is taken for a slip of one ("cake: Lemon" is no `take:`).
inline bool begins_part(const FieldRow& row) {
  return row.field == Field::part || (row.shape != Shape::value && row.shape != Shape::text);
}

}  // namespace qtn
