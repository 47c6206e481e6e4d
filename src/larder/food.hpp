// What is known of ingredients: density, weight of one, whether it is a liquid, whether it is unsafe raw. Rows live
// in data/foods.txt, each figure with its source; a book's kitchen file overrides them by line.
#pragma once
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/fraction.hpp"
#include "measure/unit.hpp"
#include "words/fold.hpp"

namespace qtn {

struct Figure {
  Fraction value = Fraction::lost();  // lost: nobody has published it here
  std::string_view source;            // "USDA SR28 20081: 1 cup = 125 g"
  bool remembered = false;            // a value from memory, and said so wherever it is shown
  bool known() const { return !value.is_lost(); }
};

struct Food {
  std::string_view name;  // "plain flour"
  Figure density;         // grams per millilitre, from the row for cups
  Figure density_small;   // the same from a spoon's row, where one is published
  Figure each;            // grams of one, edible part
  bool liquid = false;    // leaves the pot with `drain`
  bool raw_risk = false;  // must not be tasted raw: raw meat, fish, eggs, flour, kidney beans
  bool seasoning = false; // herbs and spices
  std::string_view note;
};

// A row of data/forms.txt: the same food sifted, packed, chopped, large.
struct FoodForm {
  std::string_view words;  // that choose it, as the table has them: "scooped; dipped"
  bool in_front = false;   // only before the name: `1 cup sifted flour`, not `1 cup flour, sifted`
  Figure density;
  Figure density_small;
  Figure each;
};
// The rows that a line's words choose; null where foods.txt alone counts.
struct FoodForms {
  const FoodForm* by_volume = nullptr;
  const FoodForm* of_one = nullptr;
};

// What a line says of its food: the name as written, the preparations behind the comma, the count noun before it.
struct FoodWords {
  std::string_view name;
  std::span<const std::string_view> behind;
  std::string_view noun;
};

// A kitchen's own row for an ingredient, in the same form.
struct HouseFood {
  std::string name;
  Food food;
  bool allergens_said = false;  // `contains wheat, rye`, or `contains nothing`
  bool nothing_else = false;    // `contains celery, nothing else`: somebody has read its label
  std::uint32_t contains = 0;   // an AllergenSet
};

class Larder {
 public:
  // The built-in table. Built on first use.
  static const Larder& standard();
  // The food that a listed name means: the whole name first, else the longest run of words that ends it
  // ("cold unsalted butter" is butter), else nullptr. Words are compared folded.
  const Food* find(std::string_view name) const;
  // The same for a name that is folded already; `matched`: how many words at its end are the food's.
  const Food* find(std::span<const WordKey> words, std::size_t* matched = nullptr) const;
  // Only where the whole name is one of the row's: what is known of butter is no figure for whipped butter.
  const Food* named(std::string_view name) const;
  // The rows of that food which these words choose; the most words win. `food` is one of all().
  FoodForms forms(const Food& food, const FoodWords& words) const;
  std::span<const FoodForm> forms_of(const Food& food) const;
  // Weight of one egg of a size ("large"), shelled, by dialect; nullptr where nobody has published that size, and
  // where the dialect is unstated, since the same word is another egg in each.
  const Figure* egg(std::string_view size, Dialect dialect) const;
  // Other names of the same food, British and American: "all-purpose flour". `food` is one of all().
  std::span<const std::string_view> other_names(const Food& food) const;
  // What an American cook calls it where that differs from its name here; else empty.
  std::string_view american_name(const Food& food) const;
  std::span<const Food> all() const;

 private:
  Larder();
  struct Impl;
  const Impl* impl_;
};

}  // namespace qtn
