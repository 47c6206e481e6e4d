// What the house knows of its ingredients: weights, allergens.
#include <algorithm>

#include "diag/nearest.hpp"
#include "larder/allergens.hpp"
#include "recipe/kitchen_reader.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

constexpr std::string_view kHouse = "the kitchen file";

bool is_far(const Fraction& mine, const Figure& known) {
  return known.known() && ((mine - known.value) / known.value).abs() > Fraction::of(1, 4);
}

bool starts_number(std::string_view text) { return !text.empty() && text[0] >= '0' && text[0] <= '9'; }

}  // namespace

// "12 sprigs", "6 slices": behind a number a word that counts things is the noun, no name.
std::optional<Quantity> KitchenReader::so_many(Span span) {
  const auto read = counted(span);
  if (!read || read->read.damaged || read->rest.empty()) return std::nullopt;
  const Found noun = Lexicon::standard().longest(read->rest, kCountNoun);
  Quantity amount = read->read.amount;
  if (!noun || noun.size != read->rest.size() || amount.unit != kNoUnit || amount.is_range() || amount.manner != Manner::plain || amount.low.sign() <= 0) return std::nullopt;
  amount.unit = noun.row->unit;
  return amount;
}

std::optional<Quantity> KitchenReader::per(Code code, Field where, Span span, Dimensions wanted) {
  const std::string_view text = in_.slice(span);
  const Found found = Lexicon::standard().longest(text, kUnitWord | kCountNoun);
  if (!found || found.size != text.size()) {
    const std::optional<Quantity> things = so_many(span);
    return things ? things : figure(code, where, span, wanted);
  }
  const Quantity one{Fraction(1), Fraction(1), found.row->unit, Manner::plain, false};
  if (!expect_dimension(in_, one, span, wanted, "after `per` stands")) return std::nullopt;
  return one;
}

void KitchenReader::food(Span name, const std::vector<Cell>& cells) {
  HouseFood house{std::string(in_.slice(name)), {}};
  house.food.name = in_.slice(name);
  bool in_list = false;
  for (Cell cell : cells) {
    if (cell.word.starts_with("contains ")) {
      said("contains", cell.span);
      in_list = true;
      cell.span.begin += 9;
      cell.text = trim(cell.text.substr(9));
      cell.word = lower(cell.text);
      allergen(cell, house);
    } else if (in_list && !starts_number(cell.text)) {
      allergen(cell, house);
    } else if (const std::size_t at = cell.word.find(" per "); at != std::string::npos) {
      density(name, cell, at, house.food);
    } else if (cell.word.ends_with(" each")) {
      each(name, cell, house.food);
    } else {
      wrong(Code::kitchen_food_fact, Field::ingredients, cell.span);
    }
  }
  kitchen_.foods.push_back(std::move(house));
}

void KitchenReader::density(Span name, const Cell& cell, std::size_t at, Food& mine) {
  constexpr Code kCode = Code::kitchen_food_fact;
  said("density", cell.span);
  const auto cut = cell.span.begin + static_cast<std::uint32_t>(at);
  const auto weight = figure(kCode, Field::ingredients, {cell.span.begin, cut}, {Dimension::mass});
  if (!weight) return;
  const auto volume = per(kCode, Field::ingredients, {cut + 5, cell.span.end}, {Dimension::volume});
  if (!volume) return;
  const Fraction size = in_base(*volume, in_.dialect).low;
  if (size.is_lost()) {  // a written amount has said so itself
    if (!starts_number(in_.slice({cut + 5, cell.span.end})))
      report_.add(Code::no_such_measure, {cut + 5, cell.span.end}, quoted(in_.slice({cut + 5, cell.span.end})) + " has no one size here.")
          .expect("`ml`, or a line `measures:` in this file");
    return;
  }
  mine.density.value = mine.density_small.value = in_base(*weight, in_.dialect).low / size;
  mine.density.source = mine.density_small.source = kHouse;
  const Food* const known = Larder::standard().named(in_.slice(name));
  // A spoon is filled otherwise than a cup; the house may have weighed either.
  if (known == nullptr || !is_far(mine.density.value, known->density)) return;
  if (known->density_small.known() && !is_far(mine.density.value, known->density_small)) return;
  report_.add(Code::kitchen_density_far, cell.span,
              "This is " + mine.density.value.decimal(2) + " g per ml; the table has " + known->density.value.decimal(2) + ".")
      .find(quoted(cell.text)).expect("a figure within 25 % of it, or a second weighing that says the same");
}

void KitchenReader::each(Span name, const Cell& cell, Food& mine) {
  said("each", cell.span);
  const auto weight = figure(Code::kitchen_food_fact, Field::ingredients, {cell.span.begin, cell.span.end - 5}, {Dimension::mass});
  if (!weight) return;
  mine.each.value = in_base(*weight, in_.dialect).low;
  mine.each.source = kHouse;
  const Food* const known = Larder::standard().named(in_.slice(name));
  if (known == nullptr || !is_far(mine.each.value, known->each)) return;
  report_.add(Code::kitchen_each_far, cell.span,
              "This is " + mine.each.value.decimal(0) + " g each; the table has " + known->each.value.decimal(0) + " g.")
      .find(quoted(cell.text)).expect("a figure within 25 % of it, or a second weighing that says the same");
}

// A word that no list knows is the house's own business; one that is nearly one of theirs is a slip.
void KitchenReader::allergen(const Cell& cell, HouseFood& house) {
  const auto folded = fold_name(cell.text);
  if (folded.empty()) return wrong(Code::kitchen_food_fact, Field::ingredients, cell.span);
  house.allergens_said = true;
  const AllergenSet held = allergens_held(cell.text);
  house.contains |= held;
  const bool nothing = cell.word == "nothing" || cell.word == "nothing else";
  house.nothing_else = house.nothing_else || nothing;
  if (held != 0 || nothing) return;
  std::vector<std::string_view> known{"nothing", "gluten", "nuts", "shellfish"};
  for (const AllergenRow& row : allergen_list()) known.push_back(row.key);
  const auto near = nearest(cell.word, known, 1);
  if (near.empty()) return;
  report_.add(Code::kitchen_allergen, cell.span, quoted(cell.text) + " is on no list of allergens. " + did_you_mean(near))
      .find(quoted(cell.text)).expect("a name that guests ask by: " + quoted(near[0]))
      .offer(cell.span, std::string(near[0]), "write " + quoted(near[0]));
}

}  // namespace qtn
