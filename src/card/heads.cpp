// Facts: of the dish under its title, of a part under its own.
#include "card/maker.hpp"
#include "words/fold.hpp"

namespace qtn {

void Maker::title() { card_.title = prose(recipe_.title); }

// "3 times the recipe, for 18 to 24".
void Maker::edition() {
  if (!scaled_) return;
  const Fraction& factor = recipe_.factor;
  out_.begin();
  if (factor == Fraction::of(1, 2)) {
    out_.put(words_[Label::half_the_recipe]);
  } else {
    const Wide parts = factor.under();
    const bool exact = parts >= 1 && (parts <= 4 || parts == 8);
    if (!exact) out_.put(words_[Label::about_times]);
    out_.put(exact ? write_number(factor, true, false) : factor.decimal(2));
    out_.put(words_[factor < Fraction(1) && exact ? Label::of_the_recipe : Label::times_the_recipe]);
  }
  if (recipe_.serves && !adapted_.serves.text.empty()) {
    out_.put(words_[Label::for_so_many]);
    out_.put(adapted_.serves.text);
  }
  card_.edition = out_.end();
}

void Maker::fact(FactKind kind, Label label) {
  const Range32 value = out_.end();
  if (value.empty()) return;
  const Range32 name = words(label);
  card_.facts.push_back({static_cast<std::uint16_t>(kind), name, value});
}

void Maker::head_facts() {
  const auto first = static_cast<std::uint32_t>(card_.facts.size());
  makes(recipe_.makes, &adapted_.makes);
  if (recipe_.serves) {
    out_.begin();
    const Shown& serves = adapted_.serves;
    out_.collapsed(serves.text.empty() ? slice(recipe_.serves_span) : std::string_view(serves.text), Role::text);
    fact(FactKind::serves, Label::serves);
  }
  if (recipe_.tin) tin(*recipe_.tin);
  oven();
  keeps(recipe_.keeps);
  if (recipe_.ready_after) ready(*recipe_.ready_after);
  text_fact(Field::needs, FactKind::needs, Label::needs);
  scales();
  if (recipe_.batch) batch(*recipe_.batch);
  text_fact(Field::source, FactKind::source, Label::source);
  text_fact(Field::by, FactKind::by, Label::by);
  text_fact(Field::date, FactKind::date, Label::date);
  if (recipe_.standardized) {
    out_.begin();
    out_.put(words_[Label::tasted_standard]);
    fact(FactKind::standardized, Label::standardized);
  }
  card_.head = {first, static_cast<std::uint32_t>(card_.facts.size()) - first};
}

Range32 Maker::part_facts(const Part& part) {
  const auto first = static_cast<std::uint32_t>(card_.facts.size());
  if (!part.unnamed) {  // the facts of the unnamed part are those of the head
    const bool own = recipe_.makes.empty() || part.makes.empty() || !(part.makes[0].span == recipe_.makes[0].span);
    if (own) makes(part.makes, nullptr);
    if (part.tin) tin(*part.tin);
    keeps(part.keeps);
    if (part.ready_after) ready(*part.ready_after);
    if (part.batch) batch(*part.batch);
  }
  return {first, static_cast<std::uint32_t>(card_.facts.size()) - first};
}

void Maker::text_fact(Field field, FactKind kind, Label label) {
  for (const TextFact& one : recipe_.facts) {
    if (one.field != field) continue;
    out_.begin();
    prose_.write(trim(slice(one.span)));
    fact(kind, label);
  }
}

// "12 pasties, 2.4 kg and about 150 g chicken fat".
void Maker::makes(const std::vector<Made>& makes, const std::vector<Shown>* all) {
  if (makes.empty()) return;
  out_.begin();
  for (Index i = 0; i < makes.size(); ++i) {
    if (i != 0) out_.put(makes[i].by_product ? words_[Label::and_] : std::string_view(", "));
    made(makes[i], all != nullptr && i < all->size() ? &(*all)[i] : nullptr);
  }
  fact(FactKind::makes, Label::makes);
}

void Maker::made(const Made& one, const Shown* shown) {
  std::string text, number;
  bool changed = !as_written();
  if (shown != nullptr && !shown->text.empty()) {
    text = shown->text;
    number = shown->number.empty() ? shown->text : shown->number;
    changed = shown->changed;
  } else {
    text = number = amount(one.amount, one.amount_span);
  }
  out_.add(text, Role::amount, shown != nullptr && shown->changed ? shown->exact : one.amount);
  if (!one.thing.empty()) {
    out_.put(" ");
    const bool counted = one.amount.unit == kNoUnit;
    if (changed && counted) out_.put(is_one(number) ? singular_of(one.thing) : plural_of(one.thing));
    else out_.collapsed(one.thing, Role::text);
  }
  if (one.each) {
    out_.put(words_[Label::of]);
    out_.add(write_plain(*one.each), Role::amount, *one.each);
  }
}

void Maker::tin(const Tin& tin) {
  out_.begin();
  out_.collapsed(without_word(slice(tin.span), "tin"), Role::text);
  if (scaled_) out_.put(words_[Label::for_as_written]);
  fact(FactKind::tin, Label::tin);
}

void Maker::keeps(const std::vector<Keep>& keeps) {
  if (keeps.empty()) return;
  out_.begin();
  for (const Keep& keep : keeps) {
    if (!out_.empty()) out_.put(", ");
    out_.collapsed(keep.length_span.empty() ? std::string_view(write_plain(keep.length)) : slice(keep.length_span),
                   Role::text);
    const auto say = [&](Label label) {
      out_.put(" ");
      out_.put(words_[label]);
    };
    switch (keep.place) {
      case KeepPlace::none: break;
      case KeepPlace::chilled: say(Label::chilled); break;
      case KeepPlace::frozen: say(Label::frozen); break;
      case KeepPlace::cool: say(Label::cool); break;
      case KeepPlace::room: say(Label::room); break;
      case KeepPlace::sealed: say(Label::sealed); break;
    }
    if (keep.once_open) say(Label::once_open);
  }
  fact(FactKind::keeps, Label::keeps);
}

void Maker::ready(const Quantity& length) {
  out_.begin();
  out_.put(words_[Label::at_its_best_after]);
  out_.put(write_plain(length));
  fact(FactKind::ready, Label::ready);
}

void Maker::batch(const Batch& batch) {
  out_.begin();
  out_.put(words_[Label::at_most]);
  // A limit of the kitchen's pots: it does not grow with the recipe.
  std::string_view text = without_word(slice(batch.span), "at most");
  const std::string_view ending = "at a time";
  if (text.ends_with(ending)) text = trim(text.substr(0, text.size() - ending.size()));
  out_.collapsed(text, Role::text);
  out_.put(words_[Label::at_a_time]);
  fact(FactKind::batch, Label::batch);
}

// Which oven the temperatures are for; of no use to a jam.
bool Maker::has_oven_heat() const {
  for (const Term& term : recipe_.terms)
    if (term.role == TermRole::temperature) return true;
  return false;
}

void Maker::oven() {
  if (recipe_.oven == OvenKind::unstated || !has_oven_heat()) return;
  out_.begin();
  switch (recipe_.oven) {
    case OvenKind::fan: out_.put(words_[Label::fan]); break;
    case OvenKind::gas: out_.put(words_[Label::gas]); break;
    default: out_.put(words_[Label::conventional]); break;
  }
  fact(FactKind::oven, Label::oven);
}

void Maker::scales() {
  if (!recipe_.scales) return;
  out_.begin();
  out_.put(words_[Label::found_to_hold_from]);
  out_.put(write_number(recipe_.scales->low, true, false));
  out_.put(words_[Label::to]);
  out_.put(write_number(recipe_.scales->high, true, false));
  out_.put(words_[Label::times]);
  fact(FactKind::scales, Label::scales);
}

}  // namespace qtn
