// What is known of a listed thing: grams per millilitre and grams of one. Order of trust: the line itself, the book's
// kitchen file, the built-in table (semantics part 8).
#include <algorithm>

#include "recipe/makes.hpp"
#include "recipe/phases.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::string_view kFile = "this file", kKitchen = "the kitchen file";

struct Figures {
  Known known;
  Figure spoon;                         // the density for spoons, where it is another
  Fraction each_ml = Fraction::lost();  // of one, where a file gives its volume: 4 x 250 ml tins
};

class Knowing {
 public:
  Knowing(const Recipe& recipe, const TakeLine& line) : recipe_(recipe), line_(line) {}

  Figures all(const Quantity& asked) {
    asked_ = &asked;
    from_line();
    from_target();
    if (recipe_.kitchen) from_kitchen();
    from_larder();
    if (out_.known.each.is_lost() && !out_.each_ml.is_lost() && !out_.known.density.is_lost())
      out_.known.each = out_.each_ml * out_.known.density, out_.known.each_source = kFile;
    return out_;
  }

 private:
  void density(const Fraction& value, std::string_view source, bool remembered = false) {
    if (!out_.known.density.is_lost() || value.is_lost() || value.sign() <= 0) return;
    out_.known.density = value, out_.known.density_source = source;
    out_.known.remembered = out_.known.remembered || remembered;
  }
  void each(const Fraction& value, std::string_view source, bool remembered = false) {
    if (!out_.known.each.is_lost() || value.is_lost() || value.sign() <= 0) return;
    out_.known.each = value, out_.known.each_source = source;
    out_.known.remembered = out_.known.remembered || remembered;
  }
  void each_of(const Quantity& amount) {
    const Fraction size = middle(in_base(amount, recipe_.dialect));
    if (amount.dimension() == Dimension::mass) each(size, kFile);
    if (amount.dimension() == Dimension::volume && out_.each_ml.is_lost()) out_.each_ml = size;
  }

  void from_line() {
    for (Index i = line_.tails.first; i < line_.tails.end(); ++i)
      if (recipe_.tails[i].kind == TailKind::each && recipe_.tails[i].amount) each_of(*recipe_.tails[i].amount);
    for (Index i = line_.stated.first; i < line_.stated.end(); ++i)
      if (recipe_.stated[i].each) each_of(recipe_.stated[i].amount);
    if (line_.pack) each_of(*line_.pack);
    if (line_.basis != Basis::amount) return;  // there the written number is no amount
    for (Index i = line_.stated.first; i < line_.stated.end(); ++i)
      if (!recipe_.stated[i].each) from_pair(line_.written, recipe_.stated[i].amount);
  }

  // Two statements of one amount: 250 ml (260 g), 3 onions (about 450 g).
  void from_pair(const Quantity& first, const Quantity& second) {
    const Fraction a = middle(in_base(first, recipe_.dialect)), b = middle(in_base(second, recipe_.dialect));
    const Dimension da = first.dimension(), db = second.dimension();
    if (da == Dimension::volume && db == Dimension::mass) density(b / a, kFile);
    if (da == Dimension::mass && db == Dimension::volume) density(a / b, kFile);
    if (da == Dimension::count && db == Dimension::mass) each(b / a, kFile);
    if (da == Dimension::mass && db == Dimension::count) each(a / b, kFile);
  }

  // A part or recipe that is taken: what its `makes:` says of one, or of a millilitre.
  void from_target() {
    const Recipe* from = &recipe_;
    Index part = line_.target.index;
    if (line_.target.kind == TargetKind::use) {
      const Use& use = recipe_.uses[line_.target.index];
      if (use.recipe == nullptr) return;
      from = use.recipe;
      part = use.part == kNone ? from->dish : use.part;
    } else if (line_.target.kind != TargetKind::part) {
      return;
    }
    if (part >= from->parts.size()) return;
    const Fraction grams = made(*from, part, Dimension::mass), ml = made(*from, part, Dimension::volume);
    density(grams / ml, kFile);
    const bool portions = asked_->dimension() == Dimension::count && unit(asked_->unit).name == "portion";
    if (portions && part == from->dish && from->serves) each(grams / from->serves->low, kFile);
    if (!portions) each(grams / made(*from, part, Dimension::count), kFile);
  }
  static Fraction made(const Recipe& from, Index part, Dimension dimension) {
    for (const Yield& yield : yields_of(from, part))
      if (yield.dimension == dimension && !yield.by_product) return middle(yield.ends);
    return Fraction::lost();
  }

