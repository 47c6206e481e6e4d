// A step as a chain of activities that follow at once.
#include <algorithm>

#include "day/winder.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

// More turns than this are told as this many: a quarter of a year, turned each day.
constexpr Wide kMostTurns = 100;

bool is_use(ClauseKind kind) {
  switch (kind) {
    case ClauseKind::use: case ClauseKind::keep_back: case ClauseKind::take_out: case ClauseKind::discard:
    case ClauseKind::strain_out: case ClauseKind::drain: case ClauseKind::pieces: return true;
    default: return false;
  }
}

// `outside`, `off the heat`, `at room temperature`: a place that takes nothing of the kitchen.
bool is_elsewhere(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (i != 0 && text[i - 1] == ' ' && Lexicon::standard().longest(text.substr(i), kPlaceWord)) return true;
  return false;
}

Takes place_of(const Recipe& recipe, const Clause& clause, const Verb& verb) {
  if (clause.place != Takes::nothing) return clause.place;
  if (verb.takes != 0 && is_elsewhere(recipe.slice(clause.span))) return Takes::nothing;
  for (const Takes place : {Takes::oven, Takes::hob, Takes::fridge, Takes::freezer})
    if ((verb.takes & static_cast<std::uint8_t>(place)) != 0) return place;
  return Takes::nothing;
}

// `turn 6 times, chill 30 min between`: the verb of the wait between.
const Verb& verb_between(const Recipe& recipe, const Clause& clause, const Term& between) {
  const std::string_view text = recipe.slice({clause.span.begin, between.span.begin});
  const Verb* found = &verb(kNoVerb);
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i != 0 && text[i - 1] != ' ') continue;
    if (const Found word = Lexicon::standard().longest(text.substr(i), kVerbWord)) found = &verb(word.row->verb);
  }
  return *found;
}

// Words that open a remark and no deed. Common practice of the language, no source.
bool opens_remark(std::string_view word) {
  constexpr std::string_view kOpeners[] = {
      "the", "a", "an", "it", "its", "they", "their", "that", "this", "these", "those", "there", "here", "if", "when", "once", "while", "until", "what",
      "which", "who", "you", "your", "we", "our", "i", "my", "he", "she", "do", "don't", "does", "not", "no", "none", "never", "nothing", "in", "on", "at",
      "by", "for", "from", "of", "with", "without", "as", "but", "and", "or", "so", "all", "some", "most", "more", "both", "each", "any", "many", "much",
      "one", "two", "too", "be", "is", "are", "was", "should", "must", "may", "can", "will", "serves", "makes", "enough", "how", "why", "because", "only"};
  return std::find(std::begin(kOpeners), std::end(kOpeners), word) != std::end(kOpeners);
}

}  // namespace

// Is a sentence without a time something to do? Where it opens with a verb, or with a word that opens no remark ("Thread on
// skewers"), or handles what is listed. A remark takes no time.
bool Winder::is_work(const Recipe& recipe, const Sentence& sentence) const {
  for (Index c = sentence.clauses.first; c < sentence.clauses.end(); ++c)
    if (is_use(recipe.clauses[c].kind)) return true;
  const std::string_view text = recipe.slice(sentence.span);
  if (const Found word = Lexicon::standard().longest(text, kVerbWord)) return verb(word.row->verb).deed == Deed::timed;
  const std::size_t end = text.find_first_of(" \n\r\t,;:.!?)");
  const bool several = end != std::string_view::npos && text[end] != '.' && letter_at(text, 0) != 0;
  return several && !opens_remark(lower(text.substr(0, end)));
}

Winder::Chain Winder::chain(Index making, Index part, Index step) {
  Chain chain;
  for (const Sentence& one : sentences_of(recipe(making), recipe(making).steps[step])) sentence(making, part, step, one, chain);
  return chain;
}

void Winder::sentence(Index making, Index part, Index step, const Sentence& sentence, Chain& chain) {
  const Recipe& recipe = this->recipe(making);
  std::vector<Index> before;  // clauses that belong to the next time clause
  Number last = kNothing;
  for (Index c = sentence.clauses.first; c < sentence.clauses.end(); ++c) {
    if (!takes_time(recipe, recipe.clauses[c], last != kNothing)) {
      before.push_back(c);
      continue;
    }
    const Number first = static_cast<Number>(clock_.doings.size());
    if (last == kNothing && has_work_first(recipe, sentence, recipe.clauses[c])) work(making, part, step, {sentence.span.begin, recipe.clauses[c].span.begin}, chain);
    clause(making, part, step, c, sentence, chain);
    for (const Index b : before) takes(making, recipe.clauses[b], first);
    takes(making, recipe.clauses[c], first);
    before.clear();
    last = chain.last;
  }
  if (last == kNothing) {
    if (!is_work(recipe, sentence)) return;
    last = work(making, part, step, sentence.span, chain);
  }
  for (const Index b : before) takes(making, recipe.clauses[b], last);
}

