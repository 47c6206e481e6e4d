// From the lines of a recipe to what is bought for them.
#include <algorithm>

#include "order/goods.hpp"
#include "order/order.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

const Tail* tail_of(const Recipe& recipe, const TakeLine& line, TailKind kind) {
  for (Index i = line.tails.first; i < line.tails.end(); ++i)
    if (recipe.tails[i].kind == kind) return &recipe.tails[i];
  return nullptr;
}

// The part and all parts of this file that it takes; all where `part` is kNone.
std::vector<bool> parts_in(const Recipe& recipe, Index part) {
  std::vector<bool> in(recipe.parts.size(), part == kNone);
  if (part >= in.size()) return in;
  std::vector<Index> open{part};
  in[part] = true;
  while (!open.empty()) {
    const Part& one = recipe.parts[open.back()];
    open.pop_back();
    for (Index i = one.lines.first; i < one.lines.end(); ++i) {
      const Target& target = recipe.lines[i].target;
      if (target.kind != TargetKind::part || target.index >= in.size() || in[target.index]) continue;
      in[target.index] = true, open.push_back(target.index);
    }
  }
  return in;
}

bool is_sourced(std::string_view source) { return !source.empty() && source.find("from memory") == std::string_view::npos; }

// "plus extra for dusting": behind an amount the word has done its work.
std::string_view without_plus(std::string_view text) {
  if (text.starts_with("plus ")) text.remove_prefix(5);
  return text;
}

// Whose figure it is, in a reader's words.
std::string said_by(std::string_view source) {
  return source == "this file" ? "as the recipe says" : source == "the kitchen file" ? "as the kitchen says" : std::string(source);
}

bool in_spoons(const TakeLine& line) {
  const UnitId id = line.written.unit;
  return line.basis == Basis::amount && line.written.dimension() == Dimension::volume &&
         (unit(id).informal || id == common().teaspoon || id == common().tablespoon || id == common().dessertspoon);
}

class Reader {
 public:
  Reader(const Recipe& recipe, Index part, Index making, const Kitchen* kitchen)
      : recipe_(recipe), kitchen_(kitchen), making_(making), in_(parts_in(recipe, part)) {}

  Needs run() {
    for (Index i = 0; i < recipe_.lines.size(); ++i) {
      const TakeLine& listed = recipe_.lines[i];
      if (listed.alternative || listed.given || listed.struck || (listed.part < in_.size() && !in_[listed.part])) continue;
      const TakeLine& line = listed.chosen < recipe_.lines.size() ? recipe_.lines[listed.chosen] : listed;
      if (line.target.kind == TargetKind::part || line.target.kind == TargetKind::use) continue;
      line.measured() ? measured(listed, line, i) : unmeasured(line);
    }
    return std::move(out_);
  }

 private:
  bool from_the_tap(std::string_view name) const {
    return is_tap_water(name) && price_of(kitchen_, name) == nullptr && supplier_of(kitchen_, name) == nullptr;
  }

  Measure measure_of(const Quantity& amount) const {
    return {in_base(amount, recipe_.dialect).high, amount.dimension(), noun_of(amount)};
  }

  void measured(const TakeLine& listed, const TakeLine& line, Index index) {
    const Tail* const from = tail_of(recipe_, line, TailKind::from);
    const bool bought = from != nullptr && from->amount && !from->amount->is_lost();
    const bool other = bought && !from->name.empty();
    Need need;
    need.name = trim(other ? from->name : line.name);
    if (from_the_tap(need.name)) return;
    need.key = goods_key(need.name);
    const Quantity amount = bought ? *from->amount : line.amount.is_lost() ? listed.amount : line.amount;
    need.measure = measure_of(amount);
    if (const Tail* const spare = tail_of(recipe_, line, TailKind::trimmings); spare != nullptr && spare->amount && !spare->amount->is_lost() && !bought)
      need.measure.amount *= Fraction(1) + in_base(*spare->amount, recipe_.dialect).high;
    if (other) need.into = trim(line.name);
    need.trimmed = bought, need.optional = line.optional || listed.optional;
    if (!bought && line.pack) {
      need.pack = in_base(*line.pack, recipe_.dialect).high;
      need.pack_words = in_print(write_plain(*line.pack)) + " " + std::string(line.pack_noun);
    }
    need.spoonful = !bought && in_spoons(line);
    need.making = making_, need.line = index;
    other ? figures_of_name(need) : figures_of_line(need, line, amount);
    if (const Tail* const extra = tail_of(recipe_, line, TailKind::extra)) also(need.name, need.key, std::string(without_plus(trim(recipe_.slice(extra->span)))));
    out_.list.push_back(std::move(need));
  }

