#include "app/form.hpp"

#include <algorithm>

#include "data/tables.hpp"
#include "measure/table_text.hpp"
#include "recipe/clauses.hpp"
#include "recipe/sentences.hpp"
#include "safety/pots.hpp"
#include "words/fold.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

bool is_amount(const Quantity& amount) {
  return amount.dimension() == Dimension::mass || amount.dimension() == Dimension::volume;
}

// "flour" does not say which; returns one of its kinds to show, else nothing.
std::string_view kind_of(std::string_view name) {
  std::string_view kind;
  const std::string asked = lower(name);
  table::each_row(data::bare_names(), [&](const table::Row& row) {
    if (row[0] == asked) kind = row[1];
  });
  return kind;
}

bool takes_oven(const Verb& verb) { return (verb.takes & static_cast<std::uint8_t>(Takes::oven)) != 0; }

// Meat, fish and eggs that go in raw.
bool is_raw_animal(const Recipe& recipe, const TakeLine& line) {
  const Hazard hazard = hazard_of(recipe, line);
  return is_raw_meat(line) || (hazard >= Hazard::poultry && hazard <= Hazard::egg);
}

class Form {
 public:
  Form(const Recipe& recipe, std::string_view folder, Report& report) : recipe_(recipe), folder_(folder), report_(report) {}

  void run() {
    if (recipe_.title.empty()) lacks({}, "the title", "`recipe: Leek soup` as its first line");
    if (folder_.empty()) lacks(title(), "the category", "the file in a folder of its book that is named for its kind: `soups/`");
    ingredients();
    directions();
    heat();
    yield();
    equipment();
    control();
  }

 private:
  Span title() const {
    if (recipe_.title.empty()) return {};
    const auto begin = static_cast<std::uint32_t>(recipe_.title.data() - recipe_.text.data());
    return {begin, begin + static_cast<std::uint32_t>(recipe_.title.size())};
  }

  void lacks(Span place, const std::string& what, const std::string& how) {
    report_.add(Code::form_lacks, place, "The standardized form wants " + what + ".").expect(how);
  }

  bool has_tail(const TakeLine& line, TailKind kind) const {
    for (Index t = line.tails.first; t < line.tails.end(); ++t)
      if (recipe_.tails[t].kind == kind) return true;
    return false;
  }

  // For the tin, the worktop or the pan, and no ingredient of the dish: `butter, for greasing`.
  bool is_for_something(const TakeLine& line) const {
    for (Index t = line.tails.first; t < line.tails.end(); ++t)
      if (recipe_.tails[t].kind == TailKind::unmeasured && lower(recipe_.slice(recipe_.tails[t].span)).starts_with("for ")) return true;
    return false;
  }

  void ingredients() {
    if (recipe_.lines.empty()) lacks(title(), "the ingredients", "a list: `take:` and a line for each");
    for (const TakeLine& line : recipe_.lines) {
      if (line.given || line.target.kind != TargetKind::none) continue;
      const std::string name = "`" + std::string(line.name) + "`";
      if (const std::string_view kind = kind_of(line.name); !kind.empty() && !has_tail(line, TailKind::preparation))
        lacks(line.name_span, "to know which " + std::string(line.name), "the kind, such as `" + std::string(kind) + "`");
      if (!line.measured() && !has_tail(line, TailKind::start_with) && !is_for_something(line))
        lacks(line.name_span, "a weight or measure of " + name, "an amount in front, or `to taste, start with 1/2 tsp`");
    }
  }

  void directions() {
    for (const Part& part : recipe_.parts)
      if (!part.lines.empty() && part.steps.empty())
        lacks(part.unnamed ? title() : part.span, "directions" + (part.unnamed ? std::string() : " for `" + std::string(part.name) + "`"), "`method:` and its steps in order");
  }

  // A temperature in the clause itself, or said before it in its part.
  bool has_heat(const Clause& clause) const {
    return std::any_of(recipe_.clauses.begin(), recipe_.clauses.end(), [&](const Clause& one) {
      if (one.part != clause.part || one.span.begin > clause.span.begin) return false;
      for (Index t = one.terms.first; t < one.terms.end(); ++t)
        if (recipe_.terms[t].role == TermRole::temperature) return true;
      return false;
    });
  }