  void from_kitchen() {
    const HouseFood* house = recipe_.kitchen->food(line_.name);
    if (house == nullptr) return;
    density(house->food.density.value, kKitchen);
    each(house->food.each.value, kKitchen);
  }

  void from_larder() {
    if (line_.food == nullptr) return;
    if (out_.known.density.is_lost()) {
      const Figure &cup = density_of(line_), &spoon = spoon_density_of(line_);
      density(cup.value, cup.source, cup.remembered);
      out_.spoon = spoon;
      density(spoon.value, spoon.source, spoon.remembered);
    }
    if (!out_.known.each.is_lost()) return;
    if (line_.food->name == "egg") return from_eggs(*line_.food);
    const Figure& one = weight_of_one(line_);
    if (counts_these(one)) each(one.value, one.source, one.remembered);
  }

  // The weight of one clove of garlic is not that of one head: a count noun must be the one that was weighed.
  bool counts_these(const Figure& one) const {
    const UnitId asked = asked_->dimension() == Dimension::count ? asked_->unit : line_.written.unit;
    const Unit& counted = unit(asked);
    if (asked == kNoUnit || !counted.counted || counted.dimension != Dimension::count) return true;
    if (!(counted.size[0] == Fraction(1))) return true;  // a dozen of them
    for (const std::string_view word : {counted.name, counted.symbols})
      if (one.source.find(word) != std::string_view::npos) return true;
    const auto names = Larder::standard().other_names(*line_.food);
    return std::any_of(names.begin(), names.end(), [&](std::string_view name) { return name.ends_with(counted.name); });
  }

  // A named size is another egg in each country; without one the table's egg is meant.
  void from_eggs(const Food& food) {
    const std::string name = lower(line_.name);
    for (const std::string_view size : {"extra large", "very large", "jumbo", "large", "medium", "small"}) {
      if (name.find(size) == std::string::npos) continue;
      if (const Figure* egg = Larder::standard().egg(size, recipe_.dialect); egg != nullptr)
        each(egg->value, egg->source, egg->remembered);
      return;
    }
    each(food.each.value, food.each.source, food.each.remembered);
  }

  const Recipe& recipe_;
  const TakeLine& line_;
  const Quantity* asked_ = nullptr;
  Figures out_;
};

bool is_spoon(UnitId id) {
  const Unit& asked = unit(id);
  if (asked.informal || id == common().teaspoon || id == common().tablespoon) return true;
  return asked.name.ends_with("teaspoon") || asked.name.ends_with("tablespoon");
}

// Was that figure weighed in this very spoon? "1 tsp = 6.0 g"
bool weighed_in(std::string_view source, UnitId spoon) {
  const bool table = unit(spoon).name.ends_with("tablespoon");
  const auto has = [&](std::string_view word) { return source.find(word) != std::string_view::npos; };
  return table ? has(" tbsp") || has(" tablespoon") : has(" tsp") || has(" teaspoon");
}

const Figure kNoFigure;

}  // namespace

const Figure& density_of(const TakeLine& line) {
  if (line.forms.by_volume != nullptr) return line.forms.by_volume->density;
  return line.food != nullptr ? line.food->density : kNoFigure;
}

// A form without a spoon of its own is as dense in a spoon as in a cup.
const Figure& spoon_density_of(const TakeLine& line) {
  if (line.forms.by_volume != nullptr) return line.forms.by_volume->density_small;
  return line.food != nullptr ? line.food->density_small : kNoFigure;
}

const Figure& weight_of_one(const TakeLine& line) {
  if (line.forms.of_one != nullptr) return line.forms.of_one->each;
  return line.food != nullptr ? line.food->each : kNoFigure;
}