  // Only what a source gives, and of this very food: a weight of one that belongs to another is none.
  void figures_of_line(Need& need, const TakeLine& line, const Quantity& amount) const {
    const Known known = known_of(recipe_, line, amount, amount.unit);
    if (is_sourced(known.density_source)) need.density = known.density, need.density_source = said_by(known.density_source);
    if (is_sourced(known.each_source) && taken_for(line, known.each_source).empty()) need.each = known.each, need.each_source = said_by(known.each_source);
  }
  void figures_of_name(Need& need) const {
    const auto take = [&](const Food& food) {
      if (need.density.is_lost() && is_sourced(food.density.source)) need.density = food.density.value, need.density_source = said_by(food.density.source);
      if (need.each.is_lost() && is_sourced(food.each.source)) need.each = food.each.value, need.each_source = said_by(food.each.source);
    };
    const HouseFood* const house = kitchen_ != nullptr ? kitchen_->food(need.name) : nullptr;
    if (house != nullptr) take(house->food);
    if (const Food* const food = Larder::standard().named(need.name)) take(*food);
  }

  void unmeasured(const TakeLine& line) {
    if (from_the_tap(line.name)) return;
    std::string words;
    for (Index t = line.tails.first; t < line.tails.end(); ++t) {
      const Tail& tail = recipe_.tails[t];
      if (tail.kind == TailKind::unmeasured) words = trim(recipe_.slice(tail.span));
      if (tail.kind == TailKind::start_with && tail.amount && !tail.amount->is_lost())
        words += (words.empty() ? "to start with " : ", to start with ") + write_measure(measure_of(*tail.amount));
    }
    also(std::string(trim(line.name)), goods_key(line.name), std::move(words));
  }

  void also(std::string name, std::string key, std::string words) {
    out_.also.push_back({std::move(name), std::move(key), std::move(words), making_});
  }

  const Recipe& recipe_;
  const Kitchen* kitchen_;
  Index making_;
  std::vector<bool> in_;
  Needs out_;
};

}  // namespace

Needs needs_of(const Recipe& recipe, Index part, Index making, const Kitchen* kitchen) { return Reader(recipe, part, making, kitchen).run(); }

UnitId noun_of(const Quantity& amount) {
  const bool things = amount.dimension() == Dimension::count && amount.unit != kNoUnit && size_of(amount.unit, Dialect::british) == Fraction(1);
  return things ? amount.unit : kNoUnit;
}

Fraction in_measure(const Need& need, const Measure& wanted, std::string* through) {
  const auto by = [&](const Fraction& value, const std::string& source) {
    if (through != nullptr && !value.is_lost()) *through = source;
    return value;
  };
  const Measure& have = need.measure;
  if (have.meets(wanted)) return have.amount;
  if (wanted.dimension == Dimension::mass && have.dimension == Dimension::volume) return by(have.amount * need.density, need.density_source);
  if (wanted.dimension == Dimension::mass && have.dimension == Dimension::count) return by(have.amount * need.each, need.each_source);
  if (wanted.dimension == Dimension::volume && have.dimension == Dimension::mass) return by(have.amount / need.density, need.density_source);
  // One of them, of no other noun: an onion, not a slice of it.
  if (wanted.dimension == Dimension::count && wanted.noun == kNoUnit && have.dimension == Dimension::mass) return by(have.amount / need.each, need.each_source);
  return Fraction::lost();
}

std::string write_measure(const Measure& measure) {
  if (measure.amount.is_lost()) return "?";
  if (measure.dimension == Dimension::count) {
    const std::string number = write_number(measure.amount, true, false);
    return measure.noun == kNoUnit ? number : number + " " + std::string(write_unit(measure.noun, measure.amount));
  }
  const bool mass = measure.dimension == Dimension::mass, large = measure.amount >= Fraction(1000);
  const Fraction shown = large ? measure.amount / Fraction(1000) : measure.amount;
  return shown.decimal(large ? 2 : shown < Fraction(10) ? 1 : 0) + (mass ? large ? " kg" : " g" : large ? " l" : " ml");
}

}  // namespace qtn