  void heat() {
    for (const Clause& clause : recipe_.clauses)
      if (clause.kind == ClauseKind::time && verb_of(clause).heats && takes_oven(verb_of(clause)) && clause.place == Takes::nothing && !has_heat(clause))
        lacks(clause.span, "the oven's temperature", "`[bake 20 min at 180 °C]`");
    for (const Part& part : recipe_.parts)
      for (Index s = part.steps.first; s < part.steps.end(); ++s)
        if (!has_time(recipe_.steps[s]))
          for (const Sentence& sentence : sentences_of(recipe_, recipe_.steps[s])) unclocked(sentence);
  }

  bool has_time(const Step& step) const {
    for (Index c = step.clauses.first; c < step.clauses.end(); ++c) {
      const ClauseKind kind = recipe_.clauses[c].kind;
      if (kind == ClauseKind::time || kind == ClauseKind::reading || kind == ClauseKind::reduce) return true;
    }
    return false;
  }

  // "Fry [the onions] until golden.": a sentence that opens with a heat verb, takes something, and says no time. What is
  // only brought to the boil is not cooked by it.
  void unclocked(const Sentence& sentence) {
    const std::string_view text = recipe_.slice(sentence.span);
    const Found word = Lexicon::standard().longest(text, kVerbWord);
    if (!word || sentence.clauses.empty()) return;
    const Verb& deed = verb(word.row->verb);
    if (!deed.heats || deed.heats_oven || deed.name.starts_with("bring")) return;
    lacks({sentence.span.begin, sentence.span.begin + static_cast<std::uint32_t>(word.size)}, "the time of cooking", "a time in brackets: `[fry about 5 min]`");
  }

  void yield() {
    const std::vector<Made>& makes = recipe_.makes.empty() ? recipe_.parts[recipe_.dish].makes : recipe_.makes;
    const bool weighed = std::any_of(makes.begin(), makes.end(), [](const Made& made) { return !made.by_product && (is_amount(made.amount) || (made.each && is_amount(*made.each))); });
    const bool each = std::any_of(makes.begin(), makes.end(), [](const Made& made) { return made.each && is_amount(*made.each); });
    const Span place = makes.empty() ? title() : makes.front().span;
    if (!each && !(weighed && recipe_.serves)) lacks(recipe_.serves ? recipe_.serves_span : place, "the size of a portion", "a weight for each, `makes: 8 pasties of 220 g`, or a whole weight and `serves:`");
    if (!weighed) lacks(place, "the whole yield by weight or volume", "`makes: about 1.8 kg`, or so many of so much: `makes: 8 pasties of 220 g`");
    if (!recipe_.serves) lacks(place, "the number of servings", "`serves: 8`");
  }

  void equipment() {
    const bool needs = std::any_of(recipe_.facts.begin(), recipe_.facts.end(), [](const TextFact& fact) { return fact.field == Field::needs; });
    const bool tin = recipe_.tin || std::any_of(recipe_.parts.begin(), recipe_.parts.end(), [](const Part& part) { return part.tin.has_value(); });
    if (!needs && !tin) lacks(title(), "the equipment", "`needs: a large pan, a stick blender`, or `tin:`");
  }

  // The critical limits in the directions: what is read of the food, where there is raw animal food.
  void control() {
    const bool reads = std::any_of(recipe_.terms.begin(), recipe_.terms.end(), [](const Term& term) {
      return term.role == TermRole::reading || (term.role == TermRole::to && term.amount.dimension() == Dimension::temperature);
    });
    if (reads) return;
    // Eggs that are baked or boiled are judged by their time, as cakes are; eggs that nothing heats are eaten raw.
    const bool heated = std::any_of(recipe_.clauses.begin(), recipe_.clauses.end(), [](const Clause& clause) { return verb_of(clause).heats; });
    const auto is_egg = [](const TakeLine& line) { return hazard_of(line.food) == Hazard::egg; };
    for (const TakeLine& line : recipe_.lines)
      if (!line.alternative && is_raw_animal(recipe_, line) && !(heated && is_egg(line)))
        return lacks(line.name_span, "a control point for `" + std::string(line.name) + "`, which goes in raw", "what its middle reads when it is done, by your local code: `[reads 75 °C]`");
  }

  const Recipe& recipe_;
  std::string_view folder_;
  Report& report_;
};

}  // namespace

void check_form(const Recipe& recipe, std::string_view folder, Report& report) {
  if (recipe.kind == FileKind::recipe) Form(recipe, folder, report).run();
}

}  // namespace qtn
