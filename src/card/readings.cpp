// The sheet of readings: what the page asks to be read, the fridges that it counts on, and what stands hot.
#include <algorithm>

#include "adapt/adapt.hpp"
#include "card/make.hpp"
#include "card/words.hpp"
#include "card/writer.hpp"
#include "day/say.hpp"
#include "recipe/clauses.hpp"
#include "recipe/sentences.hpp"
#include "safety/figures.hpp"

namespace qtn {
namespace {

struct Held {
  Quantity amount;
  std::string source;
};

// The figure of the law; for the Union, of which none is held, the British one.
Held held_at(Law law, const Limit& limit) {
  return {limit.heat, law == Law::EU ? "no figure of the Union is held here; the UK's: " + std::string(limit.source) : std::string(limit.source)};
}

// What a reading is of: the words before its clause, from the last "until" or "and" on. "the thickest part".
std::string read_words(std::string_view before) {
  std::string text;
  for (const char c : before)
    if (c != '[' && c != ']' && c != '*') text += c == '\n' || c == '\r' || c == '\t' ? ' ' : c;
  for (std::size_t at = text.find("  "); at != std::string::npos; at = text.find("  ")) text.erase(at, 1);
  std::size_t from = 0;
  for (const std::string_view word : {" until ", " till ", " and ", ", ", "; ", "Until "}) {
    const std::size_t at = text.rfind(word);
    if (at != std::string::npos) from = std::max(from, at + word.size());
  }
  return std::string(trim(std::string_view(text).substr(from)));
}

class Sheet {
 public:
  explicit Sheet(const Adapted& adapted) : adapted_(adapted), recipe_(*adapted.recipe), out_(card_), words_(words_of(recipe_)), law_(law_of(recipe_)) {}

  Card run() {
    card_.language = words_.language;
    out_.begin();
    out_.put(recipe_.title), out_.put(": "), out_.put(words_[Caption::readings]);
    card_.title = out_.end();
    constexpr Caption kHeads[] = {Caption::what, Caption::wanted, Caption::reading_when, Caption::reading_found, Caption::reading_whom};
    for (const Caption head : kHeads) grid_.heads.push_back(plain(words_[head]));
    grid_.to_fill = true;
    for (const Part& part : recipe_.parts) steps(part.steps, part.unnamed && recipe_.parts.size() == 1 ? std::string_view() : part.name);
    for (const AfterBlock& block : recipe_.after)
      steps(block.steps, words_[caption_of(block.field)]);
    cold();
    hot();
    if (!grid_.rows.empty()) {
      Section section;
      section.grids.count = 1;
      card_.grids.push_back(std::move(grid_));
      card_.parts.push_back(section);
    }
    card_.remarks.push_back({Remark::Kind::caution, plain(words_[Caption::own_record])});
    for (const std::string_view source : sources_) card_.remarks.push_back({Remark::Kind::note, plain(source)});
    clean(card_);
    return std::move(card_);
  }

 private:
  Range32 plain(std::string_view text) { return out_.line(text); }

  void steps(Slice steps, std::string_view where) {
    unsigned number = 0;
    for (Index s = steps.first; s < steps.end(); ++s) {
      const Step& step = recipe_.steps[s];
      if (step.kind == StepKindOf::note) continue;
      if (!is_other_way(recipe_, s, adapted_.way)) ++number;
      else if (adapted_.way) continue;
      for (const Sentence& sentence : sentences_of(recipe_, step))
        for (Index c = sentence.clauses.first; c < sentence.clauses.end(); ++c) clause(recipe_.clauses[c], sentence, where, number);
    }
  }

  Index term_of(const Clause& clause, TermRole role) const {
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
      if (recipe_.terms[t].role == role) return t;
    return kNone;
  }

  void clause(const Clause& clause, const Sentence& sentence, std::string_view where, unsigned number) {
    const Verb& verb = verb_of(clause);
    const std::string before = read_words(recipe_.slice({sentence.span.begin, clause.span.begin}));
    if (const Index reading = term_of(clause, TermRole::reading); reading != kNone) {
      const Index hold = term_of(clause, TermRole::hold);
      line(where, number, before.empty() ? deed_before(clause, sentence) : before, reading, hold, words_[Caption::for_weight]);
      return;
    }
    const Index to = term_of(clause, TermRole::to);
    if (to != kNone && recipe_.terms[to].amount.dimension() == Dimension::temperature) {
      const Index length = term_of(clause, TermRole::length);
      const bool limit = length != kNone && recipe_.terms[length].amount.manner == Manner::at_most;
      line(where, number, clause.own_verb ? std::string(verb.name) : before, to, limit ? length : kNone,
           words_[Caption::within]);
      return;
    }
    const bool cold = clause.place == Takes::fridge || clause.place == Takes::freezer;
    const Index heat = term_of(clause, TermRole::temperature);
    if (!cold) return;
    (clause.place == Takes::freezer ? freezes_ : chills_) = true;
    if (heat != kNone) line(where, number, words_until(clause, recipe_.terms[heat].span), heat, kNone, {});
  }