Number Winder::work(Index making, Index part, Index step, Span words, Chain& chain) {
  Doing work;
  work.what = Doing::What::work;
  work.making = making, work.part = part, work.step = step, work.sentence = words;
  work.verb = &verb(kNoVerb);
  work.guessed = true;
  work.round = batch_, work.rounds = batches_;
  chain.last = add(work, Minutes{}, kNothing, chain.last);
  if (chain.empty()) chain.first = chain.last;
  return chain.last;
}

// "Slice the apples and [bake 30 min]": somebody works before the oven does. "Stir it over the heat, [warm 5 min]" is one
// deed with its time behind it.
bool Winder::has_work_first(const Recipe& recipe, const Sentence& sentence, const Clause& clause) const {
  if (verb_of(clause).attention == Attention::throughout) return false;
  constexpr std::string_view kBlanks = " \n\r\t";
  std::string_view front = recipe.slice({sentence.span.begin, clause.span.begin});
  front = front.substr(0, front.find_last_not_of(kBlanks) + 1);
  const std::string_view joint = front.substr(front.find_last_of(kBlanks) + 1);
  if (joint != "and" && joint != "then") return false;
  const Found word = Lexicon::standard().longest(front, kVerbWord);
  if (!word || word.row->verb == clause.verb) return false;
  if (verb(word.row->verb).name == "turn") return false;  // the heat down, the oven up, the joint over
  const Verb& opens = verb(word.row->verb);
  return opens.deed == Deed::timed && opens.attention == Attention::throughout && !opens.wait;
}

void Winder::clause(Index making, Index part, Index step, Index index, const Sentence& sentence, Chain& chain) {
  const Recipe& recipe = this->recipe(making);
  const Clause& clause = recipe.clauses[index];
  const Verb& verb = verb_of(clause);
  const Minutes minutes = minutes_of(clock_.makings[making], index);
  Doing doing;
  doing.making = making, doing.part = part, doing.step = step, doing.clause = index, doing.sentence = sentence.span;
  doing.verb = &verb;
  doing.place = place_of(recipe, clause, verb);
  doing.written = minutes.written;
  doing.guessed = !minutes.written && clause.kind != ClauseKind::reading;
  doing.wait = verb.wait;
  doing.sign = term_of(recipe, clause, TermRole::to) != nullptr || clause.kind == ClauseKind::reading;
  if (const Term* const length = term_of(recipe, clause, TermRole::length)) doing.overnight = length->overnight && !clause.or_overnight;
  if (doing.place == Takes::oven) doing.heat = oven_heat(recipe, clause);
  doing.round = batch_, doing.rounds = batches_;
  const Term* const every = term_of(recipe, clause, TermRole::every);
  if (term_of(recipe, clause, TermRole::times) != nullptr) return repeats(doing, minutes, clause, chain);
  if (every != nullptr && !every->amount.is_lost()) return turns(doing, minutes, clause, *every, chain);
  const Number said = label(Said::What::length, making, part, index, clause.span);
  const Number made = add(doing, minutes, said, chain.last);
  if (chain.empty()) chain.first = made;
  chain.last = made;
}

