// Facts of the dish and of its parts.
#include <algorithm>

#include "card/maker.hpp"
#include "recipe/dates.hpp"

namespace qtn {

void Maker::fact(FactKind kind, Caption caption, Range32 value) {
  Fact fact;
  fact.kind = static_cast<std::uint16_t>(kind);
  fact.label = plain(words_[caption]);
  fact.value = value;
  card_.facts.push_back(fact);
}

// "3 times the recipe"; the version's name before it.
void Maker::edition() {
  out_.begin();
  const auto picked = std::find_if(recipe_.lines.begin(), recipe_.lines.end(), [&](const TakeLine& line) {
    return line.chosen != kNone && recipe_.lines[line.chosen].name == recipe_.version;
  });
  if (picked != recipe_.lines.end()) {
    out_.put(words_[Caption::with]), out_.put(listed(recipe_.version));
    out_.put(" "), out_.put(words_[Caption::instead_of]), out_.put(listed(picked->name));
  } else {
    out_.put(recipe_.version);
  }
  if (recipe_.as_of) {
    if (!out_.empty()) out_.put(", ");
    out_.put(words_[Caption::as_of]);
    out_.put(write_date(*recipe_.as_of));
  }
  if (!(recipe_.factor == Fraction(1))) {
    if (!out_.empty()) out_.put(", ");
    out_.put(size_in_words(recipe_.factor, words_));
  }
  card_.edition = out_.end();
}

void Maker::makes_fact(const std::vector<Made>& all, const std::vector<Shown>& shown, const std::vector<Shown>& each) {
  if (all.empty()) return;
  out_.begin();
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Made& made = all[i];
    if (i != 0) out_.put(made.by_product ? words_[Caption::and_] : std::string_view(", "));
    const std::string& text = shown[i].text;
    out_.add(text, Role::amount, made.amount);
    if (!made.thing.empty()) {
      out_.put(" ");
      out_.put(recipe_.factor == Fraction(1) || made.amount.unit != kNoUnit ? std::string(made.thing) : made.amount.high.floor() <= 1 ? singular_of(made.thing) : plural_of(made.thing));
    }
    if (made.each) {
      out_.put(words_[Caption::of]);
      out_.add(each[i].text, Role::amount, *made.each);
    }
  }
  fact(FactKind::makes, Caption::makes, out_.end());
}

void Maker::tin_fact(const Tin& tin) {
  out_.begin();
  if (!adapted_.tin.empty() && &tin == tin_of(recipe_)) {
    out_.put(adapted_.tin);
    out_.put(words_[Caption::in_place_of]);
    out_.collapsed(trim(recipe_.slice(tin.span)), Role::text);
    fact(FactKind::tin, Caption::tin, out_.end());
    return;
  }
  out_.collapsed(trim(recipe_.slice(tin.span)), Role::text);
  std::string other = tin_in(recipe_, tin, adapted_.units);
  if (other.empty() && adapted_.beside) other = tin_in(recipe_, tin, *adapted_.beside);
  if (!other.empty()) out_.put(" ("), out_.put(other), out_.put(")");
  if (!(recipe_.factor == Fraction(1))) out_.put(words_[Caption::for_as_written]);
  fact(FactKind::tin, Caption::tin, out_.end());
}

void Maker::keeps_fact(const std::vector<Keep>& keeps) {
  if (keeps.empty()) return;
  constexpr Caption kPlaces[] = {Caption::count_, Caption::chilled, Caption::frozen, Caption::cool, Caption::room, Caption::sealed};
  out_.begin();
  for (const Keep& keep : keeps) {
    if (!out_.empty()) out_.put(", ");
    out_.add(in_print(recipe_.slice(keep.length_span)), Role::time, keep.length);
    if (keep.place != KeepPlace::none) out_.put(" "), out_.put(words_[kPlaces[static_cast<std::size_t>(keep.place)]]);
    if (keep.once_open) out_.put(" "), out_.put(words_[Caption::once_open]);
  }
  fact(FactKind::keeps, Caption::keeps, out_.end());
}

void Maker::ready_fact(const std::optional<Quantity>& after) {
  if (!after) return;
  out_.begin();
  out_.put(words_[Caption::at_its_best_after]);
  out_.add(write_plain(*after), Role::time, *after);
  fact(FactKind::ready, Caption::ready, out_.end());
}

// "2 batches of 36"; the size is left out where it is the limit itself.
void Maker::rounds(const Rounds& rounds, Caption word, bool size) {
  out_.add(to_text(rounds.count) + std::string(words_[word]), Role::amount);
  if (!size) return;
  out_.put(words_[Caption::of]);
  out_.add(rounds.size.text, Role::amount, rounds.size.exact);
}

void Maker::batch_fact(const std::optional<Batch>& batch, const Shown& limit, const Rounds& rounds) {
  if (!batch) return;
  out_.begin();
  out_.put(words_[Caption::at_most]);
  out_.add(limit.text, Role::amount, limit.exact);
  if (!batch->thing.empty()) out_.put(" "), out_.put(listed(batch->thing));
  out_.put(words_[Caption::at_a_time]);
  if (rounds.count > 1) out_.put(": "), this->rounds(rounds, Caption::batches, true);
  fact(FactKind::batch, Caption::batch, out_.end());
}