  // Where a sentence says nothing of what is read, the deed before it does: "cook".
  std::string deed_before(const Clause& clause, const Sentence& sentence) const {
    std::string name;
    for (Index c = sentence.clauses.first; c < sentence.clauses.end() && recipe_.clauses[c].span.begin < clause.span.begin; ++c)
      if (recipe_.clauses[c].own_verb) name = qtn::verb(recipe_.clauses[c].verb).name;
    return name;
  }

  // "chill 20 min in the fridge", without its heat.
  std::string words_until(const Clause& clause, Span term) const {
    std::string text = read_words(recipe_.slice({clause.span.begin, term.begin}));
    if (text.ends_with(" at")) text.resize(text.size() - 3);
    return text;
  }

  void what(std::string_view where, unsigned number, std::string_view words) {
    out_.begin();
    if (!where.empty()) out_.put(where), out_.put(", ");
    out_.put(words_[Caption::step]);
    out_.put(std::to_string(number));
    if (!words.empty()) out_.put(": "), out_.put(words);
  }

  void term(Index index, Role role) {
    const Shown& shown = adapted_.terms[index];
    const std::string text = shown.text.empty() ? std::string(recipe_.slice(recipe_.terms[index].span)) : shown.text;
    out_.collapsed(text, role);
    if (role != Role::reading || index >= adapted_.terms_beside.size()) return;
    const std::string& beside = adapted_.terms_beside[index].text;
    if (!beside.empty() && beside != text) out_.put(" "), out_.add("(" + beside + ")", Role::second);
  }

  void line(std::string_view where, unsigned number, std::string_view words, Index heat, Index length, std::string_view joint) {
    what(where, number, words);
    const Range32 what = out_.end();
    out_.begin();
    term(heat, Role::reading);
    if (length != kNone) {
      out_.put(joint);
      std::string text = adapted_.terms[length].text.empty() ? std::string(recipe_.slice(recipe_.terms[length].span)) : adapted_.terms[length].text;
      if (recipe_.terms[length].amount.manner == Manner::at_most && text.starts_with("at most ")) text.erase(0, 8);
      out_.collapsed(text, Role::time);
    }
    grid_.rows.push_back({what, out_.end()});
  }

  // ---- what the house holds it at -----------------------------------------------------------------------------------
  std::string both_scales(const Quantity& amount) const {
    const UnitId other = amount.unit == common().fahrenheit ? common().celsius : common().fahrenheit;
    const Fraction value = from_celsius(to_celsius(amount.low, amount.unit), other);
    const auto degrees = [](const Fraction& number, UnitId scale) { return number.decimal(0) + " " + std::string(unit(scale).symbol); };
    return degrees(amount.low, amount.unit) + " (" + degrees(value, other) + ")";
  }

  void held(std::string_view name, Caption bound, const Held& at) {
    if (at.amount.is_lost() || at.amount.unit == kNoUnit) return;
    const Range32 what = plain(name);
    out_.begin();
    if (!at.source.empty()) out_.put(words_[bound]);
    out_.add(both_scales(at.amount), Role::reading, at.amount);
    grid_.rows.push_back({what, out_.end()});
    if (at.source.empty()) return;
    const std::string source = both_scales(at.amount) + ": " + std::string(at.source);
    if (std::find(sources_.begin(), sources_.end(), source) == sources_.end()) sources_.push_back(source);
  }

  void cold() {
    const auto keeps = [&](const std::vector<Keep>& all) {
      for (const Keep& keep : all) {
        chills_ = chills_ || keep.place == KeepPlace::chilled;
        freezes_ = freezes_ || keep.place == KeepPlace::frozen;
      }
    };
    keeps(recipe_.keeps);
    for (const Part& part : recipe_.parts) keeps(part.keeps);
    bool fridge = false, freezer = false;
    if (recipe_.kitchen)
      for (const HouseFridge& one : recipe_.kitchen->fridges) {
        if (!one.temperature) continue;
        const bool below = to_celsius(one.temperature->low, one.temperature->unit).sign() < 0;
        if (below ? !freezes_ : !chills_) continue;
        (below ? freezer : fridge) = true;
        held(one.name, Caption::at_most_heat, {*one.temperature, {}});
      }
    if (chills_ && !fridge) held(words_[Caption::fridge], Caption::at_most_heat, held_at(law_, cold_limit(law_)));
    if (freezes_ && !freezer) held(words_[Caption::freezer], Caption::at_most_heat, held_at(law_, frozen_limit(law_)));
  }

  // Food that spoils warm, where something heats it.
  void hot() {
    const auto heated = [](const Clause& clause) { return verb_of(clause).heats; };
    const auto goes_bad = [](const TakeLine& line) { return is_raw_meat(line) || spoils(hazard_of(line.food)); };
    if (std::none_of(recipe_.clauses.begin(), recipe_.clauses.end(), heated) || std::none_of(recipe_.lines.begin(), recipe_.lines.end(), goes_bad)) return;
    held(words_[Caption::kept_hot], Caption::at_least_heat, held_at(law_, hot_limit(law_)));
  }

  const Adapted& adapted_;
  const Recipe& recipe_;
  Card card_;
  Writer out_;
  Words words_;
  Law law_;
  Grid grid_;
  std::vector<std::string> sources_;
  bool chills_ = false, freezes_ = false;
};

}  // namespace

Card make_readings(const Adapted& adapted) { return Sheet(adapted).run(); }

}  // namespace qtn
