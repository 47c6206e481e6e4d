// Is there enough paste? Where a part or a recipe is rolled out to line a tin: what it covers against what the tin wants.
#include "formula/figures.hpp"
#include "formula/paste.hpp"
#include "recipe/makes.hpp"
#include "recipe/phases.hpp"
#include "recipe/pot.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

// The words of a step behind a place, a sentence at a time.
struct Sentences {
  std::string_view rest;
  bool next(std::string_view& sentence) {
    if (rest.empty()) return false;
    const std::size_t end = rest.find(". ");
    sentence = rest.substr(0, end);
    rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 2);
    return true;
  }
};

// The words of a text, folded: calls use(word).
template <class Use>
void each_word(std::string_view text, Use use) {
  std::string word;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const char c = i < text.size() ? text[i] : ' ';
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) {
      word += c;
      continue;
    }
    if (!word.empty()) use(fold_word(word));
    word.clear();
  }
}

bool is_word(const std::string& word, std::initializer_list<std::string_view> some) {
  for (std::string_view one : some)
    if (word == one) return true;
  return false;
}

// "line the tin", but not "line the tin with paper".
bool lines_a_tin(std::string_view text) {
  Sentences sentences{text};
  for (std::string_view sentence; sentences.next(sentence);) {
    bool line = false, tin = false, paper = false;
    each_word(sentence, [&](const std::string& word) {
      if (is_word(word, {"line", "lining"})) line = true, tin = false;
      if (line && is_word(word, {"tin", "dish", "ring", "mould", "mold", "pan", "plate"})) tin = true;
      if (line && is_word(word, {"paper", "parchment", "foil", "baking"})) paper = true;
    });
    if (line && tin && !paper) return true;
  }
  return false;
}

// The clause's own verb, or the word in its sentence before it.
bool is_roll(const Recipe& recipe, const Clause& clause) {
  const std::string_view name = clause.house_verb != nullptr ? clause.house_verb->name : verb(clause.verb).name;
  if (name == "roll" || name == "roll out") return true;
  if (clause.kind != ClauseKind::measure || clause.step >= recipe.steps.size()) return false;
  const Span step = recipe.steps[clause.step].span;
  if (clause.span.begin < step.begin) return false;
  constexpr std::uint32_t kFar = 300;  // no sentence of a recipe is longer
  const std::uint32_t from = clause.span.begin - step.begin > kFar ? clause.span.begin - kFar : step.begin;
  const std::string_view before = recipe.slice({from, clause.span.begin});
  const std::size_t stop = before.rfind(". ");
  bool found = false;
  each_word(stop == std::string_view::npos ? before : before.substr(stop), [&](const std::string& word) { found = found || is_word(word, {"roll", "rolled", "rolling"}); });
  return found;
}

// The thickness that a clause rolls to; null for anything else.
const Term* thickness(const Recipe& recipe, const Clause& clause) {
  if (clause.terms.empty() || !is_roll(recipe, clause)) return nullptr;
  const Term* found = nullptr;
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
    const Term& term = recipe.terms[t];
    if (term.role != TermRole::measure || term.amount.is_lost() || term.amount.dimension() != Dimension::length) continue;
    if (found != nullptr) return nullptr;  // 5 cm x 8 cm is a piece
    found = &term;
  }
  return found;
}

Ends product_of(const Recipe& recipe, Index part) {
  for (const Yield& yield : yields_of(recipe, part))
    if (!yield.by_product && yield.dimension == Dimension::mass) return yield.ends;
  return {recipe.parts[part].weight_low, recipe.parts[part].weight_high};
}

// Grams of the part or recipe that a mention takes, what is made for trimmings with it; lost for anything else.
struct Paste {
  Ends grams{Fraction::lost(), Fraction::lost()};
  std::string_view name;
};
Paste paste_of(const Recipe& recipe, const Mention& mention, Index part) {
  const TakeLine* line = nullptr;
  Target target = mention.target;
  const Slice own = recipe.parts[part].lines;
  for (Index i = own.first; i < own.end(); ++i) {
    const TakeLine& one = recipe.lines[i];
    const bool named = target.kind == TargetKind::line ? &one == &recipe.lines[target.index] : one.target.kind == target.kind && one.target.index == target.index;
    if (named && !one.struck) line = &standing(recipe, one);
  }
  if (line != nullptr) target = line->target;
  if (target.kind != TargetKind::part && target.kind != TargetKind::use) return {};
  const bool whole = line != nullptr && !line->measured();  // the list names it and takes what is made
  if (!mention.takes && !whole) return {};
  const bool other = target.kind == TargetKind::use;
  const Use* const use = other ? &recipe.uses[target.index] : nullptr;
  if (other && (use->recipe == nullptr || use->recipe->parts.empty())) return {};
  Paste out;
  out.name = other ? use->as : recipe.parts[target.index].name;
  if (line != nullptr && line->measured()) out.grams = grams_of(recipe, *line, line->amount);
  else out.grams = other ? product_of(*use->recipe, use->part == kNone ? use->recipe->dish : use->part) : product_of(recipe, target.index);
  if (mention.takes) out.grams = {out.grams.low * mention.part_low, out.grams.high * mention.part_high};
  const Tail* const spare = line == nullptr ? nullptr : tail_of(recipe, *line, TailKind::trimmings);
  if (spare == nullptr || !spare->amount || spare->amount->dimension() != Dimension::ratio) return out;
  const Ends more = in_base(*spare->amount, recipe.dialect);
  out.grams = {out.grams.low * (Fraction(1) + more.low), out.grams.high * (Fraction(1) + more.high)};
  return out;
}