// "Australian: 1 cup is 250 ml, 1 tbsp 20 ml": of the measures on the card those that are another size elsewhere. British
// ones on a British page, where nobody asked for others, are left unsaid.
void Maker::measures_fact() {
  std::string text;
  const auto say = [&](Dialect dialect, const std::vector<Shown>& lines) {
    const bool own = dialect == Dialect::british && recipe_.dialect == Dialect::british;
    if (own || dialect == Dialect::unstated || text.find(name_of(dialect)) != std::string::npos) return;
    bool first = true;
    const CommonUnits& c = common();
    for (const UnitId id : {c.gallon, c.quart, c.pint, c.cup, c.fluid_ounce, c.tablespoon, c.teaspoon}) {
      const std::string word = std::string(" ").append(unit(id).symbol);
      const bool used = std::any_of(lines.begin(), lines.end(), [&](const Shown& line) { return line.text.find(word) != std::string::npos; });
      if (!used || size_of(id, dialect).is_lost()) continue;
      if (first && !text.empty()) text += "; ";
      text += first ? std::string(name_of(dialect)) + ": 1" : ", 1";
      text += word + (first ? " is " : " ") + size_of(id, dialect).decimal(1) + " ml";
      first = false;
    }
  };
  say(adapted_.spoons, adapted_.lines);
  if (adapted_.beside) say(adapted_.spoons_beside, adapted_.lines_beside);
  if (!text.empty()) fact(FactKind::measures, Caption::measures, plain(text));
}

// How far it was tried, as its own log tells.
void Maker::tasted_fact() {
  if (recipe_.kind != FileKind::recipe) return;
  constexpr std::string_view kStatus[] = {"draft", "tried", "standardized"};
  const TrialStanding& standing = recipe_.standing;
  card_.status = kStatus[static_cast<std::size_t>(standing.tried)];
  out_.begin();
  if (standing.tried == Tried::draft) {
    out_.put(words_[recipe_.version.empty() ? Caption::no_trial : Caption::no_trial_of_version]);
  } else if (standing.untasted != kNone) {
    out_.put(words_[Caption::last_change_untasted]);
    out_.put(recipe_.trials[standing.untasted].name);
    out_.put(words_[Caption::not_tasted]);
  } else {
    const bool standard = standing.tried == Tried::standardized;
    out_.put(words_[standard ? Caption::standardized_alike : Caption::tried_alike]);
    out_.put(std::to_string(standing.alike));
    out_.put(words_[standard ? Caption::like_results : Caption::of_three]);
  }
  if (standing.tried != Tried::draft && !(recipe_.factor == Fraction(1))) out_.put(words_[Caption::for_as_written]);
  fact(FactKind::tasted, Caption::tasted, out_.end());
}

void Maker::head() {
  card_.head.first = static_cast<std::uint32_t>(card_.facts.size());
  makes_fact(recipe_.makes, adapted_.makes, adapted_.makes_each);
  if (recipe_.serves) {
    out_.begin();
    out_.add(adapted_.serves.text, Role::amount, *recipe_.serves);
    fact(FactKind::serves, Caption::serves, out_.end());
  }
  time_fact();
  for (const TextFact& one : recipe_.facts) {
    if (one.field == Field::serve) fact(FactKind::serve, Caption::serve, prose(recipe_.slice(one.span)));
    if (one.field == Field::guests) fact(FactKind::guests, Caption::guests, prose(recipe_.slice(one.span)));
  }
  if (recipe_.tin) tin_fact(*recipe_.tin);
  if (recipe_.oven != OvenKind::unstated)
    fact(FactKind::oven, Caption::oven, plain(words_[recipe_.oven == OvenKind::fan ? Caption::fan : recipe_.oven == OvenKind::gas ? Caption::gas : Caption::conventional]));
  measures_fact();
  keeps_fact(recipe_.keeps);
  ready_fact(recipe_.ready_after);
  if (recipe_.scales) {
    out_.begin();
    out_.put(words_[Caption::found_to_hold_from]);
    std::string range = write_times(recipe_.scales->low);
    range += words_[Caption::to];
    range += write_times(recipe_.scales->high);
    range += words_[Caption::times];
    out_.add(range, Role::amount);
    fact(FactKind::scales, Caption::scales, out_.end());
  }
  batch_fact(recipe_.batch, adapted_.batch, adapted_.rounds);
  for (const TextFact& one : recipe_.facts) {
    const std::string_view text = recipe_.slice(one.span);
    if (one.field == Field::needs) fact(FactKind::needs, Caption::needs, prose(text));
    if (one.field == Field::source) fact(FactKind::source, Caption::source, prose(text));
    if (one.field == Field::by) fact(FactKind::by, Caption::by, prose(text));
    if (one.field == Field::date) fact(FactKind::date, Caption::date, prose(text));
  }
  tasted_fact();
  allergens();
  checked();
  card_.head.count = static_cast<std::uint32_t>(card_.facts.size()) - card_.head.first;
}

}  // namespace qtn