// So many times, `every` so long from start to start, or with a wait between.
void Winder::repeats(const Doing& model, const Minutes& each, const Clause& clause, Chain& chain) {
  const Recipe& recipe = this->recipe(model.making);
  const Term& times = *term_of(recipe, clause, TermRole::times);
  const Term *const every = term_of(recipe, clause, TermRole::every), *const between = term_of(recipe, clause, TermRole::between);
  const int count = times.amount.is_lost() ? 1 : static_cast<int>(std::clamp<Wide>(times.amount.low.ceil(), 1, kMostTurns));
  const Number said = label(Said::What::every, model.making, model.part, model.clause, clause.span);
  plan::End step_before{};
  Fraction gap_before(0);
  for (int i = 0; i < count; ++i) {
    Doing turn = model;
    turn.round = i, turn.rounds = count;
    Minutes length = each;
    // From start to start: the turn is as long as the step, and work for the first of it.
    const Fraction gap = every != nullptr && i + 1 < count ? minutes_in(recipe, every->amount) : Fraction::lost();
    if (!gap.is_lost()) {
      turn.turn = true, turn.guessed = false;
      if (each.written) turn.busy = each.most.value_or(each.least);
      length.chance = false;
      length.least = each.written && turn.busy > gap ? turn.busy : gap;
      length.most = length.least;
    }
    const Number made = add(turn, length, each.written || !gap.is_lost() ? said : kNothing, chain.last);
    if (chain.empty()) chain.first = made;
    if (step_before.activity != kNothing) longest(step_before, plan::begin_of(made), gap_before, said);
    step_before = gap.is_lost() ? plan::End{} : plan::begin_of(made);
    gap_before = gap;
    chain.last = made;
    if (between == nullptr || i + 1 == count) continue;
    Doing pause = model;
    pause.verb = &verb_between(recipe, clause, *between);
    pause.place = clause.place != Takes::nothing ? clause.place : place_of(recipe, Clause{}, *pause.verb);
    pause.between = true, pause.wait = true, pause.written = true, pause.guessed = false, pause.heat = -1;
    pause.round = i, pause.rounds = count - 1;
    Minutes minutes;
    minutes.written = true;
    minutes.least = minutes_in(recipe, between->amount), minutes.most = minutes.least;
    if (minutes.least.is_lost()) continue;
    chain.last = add(pause, minutes, said, made);
  }
}

// `turn each day`: once for every full day of the wait before it, while that goes on.
void Winder::turns(const Doing& model, const Minutes& each, const Clause& clause, const Term& every, Chain& chain) {
  const Recipe& recipe = this->recipe(model.making);
  Number wait = kNothing;
  for (Number i = static_cast<Number>(clock_.doings.size()); i-- > 0 && wait == kNothing;) {
    const Doing& one = clock_.doings[i];
    if (one.making != model.making || one.part != model.part) break;
    if (one.wait && one.written) wait = i;
  }
  const Fraction gap = minutes_in(recipe, every.amount);
  const bool inside = wait != kNothing && gap.sign() > 0;
  const Wide full = inside ? (minutes_[wait].least / gap).floor() : 0;
  const int count = static_cast<int>(std::clamp<Wide>(full, 0, kMostTurns));
  const Number said = label(Said::What::every, model.making, model.part, model.clause, clause.span);
  const bool ends_so = inside && minutes_[wait].least == gap * Fraction::of(full, 1);
  for (int i = 1; i <= count - (ends_so ? 1 : 0); ++i) {  // the last would fall on the end of the waiting
    Doing turn = model;
    turn.round = i - 1, turn.rounds = count - (ends_so ? 1 : 0);
    // So long behind the beginning of the wait, whatever chance went before that.
    Doing until = model;
    until.what = Doing::What::gap, until.guessed = false;
    Minutes length;
    length.least = gap * Fraction(i), length.most = length.least;
    const Number before = add(until, length, said, clock_.network.activities[wait].follows);
    if (clock_.network.activities[wait].follows == kNothing) {
      rule(plan::begin_of(wait), plan::begin_of(before), Fraction(0), said);
      longest(plan::begin_of(wait), plan::begin_of(before), Fraction(0), said);
    }
    add(turn, each, each.written ? said : kNothing, before);
  }
  if (count != 0) return;
  const Number made = add(model, each, kNothing, chain.last);
  if (chain.empty()) chain.first = made;
  chain.last = made;
}

bool Winder::was_taken(Index making, const Target& target, const std::vector<Index>& uses) const {
  const bool use = target.kind == TargetKind::use && target.index < uses.size();
  return std::any_of(taken_.begin(), taken_.end(), [&](const Taken& one) {
    if (clock_.doings[one.by].making != making) return false;
    return use ? one.making == uses[target.index] && one.part == kNone : one.making == making && one.part == target.index;
  });
}

void Winder::takes(Index making, const Clause& clause, Number by) {
  const Recipe& recipe = this->recipe(making);
  const auto& uses = clock_.makings[making].uses;
  for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
    const Mention& mention = recipe.mentions[m];
    Target target = mention.target;
    if (target.kind == TargetKind::line) target = recipe.lines[target.index].target;
    // A later mention only names what went in before; of what is listed without an amount the first one takes it.
    const bool named = mention.taking == Taking::named || (mention.taking == Taking::mention && !mention.takes);
    if (named && was_taken(making, target, uses)) continue;
    if (target.kind == TargetKind::part && target.index != clause.part) taken_.push_back({making, target.index, by});
    if (target.kind == TargetKind::use && target.index < uses.size() && uses[target.index] != kNone)
      taken_.push_back({uses[target.index], kNone, by});
  }
}

}  // namespace qtn