std::string area(const Fraction& square_mm) { return (square_mm / Fraction(100)).decimal(0) + " cm²"; }

void compare(const Recipe& recipe, const Paste& paste, const Term& thick, const Tin& tin, Report& report) {
  const Fraction mm = in_base(thick.amount, recipe.dialect).low, wanted = lining_of(tin.size);
  const Fraction covers = paste_covers(paste.grams.high, mm);
  if (mm.sign() <= 0 || !(covers < wanted)) return;
  const Fraction grams = paste.grams.high, need = paste_for(wanted, mm);
  const KitchenFigure& density = kitchen_figure("paste density");
  report
      .add(Code::paste_short, thick.span,
           say_amount(grams, Dimension::mass) + " of " + std::string(paste.name) + " at this thickness covers " + area(covers) +
               ", and the floor and sides of the tin want " + area(wanted) + ".")
      .also(tin.span, "the tin is here")
      .expect(say_amount(Fraction::of((need - grams).ceil(), 1), Dimension::mass) + " more, or rolled to " +
              Fraction::of((paste_thickness(grams, wanted) * Fraction(10)).floor(), 10).decimal(1) + " mm")
      .find("`" + std::string(recipe.slice(thick.span)) + "`, reckoned at " + density.low.decimal(1) + " g per ml, " + std::string(density.source));
}

class PasteCheck {
 public:
  PasteCheck(const Recipe& recipe, Report& report) : recipe_(recipe), report_(report) {}

  void step(Index s) {
    const Step& step = recipe_.steps[s];
    const Part& part = recipe_.parts[step.part];
    const Tin* const tin = part.tin ? &*part.tin : recipe_.tin ? &*recipe_.tin : nullptr;
    if (tin == nullptr || part.disturbed || !counts_in_pot(recipe_, part, s)) return;
    for (Index c = step.clauses.first; c < step.clauses.end(); ++c) {
      const Clause& clause = recipe_.clauses[c];
      const Term* const thick = thickness(recipe_, clause);
      if (thick == nullptr) continue;
      const std::string_view behind = recipe_.text.substr(clause.span.end, step.span.end > clause.span.end ? step.span.end - clause.span.end : 0);
      const bool here = lines_a_tin(behind);
      if (!here && (s + 1 >= part.steps.end() || !lines_a_tin(recipe_.slice(recipe_.steps[s + 1].span)))) return;
      if (const Paste paste = named_before(step, c); !paste.name.empty()) compare(recipe_, paste, *thick, *tin, report_);
      return;
    }
  }

 private:
  // The last part or recipe that the step takes before it rolls.
  Paste named_before(const Step& step, Index clause) {
    for (Index c = clause; c-- > step.clauses.first;) {
      const Slice mentions = recipe_.clauses[c].mentions;
      for (Index m = mentions.end(); m-- > mentions.first && recipe_.clauses[c].kind == ClauseKind::use;) {
        if ((work_ += recipe_.parts[step.part].lines.count + 1) > kMostWork) return {};
        if (const Paste found = paste_of(recipe_, recipe_.mentions[m], step.part); !found.name.empty()) return found;
      }
    }
    return {};
  }

  const Recipe& recipe_;
  Report& report_;
  std::size_t work_ = 0;
};

}  // namespace

bool rolls_paste(const Recipe& recipe, const Clause& clause) { return thickness(recipe, clause) != nullptr; }

void check_paste(const Recipe& recipe, Report& report) {
  PasteCheck check(recipe, report);
  for (Index s = 0; s < recipe.steps.size(); ++s)
    if (recipe.steps[s].part < recipe.parts.size()) check.step(s);
}

}  // namespace qtn