void know_food(Recipe& recipe, TakeLine& line) {
  line.keys.first = static_cast<Index>(recipe.name_keys.size());
  fold_keys(line.name, recipe.name_keys);
  line.keys.count = static_cast<Index>(recipe.name_keys.size()) - line.keys.first;
  line.food = Larder::standard().find(recipe.keys_of(line));
  line.forms = {};
  if (line.food == nullptr) return;
  std::vector<std::string_view> behind;
  for (Index i = line.tails.first; i < line.tails.end(); ++i)
    if (recipe.tails[i].kind == TailKind::preparation) behind.push_back(recipe.slice(recipe.tails[i].span));
  const Unit& counted = unit(line.written.unit);
  line.forms = Larder::standard().forms(*line.food, {line.name, behind, counted.counted ? counted.name : std::string_view()});
}

Known known_of(const Recipe& recipe, const TakeLine& line) {
  return Knowing(recipe, line).all(line.written).known;
}

Known known_of(const Recipe& recipe, const TakeLine& line, const Quantity& amount, UnitId measured_in) {
  Figures figures = Knowing(recipe, line).all(amount);
  if (!figures.spoon.known() || !is_spoon(measured_in)) return figures.known;
  if (weighed_in(figures.known.density_source, measured_in) && !weighed_in(figures.spoon.source, measured_in))
    return figures.known;
  figures.known.density = figures.spoon.value;
  figures.known.density_source = figures.spoon.source;
  figures.known.remembered = figures.spoon.remembered;
  return figures.known;
}

std::string_view taken_for(const TakeLine& line, std::string_view source) {
  if (line.food == nullptr || source.empty()) return {};
  const Food& food = *line.food;
  if (source != food.density.source && source != food.density_small.source && source != food.each.source) return {};
  const auto asked = fold_name(line.name);
  if (asked == fold_name(food.name)) return {};
  for (const std::string_view other : Larder::standard().other_names(food))
    if (asked == fold_name(other)) return {};
  return food.name;
}

Ends grams_of(const Recipe& recipe, const TakeLine& line, const Quantity& amount) {
  const Ends lost{Fraction::lost(), Fraction::lost()};
  if (amount.is_lost()) return lost;
  const Dimension dimension = amount.dimension();
  if (dimension == Dimension::mass) return in_base(amount, recipe.dialect);
  if (dimension != Dimension::volume && dimension != Dimension::count) return lost;
  const Known known = known_of(recipe, line, amount, amount.unit);
  const Fraction& grams = dimension == Dimension::volume ? known.density : known.each;
  const Ends base = in_base(amount, recipe.dialect);
  return {base.low * grams, base.high * grams};
}

// The whole name first, else the longest row whose words end it: a house's "starter" is a "ripe starter" too.
const HouseFood* Kitchen::food(std::string_view listed) const {
  if (foods.empty()) return nullptr;
  const std::vector<std::string> asked = fold_name(listed);
  const HouseFood* best = nullptr;
  std::size_t longest = 0;
  for (const HouseFood& house : foods) {
    const std::vector<std::string> row = fold_name(house.name);
    if (row.size() <= longest || row.size() > asked.size()) continue;
    if (!std::equal(row.rbegin(), row.rend(), asked.rbegin())) continue;
    best = &house, longest = row.size();
  }
  return best;
}

const HouseMeasure* Kitchen::measure_at(std::string_view text, std::size_t& size) const {
  const HouseMeasure* best = nullptr;
  size = 0;
  for (const HouseMeasure& house : measures) {
    std::size_t at = 0;
    for (std::size_t i = 0; i < house.name.size();) {  // as many words as it has
      while (blank_at(house.name, i) != 0) i += static_cast<std::size_t>(blank_at(house.name, i));
      if (i >= house.name.size()) break;
      while (i < house.name.size() && blank_at(house.name, i) == 0) ++i;
      while (at < text.size() && blank_at(text, at) != 0) at += static_cast<std::size_t>(blank_at(text, at));
      while (at < text.size() && blank_at(text, at) == 0) ++at;
    }
    if (at <= size || fold_name(text.substr(0, at)) != fold_name(house.name)) continue;
    best = &house;
    size = at;
  }
  return best;
}

}  // namespace qtn
